/** How DECISION, FALSEACCEPT, GLOBALRISK, TESTRATIO and ENRATIO read their cells. */
import { callFunction } from '../../src/functions/call';
import { expectDigits } from '../digits';
import { fault, number, table } from './call';

const decision = (...args: Parameters<typeof callFunction>[1]) => callFunction('DECISION', args);

describe('DECISION', () => {
  test('is simple unless a rule is given, by word in any case or by number', () => {
    expect(decision(10.08, 9.9, 10.1, 0.05)).toBe('pass');
    expect(decision(10.08, 9.9, 10.1, 0.05, 'Simple')).toBe('pass');
    expect(decision(10.08, 9.9, 10.1, 0.05, 'GUARDED')).toBe('conditional pass');
    expect(decision(10.08, 9.9, 10.1, 0.05, 1)).toBe('conditional pass');
    expect(decision(10.08, 9.9, 10.1, 0.05, 0.4)).toBe('pass');
    expect(decision(10.12, 9.9, 10.1, 0.05, 0)).toBe('fail');
  });
  test('takes a blank cell, an empty text or nothing as no limit', () => {
    for (const none of [null, undefined, '']) {
      expect(decision(-100, none, 10.1, 0.05, 'guarded')).toBe('pass');
      expect(decision(100, 9.9, none, 0.05, 'guarded')).toBe('pass');
    }
  });
  test.each([
    ['lower, upper: found nothing in both; expected at least one limit', [1, null, '', 0.1]],
    ['lower: found 3, with upper 2; expected a lower limit below the upper one', [1, 3, 2, 0.1]],
    ['U: found nothing; expected a number', [1, 0, 2]],
    ['value: found nothing; expected a value', [null, 0, 2, 0.1]],
    ['upper: found the text "ten"; expected a number', [1, 0, 'ten', 0.1]],
    ['rule: found the text "strict"; expected "simple", "guarded" or a guard factor', [1, 0, 2, 0.1, 'strict']],
    ['rule: found TRUE; expected "simple", "guarded" or a guard factor', [1, 0, 2, 0.1, true]],
    ['rule: found -0.5; expected a guard factor of 0 or more', [1, 0, 2, 0.1, -0.5]],
  ])('says "%s"', (message, args) => {
    expect(fault('DECISION', ...args)).toBe(`#VALUE!: ${message}`);
  });
});

describe('FALSEACCEPT', () => {
  test('is a half at a limit, and the sum of both tails', () => {
    expect(number('FALSEACCEPT', 10, '', 10, 0.1)).toBe(0.5);
    expectDigits(number('FALSEACCEPT', 10, 9.8, 10.2, 0.1), 0.0455002638963584, 12);
  });
  test('one guard band U from the limit, DECISION passes and the risk is 2.3 % (JCGM 106, 8.3)', () => {
    expect(decision(9.95, null, 10, 0.05, 'guarded')).toBe('pass');
    expect((100 * number('FALSEACCEPT', 9.95, null, 10, 0.025)).toFixed(1)).toBe('2.3');
  });
  test('asks for an uncertainty', () => {
    expect(fault('FALSEACCEPT', 1, 0, 2)).toBe('#VALUE!: u: found nothing; expected a number');
    expect(fault('FALSEACCEPT', 1, 0, 2, 0)).toBe('#VALUE!: u: found 0; expected a standard uncertainty above 0');
  });
});

describe('GLOBALRISK', () => {
  const resistors = [1499.8, 1500.2, 1499.82, 1500.18, 1500, 0.12, 0.04] as const;
  test('heads its table unless the last argument is FALSE', () => {
    expect(table('GLOBALRISK', ...resistors)[0]).toEqual(["Consumer's risk", "Producer's risk"]);
    expect(table('GLOBALRISK', ...resistors, false).length).toBe(1);
  });
  test('JCGM 106, 9.5.3, precision resistors, with two digits more than printed: 0.0099 and 0.0690', () => {
    expect(table('GLOBALRISK', ...resistors, false)[0].map((risk) => risk.toFixed(4))).toEqual(['0.0099', '0.0690']);
  });
  test('a blank acceptance limit is the limit of the tolerance', () => {
    expect(table('GLOBALRISK', -1, 1, null, '', 0, 0.5, 0.1)).toEqual(table('GLOBALRISK', -1, 1, -1, 1, 0, 0.5, 0.1));
    expect(table('GLOBALRISK', null, 1, null, 0.9, 0, 0.5, 0.1)).not.toEqual(table('GLOBALRISK', -1, 1, -1, 0.9, 0, 0.5, 0.1));
  });
  test('with one limit, the two risks of a limit at the mean are atan(u/sd)/2π', () => {
    expectDigits(table('GLOBALRISK', null, 5, null, null, 5, 2, 1, false)[0][0], Math.atan(0.5) / (2 * Math.PI), 12);
  });
  test.each([
    ['priorMean: found nothing; expected a number', [0, 1, null, null, null, 1, 1]],
    ['priorSd: found 0; expected a standard deviation above 0', [0, 1, null, null, 0, 0, 1]],
    ['lower, upper: found nothing in both; expected at least one limit', [null, null, 0, 1, 0, 1, 1]],
  ])('says "%s"', (message, args) => {
    expect(fault('GLOBALRISK', ...args)).toBe(`#VALUE!: ${message}`);
  });
});

describe('ratios', () => {
  test('TESTRATIO is tolerance over U, JCGM 106 7.6.5: U ≤ E/3 means 3 or more', () => {
    expect(number('TESTRATIO', 0.3, 0.1)).toBeCloseTo(3, 14);
    expect(fault('TESTRATIO', 0, 0.1)).toBe('#VALUE!: tolerance: found 0; expected a half-width above 0');
    expect(fault('TESTRATIO', 1, 0)).toBe('#VALUE!: U: found 0; expected an expanded uncertainty above 0');
  });
  test('ENRATIO: 3-4-5, signed, turned by exchanging the two', () => {
    expect(number('ENRATIO', 110, 3, 100, 4)).toBe(2);
    expect(number('ENRATIO', 100, 4, 110, 3)).toBe(-2);
    expect(number('ENRATIO', 100, 4, 100, 3)).toBe(0);
    expect(number('ENRATIO', 105, 5, 100, 0)).toBe(1);
  });
  test('ENRATIO refuses negative uncertainties, and two of 0', () => {
    expect(fault('ENRATIO', 1, -1, 2, 1)).toBe('#VALUE!: U1: found -1; expected an expanded uncertainty, 0 or more');
    expect(fault('ENRATIO', 1, 1, 2, -1)).toBe('#VALUE!: U2: found -1; expected an expanded uncertainty, 0 or more');
    expect(fault('ENRATIO', 1, 0, 2, 0)).toBe('#VALUE!: U1, U2: found 0 in both; expected at least one uncertainty above 0');
  });
});

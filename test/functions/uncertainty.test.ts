/** How STANDARDU and UNCERTAINTY read their ranges, and what must not matter to them. */
import fc from 'fast-check';
import type { Cell } from '../../src/functions/cells';
import { expectDigits } from '../digits';
import { column, fault, number, table } from './call';

const result = (components: Cell[][], dofs: Cell[][] | null = null, probability: number | null = null) =>
  table('UNCERTAINTY', components, dofs, probability, false)[0];

describe('STANDARDU', () => {
  test('divides by 2, √3, √6, √2 and √12, whatever the case of the word', () => {
    expect(number('STANDARDU', 1, 'Normal')).toBe(0.5);
    expectDigits(number('STANDARDU', 1, 'rectangular') ** 2, 1 / 3, 15);
    expectDigits(number('STANDARDU', 1, 'TRIANGULAR') ** 2, 1 / 6, 15);
    expectDigits(number('STANDARDU', 1, 'ushaped') ** 2, 1 / 2, 15);
    expectDigits(number('STANDARDU', 1, 'resolution') ** 2, 1 / 12, 15);
  });
  test('half a step taken as rectangular is the same as the full step as resolution', () => {
    expectDigits(number('STANDARDU', 0.01, 'resolution'), number('STANDARDU', 0.005, 'rectangular'), 15);
  });
  test('asks for a known word and a half-width of 0 or more', () => {
    expect(fault('STANDARDU', 1, 'even')).toBe('#VALUE!: distribution: found the text "even"; expected "normal", "rectangular", "triangular", "ushaped" or "resolution"');
    expect(fault('STANDARDU', -1, 'normal')).toBe('#VALUE!: halfWidth: found -1; expected 0 or more');
    expect(fault('STANDARDU', 'wide', 'normal')).toBe('#VALUE!: halfWidth: found the text "wide"; expected a number');
  });
});

describe('UNCERTAINTY', () => {
  test('heads its table unless the last argument is FALSE', () => {
    expect(table('UNCERTAINTY', column(3, 4))).toEqual([['uc', 'Effective dof', 'k', 'U'], [5, 'infinite', 2, 10]]);
    expect(table('UNCERTAINTY', column(3, 4), null, null, false)).toEqual([[5, 'infinite', 2, 10]]);
  });
  test('blank degrees of freedom are infinite, as the words for it are', () => {
    const expected = result(column(0.3, 0.4));
    expect(result(column(0.3, 0.4), column(null, ''))).toEqual(expected);
    expect(result(column(0.3, 0.4), column('infinite', ' ∞ '))).toEqual(expected);
    expect(result(column(0.3, 0.4), [[null]])).toEqual(expected);
  });
  test('takes the degrees of freedom that it gave: a budget can feed another', () => {
    const [combined, dof] = result(column(0.25, 0.57, 0.82), column(9, 4, 14), 0.95);
    const [again, sameDof] = result(column(combined), column(dof), 0.95);
    expectDigits(again, combined, 15);
    expectDigits(sameDof, dof, 15);
    const [uc, none] = result(column(3, 4));
    expect(result(column(uc), column(none))).toEqual([5, 'infinite', 2, 10]);
  });
  test('a row blank in both is skipped, and a row of cells serves as well as a column', () => {
    const expected = result(column(3, 4), column(9, null), 0.95);
    expect(result(column(3, null, 4), column(9, null, null), 0.95)).toEqual(expected);
    expect(result([[3, 4]], [[9, null]], 0.95)).toEqual(expected);
  });
  test('the default probability is 0.9545', () => {
    expect(result(column(1), column(4))).toEqual(result(column(1), column(4), 0.9545));
    expect(result(column(1), column(4))[2].toFixed(2)).toBe('2.87'); // JCGM 100, table G.2
  });
  test.each([
    ['dofs row 2: found 5 without a component; expected one beside it', column(3, null), column(9, 5), null],
    ['dofs row 2: found 0.5; expected 1 or more, or nothing if the degrees of freedom are infinite', column(3, 4), column(9, 0.5), null],
    ['dofs: found 0; expected 1 or more, or nothing if the degrees of freedom are infinite', [[3]], [[0]], null],
    ['components row 2: found the text "big"; expected a number', column(3, 'big'), null, null],
    ['dofs row 1: found the text "many"; expected a number', column(3, 4), column('many', null), null],
    ['components has 2 cells and dofs 3; expected the same number', column(3, 4), column(1, 2, 3), null],
    ['components: found nothing; expected at least one standard uncertainty', column(null, ''), null, null],
    ['components: found none other than 0; expected at least one standard uncertainty above 0', column(0, 0), null, null],
    ['components: found 2 rows and 2 columns; expected one row or one column', [[1, 2], [3, 4]], null, null],
    ['probability: found 95; expected a number between 0 and 1, such as 0.9545 (95.45 %)', column(3, 4), null, 95],
  ])('says "%s"', (message, components, dofs, probability) => {
    expect(fault('UNCERTAINTY', components, dofs, probability)).toBe(`#VALUE!: ${message}`);
  });
});

describe('what must not matter', () => {
  const line = fc.record({
    value: fc.double({ min: 1e-3, max: 10, noNaN: true }),
    dof: fc.option(fc.integer({ min: 1, max: 200 }), { nil: null }),
  });
  const budget = fc.array(line, { minLength: 1, maxLength: 8 });
  const of = (lines: readonly { value: number; dof: number | null }[]) => result(column(...lines.map(({ value }) => value)), column(...lines.map(({ dof }) => dof)));
  const close = (found: unknown, expected: unknown) => {
    if (typeof expected === 'number') expectDigits(found as number, expected, 11);
    else expect(found).toBe(expected);
  };

  test('all components times a factor: uc and U times it, dof and k as they were', () => {
    fc.assert(fc.property(budget, fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (lines, factor) => {
      const [uc, dof, k, U] = of(lines);
      const scaled = of(lines.map(({ value, dof: own }) => ({ value: value * factor, dof: own })));
      [uc * factor, dof, k, U * factor].forEach((expected, i) => close(scaled[i], expected));
    }));
  });
  test('a component of 0 changes nothing, whatever its degrees of freedom', () => {
    fc.assert(fc.property(budget, fc.option(fc.integer({ min: 1, max: 50 }), { nil: null }), (lines, dof) => {
      expect(of([...lines, { value: 0, dof }])).toEqual(of(lines));
    }));
  });
  test('the sign of a component, and the order of them', () => {
    fc.assert(fc.property(budget, (lines) => {
      const turned = of([...lines].reverse().map(({ value, dof }) => ({ value: -value, dof })));
      of(lines).forEach((expected, i) => close(turned[i], expected));
    }));
  });
  test('one more component never makes uc smaller, and effective degrees of freedom are never below the least of their own', () => {
    fc.assert(fc.property(budget, line, (lines, more) => {
      expect(of([...lines, more])[0]).toBeGreaterThanOrEqual(of(lines)[0]);
      const least = Math.min(...lines.map(({ dof }) => dof ?? Infinity));
      const [, dof, k] = of(lines);
      if (dof !== 'infinite') expect(dof).toBeGreaterThan(least * (1 - 1e-12));
      expect(k).toBeGreaterThanOrEqual(2);
    }));
  });
});

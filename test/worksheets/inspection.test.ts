import { pageBreaks } from '../../src/hosts/pageBreaks';
import { builtInTemplates } from '../../src/worksheets/library';
import { planSheet, suggestedAnswers } from '../../src/worksheets/planner';
import type { Answers } from '../../src/worksheets/question';

const template = builtInTemplates().find(({ id }) => id === 'receiving-inspection')!;
const suggested = suggestedAnswers(template);
const planned = (answers: Answers) => planSheet(template, { ...suggested, ...answers });

describe('a receiving inspection', () => {
  test('in mV/V compares zero and shunt with the bridge, without a word', () => {
    const { plan, problems } = planned({});
    expect(problems).toEqual([]);
    const names = plan!.names!.map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining(['value_arm_1', 'value_zero_implied', 'verdict_zero_difference', 'verdict_shunt', 'plain_shunt']));
  });

  test('in another unit says what is left out, and keeps the arms', () => {
    const { plan, problems } = planned({ output_unit: 'V' });
    expect(problems.map(({ severity, question, message }) => `${severity} ${question}: ${message}`)).toEqual([
      'warn output_unit: Left out: zero of the arms, shunt check, evidence and re-zero calculator, which need readings in mV/V; found V.',
    ]);
    const names = plan!.names!.map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining(['value_arm_1', 'value_diagonal_input', 'value_zero_balance', 'plain_zero_balance']));
    expect(names.filter((name) => /shunt|implied|difference/.test(name))).toEqual([]);
    expect(plan!.cells.filter(({ formula = '' }) => /EVIDENCE|TRIM|SHUNT|BRIDGEOUTPUT/.test(formula))).toEqual([]);
  });

  test('limits of the template stand beside what they judge', () => {
    const { plan } = planned({});
    const limit = (name: string) => plan!.cells.find(({ at }) => at === plan!.names!.find((entry) => entry.name === `limit_${name}`)?.range)?.value;
    expect(['zero_difference', 'diagonal_input', 'diagonal_output', 'shunt'].map(limit)).toEqual([0.02, 0.001, 0.001, 0.005]);
  });

  test('prints on two pages, the second from the evidence on', () => {
    const { plan } = planned({});
    const heading = plan!.cells.find(({ value }) => value === 'What the numbers fit')!;
    expect(pageBreaks(plan!)).toEqual([Number(heading.at.slice(1)) - 1]);
  });
});

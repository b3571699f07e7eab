/** Answers checked together, and what every plan has. */
import fc from 'fast-check';
import { rangeOf } from '../../src/hosts/address';
import { builtInTemplates } from '../../src/worksheets/library';
import type { SheetPlan } from '../../src/worksheets/plan';
import { changedTemplate, planSheet, questions, suggestedAnswers } from '../../src/worksheets/planner';
import type { Answers } from '../../src/worksheets/question';
import { readTemplate, templateText } from '../../src/worksheets/template';

const templates = builtInTemplates();
const each = templates.map((template) => [template.id, template] as const);

function template(id: string) {
  return templates.find((candidate) => candidate.id === id)!;
}

function told(id: string, change: Answers): string[] {
  return planSheet(template(id), { ...suggestedAnswers(template(id)), ...change }).problems.map(({ severity, question, message }) => `${severity} ${question}: ${message}`);
}

function plan(id: string, change: Answers = {}): SheetPlan {
  return planSheet(template(id), { ...suggestedAnswers(template(id)), ...change }).plan!;
}

describe.each(each)('%s', (_, own) => {
  const answers = suggestedAnswers(own);

  test('the suggested answers make a sheet, and every question has one', () => {
    const asked = questions(own, answers).map(({ id }) => id);
    expect(Object.keys(answers).sort()).toEqual(expect.arrayContaining([...asked].sort()));
    expect(new Set(asked).size).toBe(asked.length);
    const { problems, plan: made } = planSheet(own, answers);
    expect(problems.filter(({ severity }) => severity === 'refuse')).toEqual([]);
    expect(made).toBeDefined();
  });

  test('names are told apart, are no cell addresses, and stand for cells of the sheet', () => {
    const made = planSheet(own, answers).plan!;
    const names = made.names!.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name).toMatch(/^[a-z][a-z_0-9]*$/);
    expect(names.filter((name) => /^([a-z]{1,3}\d+|r\d*c\d*)$/i.test(name))).toEqual([]);
    const filled = new Set(made.cells.map(({ at }) => at));
    for (const { range } of made.names!) expect(filled).toContain(range.split(':')[0]);
  });

  test('only cells to type in are inputs, everything is inside the printed page, and blocks do not overlap', () => {
    const made = planSheet(own, answers).plan!;
    const page = rangeOf(made.print!.area);
    for (const { at } of made.cells) {
      const { endRow, endColumn } = rangeOf(at);
      expect([endRow <= page.endRow, endColumn <= page.endColumn]).toEqual([true, true]);
    }
    const taken = new Set<string>();
    for (const merge of made.merges ?? []) {
      const { startRow, startColumn, endRow, endColumn } = rangeOf(merge);
      for (let row = startRow; row <= endRow; row += 1) for (let column = startColumn; column <= endColumn; column += 1) {
        expect(taken).not.toContain(`${row},${column}`);
        taken.add(`${row},${column}`);
      }
    }
    expect(made.locked).toBe(true);
  });

  test('each verdict stands beside a limit or a tolerance', () => {
    const names = planSheet(own, answers).plan!.names!.map(({ name }) => name);
    const limits = names.filter((name) => name.startsWith('limit_') || name.startsWith('tolerances_'));
    expect(limits.length).toBeGreaterThan(0);
    expect(names).toContain(own.kind === 'indication' ? 'verdict_overall_as_found' : 'verdict_overall');
  });

  test('the template with these answers as its own is a template, and suggests them', () => {
    const changed = readTemplate(templateText(changedTemplate(own, { ...answers, capacity: '12.5', sheet: 'x' })));
    expect(changed.item.capacity).toBe(12.5);
    expect({ ...suggestedAnswers(changed), capacity: '', sheet: '' }).toEqual({ ...answers, capacity: '', sheet: '' });
  });

  test('whatever is typed, the planner answers: a plan, or why not', () => {
    const typed = fc.oneof(fc.string(), fc.constantFrom('', '-1', '0', '1e999', '0,5', '0 50 100', '=1', '٣', 'NaN', '1e-30'));
    fc.assert(fc.property(fc.constantFrom(...Object.keys(answers)), typed, (question, text) => {
      const { problems, plan: made } = planSheet(own, { ...answers, [question]: text });
      const refused = problems.filter(({ severity }) => severity === 'refuse');
      expect(made === undefined).toBe(refused.length > 0);
      for (const { question: about, message } of problems) {
        expect(Object.keys(answers)).toContain(about);
        expect(message).toMatch(/^[A-Z\d].*\.$/s);
      }
    }), { numRuns: 200 });
  });
});

describe('answers are checked together', () => {
  test.each<[string, string, Answers, string]>([
    ['points beyond the standard are refused', 'five-point', { standard_capacity: '15' }, 'refuse standard_capacity: Found a standard verified up to 15 kN; the points go to 20 kN, beyond it.'],
    ['a decimal comma is refused with what is expected', 'two-point', { capacity: '2,5' }, 'refuse capacity: Found “2,5”; expected a number with a decimal point above 0.'],
    ['too high a degree for the loads is refused', 'ten-point-force', { degree: '5', points: '0 20 40 60 80 100 0' }, 'refuse degree: Found degree 5 for 5 different loads; expected at least 6 different loads and 7 readings under load.'],
    ['29 applications are warned of', 'ten-point-force', { runs: '2', positions: '' }, 'warn runs: 20 applications of load; ASTM E74 (from memory) asks for 30 or more.'],
    ['fewer positions than runs are refused', 'ten-point-force', { runs: '2' }, 'refuse positions: Found 3; expected one for each of the 2 runs, or none.'],
    ['a missing last zero is warned of', 'two-point', { points: '0 100' }, 'warn points: The run does not end with a zero, so there is no zero return.'],
    ['a mean zero without a last zero is refused', 'two-point', { points: '0 100', zero: 'average' }, 'refuse zero: Found no zero at the end'],
    ['points out of order are warned of', 'five-point', { points: '0 40 20 60 80 100 0' }, 'warn points: The point at place 3, 20 %, is out of order'],
    ['overload is warned of', 'two-point', { points: '0 120 0' }, 'warn points: The points go to 120 % of capacity: check the safe overload'],
    ['a sheet name that spreadsheets refuse is refused', 'two-point', { sheet: 'a/b' }, 'refuse sheet: Found “a/b”; expected a name without'],
    ['degree 3 with a coarse resolution is warned of', 'ten-point-force', { degree: '3', resolution: '0.0001' }, 'warn resolution: Degree 3 needs a resolution finer than 1/50 000'],
    ['a system read in another unit than applied is refused', 'system', { output_unit: 'mV/V' }, 'refuse output_unit: Found mV/V; expected kN'],
    ['falling forces of a force-proving instrument are refused', 'iso-376', { points: '10 20 30 20 10' }, 'refuse points: Found 20 % at place 4; expected forces that rise'],
    ['a zero among forces is refused where zeros are added', 'iso-376', { points: '0 10 20 30 40 50 60 70 80' }, 'refuse points: Found a zero; expected forces only'],
    ['fewer forces than the degree needs are refused', 'iso-376', { points: '10 40 70 100' }, 'refuse points: Found 4 forces; expected 5 or more for degree 3'],
    ['fewer than eight forces are warned of', 'iso-376', { points: '10 20 40 60 80 90 100' }, 'warn points: Found 7 forces; ISO 376 asks for 8 or more (from memory).'],
    ['a class wanted below the lowest force is refused', 'iso-376', { class_from: '5' }, 'refuse class_from: Found 5 %; expected 10 % or more'],
    ['a class wanted over less than half of the range is refused', 'iso-376', { class_from: '60' }, 'refuse class_from: Found 60 %; expected 50 % at most'],
    ['a lowest force below 2 % is warned of', 'iso-376', { points: '1 10 20 40 60 80 90 100' }, 'warn points: The lowest force is below 2 % of the greatest'],
    ['a resolution too coarse for the class is warned of', 'iso-376', { resolution: '0.001' }, 'warn resolution: At 10 % the output is about 200 resolutions; class 1 needs 1000.'],
    ['three positions for four series are refused', 'iso-376', { positions: '0°, 120°, 240°' }, 'refuse positions: Found 3; expected four, for X1, X2, X3 and X5, or none.'],
    ['a first position that is not kept is warned of', 'iso-376', { positions: '0°, 60°, 120°, 240°' }, 'warn positions: X1 stands at 0° and X2 at 60°'],
    ['forces beyond the standard are refused', 'iso-376', { standard_capacity: '90' }, 'refuse standard_capacity: Found a standard verified up to 90 kN; the forces go to 100 kN, beyond it.'],
    ['times that fall are refused', 'creep', { loaded_times: '0 5 4' }, 'refuse loaded_times: Found 4 at place 3; expected times that rise from 0.'],
    ['two different temperatures are refused', 'thermal', { temperatures: '23 50 23' }, 'refuse temperatures: Found 2 different temperatures; expected at least 3, so that what is off a line shows.'],
    ['a span load beyond the standard is refused', 'thermal', { standard_capacity: '10' }, 'refuse standard_capacity: Found a standard verified up to 10 kN; the load is 20 kN, beyond it.'],
    ['a short soak is warned of', 'thermal', { soak: '10' }, 'warn soak: The soak is shorter than 30 minutes'],
    ['a least interval beyond the greatest is refused', 'history', { least_interval: '30' }, 'refuse least_interval: Found 30 months; expected not more than the greatest interval, 24 months.'],
    ['an interval out of its bounds is warned of', 'history', { interval: '4' }, 'warn interval: The interval so far, 4 months, is not between the least and the greatest, 6 and 24 months.'],
    ['two rows for calibrations are refused', 'history', { rows: '2' }, 'refuse rows: Found “2”; expected a whole number of 3 or more, of 60 at most.'],
    ['hysteresis without loads on the way down is left out, and said so', 'five-point', { points: '0 50 100 0' }, 'warn points: Left out: hysteresis needs a load on the way down'],
  ])('%s', (_, id, change, expected) => {
    expect(told(id, change).join('\n')).toContain(expected);
  });
});

describe('formats and ranges follow the answers', () => {
  test('outputs show as many decimals as the resolution has', () => {
    const formats = (resolution: string) => new Set(plan('two-point', { resolution }).cells.filter(({ at }) => /^B2[0-9]$/.test(at)).flatMap(({ format }) => format ?? []));
    expect([...formats('0.001')]).toEqual(['0.000']);
    expect([...formats('0.00002')]).toEqual(['0.00000']);
    expect([...formats('1')]).toEqual(['0']);
  });

  test('compression is negative, and ranges have a row a point and a column a run', () => {
    const made = plan('five-point', { runs: '3', points: '0 50 100 0' });
    const size = (name: string) => {
      const { startRow, endRow, startColumn, endColumn } = rangeOf(made.names!.find((entry) => entry.name === name)!.range);
      return [endRow - startRow + 1, endColumn - startColumn + 1];
    };
    expect(size('forces_compression')).toEqual([4, 1]);
    expect(size('readings_compression')).toEqual([4, 3]);
    const { startRow } = rangeOf(made.names!.find(({ name }) => name === 'forces_compression')!.range);
    expect(made.cells.filter(({ at }) => new RegExp(`^A(${[1, 2, 3, 4].map((i) => startRow + i).join('|')})$`).test(at)).map(({ value }) => value)).toEqual([0, -10, -20, 0]);
  });
});

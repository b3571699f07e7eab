import { planComparison } from '../../../src/worksheets/comparison/comparison';
import type { ComparisonParts } from '../../../src/worksheets/comparison/comparison';
import type { Answers } from '../../../src/worksheets/question';
import { planSheet, suggestedAnswers } from '../../../src/worksheets/planner';
import type { ReadSheet } from '../../../src/worksheets/readSheet';
import { asRead, cellOf, firstItem, job, template } from '../job/jobSheets';

function run(id: string, sheet: string, answers: Answers = {}): ReadSheet {
  const of = template(id);
  const { plan, problems } = planSheet(of, { ...suggestedAnswers(of), ...answers, sheet });
  if (!plan) throw new Error(JSON.stringify(problems));
  return asRead(plan);
}

const NAMES = { found: 'Cell A as found', left: 'Cell A as left' };

function planned(parts: Partial<ComparisonParts> = {}) {
  return planComparison({ job: job(), item: firstItem(), found: run('five-point', NAMES.found), name: 'Cell A comparison', ...parts });
}

describe('a comparison is refused', () => {
  test.each<[string, Partial<ComparisonParts>, string, string]>([
    ['where the sheet as found holds no run', { found: run('history', 'History of A') }, 'found', 'Found no readings at forces on “History of A”'],
    ['where the sheet as left holds no run', { left: run('receiving-inspection', 'Inspection') }, 'left', 'Found no readings at forces on the sheet as left'],
    ['where a direction was not run as left', { found: run('five-point', NAMES.found, { directions: 'tension, compression' }), left: run('five-point', NAMES.left, { directions: 'tension' }) }, 'left', 'Found compression on “Cell A as found”, but not on “Cell A as left”'],
    ['where the runs are in other units', { left: run('five-point', NAMES.left, { unit: 'lbf' }) }, 'left', 'Found “Cell A as left” in lbf and mV/V, “Cell A as found” in kN and mV/V; expected the same units'],
    ['under the name of one of its runs', { name: 'cell a AS FOUND' }, 'name', 'which is the sheet “Cell A as found” itself'],
    ['under a name that no sheet can have', { name: 'A/B' }, 'name', 'Found “A/B”; expected a name of 1 to 31 characters'],
  ])('%s', (_, parts, question, words) => {
    const { plan, problems } = planned(parts);
    expect(plan).toBeUndefined();
    expect(problems.filter(({ severity }) => severity === 'refuse').map((problem) => [problem.question, problem.message])).toEqual([[question, expect.stringContaining(words)]]);
  });
});

describe('a comparison is planned with a warning', () => {
  test('where a point is on one of the runs only', () => {
    const found = run('five-point', NAMES.found, { directions: 'tension', points: '0 25 50 100 50 0', capacity: '20' });
    const left = run('five-point', NAMES.left, { directions: 'tension', points: '0 50 75 100 50 0', capacity: '20' });
    const { plan, problems } = planned({ found, left });
    expect(plan).toBeDefined();
    expect(problems.map(({ severity, message }) => [severity, message])).toEqual([
      ['warn', 'tension: found the point 5 on “Cell A as found” only; no shift is told there.'],
      ['warn', 'tension: found the point 15 on “Cell A as left” only; no shift is told there.'],
    ]);
  });

  test('where the earlier workbook has no results of the item, or in other units, which stay out', () => {
    const found = run('five-point', NAMES.found, { directions: 'tension' });
    expect(planned({ found, last: [] }).problems.map(({ question }) => question)).toEqual(['last']);
    const { plan, problems } = planned({ found, last: [{ where: 'Old', block: 'tension', output: 2, unit: 'lbf', outputUnit: 'mV/V' }] });
    expect(problems.map(({ message }) => message)).toEqual(['Found last time in lbf and mV/V; expected kN and mV/V. Its results are left out: type them converted.']);
    expect(plan!.cells.find(({ at }) => at === cellOf(plan!, 'last_output'))?.value).toBeUndefined();
  });
});

describe('the sheet of a comparison', () => {
  const { plan } = planned({ left: run('five-point', NAMES.left) });

  test('is locked, prints upright on pages that repeat its title, and takes values from the other sheets by reference', () => {
    expect([plan!.locked, plan!.print?.landscape, plan!.print?.repeatRows]).toEqual([true, false, [1, 1]]);
    const at = cellOf(plan!, 'found_tension');
    expect(plan!.cells.find((cell) => cell.at === at)?.formula).toMatch(/^=IF\('Cell A as found'!\$[A-Z]+\$\d+="","",'Cell A as found'!\$[A-Z]+\$\d+\)$/);
  });

  test('has every cell once, and every named cell among them', () => {
    const cells = plan!.cells.map(({ at }) => at);
    expect(new Set(cells).size).toBe(cells.length);
    const missing = plan!.names!.filter(({ range }) => !cells.includes(range.split(':')[0]));
    expect(missing).toEqual([]);
    expect(new Set(plan!.names!.map(({ name }) => name)).size).toBe(plan!.names!.length);
  });

  test('types in nothing but last time, the bounds of the hint, remarks and signatures', () => {
    const typed = plan!.cells.filter(({ role, formula }) => role === 'input' && formula !== undefined);
    expect(typed).toEqual([]);
    const named = plan!.names!.filter(({ range }) => plan!.cells.find(({ at }) => at === range.split(':')[0])?.role === 'input').map(({ name }) => name.replace(/_(tension|compression)$/, ''));
    expect([...new Set(named)].sort()).toEqual(['hint_span', 'hint_unsteady', 'hint_zero', 'last_capacity', 'last_coefficients', 'last_date', 'last_output', 'last_where', 'last_zero']);
  });

  test('stays within the length of a formula and of its texts', () => {
    const formulas = plan!.cells.flatMap(({ formula }) => (formula === undefined ? [] : [formula]));
    expect(Math.max(...formulas.map(({ length }) => length))).toBeLessThan(8192);
    const texts = formulas.flatMap((formula) => [...formula.matchAll(/"([^"]*)"/g)].map(([, text]) => text.length));
    expect(Math.max(...texts)).toBeLessThan(256);
  });
});

/** @jest-environment jsdom */
import { planGrid } from '../../../src/taskpane/build/planGrid';
import { planPreview } from '../../../src/taskpane/build/planPreview';
import { fivePointRun } from '../../../src/worksheets/fivePointRun';
import type { SheetPlan } from '../../../src/worksheets/plan';
import { fakePlanning, template } from '../fakes';

const plan = fakePlanning.planSheet(template('a', 'A'), { item: '', capacity: '20', unit: 'kN', directions: 'tension' }).plan!;
const rows = (preview: HTMLElement): (string | null)[][] => [...preview.querySelectorAll('tr')].map((row) => [...row.children].map((cell) => cell.textContent));

test('begins with the heading over the readings', () => {
  expect(rows(planPreview(plan))).toEqual([
    ['Readings'], ['Force', 'Run 1', 'Net'], ['0', 'to fill in', 'ƒformula'], ['20', 'to fill in', 'ƒformula'],
  ]);
});

test('gives each cell the class of its role, and merged cells their width', () => {
  const cells = [...planPreview(plan).querySelectorAll('td')];
  expect(cells[0].colSpan).toBe(3);
  expect(cells.map(({ className }) => className).slice(0, 7)).toEqual(['rp-heading', 'rp-header', 'rp-header', 'rp-header', 'rp-reference', 'rp-input', 'rp-result']);
});

test('says in words how much there is to fill in', () => {
  expect(planPreview(plan).querySelector('caption')!.textContent).toContain('2 cells to fill in, 2 formulas');
});

test('draws a bounded number of rows and counts the rest', () => {
  const grid = planGrid(fivePointRun(), 10);
  expect(grid.rows).toHaveLength(10);
  const last = Math.max(...fivePointRun().cells.map(({ at }) => Number(at.replace(/\D+/, ''))));
  expect(grid.rows[9].number + grid.more).toBe(last);
});

test('covers every cell of a real sheet once: each row is as wide as the sheet', () => {
  const grid = planGrid(fivePointRun(), 1000);
  for (const { cells } of grid.rows) expect(cells.reduce((sum, { columns }) => sum + columns, 0)).toBe(grid.columns.length);
});

test('a plan without a table is shown from its first row', () => {
  const bare: SheetPlan = { name: 'Bare', columns: [10], cells: [{ at: 'A2', role: 'text', value: '=1+1' }] };
  expect(rows(planPreview(bare))).toEqual([[''], ['=1+1']]);
});

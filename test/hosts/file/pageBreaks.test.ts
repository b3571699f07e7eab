import type { PlanCell, SheetPlan } from '../../../src/worksheets/plan';
import { partsOf } from './parts';

/** Three parts of 30 rows, each with its heading: two do not fit on an upright page. */
const cells = Array.from({ length: 90 }, (_, i): PlanCell => ({ at: `A${i + 1}`, role: i % 30 === 0 ? 'heading' : 'label', value: `row ${i + 1}` }));
const plan: SheetPlan = { name: 'Run 1', columns: [40], cells, print: { area: 'A1:A90', landscape: false } };

test('a part that would be cut begins a page: its break stands in the file, where the schema asks for it', async () => {
  const sheet = (await partsOf({ plan, values: () => null }))['xl/worksheets/sheet1.xml'];
  expect(sheet).toContain('</headerFooter><rowBreaks count="2" manualBreakCount="2"><brk id="30" max="16383" man="1"/><brk id="60" max="16383" man="1"/></rowBreaks>');
});

test('a sheet that fits on a page has no break', async () => {
  const short = { ...plan, cells: cells.slice(0, 35) };
  expect((await partsOf({ plan: { ...short, print: { area: 'A1:A35', landscape: false } }, values: () => null }))['xl/worksheets/sheet1.xml']).not.toContain('<rowBreaks');
});

/** LibreOffice as a judge, and what it is asked: each question has an answer that is wrong, which must be found. */
import { readWorkbook, type ReadSheet } from '../../src/hosts/file/readWorkbook';
import { writeWorkbook } from '../../src/hosts/file/writeWorkbook';
import type { CellValue } from '../../src/hosts/sheetHost';
import type { PlanCell, SheetPlan } from '../../src/worksheets/plan';
import { compareChecks, compareFormulas, type ComputedSheet } from './agreement';
import { converted, missing, timeFor } from './libreOffice';
import { type Page, pagesOf } from './pdfWords';
import { plainFormulas } from './plainFormulas';
import { printingFaults } from './printing';

/** Readings 5, 8, 9, 12 at 1 to 4: slope 2.2 and intercept 3 by hand; differences 4, 6, 6, 8. */
const cells: PlanCell[] = [
  ...[1, 2, 3, 4].flatMap((x, i): PlanCell[] => [{ at: `A${i + 1}`, role: 'input', value: x }, { at: `B${i + 1}`, role: 'input', value: 3 + 2 * x + (i % 2) }]),
  { at: 'D1', role: 'result', formula: '=LINEST(B1:B4,A1:A4)', spill: { rows: 1, columns: 2 } },
  { at: 'D2', role: 'result', formula: '=SUMSQ(readings-A1:A4)' },
  { at: 'D3', role: 'result', formula: '=T.INV.2T(0.05,10)' },
  { at: 'D4', role: 'result', formula: '=IF(A1>0,"","negative")' },
  { at: 'D5', role: 'label', value: '=A1' },
  { at: 'D6', role: 'result', formula: '=PROVE.SENSITIVITY(A1:A4,B1:B4)' },
  { at: 'D7', role: 'result', formula: '=A1/0' },
  { at: 'D8', role: 'result', formula: '=D1-2.2' },
  { at: 'D9', role: 'result', formula: '=A1>0' },
];
const plan: SheetPlan = {
  name: 'Run 1', columns: [10, 10, 10, 10, 10], cells,
  names: [{ name: 'readings', range: 'B1:B4' }, { name: 'value_slope', range: 'D6' }, { name: 'plain_slope', range: 'D1' }],
};
const VALUES: Readonly<Record<string, CellValue>> =
  { D1: 2.2, E1: 3, D2: 152, D3: 2.228138851986, D4: '', D6: 2.2, D7: { error: '#DIV/0!' }, D8: 4e-16, D9: true };

/** The computed sheet, some values and cells being others. */
function computedSheet(changed: Readonly<Record<string, CellValue>> = {}, more: Partial<SheetPlan> = {}): ComputedSheet {
  const own = { ...plan, ...more };
  const constants = new Map(own.cells.map(({ at, value }) => [at, value ?? null]));
  const values: Readonly<Record<string, CellValue>> = { ...VALUES, ...changed };
  return { plan: own, values: (at) => (at in values ? values[at] : constants.get(at) ?? null) };
}

const withOffice = missing ? describe.skip : describe;

withOffice(missing ? `NOT RUN: ${missing}` : 'LibreOffice', () => {
  let sheet: ReadSheet;
  beforeAll(async () => {
    const file = await writeWorkbook([{ plan: plainFormulas(plan, computedSheet().values), values: () => -1 }]);
    [sheet] = readWorkbook(converted(new Map([['a.xlsx', file]]), 'xlsx').get('a.xlsx') as Uint8Array);
  }, timeFor(1));
  const valueAt = (at: string) => sheet.cells.find((cell) => cell.at === at)?.value ?? null;

  test('computes anew what is stored wrongly, and reads names, arrays and text as meant', () => {
    expect(valueAt('D1')).toBeCloseTo(2.2, 12);
    expect(valueAt('E1')).toBeCloseTo(3, 12);
    expect(valueAt('D2')).toBe(152);
    // From a printed table.
    expect(valueAt('D3')).toBeCloseTo(2.228, 3);
    expect(valueAt('D4') ?? '').toBe('');
    expect(valueAt('D5')).toBe('=A1');
    expect(valueAt('D6')).toBe(2.2);
    expect(sheet.names.find(({ name }) => name === 'readings')).toEqual({ name: 'readings', range: 'B1:B4' });
  });

  test('every plain formula is compared, and every other value than the engine’s is found', () => {
    expect(compareFormulas(computedSheet(), sheet.cells)).toEqual({ compared: 7, faults: [] });
    const wrong: readonly [string, CellValue][] = [['D1', 2.2 * (1 + 3e-9)], ['D2', '152'], ['D4', 'negative'], ['D7', { error: '#N/A' }], ['D8', 1e-8], ['D9', false]];
    for (const [at, value] of wrong) {
      const { faults } = compareFormulas(computedSheet({ [at]: value }), sheet.cells);
      expect(faults.map((fault) => fault.split(' ')[1])).toEqual([`1!${at}`]);
    }
  });

  test('a result of the add-in that the plain formula does not confirm is found', () => {
    expect(compareChecks(computedSheet(), sheet.cells)).toEqual({ compared: 1, faults: [] });
    expect(compareChecks(computedSheet({ D6: 2.2 * (1 + 3e-9) }), sheet.cells).faults[0]).toMatch(/^Run 1, slope: LibreOffice found 2\.2/);
    const names = [{ name: 'plain_slope', range: 'D6' }, { name: 'value_slope', range: 'D6' }, { name: 'plain_zero', range: 'D2' }];
    expect(compareChecks(computedSheet({}, { names }), sheet.cells).faults).toEqual([
      'Run 1!D6: found =PROVE.SENSITIVITY(A1:A4,B1:B4); expected a plain formula for plain_slope', 'Run 1: found plain_zero without value_zero',
    ]);
  });

  test('with its settings as they come, it shows the stored value of a plain formula', async () => {
    const file = await writeWorkbook([{ plan: { name: 'Run 1', columns: [10], cells: [{ at: 'A1', role: 'result', formula: '=1+1' }] }, values: () => 7 }]);
    const saved = converted(new Map([['a.xlsx', file]]), 'xlsx', 'never').get('a.xlsx') as Uint8Array;
    expect(readWorkbook(saved)[0].cells[0]).toMatchObject({ formula: '=1+1', value: 7 });
  }, timeFor(1));
});

/** A page of printed rows, as wide as planned. */
const long = 'Long words that need the width of two columns';
const pagePlan: SheetPlan = {
  name: 'Page', columns: [12, 12, 12],
  cells: [
    { at: 'A1', role: 'title', value: 'A title over all' },
    { at: 'A2', role: 'text', value: 'Wrapped text that takes some lines in its merged cells, all of which must be seen.' },
    { at: 'A3', role: 'label', value: long },
    { at: 'A4', role: 'result', value: 123456.789, format: '0.000' },
    { at: 'C4', role: 'result', formula: '=IF(A4>1,"pass","fail")' },
    { at: 'A70', role: 'label', value: 'On the second page' },
  ],
  merges: ['A1:C1', 'A2:B2'],
  charts: [{ title: 'Plot', over: 'A5:C15', x: 'x', y: 'y', series: [{ name: 's', x: 'A4:A5', y: 'A4:A5', drawn: 'points' }] }],
  print: { area: 'A1:C75', landscape: false },
};

withOffice(missing ? `NOT RUN: ${missing}` : 'printed pages', () => {
  const variants = new Map<string, SheetPlan>([
    ['whole.xlsx', pagePlan],
    ['narrow.xlsx', { ...pagePlan, columns: [7, 12, 12], cells: pagePlan.cells.filter(({ at }) => at !== 'A3') }],
    ['hidden.xlsx', { ...pagePlan, cells: [...pagePlan.cells, { at: 'B3', role: 'result', value: 1 }] }],
    ['split.xlsx', { ...pagePlan, charts: pagePlan.charts?.map((chart) => ({ ...chart, over: 'A40:C69' })) }],
  ]);
  const pages = new Map<string, readonly Page[]>();
  beforeAll(async () => {
    const files = new Map<string, Uint8Array>();
    for (const [name, variant] of variants) files.set(name, await writeWorkbook([{ plan: variant, values: () => 'pass' }]));
    for (const [name, pdf] of converted(files, 'pdf')) pages.set(name, pagesOf(pdf));
  }, timeFor(variants.size));

  const faults = (name: string, asPlanned = variants.get(name) as SheetPlan, printed = pages.get(name) as readonly Page[]) =>
    printingFaults([computedSheet({ C4: 'pass' }, asPlanned)], printed);
  const whole = () => pages.get('whole.xlsx') as readonly Page[];

  test('a sheet that shows everything has no fault', () => {
    expect(faults('whole.xlsx')).toEqual([]);
  });

  test('a number in too narrow a column is found', () => {
    expect(faults('narrow.xlsx')).toContain('Page, page 1: found ###');
  });

  test('text cut by the cell beside it is found', () => {
    expect(faults('hidden.xlsx')).toEqual([`Page!A3, page 1: found “Longwordsthat” whole in its place; expected "${long}"`]);
  });

  test('a plot on two pages is found', () => {
    expect(faults('split.xlsx')[0]).toBe('Page!A40:C69: found the plot “Plot” on two pages; expected it on one');
  });

  test('pages beside each other, and other words than planned, are found', () => {
    expect(faults('whole.xlsx', pagePlan, whole().flatMap((page) => [page, page]))).toEqual(['Page: found 4 pages; expected 2, each one sheet wide']);
    const planned = (at: string, value: string) => ({ ...pagePlan, cells: pagePlan.cells.map((cell) => (cell.at === at ? { ...cell, value } : cell)) });
    expect(faults('whole.xlsx', planned('A70', 'On another page'))).toHaveLength(1);
    expect(faults('whole.xlsx', planned('A3', `${long} and more`))).toHaveLength(1);
  });

  test('text whose row is too low is found', () => {
    const low = whole().map((page) => ({ ...page, words: page.words.map((word) => (word.text === 'seen.' ? { ...word, top: word.top + 12, bottom: word.bottom + 12 } : word)) }));
    expect(faults('whole.xlsx', pagePlan, low)[0]).toMatch(/^Page!A2, page 1: found “Wrappedtext.*mustbe” whole in its place/);
  });
});

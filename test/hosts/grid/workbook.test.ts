import { workbookData } from '../../../src/hosts/grid/workbook';
import type { SheetPlan } from '../../../src/worksheets/plan';
import { firstWorkbook } from '../../../src/worksheets/firstWorkbook';

const PLAN: SheetPlan = {
  name: 'Sheet',
  columns: [10, 10, 10],
  merges: ['A1:C1'],
  frozenRows: 1,
  cells: [
    { at: 'A1', role: 'text', value: 'This sentence is much too long for the three columns it stands in.' },
    { at: 'A3', role: 'header', value: 'Force' },
    { at: 'B3', role: 'header', value: 'Remark' },
    { at: 'A4', role: 'header', value: 'kN' },
    { at: 'A5', role: 'input', value: 12.5, format: '0.00' },
    { at: 'B4', role: 'label', value: '=not a formula' },
    { at: 'C5', role: 'result', formula: '=A5*2' },
    { at: 'C6', role: 'result' },
  ],
};

const data = workbookData([PLAN], 'id');
const sheet = data.sheets['sheet-1'];
const styleAt = (row: number, column: number) => data.styles[String(sheet.cellData?.[row][column].s)];

test('constants and formulas stand where the plan puts them, and text that starts with "=" stays text', () => {
  expect(sheet.cellData?.[4][0]).toMatchObject({ v: 12.5, t: 2 });
  expect(sheet.cellData?.[4][2]).toMatchObject({ f: '=A5*2' });
  expect(sheet.cellData?.[3][1]).toMatchObject({ v: '=not a formula', t: 1 });
  expect(sheet.cellData?.[3][1].f).toBeUndefined();
  expect(sheet.cellData?.[5][2].v).toBeUndefined();
});

test('number formats, merges and frozen rows are the plan’s', () => {
  expect(styleAt(4, 0)?.n?.pattern).toBe('0.00');
  expect(sheet.mergeData).toEqual([{ startRow: 0, startColumn: 0, endRow: 0, endColumn: 2 }]);
  expect(sheet.freeze).toMatchObject({ ySplit: 1, startRow: 1 });
});

test('a row is as high as its wrapped text needs', () => {
  expect(sheet.rowData?.[0].h).toBeGreaterThan(30);
  expect(sheet.rowData?.[4].h).toBeLessThan(30);
});

test('a head stands right over numbers and left over words, through a second line of the head', () => {
  expect([styleAt(2, 0)?.ht, styleAt(3, 0)?.ht, styleAt(2, 1)?.ht]).toEqual([3, 3, 1]);
});

test('only inputs have the wash that invites typing', () => {
  const washes = new Map(firstWorkbook().flatMap(({ cells }) => cells).map((cell) => {
    const { styles, sheets } = workbookData([{ name: 'x', columns: [10], cells: [{ ...cell, at: 'A1' }] }], 'x');
    return [cell.role, styles[String(sheets['sheet-1'].cellData?.[0][0].s)]?.bg?.rgb] as const;
  }));
  const wash = washes.get('input');
  expect(wash).toBe('#fff6d6');
  expect([...washes].filter(([role, color]) => role !== 'input' && color === wash)).toEqual([]);
});

/** What is written is read back: every cell's value, formula, spill and format, merged blocks and names. */
import type { CellValue } from '../../../src/hosts/sheetHost';
import { addressOf, placeOf } from '../../../src/hosts/address';
import { readWorkbook, type ReadCell } from '../../../src/hosts/file/readWorkbook';
import { type FileSheet, writeWorkbook } from '../../../src/hosts/file/writeWorkbook';
import { firstWorkbook } from '../../../src/worksheets/firstWorkbook';
import { sample } from './samplePlan';

/** What a reader must find, worked out from the plan alone. */
function expectedCells({ plan, values }: FileSheet): ReadCell[] {
  const formats = new Map(plan.cells.map(({ at, format }) => [at, format]));
  const withFormat = (at: string, rest: Omit<ReadCell, 'at'>, fallback?: string): ReadCell => {
    const format = formats.has(at) ? formats.get(at) : fallback;
    return { at, ...rest, ...(format === undefined ? {} : { format }) };
  };
  const cells: ReadCell[] = [];
  for (const { at, value, formula, spill, format } of plan.cells) {
    if (formula === undefined) {
      if (value !== undefined) cells.push(withFormat(at, { value }));
      continue;
    }
    cells.push(withFormat(at, { value: values(at) ?? 0, formula, ...(spill && spill.rows * spill.columns > 1 ? { spill } : {}) }));
    const { row, column } = placeOf(at);
    for (let i = 1; i < (spill?.rows ?? 1) * (spill?.columns ?? 1); i += 1) {
      const columns = spill?.columns ?? 1;
      const into = addressOf({ row: row + Math.floor(i / columns), column: column + (i % columns) });
      const spilled = values(into);
      if (spilled !== null) cells.push(withFormat(into, { value: spilled }, format));
    }
  }
  return byAddress(cells);
}

function byAddress(cells: readonly ReadCell[]): ReadCell[] {
  return [...cells].sort((a, b) => a.at.localeCompare(b.at));
}

/** A value of its own for each cell, of every kind. */
function invented(at: string): CellValue {
  const { row, column } = placeOf(at);
  const kind = (row * 7 + column) % 9;
  if (kind === 0) return `text <${at}>`;
  if (kind === 1) return row % 2 === 0;
  if (kind === 2) return { error: '#N/A' };
  return (row + 1) / 3 - column * 1e-7;
}

test.each([
  ['the sample', [sample]],
  ['the first workbook', firstWorkbook().map((plan): FileSheet => ({ plan, values: invented }))],
])('%s: cells, merged blocks and names come back as planned', async (_, sheets) => {
  const read = readWorkbook(await writeWorkbook(sheets));
  expect(read.map(({ name }) => name)).toEqual(sheets.map(({ plan }) => plan.name));
  for (const [i, sheet] of sheets.entries()) {
    expect(byAddress(read[i].cells)).toEqual(expectedCells(sheet));
    expect([...read[i].merges].sort()).toEqual([...(sheet.plan.merges ?? [])].sort());
    expect([...read[i].names].sort((a, b) => a.name.localeCompare(b.name)))
      .toEqual([...(sheet.plan.names ?? [])].sort((a, b) => a.name.localeCompare(b.name)));
  }
});

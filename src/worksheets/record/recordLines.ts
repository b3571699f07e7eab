import { columnNumber } from '../planBuilder';
import type { ReadCell, ReadSheet, ReadValue } from '../readSheet';
import { addressesOf, areaOf } from '../area';
import { arrayText, contentOf, resultOf } from './content';
import { partsOf } from './parts';
import type { RecordLine } from './record';
import { spillsOf } from './spills';

/** Letters that a cell can hold, with room to spare: a longer array is recorded cell by cell. */
const LONGEST = 32_000;

/** Sheets that say something about the record, and so are no part of it: Record and Review. */
export function isRecorded({ names }: ReadSheet): boolean {
  return !names.some(({ name }) => /^(record_everything|review_outcome)$/i.test(name));
}

/**
 * What the cells of a workbook hold, a line a cell, sheet by sheet in their order, then row by row from left to right. Blank
 * cells have none, and neither have those that a formula spills into: what it gave there stands with the formula, as an array.
 * Nor has the cell of a job that says it is reviewed: a review comes after the signature.
 */
export function recordLines(sheets: readonly ReadSheet[]): RecordLine[] {
  return sheets.filter(isRecorded).flatMap(linesOf);
}

function linesOf(sheet: ReadSheet): RecordLine[] {
  const partOf = partsOf(sheet);
  const values = new Map(sheet.cells.map(({ at, value }) => [at, value]));
  const arrays = new Map([...spillsOf(sheet)].flatMap(([at, area]): [string, { readonly text: string; readonly over: readonly string[] }][] => {
    const rows = addressesOf(area);
    const text = arrayText(rows.map((row) => row.map((one): ReadValue => values.get(one) ?? null)));
    return text.length > LONGEST ? [] : [[at, { text, over: rows.flat().slice(1) }]];
  }));
  const spilled = [...arrays.values()].flatMap(({ over }) => over);
  const reviewed = sheet.names.filter(({ name }) => /^way_reviewed$/i.test(name)).flatMap(({ range }) => areaOf(range) ?? []).flatMap((area) => addressesOf(area).flat());
  const without = new Set([...spilled, ...reviewed]);
  return inOrder(sheet.cells).filter((cell) => cell.formula !== undefined || !(without.has(cell.at) || isBlank(cell.value))).map((cell): RecordLine => {
    const { at, value, formula } = cell;
    if (formula === undefined) return { sheet: sheet.name, at, part: partOf(cell), content: contentOf(value), value: '' };
    return { sheet: sheet.name, at, part: 'formula', content: formula, value: arrays.get(at)?.text ?? resultOf(value) };
  });
}

function isBlank(value: ReadValue): boolean {
  return value === null || value === '';
}

/** Row by row, from left to right, whatever order they were read in. */
function inOrder(cells: readonly ReadCell[]): readonly ReadCell[] {
  const placed = cells.map((cell) => {
    const [, letters, digits] = /^([A-Z]+)(\d+)$/.exec(cell.at) ?? [cell.at, 'A', '0'];
    return { cell, row: Number(digits), column: columnNumber(letters) };
  });
  return placed.sort((a, b) => a.row - b.row || a.column - b.column).map(({ cell }) => cell);
}

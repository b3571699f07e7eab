import Papa from 'papaparse';
import type { Cell } from '../../functions/cells';

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/**
 * The cells of comma-separated text, row by row. A plain decimal number, with an exponent or without, is a number, an empty
 * field a blank, and everything else text. Rows keep their place: an empty line is an empty row.
 * @throws {Error} naming the row, if quotes do not pair.
 */
export function readCsv(text: string): Cell[][] {
  const { data, errors } = Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), { delimiter: ',' });
  const [problem] = errors;
  if (problem) throw new Error(`row ${(problem.row ?? 0) + 1}: ${problem.message}`);
  return data.map((row) => row.map(cellOf));
}

function cellOf(field: string): Cell {
  const text = field.trim();
  if (text === '') return null;
  const value = NUMBER.test(text) ? Number(text) : Number.NaN;
  return Number.isFinite(value) ? value : field;
}

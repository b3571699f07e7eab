import type { SheetPlan } from '../plan';
import { address, PlanBuilder } from '../planBuilder';
import type { ReadSheet } from '../readSheet';
import { fingerprints } from './fingerprint';
import { fieldsOf } from './line';
import type { RecordLine } from './record';
import { recordLines } from './recordLines';

/** What a person says when signing. */
export interface Signature {
  readonly by: string;
  /** Date, as a spreadsheet counts days. */
  readonly on: number;
  /** Why it is signed, if anything is said. */
  readonly reason?: string;
  /** Version of the program. */
  readonly version: string;
}

/** The columns of the ledger, in the order of the fields of a line. */
export const LEDGER = ['sheet', 'cell', 'part', 'content', 'value'] as const;
const HEADS = ['Sheet', 'Cell', 'Part', 'Content', 'Gave'];
const WIDTHS = [24, 8, 10, 74, 44];
const LAST = WIDTHS.length;
const VALUE = 2;
/** A name covers no more cells than a filled-in sheet takes for one. */
export const CELLS_A_NAME = 20_000;

const PARTS = 'reading: a constant typed as read, or what it was read at. limit: a constant that results are judged by. entry: any other constant. formula: a formula, and what it gave, numbers to 15 digits; what it spills over stands with it, rows parted by semicolons.';
const HOW = 'To recompute: take the rows of the ledger, its five columns with a tab between them and a line feed after each row, the last one included; the SHA-256 (FIPS 180-4) of that text in UTF-8 is the fingerprint of everything. Of the readings: only the rows whose part is reading; of the results: only those whose part is formula; of one sheet’s readings: those of the sheet. Numbers and text stand as they are counted; \\t, \\n, \\r and \\\\ within a cell are so written.';

/**
 * The sheet "Record": who signed, when, with which version; the fingerprints of what the workbook holds then, and how to recompute
 * them; and a ledger with every cell of every sheet but Record and Review.
 */
export function planRecord(sheets: readonly ReadSheet[], { by, on, reason, version }: Signature): SheetPlan {
  const lines = recordLines(sheets);
  const { readings, results, everything } = fingerprints(lines);
  const plan = new PlanBuilder('Record', WIDTHS);
  plan.wide(1, 1, LAST, 'title', 'Record');
  plan.wide(1, 2, LAST, 'subtitle', 'What the workbook held when it was signed, cell by cell, and the fingerprints that show whether anything differs since.');
  plan.wide(1, 3, LAST, 'heading', 'Signature');
  const head: readonly (readonly [label: string, name: string, value: string | number, format?: string])[] = [
    ['Signed by', 'record_by', by], ['Date', 'record_on', on, 'yyyy-mm-dd'], ['For', 'record_reason', reason ?? ''], ['Version of the program', 'record_version', version],
    ['SHA-256 of the readings', 'record_readings', readings], ['SHA-256 of the results', 'record_results', results], ['SHA-256 of everything', 'record_everything', everything],
  ];
  head.forEach(([label, name, value, format], i) => {
    // A date stands right in its cell: in a narrow one, it stands by its label.
    const columns = typeof value === 'number' ? 2 : LAST - VALUE + 1;
    plan.put(1, 4 + i, 'label', label).wide(VALUE, 4 + i, columns, 'reference', value === '' ? undefined : value, format).called(name, address(VALUE, 4 + i));
  });
  let row = 4 + head.length;
  plan.wide(1, row, LAST, 'note', HOW);
  row = readingsOfSheets(plan, row + 2, lines);
  plan.wide(1, row, LAST, 'heading', `Ledger of ${lines.length} cells`);
  plan.wide(1, row + 1, LAST, 'note', PARTS);
  plan.across(1, row + 2, 'header', HEADS);
  const first = row + 3;
  lines.forEach((line, i) => fieldsOf(line).forEach((field, j) => {
    // A blank is called a label, so that the head above stands over words.
    plan.put(j + 1, first + i, field === '' ? 'label' : 'text', field === '' ? undefined : field);
  }));
  nameLedger(plan, first, lines.length);
  const area = `A1:${address(LAST, Math.max(first, first + lines.length - 1))}`;
  return plan.plan(1, { locked: true, print: { area, landscape: true, repeatRows: [first - 1, first - 1] } });
}

/** The fingerprint of each sheet that has readings, as a certificate states it; gives the next free row. */
function readingsOfSheets(plan: PlanBuilder, row: number, lines: readonly RecordLine[]): number {
  const readings = lines.filter(({ part }) => part === 'reading');
  const names = [...new Set(readings.map(({ sheet }) => sheet))];
  if (names.length === 0) return row;
  plan.wide(1, row, LAST, 'heading', 'Readings of each sheet');
  plan.put(1, row + 1, 'header', 'Sheet').wide(VALUE, row + 1, LAST - VALUE + 1, 'header', 'SHA-256 of its readings');
  names.forEach((name, i) => {
    const own = fingerprints(readings.filter(({ sheet }) => sheet === name)).readings;
    plan.put(1, row + 2 + i, 'label', name).wide(VALUE, row + 2 + i, LAST - VALUE + 1, 'reference', own);
  });
  return row + 2 + names.length + 1;
}

/** A name for each column, and more of them (record_content_2 …) where one would cover too many cells. */
function nameLedger(plan: PlanBuilder, first: number, count: number): void {
  LEDGER.forEach((field, i) => {
    for (let from = 0; from < count; from += CELLS_A_NAME) {
      const to = Math.min(from + CELLS_A_NAME, count) - 1;
      plan.called(`record_${field}${from === 0 ? '' : `_${from / CELLS_A_NAME + 1}`}`, `${address(i + 1, first + from)}:${address(i + 1, first + to)}`);
    }
  });
}

import type { SheetPlan, Validation } from '../plan';
import { address, formula, PlanBuilder } from '../planBuilder';
import type { JobAnswers } from './jobForm';
import { CUSTOMER_LINES, ITEM_LINES, type JobLine, REMARKS_LINE, REQUIREMENT_LINES, STANDARD_LINES, WAY_LINES } from './jobLines';
import { allUnits, JOB_SHEET, MOST_ITEMS, MOST_STANDARDS } from './jobTerms';

const WIDTHS = [14, 16, 16, 16, 16, 16, 16, 18];
const WIDTH = WIDTHS.length;
const FIRST_ITEM = 3;
/** Columns of what is said once: labels and values, left and right. */
const LEFT = { label: 1, value: 2, last: 4 } as const;
const RIGHT = { label: 5, value: 7, last: WIDTH } as const;
const WAY_ROOM = 2;
const TYPED_ROOM = 2;

const EXPECTATION = { number: 'a number', whole: 'a whole number', date: 'a date, like 2026-11-25' };

type Value = string | number | undefined;

/** The sheet of a job: what is asked, the items, their way, and the standards. */
export function jobSheet(job: JobAnswers): SheetPlan {
  const sheet = new PlanBuilder(JOB_SHEET, WIDTHS);
  sheet.wide(1, 1, WIDTH, 'title', 'Job');
  sheet.wide(1, 2, WIDTH, 'subtitle', 'What is asked, of which items, by which standards, and how far the work has come.');
  sheet.wide(1, 3, WIDTH, 'note', 'What is typed here is said once: the other sheets of the workbook read it. Yellow cells are to type in.');
  let row = saidOnce(sheet, 4, job);
  const items = itemTable(sheet, row, job);
  row = wayTable(sheet, items.nextRow, items.names);
  const standards = standardTable(sheet, row, job);
  sheet.highlight({ range: items.standards, formula: `=AND(${items.standards.split(':')[0]}<>"",COUNTIF(${standards.ids},${items.standards.split(':')[0]})=0)`, look: 'doubt' });
  return close(sheet, standards.nextRow);
}

function saidOnce(sheet: PlanBuilder, row: number, job: JobAnswers): number {
  sheet.wide(1, row, WIDTH, 'heading', 'Customer and requirement');
  const values: Readonly<Record<string, Value>> = {
    number: job.number, laboratory: job.laboratory || undefined, customer: job.customer || undefined, procedure: job.procedure.title, tolerance: job.tolerance,
    class: job.class, decision_rule: job.decisionRule, least_interval: job.leastInterval, greatest_interval: job.greatestInterval,
  };
  for (const [lines, columns] of [[CUSTOMER_LINES, LEFT], [REQUIREMENT_LINES, RIGHT]] as const) {
    lines.forEach((line, i) => {
      const at = row + 1 + i;
      sheet.put(columns.label, at, columns === LEFT ? 'label' : 'aside', line.label);
      sheet.wide(columns.value, at, columns.last - columns.value + 1, 'input', values[line.field], line.format);
      sheet.called(`job_${line.field}`, address(columns.value, at));
      ruled(sheet, line, address(columns.value, at));
    });
  }
  return row + 1 + Math.max(CUSTOMER_LINES.length, REQUIREMENT_LINES.length);
}

/** Where the items stand. */
interface ItemTable {
  readonly nextRow: number;
  /** Address of each item's name. */
  readonly names: readonly string[];
  /** Range of the standards' ids. */
  readonly standards: string;
}

function itemTable(sheet: PlanBuilder, row: number, job: JobAnswers): ItemTable {
  sheet.wide(1, row, WIDTH, 'heading', 'Items');
  const columns = Array.from({ length: MOST_ITEMS }, (_, i) => FIRST_ITEM + i);
  const same: Readonly<Record<string, Value>> = {
    capacity: job.capacity, unit: job.unit, output_unit: job.outputUnit, resolution: job.resolution, rated_output: job.ratedOutput, standard: job.standard || undefined,
  };
  const rowOf = (field: string) => row + 1 + ITEM_LINES.findIndex((line) => line.field === field);
  const range = (at: number) => `${address(FIRST_ITEM, at)}:${address(FIRST_ITEM + MOST_ITEMS - 1, at)}`;
  for (const line of ITEM_LINES) {
    const at = rowOf(line.field);
    sheet.put(1, at, 'label', line.label);
    columns.forEach((column, i) => {
      const name = job.items[i];
      sheet.put(column, at, 'input', name === undefined ? undefined : line.field === 'name' ? name : same[line.field], line.format);
    });
    if (line.field === 'identification' || line.field === 'condition') sheet.roomy(at, TYPED_ROOM);
    sheet.called(`item_${line.field}`, range(at));
    ruled(sheet, line.field === 'unit' ? { ...line, rule: { kind: 'list', words: allUnits() } } : line, range(at));
  }
  return { nextRow: row + 1 + ITEM_LINES.length, names: columns.map((column) => address(column, rowOf('name'))), standards: range(rowOf('standard')) };
}

function wayTable(sheet: PlanBuilder, row: number, names: readonly string[]): number {
  sheet.wide(1, row, WIDTH, 'heading', 'The way of each item');
  sheet.wide(1, row + 1, WIDTH, 'note', 'At each step the name of the sheet that belongs to it, or words on what was done, or “skipped:” and why. “no adjustment made” makes as found final.');
  sheet.across(1, row + 2, 'header', ['Step', undefined, ...names.map((name) => formula(`IF(${name}="","",${name})`))]);
  const first = row + 3;
  WAY_LINES.forEach(({ step, label }, i) => {
    const at = first + i;
    sheet.put(1, at, 'label', label).across(FIRST_ITEM, at, 'input', names.map(() => undefined)).roomy(at, WAY_ROOM);
    sheet.called(`way_${step}`, `${address(FIRST_ITEM, at)}:${address(WIDTH, at)}`);
  });
  const range = `${address(FIRST_ITEM, first)}:${address(WIDTH, first + WAY_LINES.length - 1)}`;
  sheet.highlight({ range, formula: `=LEFT(${address(FIRST_ITEM, first)},7)="skipped"`, look: 'doubt' });
  return first + WAY_LINES.length;
}

function standardTable(sheet: PlanBuilder, row: number, job: JobAnswers): { readonly nextRow: number; readonly ids: string } {
  sheet.wide(1, row, WIDTH, 'heading', 'Standards');
  sheet.across(1, row + 1, 'header', STANDARD_LINES.map(({ label }) => label));
  const has = job.standard !== '' || [job.verifiedFrom, job.verifiedTo, job.uncertainty, job.due].some((value) => value !== undefined);
  const told: Readonly<Record<string, Value>> = {
    id: job.standard || undefined, verified_from: job.verifiedFrom, verified_to: job.verifiedTo, unit: has ? job.unit : undefined, uncertainty: job.uncertainty, due: job.due,
  };
  const first = row + 2;
  const last = first + MOST_STANDARDS - 1;
  const fill = (line: JobLine<string>) => {
    const column = 1 + STANDARD_LINES.findIndex(({ field }) => field === line.field);
    const range = `${address(column, first)}:${address(column, last)}`;
    for (let at = first; at <= last; at += 1) sheet.put(column, at, 'input', at === first ? told[line.field] : undefined, line.format);
    sheet.called(`standards_${line.field}`, range);
    ruled(sheet, line.field === 'unit' ? { ...line, rule: { kind: 'list', words: allUnits() } } : line, range);
  };
  // Words first, so that they alone get room to wrap.
  STANDARD_LINES.filter(({ kind }) => kind === 'words').forEach(fill);
  for (let at = first; at <= last; at += 1) sheet.roomy(at, TYPED_ROOM);
  STANDARD_LINES.filter(({ kind }) => kind !== 'words').forEach(fill);
  return { nextRow: last + 2, ids: `$A$${first}:$A$${last}` };
}

function close(sheet: PlanBuilder, row: number): SheetPlan {
  sheet.wide(1, row, WIDTH, 'caution', CAUTION);
  const remarks = row + 1;
  sheet.put(1, remarks, 'label', REMARKS_LINE.label).wide(2, remarks, WIDTH - 1, 'input').roomy(remarks, TYPED_ROOM).called(`job_${REMARKS_LINE.field}`, address(2, remarks));
  return sheet.plan(1, { locked: true, print: { area: `A1:${address(WIDTH, remarks)}`, landscape: false, repeatRows: [1, 1] } });
}

function ruled(sheet: PlanBuilder, { label, rule }: JobLine<string>, range: string): void {
  if (!rule) return;
  sheet.validate({ range, rule, message: `${label}: expected ${expectation(rule)}.` });
}

function expectation(rule: Validation['rule']): string {
  if (rule.kind === 'list') return rule.words.length > 8 ? 'one of the list' : rule.words.join(', ');
  if (rule.kind !== 'number' || rule.least === undefined) return EXPECTATION[rule.kind];
  return `a number of ${rule.least} or more${rule.greatest === undefined ? '' : `, ${rule.greatest} at most`}`;
}

const CAUTION =
  'Local rules, the current edition of the standard and the laboratory’s own accredited procedure prevail over this sheet.';

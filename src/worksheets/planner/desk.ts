import { PlanBuilder } from '../planBuilder';
import type { ItemAnswers } from './itemForm';

/** Number formats of a sheet. */
export interface Formats {
  /** Outputs: as many decimals as the resolution bears. */
  readonly output: string;
  /** Applied values: as many decimals as the points need. */
  readonly applied: string;
}

/** What the parts of a sheet are laid out with. */
export interface Desk {
  readonly sheet: PlanBuilder;
  /** Columns of the printed page. */
  readonly width: number;
  readonly item: ItemAnswers;
  readonly formats: Formats;
}

export const PERCENT = '0.000%';
/** Coefficients: eight digits after the first, whatever their size. */
export const SCIENTIFIC = '0.00000000E+00';

/** Columns of the table of results, from 1: its label runs over the first three. */
export const RESULT = { label: 1, value: 4, unit: 5, limit: 6, verdict: 7, function: 8 } as const;
const LEAST_WIDTH = 10;
/** Columns where coefficients stand: results, and beside them in the check what the add-in gave. */
const VALUES: readonly number[] = [RESULT.value - 1, RESULT.value];
const VALUE_WIDTH = 15;
const OTHER_WIDTH = 11;
/** Wider pages are laid across. */
export const UPRIGHT_WIDTH = 11;

export function newDesk(item: ItemAnswers, columns: number, applied: readonly number[]): Desk {
  const width = Math.max(LEAST_WIDTH, columns);
  const widths = Array.from({ length: width }, (_, i) => (VALUES.includes(i + 1) ? VALUE_WIDTH : OTHER_WIDTH));
  return { sheet: new PlanBuilder(item.sheet, widths), width, item, formats: { output: decimals(stepOf(item.resolution)), applied: formatFor(applied) } };
}

/** A format with as many decimals as any of the values needs. */
export function formatFor(values: readonly number[]): string {
  return decimals(Math.min(1, ...values.filter((value) => value !== 0).map(stepOf)));
}

/** Takes out what binary fractions add to a percentage. */
export function rounded(value: number): number {
  return Number(value.toPrecision(12));
}

/** The decimal step that a number is written in: 0.25 is in hundredths. */
function stepOf(value: number): number {
  const [digits, exponent = '0'] = Math.abs(value).toExponential().split('e');
  const written = (digits.split('.')[1]?.length ?? 0) - Number(exponent);
  return 10 ** -Math.max(0, Math.min(9, written));
}

function decimals(step: number): string {
  const digits = Math.max(0, Math.min(9, Math.ceil(-Math.log10(step) - 1e-9)));
  return digits === 0 ? '0' : `0.${'0'.repeat(digits)}`;
}

import { numberOf } from './logFields';
import type { LogForm } from './logForm';
import { namesSamples, namesTime } from './logHeads';
import { secondsIn, type TimeKind } from './logTime';

/** Which columns of a log tell the time, and how. */
export interface TimeColumns {
  readonly column: number;
  readonly kind: TimeKind;
  /** Seconds that one of the unit is; of numbers only. */
  readonly unit: number;
  /** True if the numbers count samples, not seconds. */
  readonly counts: boolean;
}

/** The columns that tell the time: the one wished for, or the first that looks like it. Undefined if none does. */
export function timeOf(form: LogForm, wish: number | 'none' | undefined): TimeColumns | undefined {
  if (wish === 'none') return undefined;
  if (wish !== undefined) return asTime(form, wish);
  const written = form.columns.findIndex((kind) => kind === 'moment' || kind === 'date' || kind === 'clock');
  if (written >= 0) return asTime(form, written);
  const named = form.heads?.findIndex((head, i) => form.columns[i] === 'number' && namesTime(head) && rises(form, i)) ?? -1;
  if (named >= 0) return asTime(form, named);
  const head = form.heads?.[0];
  const mayBe = form.columns.length > 1 && form.columns[0] === 'number' && (!head?.unit || secondsIn(head.unit) !== undefined);
  return mayBe && (risesEvenly(form, 0) || (head && namesSamples(head) && rises(form, 0))) ? asTime(form, 0) : undefined;
}

function asTime(form: LogForm, column: number): TimeColumns | undefined {
  const written = (kind: TimeKind): TimeColumns => ({ column, kind, unit: 1, counts: false });
  switch (form.columns[column]) {
    case 'moment': return written('date');
    case 'clock': return written('clock');
    case 'date': return form.columns[column + 1] === 'clock' ? written('date and clock') : undefined;
    case 'number': {
      const head = form.heads?.[column];
      const unit = secondsIn(head?.unit) ?? secondsIn(head?.name);
      const counts = unit === undefined && (head ? namesSamples(head) : stepsOf(form, column).every((step) => step === 1));
      return { column, kind: 'number', unit: unit ?? 1, counts };
    }
    default: return undefined;
  }
}

function stepsOf({ samples, decimal }: LogForm, column: number): number[] {
  const values = samples.flatMap((fields) => numberOf(fields[column], decimal) ?? []);
  return values.slice(1).map((value, i) => value - values[i]);
}

function rises(form: LogForm, column: number): boolean {
  return stepsOf(form, column).every((step) => step >= 0);
}

/** Rises with every sample, and mostly by the same step, give or take half of it. */
function risesEvenly(form: LogForm, column: number): boolean {
  const steps = stepsOf(form, column);
  if (steps.length < 2 || steps.some((step) => step <= 0)) return false;
  const usual = steps.toSorted((a, b) => a - b)[Math.floor(steps.length / 2)];
  return steps.filter((step) => Math.abs(step - usual) <= usual / 2).length >= 0.6 * steps.length;
}

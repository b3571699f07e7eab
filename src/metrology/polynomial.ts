import { bisect } from './bisection';
import { noAnswer } from './errors';

/** Value of the polynomial A0 + A1·x + … at x, by Horner's scheme. Coefficients constant first. */
export function evaluate(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);
}

/** Coefficients of the derivative, constant first. */
export function derivative(coefficients: readonly number[]): number[] {
  return coefficients.slice(1).map((coefficient, i) => coefficient * (i + 1));
}

/** An interval of the abscissa; `to` may be Infinity. */
export interface Interval {
  readonly from: number;
  readonly to: number;
}

/**
 * Abscissa at which the polynomial takes a value, within an interval on which it does not turn.
 * If the interval has no end, it ends where the polynomial first turns.
 * @throws MetrologyError (no answer) if the value is not reached, or the polynomial turns within a finite interval
 */
export function invert(coefficients: readonly number[], value: number, { from, to }: Interval): number {
  const shifted = trimmed(coefficients.map((coefficient, power) => (power === 0 ? coefficient - value : coefficient)));
  if (shifted.length < 2) throw noAnswer('the coefficients describe a constant: every force gives the same output');
  const [turn] = signChanges(derivative(shifted), from, Number.isFinite(to) ? to : rootBound(derivative(shifted), from));
  if (turn !== undefined && Number.isFinite(to)) {
    throw noAnswer(`the polynomial turns at ${short(turn)}, between ${short(from)} and ${short(to)}; expected an interval on one side of it`);
  }
  const end = Number.isFinite(to) ? to : turn ?? rootBound(shifted, from);
  const root = rootBetween(shifted, from, end);
  if (root === undefined) {
    const reached = Number.isFinite(to) || turn !== undefined
      ? `from ${short(evaluate(coefficients, from))} at ${short(from)} to ${short(evaluate(coefficients, end))} at ${short(end)}${turn === end ? ', where it turns' : ''}`
      : `only to one side of ${short(evaluate(coefficients, from))}, its value at ${short(from)}`;
    throw noAnswer(`no force gives ${short(value)}: the polynomial runs ${reached}`);
  }
  return root;
}

/** Abscissas strictly within (from, to) at which the polynomial changes sign, ascending. A touch without a crossing is none. */
function signChanges(coefficients: readonly number[], from: number, to: number): number[] {
  const own = trimmed(coefficients);
  if (own.length < 2) return [];
  const stops = [from, ...signChanges(derivative(own), from, to), to];
  const roots = new Set<number>();
  for (let i = 1; i < stops.length; i += 1) {
    const root = rootBetween(own, stops[i - 1], stops[i], 0);
    if (root !== undefined && root > from && root < to) roots.add(root);
  }
  const marks = [from, ...roots, to];
  const signs = marks.slice(1).map((mark, i) => Math.sign(evaluate(own, marks[i] + (mark - marks[i]) / 2)));
  return [...roots].filter((_, i) => signs[i] * signs[i + 1] < 0);
}

/**
 * The root between two ends where the polynomial is monotone, by bisection to the last bit; undefined if there is none.
 * An end counts as the root if the value there is zero within rounding (`slack` in units of rounding error).
 */
function rootBetween(coefficients: readonly number[], from: number, to: number, slack = 4): number | undefined {
  const atLow = evaluate(coefficients, from);
  const atHigh = evaluate(coefficients, to);
  if (Math.sign(atLow) * Math.sign(atHigh) >= 0) {
    if (Math.abs(atLow) <= slack * rounding(coefficients, from)) return from;
    return Math.abs(atHigh) <= slack * rounding(coefficients, to) ? to : undefined;
  }
  const { near, far } = bisect((at) => Math.sign(evaluate(coefficients, at)) === Math.sign(atLow), from, to);
  return Math.abs(evaluate(coefficients, near)) <= Math.abs(evaluate(coefficients, far)) ? near : far;
}

/** Rounding error of the value at x: half a unit in the last place of the largest term. */
function rounding(coefficients: readonly number[], x: number): number {
  const largest = coefficients.reduce((most, coefficient, power) => Math.max(most, Math.abs(coefficient * x ** power)), 0);
  return largest * 2 ** -53;
}

/** A point beyond every root above `from`: Cauchy's bound, drawn in until the polynomial is finite there. */
function rootBound(coefficients: readonly number[], from: number): number {
  const own = trimmed(coefficients);
  const lead = Math.abs(own[own.length - 1] ?? 1);
  let bound = Math.max(Math.abs(from) * 2, 1 + own.reduce((most, coefficient) => Math.max(most, Math.abs(coefficient) / lead), 0));
  bound = Math.min(bound, Number.MAX_VALUE); // the ratio of two coefficients may overflow
  while (!Number.isFinite(evaluate(own, bound)) && bound > Math.abs(from) + 1) bound = Math.sqrt(bound);
  return Math.max(bound, from);
}

function trimmed(coefficients: readonly number[]): readonly number[] {
  let length = coefficients.length;
  while (length > 0 && coefficients[length - 1] === 0) length -= 1;
  return coefficients.slice(0, length);
}

/** A number for a message: seven digits are enough to find it again. */
function short(value: number): string {
  return String(Number(value.toPrecision(7)));
}

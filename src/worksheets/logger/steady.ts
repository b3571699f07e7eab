import { medianOf, robustDeviation, robustLine, thinned } from './robust';
import type { Trace } from './trace';

/** What counts as steady. */
export interface SteadyOptions {
  /** Least duration of a stretch, in the time of the trace. */
  readonly least: number;
  /** Greatest change of level within two thirds of that duration, in units of the channel. */
  readonly tolerance: number;
}

/** A stretch of a trace where the level holds. Samples are counted among those with a value. */
export interface Span {
  readonly first: number;
  readonly last: number;
}

/** Blocks that the least duration is divided into, and how many in a row must agree. */
const PARTS = 6;
const AGREEING = 4;

/** A sixth of the least duration: where it stands, and its level, the median. */
interface Part {
  readonly first: number;
  readonly last: number;
  readonly level: number;
}

/**
 * The steady stretches of a trace. Spikes are taken out by running medians of five; the trace is cut into parts of a sixth of the
 * least duration, each with its median; parts belong together where four in a row stay within the tolerance, so that a step, or a
 * load that is being changed, parts them. A stretch interrupted for less than the least duration at the same level is one. The ends
 * are then found to the sample, by the distance from a robust straight line through the stretch.
 */
export function steadySpans(trace: Trace, { least, tolerance }: SteadyOptions): Span[] {
  const { time, filtered, interval } = trace;
  const parts = partsOf(time, filtered, least / PARTS);
  const groups = joined(grouped(parts, time, least, tolerance), time, least, tolerance);
  return groups.map((group) => trimmed(group, trace, tolerance))
    .filter(({ first, last }) => time[last] - time[first] + interval >= least * (1 - 1e-9));
}

function partsOf(time: Float64Array, filtered: Float64Array, duration: number): Part[] {
  const parts: Part[] = [];
  for (let first = 0; first < time.length;) {
    const end = time[0] + (Math.floor((time[first] - time[0]) / duration * (1 + 1e-12)) + 1) * duration;
    let last = first;
    while (last + 1 < time.length && time[last + 1] < end * (1 - 1e-12)) last += 1;
    parts.push({ first, last, level: medianOf(filtered.subarray(first, last + 1)) });
    first = last + 1;
  }
  return parts;
}

function grouped(parts: readonly Part[], time: Float64Array, least: number, tolerance: number): Part[][] {
  // links[i]: part i and the next one are of one stretch.
  const links = new Uint8Array(parts.length);
  for (let i = 0; i + AGREEING <= parts.length; i += 1) {
    const row = parts.slice(i, i + AGREEING);
    const levels = row.map(({ level }) => level);
    const hangs = row.every((part, j) => j === 0 || time[part.first] - time[row[j - 1].last] <= least);
    if (hangs && Math.max(...levels) - Math.min(...levels) <= tolerance) links.fill(1, i, i + AGREEING - 1);
  }
  const groups: Part[][] = [];
  parts.forEach((part, i) => {
    if (i > 0 && links[i - 1]) groups[groups.length - 1].push(part);
    else groups.push([part]);
  });
  return groups.filter((group) => group.length >= AGREEING);
}

/** Stretches at one level with a short disturbance between them are one. */
function joined(groups: readonly Part[][], time: Float64Array, least: number, tolerance: number): Part[][] {
  const result: Part[][] = [];
  for (const group of groups) {
    const before = result.at(-1);
    const near = before !== undefined && time[group[0].first] - time[before[before.length - 1].last] < least
      && Math.abs(levelOf(group.slice(0, AGREEING)) - levelOf(before.slice(-AGREEING))) <= tolerance;
    if (near) before.push(...group);
    else result.push([...group]);
  }
  return result;
}

function levelOf(parts: readonly Part[]): number {
  return medianOf(parts.map(({ level }) => level));
}

/** Samples that are enough to tell a scatter. */
const ENOUGH = 5000;

/** Moves the ends of a group outwards or inwards to the last samples that lie where its line says. */
function trimmed(group: readonly Part[], { time, values, filtered }: Trace, tolerance: number): Span {
  const line = robustLine(group.map(({ first, last }) => (time[first] + time[last]) / 2), group.map(({ level }) => level));
  const [inner, outer] = [group[0], group[group.length - 1]];
  const rest = (i: number): number => values[i] - line.at(time[i]);
  const scatter = robustDeviation(thinned(values.slice(inner.last, outer.first).map((value, i) => value - line.at(time[inner.last + i])), ENOUGH));
  const band = Math.max(3 * scatter, tolerance / 2);
  const lies = (i: number): boolean => Math.abs(filtered[i] - line.at(time[i])) <= band;
  const reach = inner.last - inner.first + 1;
  let first = inner.last;
  while (first > 0 && first > inner.first - reach && lies(first - 1)) first -= 1;
  let last = outer.first;
  while (last < values.length - 1 && last < outer.last + reach && lies(last + 1)) last += 1;
  // A running median keeps an edge in place only where both its sides last; the samples themselves decide.
  while (first < last && Math.abs(rest(first)) > band) first += 1;
  while (last > first && Math.abs(rest(last)) > band) last -= 1;
  return { first, last };
}

/** Least number of samples in a stretch that is taken for steady, where the user said nothing else. */
const LEAST_SAMPLES = 12;

/** Options that suit most traces: a hundredth of the time, and a thousandth of the range or what the noise makes of it. */
export function suggestedOptions({ time, filtered, interval, step }: Trace): SteadyOptions {
  const whole = time.length > 0 ? time[time.length - 1] - time[0] + interval : 0;
  const least = tidy(Math.max(LEAST_SAMPLES * interval, Math.min(30, whole / 100)) || 1);
  const levels = partsOf(time, filtered, least / PARTS).map(({ level }) => level);
  const range = levels.length > 0 ? levels.reduce((a, b) => Math.max(a, b)) - levels.reduce((a, b) => Math.min(a, b)) : 0;
  // Second differences: a load that is changed evenly does not count as noise.
  const bends = levels.slice(2).map((level, i) => level - 2 * levels[i + 1] + levels[i]);
  const noise = bends.length > 0 ? robustDeviation(bends) / Math.sqrt(6) : 0;
  return { least, tolerance: tidy(Math.max(range / 1000, 6 * noise, 1.5 * Math.min(step, range / 100))) };
}

/** Upwards to two significant digits, as a person would type it. */
function tidy(value: number): number {
  if (value <= 0) return 0;
  const unit = 10 ** (Math.floor(Math.log10(value)) - 1);
  return Number((Math.ceil(value / unit - 1e-9) * unit).toPrecision(2));
}

import { worst } from './expected';
import { mean, type NetPoint, type Series } from './series';

/** A result of a series: its value, what rounding is measured against, and whether its sign is open. */
export interface Figure {
  readonly value: number;
  readonly scale: number;
  readonly eitherSign?: boolean;
}

/** Runs may differ by this part in their greatest force. */
const SAME_TOP = 0.005;

/** The characteristics of a series by plain arithmetic; one that it cannot give is left out. */
export function statics(series: Series, capacity: number): Readonly<Record<string, Figure | undefined>> {
  const tops = series.readings.map((_, run) => topOf(series.fromFirstZero.filter((point) => point.run === run)));
  if (tops.length === 0 || tops.some((top) => top === undefined || top.force === 0)) return {};
  const greatest = mean(tops.map((top) => (top as NetPoint).force)) as number;
  const output = mean(tops.map((top) => (top as NetPoint).reading)) as number;
  // Where a run lacks its greatest force the sheet tells of it instead of a result.
  if (output === 0 || tops.some((top) => Math.abs((top as NetPoint).force - greatest) > SAME_TOP * greatest)) return {};
  const branches = tops.map((top, run) => ({
    up: series.fromFirstZero.filter((point) => point.run === run && point.row <= (top as NetPoint).row),
    down: series.fromFirstZero.filter((point) => point.run === run && point.row > (top as NetPoint).row),
  }));
  const share = ({ value, eitherSign }: ReturnType<typeof worst>): Figure => ({ value: value / output, scale: 1, eitherSign });
  const off = ({ force, reading }: NetPoint) => reading - (output / greatest) * force;
  const sensitivity = (output * capacity) / greatest;
  const zero = series.readings[0][0];
  return {
    sensitivity: { value: sensitivity, scale: sensitivity },
    zero_balance: zero === undefined ? undefined : { value: zero / sensitivity, scale: 1 },
    nonlinearity: share(worst(rowMeans(branches.flatMap(({ up }) => up)).map(off))),
    hysteresis: hysteresis(branches, share),
    repeatability: tops.length < 2 ? undefined : { value: greatestSpread(series.fromFirstZero) / Math.abs(output), scale: 1 },
    zero_return: zeroReturn(branches, share),
    combined_error: share(worst(series.fromFirstZero.map(off))),
    error_band: errorBand(series.fromFirstZero, greatest),
  };
}

interface Branches {
  readonly up: readonly NetPoint[];
  readonly down: readonly NetPoint[];
}

function topOf(points: readonly NetPoint[]): NetPoint | undefined {
  return points.reduce<NetPoint | undefined>((top, point) => (top === undefined || point.force > top.force ? point : top), undefined);
}

/** The mean of the runs in each row. */
function rowMeans(points: readonly NetPoint[]): NetPoint[] {
  return [...new Set(points.map(({ row }) => row))].map((row) => {
    const own = points.filter((point) => point.row === row);
    return { row, run: 0, force: mean(own.map(({ force }) => force)) as number, reading: mean(own.map(({ reading }) => reading)) as number };
  });
}

function hysteresis(branches: readonly Branches[], share: (found: ReturnType<typeof worst>) => Figure): Figure | undefined {
  const pairs = branches.flatMap(({ up, down }) => down.flatMap(({ force, reading }) => {
    const same = up.filter((point) => point.force === force);
    return same.length === 0 ? [] : [{ force, difference: reading - same[same.length - 1].reading }];
  }));
  return pairs.some(({ force }) => force > 0) ? share(worst(pairs.map(({ difference }) => difference))) : undefined;
}

function greatestSpread(points: readonly NetPoint[]): number {
  const spreads = [...new Set(points.map(({ row }) => row))].map((row) => {
    const readings = points.filter((point) => point.row === row).map(({ reading }) => reading);
    return Math.max(...readings) - Math.min(...readings);
  });
  return Math.max(...spreads);
}

function zeroReturn(branches: readonly Branches[], share: (found: ReturnType<typeof worst>) => Figure): Figure | undefined {
  const lasts = branches.map(({ down }) => down.filter(({ force }) => force === 0).at(-1)?.reading);
  return lasts.every((last) => last !== undefined) ? share(worst(lasts)) : undefined;
}

/**
 * Half-width of the band about a line through the first zero. |y − k·x| ≤ h for all readings asks that the intervals
 * [(y − h)/x, (y + h)/x] of the slope meet, and on a line they do once every two of them do:
 * h = greatest |yᵢ·xⱼ − yⱼ·xᵢ|/(xᵢ + xⱼ). The slope is the middle of what is then left.
 */
function errorBand(points: readonly NetPoint[], greatest: number): Figure | undefined {
  let half = 0;
  points.forEach((a, i) => points.slice(i + 1).forEach((b) => {
    if (a.force + b.force > 0) half = Math.max(half, Math.abs(a.reading * b.force - b.reading * a.force) / (a.force + b.force));
  }));
  const loaded = points.filter(({ force }) => force > 0);
  const least = Math.max(...loaded.map(({ force, reading }) => (reading - half) / force));
  const most = Math.min(...loaded.map(({ force, reading }) => (reading + half) / force));
  const slope = (least + most) / 2;
  return slope === 0 ? undefined : { value: half / Math.abs(slope * greatest), scale: 1 };
}

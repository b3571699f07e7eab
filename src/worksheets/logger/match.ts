/** Which level each point was read at: index of the level, or undefined where none is in its place. */
export interface Match {
  readonly levels: readonly (number | undefined)[];
  /** Level that the line through the matches gives for a force. */
  readonly expected: (force: number) => number;
  /** How far from it a level may lie. */
  readonly reach: number;
  /** Levels per unit of force, sign included. */
  readonly slope: number;
  readonly cost: number;
}

/** What it costs to leave a point without a level, to pass over a level within the run, before it, and after it. */
const [NO_LEVEL, WITHIN, BEFORE, AFTER] = [1, 0.05, 0.002, 0.001];
/** Weight of a scale smaller than the levels' range: of two answers as good, the one that uses more of it. */
const NARROW = 0.02;
/** Extreme levels at either end that may be those of the least and the greatest force: a preload can lie beyond. */
const EXTREMES = 3;
/** Share of the forces' range within which a level is taken for a force, at least and at most. */
const [LEAST_REACH, GREATEST_REACH] = [0.003, 0.05];

/**
 * Matches levels to forces in their order: each force to one level, none twice, some of either left over. Which level stands for
 * which force is not known beforehand, so the least and the greatest force are tried on every pair of extreme levels, either way
 * round; for each, the cheapest order-keeping match is found by dynamic programming. Undefined if nothing can be told: fewer than
 * two levels, or forces all alike.
 */
export function matched(forces: readonly number[], levels: readonly number[]): Match | undefined {
  const [least, greatest] = [Math.min(...forces), Math.max(...forces)];
  const [low, high] = [Math.min(...levels), Math.max(...levels)];
  if (!(greatest > least) || !(high > low)) return undefined;
  const share = reachOf(forces, greatest - least);
  const ends = extremes(levels, high - low);
  let best: Match | undefined;
  for (const start of ends) {
    for (const end of ends) {
      if (start === end) continue;
      const slope = (end - start) / (greatest - least);
      const narrow = NARROW * (1 - Math.abs(end - start) / (high - low));
      const found = refined(forces, levels, { slope, zero: start - slope * least }, share * (greatest - least), narrow);
      if (!best || found.cost < best.cost - 1e-9) best = found;
    }
  }
  return best;
}

interface Line {
  readonly slope: number;
  readonly zero: number;
}

/** Half of the least difference between two forces, within bounds: as a share of their range. */
function reachOf(forces: readonly number[], range: number): number {
  const sorted = [...new Set(forces)].sort((a, b) => a - b);
  const closest = sorted.slice(1).reduce((smallest, force, i) => Math.min(smallest, force - sorted[i]), Infinity);
  return Math.max(LEAST_REACH, Math.min(GREATEST_REACH, 0.45 * closest / range));
}

/** The lowest and the highest levels, those that differ by no more than a hundredth of the range once. */
function extremes(levels: readonly number[], range: number): number[] {
  const distinct: number[] = [];
  for (const level of levels.toSorted((a, b) => a - b)) if (distinct.length === 0 || level - distinct[distinct.length - 1] > range / 100) distinct.push(level);
  return [...new Set([...distinct.slice(0, EXTREMES), ...distinct.slice(-EXTREMES)])];
}

/** Matches by a line, fits the line to what matched, and matches again. */
function refined(forces: readonly number[], levels: readonly number[], line: Line, forceReach: number, narrow: number): Match {
  const first = aligned(forces, levels, line, forceReach);
  const better = fitted(forces, levels, first.levels) ?? line;
  const second = aligned(forces, levels, better, forceReach);
  const [used, by] = second.cost <= first.cost ? [second, better] : [first, line];
  return { levels: used.levels, cost: used.cost + narrow, slope: by.slope, reach: Math.abs(by.slope) * forceReach, expected: (force) => by.zero + by.slope * force };
}

function fitted(forces: readonly number[], levels: readonly number[], match: Match['levels']): Line | undefined {
  const pairs = forces.flatMap((force, i) => {
    const level = match[i];
    return level === undefined ? [] : [{ force, level: levels[level] }];
  });
  const mean = (of: (pair: (typeof pairs)[number]) => number): number => pairs.reduce((sum, pair) => sum + of(pair), 0) / pairs.length;
  const [force, level] = [mean((pair) => pair.force), mean((pair) => pair.level)];
  const squares = mean((pair) => (pair.force - force) ** 2);
  if (pairs.length < 2 || !(squares > 0)) return undefined;
  const slope = mean((pair) => (pair.force - force) * (pair.level - level)) / squares;
  return slope === 0 ? undefined : { slope, zero: level - slope * force };
}

/** The cheapest match that keeps the order, with the line given. */
function aligned(forces: readonly number[], levels: readonly number[], { slope, zero }: Line, forceReach: number): { levels: (number | undefined)[]; cost: number } {
  const [rows, columns] = [forces.length, levels.length];
  const width = columns + 1;
  const costs = new Float64Array((rows + 1) * width);
  const ways = new Uint8Array((rows + 1) * width);
  const passing = (i: number): number => (i === 0 ? BEFORE : i === rows ? AFTER : WITHIN);
  for (let i = 0; i <= rows; i += 1) {
    for (let j = 0; j <= columns; j += 1) {
      if (i === 0 && j === 0) continue;
      let [cost, way] = [Infinity, PASS_LEVEL];
      if (j > 0) cost = costs[i * width + j - 1] + passing(i);
      if (i > 0 && costs[(i - 1) * width + j] + NO_LEVEL < cost) [cost, way] = [costs[(i - 1) * width + j] + NO_LEVEL, PASS_POINT];
      if (i > 0 && j > 0) {
        const off = Math.abs(levels[j - 1] - zero - slope * forces[i - 1]) / (Math.abs(slope) * forceReach);
        const pair = off <= 1 ? costs[(i - 1) * width + j - 1] + off * off * 0.1 : Infinity;
        if (pair <= cost) [cost, way] = [pair, PAIR];
      }
      costs[i * width + j] = cost;
      ways[i * width + j] = way;
    }
  }
  return { levels: traced(ways, rows, columns), cost: costs[rows * width + columns] };
}

const [PASS_LEVEL, PASS_POINT, PAIR] = [0, 1, 2];

function traced(ways: Uint8Array, rows: number, columns: number): (number | undefined)[] {
  const match = Array.from({ length: rows }, (): number | undefined => undefined);
  let [i, j] = [rows, columns];
  while (i > 0 || j > 0) {
    const way = i === 0 ? PASS_LEVEL : j === 0 ? PASS_POINT : ways[i * (columns + 1) + j];
    if (way === PAIR) match[i - 1] = j - 1;
    if (way !== PASS_LEVEL) i -= 1;
    if (way !== PASS_POINT) j -= 1;
  }
  return match;
}

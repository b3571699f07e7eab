/** Parts of the greatest value that two forces of the same point may be apart: where applied forces are typed, they never meet exactly. */
const SAME_POINT = 0.02;

/**
 * For each applied value of one run the place of the same point in another run, each taken once; undefined where the other run
 * has no such point. A point is the same if it is the same load on the same branch, or else the same load. Where a run does
 * not know its applied values yet, the points go by their order.
 * @param one applied values in their order, undefined where there is no number
 * @param other the same of the other run
 */
export function pairRows(one: readonly (number | undefined)[], other: readonly (number | undefined)[]): (number | undefined)[] {
  if (!isKnown(one) || !isKnown(other)) return one.map((_, i) => (i < other.length ? i : undefined));
  const reach = SAME_POINT * greatestOf(one);
  const [risingOne, risingOther] = [one, other].map(rising);
  const taken = new Set<number>();
  const take = (i: number, sameBranch: boolean): number | undefined => {
    const free = other.flatMap((_, j) => (!taken.has(j) && (!sameBranch || risingOne[i] === risingOther[j]) && apart(one[i], other[j]) <= reach ? [j] : []));
    const [best] = free.sort((a, b) => apart(one[i], other[a]) - apart(one[i], other[b]) || a - b);
    if (best !== undefined) taken.add(best);
    return best;
  };
  // Those of the same branch first, so that a point met on one branch only does not take the place of another.
  const first = one.map((_, i) => take(i, true));
  return first.map((found, i) => found ?? take(i, false));
}

type Known = readonly number[];

function isKnown(values: readonly (number | undefined)[]): values is Known {
  return values.every((value) => value !== undefined) && values.some((value) => value !== 0);
}

function greatestOf(values: Known): number {
  return Math.max(...values.map(Math.abs));
}

function apart(a: number, b: number): number {
  return Math.abs(a - b);
}

/** Whether a point is on the way up: at or before the first of the greatest values. */
function rising(values: Known): boolean[] {
  const top = values.findIndex((value) => Math.abs(value) === greatestOf(values));
  return values.map((_, i) => i <= top);
}

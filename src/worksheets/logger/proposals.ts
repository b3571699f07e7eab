import { type Match, matched } from './match';
import type { Stretch } from './stretch';
import { counted, stretchCount } from './words';

/** A reading proposed for a point of a run. */
export interface Proposal {
  /** Row of the point in its block, from 0. */
  readonly row: number;
  /** What was applied; undefined if the sheet does not say. */
  readonly applied: number | undefined;
  /** The stretch it is read from; undefined if none is in its place. */
  readonly stretch: Stretch | undefined;
}

/** The readings proposed for a run, and what is to be said about them. */
export interface Proposed {
  readonly points: readonly Proposal[];
  /** Too many stretches, too few, another order, the sign: in sentences. */
  readonly notes: readonly string[];
}

/**
 * Proposes a reading a point: the stretches are matched to the applied forces in their order, zeros included. Of several runs in
 * one log the first that fits is taken; the caller leaves out stretches to reach the others.
 * @param applied forces in the order of the run, signs included
 */
export function proposeReadings(stretches: readonly Stretch[], applied: readonly (number | undefined)[]): Proposed {
  const known = applied.flatMap((force, row) => (force === undefined ? [] : [{ force, row }]));
  const match = matched(known.map(({ force }) => force), stretches.map(({ mean }) => mean));
  if (!match) return inOrder(stretches, applied);
  const found = new Map(known.map(({ row }, i) => [row, match.levels[i]]));
  const points = applied.map((force, row): Proposal => {
    const level = found.get(row);
    return { row, applied: force, stretch: level === undefined ? undefined : stretches[level] };
  });
  return { points, notes: notesOn(points, stretches, match) };
}

/** Where levels tell nothing, the stretches go to the points one after the other. */
function inOrder(stretches: readonly Stretch[], applied: readonly (number | undefined)[]): Proposed {
  const tells = stretches.length > 1 || applied.length === 1;
  const points = applied.map((force, row): Proposal => ({ row, applied: force, stretch: tells ? stretches[row] : undefined }));
  const why = stretches.length < 2 ? `The log has ${stretchCount(stretches.length)}`
    : 'Forces or levels are all alike, so the stretches are taken one after the other';
  return { points, notes: [`${why}; the run has ${counted(applied.length, 'point')}.`] };
}

function notesOn(points: readonly Proposal[], stretches: readonly Stretch[], match: Match): string[] {
  const used = new Set(points.flatMap(({ stretch }) => stretch ?? []));
  const missed = points.filter(({ stretch }) => !stretch);
  const places = [...used].map((stretch) => stretches.indexOf(stretch));
  const [from, to] = [Math.min(...places), Math.max(...places)];
  const [before, between, after] = [from, to - from + 1 - used.size, stretches.length - 1 - to];
  const left = [...(before > 0 ? [`${before} before the run`] : []), ...(between > 0 ? [`${between} between its points`] : []), ...(after > 0 ? [`${after} after it`] : [])];
  return [
    ...(missed.length > 0 ? [`${counted(missed.length, 'point')} of ${points.length} ${missed.length === 1 ? 'has' : 'have'} no stretch: ${missed.map((point) => missedWords(point, stretches, used, match)).join('; ')}. ${TRY}`] : []),
    ...(used.size > 0 && left.length > 0 ? [`${stretchCount(stretches.length - used.size)} not used: ${left.join(', ')}.`] : []),
    ...(match.slope < 0 ? ['The level falls where the force, with its sign, grows. Turn the sign if the sheet wants it the other way round.'] : []),
  ];
}

const TRY = 'Choose one, type the reading, or look for shorter stretches.';

/** A point without a stretch, and whether one that would fit stands elsewhere in the log. */
function missedWords({ row, applied }: Proposal, stretches: readonly Stretch[], used: ReadonlySet<Stretch>, { expected, reach }: Match): string {
  const name = applied === undefined ? `point ${row + 1}, which has no force` : `point ${row + 1} (${applied})`;
  if (applied === undefined) return name;
  const elsewhere = stretches.find((stretch) => !used.has(stretch) && Math.abs(stretch.mean - expected(applied)) <= reach);
  return elsewhere ? `${name}, though stretch ${elsewhere.number} would fit it in another order` : name;
}

/**
 * Where the runs of a log begin and end, as indices of stretches, if the same points were run several times: matched one after
 * the other, as long as all points but one find a stretch. A zero may end one run and begin the next.
 */
export function runRanges(stretches: readonly Stretch[], applied: readonly (number | undefined)[], most: number): { readonly from: number; readonly to: number }[] {
  const ranges: { from: number; to: number }[] = [];
  let start = 0;
  while (ranges.length < most && start < stretches.length) {
    const { points } = proposeReadings(stretches.slice(start), applied);
    const places = points.flatMap(({ stretch }) => (stretch ? stretches.indexOf(stretch) : []));
    if (places.length < Math.max(2, applied.length - 1)) break;
    const to = places[places.length - 1];
    ranges.push({ from: places[0], to });
    start = applied[0] === applied[applied.length - 1] ? Math.max(to, start + 1) : to + 1;
  }
  return ranges;
}

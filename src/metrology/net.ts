import { badInput } from './errors';
import { isZero, type Point, type Run } from './run';

/** How the zero of a reading is found; see {@link netRun}. */
export const ZERO_METHODS = ['initial', 'average', 'interpolated'] as const;
export type ZeroMethod = (typeof ZERO_METHODS)[number];

/**
 * Net readings of one run: each reading less its zero, in output units, sign kept.
 * - `initial`: the zero before the run.
 * - `average`: the mean of the first and the last zero.
 * - `interpolated`: linear in the order applied between the two zeros that bracket the reading.
 *
 * Errors: no zero before the first force; a reading without the later zero that its method needs.
 * Source: ASTM E74, methods A and B (from memory).
 */
export function netRun(run: Run, method: ZeroMethod = 'initial'): Run {
  if (run.length === 0) return run;
  const zeroAt = zeroLine(run, method);
  return run.map((point) => ({ ...point, reading: point.reading - zeroAt(point) }));
}

function zeroLine(run: Run, method: ZeroMethod): (point: Point) => number {
  const zeros = run.filter(isZero);
  const first = initialZero(run);
  if (method === 'initial') return () => first.reading;

  const lastLoaded = run.findLast((point) => !isZero(point));
  const last = zeros[zeros.length - 1];
  if (lastLoaded && last.order < lastLoaded.order) {
    throw badInput(`readings ${lastLoaded.place}: no zero reading follows it; the "${method}" zero needs one after the run`);
  }
  if (method === 'average') {
    const mean = (first.reading + last.reading) / 2;
    return () => mean;
  }
  return interpolateBetween(zeros);
}

/** Piecewise linear through the zeros; points are asked in the order applied, so one pass serves them all. */
function interpolateBetween(zeros: readonly Point[]): (point: Point) => number {
  let next = 0;
  return ({ order }) => {
    while (next < zeros.length - 1 && zeros[next].order < order) next += 1;
    const after = zeros[next];
    if (after.order <= order || next === 0) return after.reading;
    const before = zeros[next - 1];
    const share = (order - before.order) / (after.order - before.order);
    return before.reading + share * (after.reading - before.reading);
  };
}

/** The zero before the run: its first reading. Error: the run does not start with a reading at force 0. */
export function initialZero(run: Run): Point {
  const first = run[0];
  if (!isZero(first)) {
    throw badInput(
      `readings ${first.place}: found the reading at force ${first.force} before any zero reading; expected the run to start with one at force 0 ` +
        '(for readings that are net already, add a row with force 0 and reading 0)',
    );
  }
  return first;
}

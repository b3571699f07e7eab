import fc from 'fast-check';
import { errorBand } from '../../src/metrology/errorBand';
import { deviations, nonlinearity } from '../../src/metrology/linearity';
import type { Run } from '../../src/metrology/run';
import { allPoints, ascendingMean, staticRuns, type StaticRuns } from '../../src/metrology/staticRuns';

const reading = fc.double({ min: -0.05, max: 0.05, noNaN: true });

/** Random runs up to 100 and back, about 2 mV/V, with errors up to 2.5 % of that. */
const randomRuns = fc.tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 2, max: 7 })).chain(([runs, steps]) => {
  const up = Array.from({ length: steps + 1 }, (_, i) => (100 * i) / steps);
  const forces = [...up, ...up.slice(0, -1).reverse()];
  return fc.array(fc.array(reading, { minLength: forces.length, maxLength: forces.length }), { minLength: runs, maxLength: runs })
    .map((errors) => errors.map((run): Run =>
      run.map((error, i) => ({ row: i + 1, place: `row ${i + 1}`, order: i + 1, force: forces[i], reading: 0.3 + 0.02 * forces[i] + (i === 0 ? 0 : error) }))));
});

/** Greatest deviation of all readings from the line k·F. */
function halfWidthAt(data: StaticRuns, k: number): number {
  return Math.max(...allPoints(data).map((point) => Math.abs(point.reading - k * point.force)));
}

/** Slow and obvious: the least of the greatest deviations over every slope at which two of the lines ±(y − k·x) meet. */
function bruteForceBand(data: StaticRuns): number {
  const lines = allPoints(data).flatMap(({ force, reading: y }) => [{ a: y, b: -force }, { a: -y, b: force }]);
  let least = Infinity;
  for (const p of lines) {
    for (const q of lines) {
      if (p.b !== q.b) least = Math.min(least, halfWidthAt(data, (q.a - p.a) / (p.b - q.b)));
    }
  }
  return least;
}

/** Slow and obvious: the least half-spread over the slopes through every pair of points (an optimal line is parallel to one). */
function bruteForceMinimax(data: StaticRuns): number {
  const points = ascendingMean(data);
  let least = Infinity;
  for (const p of points) {
    for (const q of points) {
      if (p.force === q.force) continue;
      const slope = (q.reading - p.reading) / (q.force - p.force);
      const rest = points.map((point) => point.reading - slope * point.force);
      least = Math.min(least, (Math.max(...rest) - Math.min(...rest)) / 2);
    }
  }
  return least;
}

describe('exact lines of least deviation, against brute force over every vertex', () => {
  test('error band: half-width and output equal the brute-force optimum on random runs', () => {
    fc.assert(fc.property(randomRuns, (runs) => {
      const data = staticRuns(runs);
      const { halfWidth, output } = errorBand(data);
      const expected = bruteForceBand(data);
      expect(halfWidth * Math.abs(output)).toBeCloseTo(expected, 12);
      expect(halfWidthAt(data, output / data.capacity)).toBeCloseTo(expected, 12);
    }), { numRuns: 400 });
  });

  test('error band: no slope on a fine grid does better', () => {
    fc.assert(fc.property(randomRuns, (runs) => {
      const data = staticRuns(runs);
      const { halfWidth, output } = errorBand(data);
      const best = halfWidth * Math.abs(output);
      for (let step = -200; step <= 200; step += 1) {
        expect(halfWidthAt(data, (output / data.capacity) * (1 + step * 2e-4))).toBeGreaterThanOrEqual(best - 1e-14);
      }
    }), { numRuns: 50 });
  });

  test('minimax line: greatest deviation equals the brute-force optimum on random runs', () => {
    fc.assert(fc.property(randomRuns, (runs) => {
      const data = staticRuns(runs);
      expect(Math.abs(nonlinearity(data, 'minimax') * data.ratedOutput)).toBeCloseTo(bruteForceMinimax(data), 12);
    }), { numRuns: 400 });
  });

  test('minimax line: the greatest deviation is reached on both sides (Chebyshev)', () => {
    fc.assert(fc.property(randomRuns, (runs) => {
      const found = deviations(staticRuns(runs), 'minimax').map(({ deviation }) => deviation);
      expect(Math.max(...found) + Math.min(...found)).toBeCloseTo(0, 12);
    }), { numRuns: 100 });
  });

  test('the two greatest forces may nearly coincide: the band is the one of equal forces', () => {
    const band = (top: number) => {
      const readings: [number, number][] = [[0, 0], [50, 1.0003], [50, 1.0001], [100, 2], [top, 1.9998]];
      return errorBand(staticRuns([readings.map(([force, reading], i) => ({ row: i + 1, place: `row ${i + 1}`, order: i + 1, force, reading }))]));
    };
    for (const top of [100 - 1e-9, 100 - 1e-12, 100 - 2 ** -46]) expect(band(top).halfWidth).toBeCloseTo(band(100).halfWidth, 10);
  });
  test('a zero that does not return sets the band alone, and the middle of the slopes that share it is taken', () => {
    const readings = [0, 1.0, 2.0, 0.1];
    const run: Run = [0, 50, 100, 0].map((force, i) => ({ row: i + 1, place: `row ${i + 1}`, order: i + 1, force, reading: readings[i] }));
    const { halfWidth, output } = errorBand(staticRuns([run]));
    expect(halfWidth * output).toBeCloseTo(0.1, 14);
    expect(output).toBeCloseTo(2, 12); // slopes from 0.019 (at 100) to 0.021 (at 100)
  });
});

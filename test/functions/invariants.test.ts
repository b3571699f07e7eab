/**
 * What must not matter does not: scale of the units, shift of the zero, order of the runs, blank rows, direction of force.
 * Random runs by fast-check; no expected value is taken from the code.
 */
import fc from 'fast-check';
import type { Cell } from '../../src/functions/cells';
import { column, number, table } from './call';

interface RandomRun {
  readonly forces: number[];
  /** A list a run, zero first and last. */
  readonly runs: number[][];
}

/** Two or three runs up to 100 in five to eight steps and back, about 2 mV/V, slightly curved, with scatter. */
const randomRun: fc.Arbitrary<RandomRun> = fc.tuple(fc.integer({ min: 2, max: 3 }), fc.integer({ min: 5, max: 8 })).chain(([count, steps]) => {
  const up = Array.from({ length: steps + 1 }, (_, i) => (100 * i) / steps);
  const forces = [...up, ...up.slice(0, -1).reverse()];
  const scatter = fc.array(fc.integer({ min: -400, max: 400 }), { minLength: forces.length, maxLength: forces.length });
  return fc.tuple(fc.array(scatter, { minLength: count, maxLength: count }), fc.integer({ min: -3000, max: 3000 })).map(([errors, curve]) => ({
    forces,
    runs: errors.map((run, r) => run.map((error, i) =>
      0.01 * (r + 1) + 0.02 * forces[i] + curve * 1e-9 * forces[i] * (100 - forces[i]) + (i === 0 ? 0 : error * 1e-6))),
  }));
});

const block = (runs: readonly (readonly Cell[])[]): Cell[][] => runs[0].map((_, i) => runs.map((run) => run[i]));
const map = ({ forces, runs }: RandomRun, force: (f: number) => number, reading: (x: number) => number): RandomRun =>
  ({ forces: forces.map(force), runs: runs.map((run) => run.map(reading)) });

/** Performance figures: fractions of rated output, each a number. */
const FRACTIONS = ['NONLINEARITY', 'HYSTERESIS', 'REPEATABILITY', 'ZERORETURN', 'COMBINEDERROR'] as const;
const LINES = ['terminal', 'bestfit', 'zerofit', 'minimax'] as const;

function fractions({ forces, runs }: RandomRun): Record<string, number> {
  const args = [column(...forces), block(runs)] as const;
  return Object.fromEntries([
    ...FRACTIONS.map((id) => [id, number(id, ...args)]),
    ...LINES.map((line) => [`NONLINEARITY ${line}`, number('NONLINEARITY', ...args, line)]),
    ['ERRORBAND', table('ERRORBAND', ...args, false)[0][0]],
  ]);
}

/** Equal in size to 1e-9 of rated output. Of two deviations equally large either sign is right, so signs have a test of their own. */
function expectSame(found: Record<string, number>, expected: Record<string, number>): void {
  for (const [name, value] of Object.entries(expected)) {
    if (!(Math.abs(Math.abs(found[name]) - Math.abs(value)) < 1e-9)) throw new Error(`${name}: ${found[name]} is not ${value}`);
  }
}

/** LLF, degree and range of the net readings under load. */
function calibration({ forces, runs }: RandomRun, degree: number) {
  const args = [column(...forces), table('NET', column(...forces), block(runs))] as const;
  return { llf: number('LIMITFACTOR', ...args, degree), best: number('FITDEGREE', ...args), coefficients: table('FIT', ...args, degree).map(([a]) => a as number) };
}

describe('static characteristics do not depend on', () => {
  test('the unit of output: readings × 250 leave every fraction as it is', () => {
    fc.assert(fc.property(randomRun, (run) => expectSame(fractions(map(run, (f) => f, (x) => x * 250)), fractions(run))));
  });
  test('the unit of force: forces × 4.4482216 leave every fraction as it is', () => {
    fc.assert(fc.property(randomRun, (run) => expectSame(fractions(map(run, (f) => f * 4.4482216, (x) => x)), fractions(run))));
  });
  test('the zero: readings + 1.5 leave every fraction as it is', () => {
    fc.assert(fc.property(randomRun, (run) => expectSame(fractions(map(run, (f) => f, (x) => x + 1.5)), fractions(run))));
  });
  test('direction: tension mirrored to compression leaves every fraction as it is', () => {
    fc.assert(fc.property(randomRun, (run) => expectSame(fractions(map(run, (f) => -f, (x) => -x)), fractions(run))));
  });
  test('direction, signs included: a run whose worst deviations stand out keeps their signs', () => {
    const run: RandomRun = { forces: [0, 50, 100, 50, 0], runs: [[0.01, 1.004, 2.01, 1.001, 0.012], [0.01, 1.0041, 2.01, 1.0012, 0.0115]] };
    const mirrored = fractions(map(run, (f) => -f, (x) => -x));
    for (const [name, value] of Object.entries(fractions(run))) expect(mirrored[name]).toBeCloseTo(value, 12);
  });
  test('the order of the runs', () => {
    fc.assert(fc.property(randomRun, (run) => expectSame(fractions({ ...run, runs: [...run.runs].reverse() }), fractions(run))));
  });
  test('blank rows between the readings', () => {
    fc.assert(fc.property(randomRun, fc.integer({ min: 0, max: 20 }), (run, seed) => {
      const at = (i: number) => (i * 7 + seed) % 3 === 0;
      const forces = run.forces.flatMap<Cell>((f, i) => (at(i) ? [null, f] : [f]));
      const runs = run.runs.map((readings) => readings.flatMap<Cell>((x, i) => (at(i) ? ['', x] : [x])));
      for (const id of FRACTIONS) {
        expect(number(id, column(...forces), block(runs))).toBe(number(id, column(...run.forces), block(run.runs)));
      }
      expect(table('FIT', column(...forces), block(runs), 2)).toEqual(table('FIT', column(...run.forces), block(run.runs), 2));
      const nets = table('NET', column(...forces), block(runs), 'interpolated').filter((row) => row[0] !== '');
      expect(nets).toEqual(table('NET', column(...run.forces), block(run.runs), 'interpolated'));
    }));
  });
});

describe('calibration polynomial', () => {
  test('LLF scales with the unit of force and not with the unit of output; the degree with neither', () => {
    fc.assert(fc.property(randomRun, fc.integer({ min: 1, max: 3 }), (run, degree) => {
      const here = calibration(run, degree);
      const other = calibration(map(run, (f) => f * 4.4482216, (x) => x * 250), degree);
      expect(other.llf / here.llf).toBeCloseTo(4.4482216, 6);
      expect(other.best).toBe(here.best);
    }));
  });
  test('coefficients scale as output over a power of force', () => {
    fc.assert(fc.property(randomRun, (run) => {
      const here = calibration(run, 2).coefficients;
      const other = calibration(map(run, (f) => f * 4, (x) => x * 250), 2).coefficients;
      here.forEach((a, power) => expect(other[power] / (a * 250 / 4 ** power)).toBeCloseTo(1, 6));
    }));
  });
  test('compression mirrored from tension has the same LLF and degree, and coefficients of opposite sign', () => {
    fc.assert(fc.property(randomRun, (run) => {
      const tension = calibration(run, 2);
      const compression = calibration(map(run, (f) => -f, (x) => -x), 2);
      expect(compression.llf).toBeCloseTo(tension.llf, 10);
      expect(compression.best).toBe(tension.best);
      tension.coefficients.forEach((a, i) => expect(compression.coefficients[i]).toBeCloseTo(-a, 12));
    }));
  });
  test('the order of the runs does not matter', () => {
    fc.assert(fc.property(randomRun, (run) => {
      const here = calibration(run, 3).coefficients;
      calibration({ ...run, runs: [...run.runs].reverse() }, 3).coefficients.forEach((a, i) => expect(a).toBeCloseTo(here[i], 12));
    }));
  });
  test('residuals are orthogonal to every power of force, and their squares sum to dof·s²', () => {
    fc.assert(fc.property(randomRun, fc.integer({ min: 1, max: 4 }), (run, degree) => {
      const args = [column(...run.forces), block(run.runs), degree] as const;
      const residuals = table('RESIDUALS', ...args);
      const flat = residuals.flatMap((row, i) => row.filter((d) => d !== '').map((d) => ({ d: d as number, z: run.forces[i] / 100 })));
      for (let power = 0; power <= degree; power += 1) {
        expect(flat.reduce((sum, { d, z }) => sum + d * z ** power, 0)).toBeCloseTo(0, 12);
      }
      const report = new Map(table('FITREPORT', ...args).map(([name, value]) => [name, value]));
      const s = report.get('Residual standard deviation') as number;
      expect(flat.reduce((sum, { d }) => sum + d * d, 0) / ((report.get('Degrees of freedom') as number) * s * s)).toBeCloseTo(1, 10);
    }));
  });
  test('a polynomial without noise is recovered exactly, forces in the millions', () => {
    const coefficient = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(fc.property(fc.array(coefficient, { minLength: 2, maxLength: 6 }), (inMillions) => {
      const forces = Array.from({ length: 12 }, (_, i) => 250_000 * (i + 1));
      const readings = forces.map((f) => inMillions.reduceRight((sum, a) => sum * (f / 1e6) + a, 0));
      const found = table('FIT', column(...forces), column(...readings), inMillions.length - 1);
      found.forEach(([a], power) => expect((a as number) * 1e6 ** power).toBeCloseTo(inMillions[power], 9));
    }));
  });
});

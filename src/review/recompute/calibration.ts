import { type Polynomial, fitByLibrary } from '../independent/polynomial';
import { coverage } from '../independent/student';
import { mean, type NetPoint, type Series } from './series';

/** Multiples of the lower limit factor that the classes allow. Source: ASTM E74 (from memory). */
const MULTIPLES = { class_aa: 2000, class_a: 400 } as const;

/** A calibration by the independent path. */
export interface Calibration {
  readonly fit: Polynomial;
  readonly sd: number | undefined;
  /** Force units. */
  readonly resolution: number;
  readonly factor: number | undefined;
  /** From which force a class holds, or "not met". */
  readonly classes: Readonly<Record<keyof typeof MULTIPLES, number | string>> | undefined;
  readonly loaded: readonly NetPoint[];
}

/** The calibration polynomial of a series and what classes it reaches; undefined where nothing can be fitted. */
export function calibration(series: Series, degree: number, stepOfOutput: number): Calibration | undefined {
  const loaded = series.points.filter(({ force }) => force > 0);
  const distinct = new Set(loaded.map(({ force }) => force)).size;
  const top = series.means[series.top];
  if (distinct <= degree || top === undefined || top === 0) return undefined;
  const forces = loaded.map(({ force }) => force);
  const fit = fitByLibrary(forces, loaded.map(({ reading }) => reading), degree);
  const greatest = Math.max(...forces);
  const resolution = Math.abs((stepOfOutput * (series.forces[series.top] as number)) / top);
  const ratio = Math.abs(mean(loaded.map(({ force, reading }) => force / reading)) as number);
  const factor = fit.sd === undefined ? undefined : Math.max(2.4 * fit.sd * ratio, resolution);
  const from = (multiple: number) => {
    const limit = Math.max(multiple * (factor as number), multiple * resolution, Math.min(...forces));
    return limit > greatest ? 'not met' : limit;
  };
  return {
    fit, sd: fit.sd, resolution, factor, loaded,
    classes: factor === undefined ? undefined : { class_aa: from(MULTIPLES.class_aa), class_a: from(MULTIPLES.class_a) },
  };
}

/**
 * Degree of best fit on the means at each force: the highest with s(m − 1)/s(m) above √(1 + (F(0.975; 1, n − m − 1) − 1)/(n − m)).
 * F with one degree of freedom is the square of Student's t. Source: ASTM E74.
 */
export function bestDegree(series: Series, most: number): number | undefined {
  const loaded = series.points.filter(({ force }) => force > 0);
  const forces = [...new Set(loaded.map(({ force }) => force))].sort((a, b) => a - b);
  const outputs = forces.map((force) => mean(loaded.filter((point) => point.force === force).map(({ reading }) => reading)) as number);
  const n = forces.length;
  if (n - 2 < 1) return undefined;
  const rounding = 8 * Number.EPSILON * Math.max(...outputs.map(Math.abs));
  const sds = Array.from({ length: Math.min(most, n - 2) }, (_, i) => fitByLibrary(forces, outputs, i + 1).sd as number);
  for (let m = sds.length; m >= 2; m -= 1) {
    const threshold = Math.sqrt(1 + (coverage(0.975, n - m - 1) ** 2 - 1) / (n - m));
    if (sds[m - 2] > rounding && sds[m - 2] > threshold * sds[m - 1]) return m;
  }
  return 1;
}

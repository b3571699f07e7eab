import { readFileSync } from 'node:fs';
import path from 'node:path';

/** Published check data, kept with their sources in test/published/. */
function published(name: string): any {
  return JSON.parse(readFileSync(path.join(__dirname, 'published', `${name}.json`), 'utf8'));
}

/** One NIST StRD set, numbers as certified. */
export interface StrdSet {
  readonly x: number[];
  readonly y: number[];
  readonly coefficients: number[];
  readonly standardErrors: number[];
  readonly residualSd: number;
  readonly rSquared: number;
}

/** NIST/ITL Statistical Reference Datasets, linear regression. Source: https://www.itl.nist.gov/div898/strd/ */
export function strdSet(name: string): StrdSet {
  const { data, certified } = published('strd')[name];
  return {
    y: data.map(([y]: string[]) => Number(y)),
    x: data.map(([, x]: string[]) => Number(x)),
    coefficients: Object.values(certified.B).map(Number),
    standardErrors: Object.values(certified.sdB).map(Number),
    residualSd: Number(certified.residual_sd),
    rSquared: Number(certified.r_squared),
  };
}

/** Results for the Pontius load cell: exact-arithmetic recomputation beside the NIST/SEMATECH e-Handbook 4.6.1. */
export const loadCellStudy = published('load-cell-study');

/** Thresholds C(n1, m) of the degree test, recomputed from the F distribution. */
export const degreeThresholds: Record<string, Record<string, number>> = published('e74').C_table;

/** JCGM 100: examples G.4.1 and H.3, table G.2; printed values beside recomputed ones. */
export const gum = published('gum');

/** JCGM 106: examples and table 1, and risks recomputed elsewhere. */
export const conformity = published('conformity');

/** Limits of the classes of force-proving instruments, percent, and formulas: ISO 376:2011, from memory; no text could be read. */
export const iso376 = published('iso376');

/** Air density, conventional mass, dead-weight force, and the mass calibration of JCGM 101 9.3. */
export const massForceAir = published('mass-force-air');

/** A published memory dump of IEEE 1451.4 TEDS with its decode, and the layout found from it. */
export const tedsDump = published('teds');

/** Output of equal-arm bridges with a shunt across one arm; Wheatstone algebra, derived. */
export const bridge = published('bridge');

/** Calibration intervals: NCSLI RP-1 and NASA-HDBK-8739.19-5 as passed on by public secondary sources, and formulas from memory. */
export const intervals = published('intervals');

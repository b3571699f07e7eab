import { airDensity as airDensityOf } from '../metrology/airDensity';
import { normalGravity } from '../metrology/gravity';
import { CONVENTIONAL_DENSITY, trueMass, weightForce as weightForceOf } from '../metrology/weightForce';
import { eachWithBeside, type Together } from './beside';
import type { Cell, Cells } from './cells';
import { CellFault } from './faults';
import { isBlank, readFlag, readNumber } from './readCell';

/** What lies on the Earth, and what a slip of the unit does not reach: gravity in ft/s², densities in g/cm³, pressure in kPa. */
const EARTH = {
  gravity: { least: 9.7, greatest: 9.9, expected: 'local gravity in m/s², 9.7 to 9.9' },
  air: { least: 0.1, greatest: 2, expected: 'a density of air in kg/m³, such as 1.2, or 0 for none' },
  solid: { least: 500, greatest: 25_000, expected: 'a density in kg/m³, such as 8000' },
  latitude: { least: -90, greatest: 90, expected: 'degrees, −90 to 90' },
  height: { least: -500, greatest: 9000, expected: 'metres above sea level, −500 to 9000' },
  temperature: { least: -20, greatest: 60, expected: 'the temperature of the air in °C, −20 to 60' },
  pressure: { least: 500, greatest: 1100, expected: 'the pressure of the air in hPa, 500 to 1100' },
  humidity: { least: 1, greatest: 100, expected: 'relative humidity in percent, such as 45; 0 for dry air' },
} as const;

/**
 * Force of dead weights hanging in air.
 * @customfunction WEIGHTFORCE
 * @group Applied force
 * @param {any[][]} mass Masses in kg (from lb: UNIT); one cell or any block of cells.
 * @param {any} gravity Local gravity, m/s², best as measured (otherwise see GRAVITY).
 * @param {any} airDensity Density of the air, kg/m³ (see AIRDENSITY); 0 for no buoyancy.
 * @param {any[][]} [density] Density of the weights, kg/m³: one cell for all, one column (or row) beside them, or a block of the same shape; 8000 if left out.
 * @param {any} [conventional] TRUE: the masses are conventional ones, as certificates of weights give them; FALSE (default): true masses.
 * @returns {any[][]} Forces in N, shaped like mass; blanks stay blank.
 * @formula F = m·g·(1 − ρa/ρ)
 * @formula conventional: m = mc·(1 − 1.2/8000)/(1 − 1.2/ρ)
 * @source ASTM E74 (there M·g/9.80665·(1 − d/D), in kgf or lbf); OIML R 111 for the conventional mass
 * @note For lbf: =PROVE.UNIT(PROVE.WEIGHTFORCE(PROVE.UNIT(500,"lb","kg"),9.80101,1.18,7950),"N","lbf"). The hanger and the frame below the cell are weights too.
 * @note Lift and hang weights by the site's lifting rules, and stand clear of the load train.
 * @example =PROVE.WEIGHTFORCE({10;20},9.80665,1.2) → {98.051790025;196.10358005}
 * @example =PROVE.WEIGHTFORCE({50},9.8,1.2,{2700},TRUE) → {489.9265}
 */
export function weightForce(mass: any[][], gravity: any, airDensity: any, density?: any[][], conventional?: any): any[][] {
  const local = {
    gravity: within(gravity, 'gravity', EARTH.gravity),
    airDensity: zeroOr(airDensity, 'airDensity', EARTH.air),
  };
  const isConventional = readFlag(conventional, 'conventional', false);
  return eachWithBeside(mass, densitiesOr8000(density), WEIGHTS, (value, solid, [massPlace, densityPlace]) => {
    within(solid, densityPlace, EARTH.solid);
    if (value < 0) throw new CellFault('#VALUE!', `${massPlace}: found ${value}; expected a mass in kg, 0 or more`);
    return weightForceOf(isConventional ? trueMass(value, solid) : value, { ...local, density: solid });
  });
}

/**
 * Normal gravity at a place, where no measured value is at hand.
 * @customfunction GRAVITY
 * @group Applied force
 * @param {any} latitude Latitude, degrees, decimal; the sign (north or south) is of no matter.
 * @param {any} [height] Height above sea level, m; 0 if left out.
 * @returns {any} Gravity, m/s².
 * @formula g = 9.780327·(1 + 0.0053024·sin²φ − 0.0000058·sin²2φ) − 3.086·10⁻⁶·height
 * @source Geodetic Reference System 1980, series for normal gravity; free-air decrease with height
 * @note Mountains and rock change gravity by parts in 10⁵, so a measured value is better, and the best accuracy needs one.
 * @example =PROVE.GRAVITY(45) → 9.8061998770458
 * @example =PROVE.GRAVITY(-33.9,150) → 9.79594781386478
 */
export function gravity(latitude: any, height?: any): any {
  const phi = within(latitude, 'latitude', EARTH.latitude);
  return normalGravity(phi, isBlank(height) ? 0 : within(height, 'height', EARTH.height));
}

/**
 * Density of the air from its temperature, pressure and humidity.
 * @customfunction AIRDENSITY
 * @group Applied force
 * @param {any} t Temperature of the air, °C.
 * @param {any} p Pressure of the air at the bench, hPa (not reduced to sea level).
 * @param {any} rh Relative humidity, percent: 45 stands for 45 %.
 * @returns {any} Density, kg/m³.
 * @formula ρa = (0.34848·p − 0.009·rh·exp(0.061·t))/(273.15 + t)
 * @source OIML R 111-1, E.3 (from memory)
 * @note Good to 2 parts in 10⁴ of the density from 900 to 1100 hPa, 10 to 30 °C and under 80 %.
 * @example =PROVE.AIRDENSITY(20,1013.25,50) → 1.19929430503111
 */
export function airDensity(t: any, p: any, rh: any): any {
  return airDensityOf(
    within(t, 't', EARTH.temperature), within(p, 'p', EARTH.pressure), zeroOr(rh, 'rh', EARTH.humidity),
  );
}

const WEIGHTS: Together = { names: ['mass', 'density'], nouns: ['a mass', 'a density'] };

/** Densities as given, or the conventional one for all if the argument is left out or an empty cell. */
function densitiesOr8000(density: Cells | null | undefined): Cells {
  const isLeftOut = !density || (density.length === 1 && density[0].length === 1 && isBlank(density[0][0]));
  return isLeftOut ? [[CONVENTIONAL_DENSITY]] : density;
}

interface Bounds {
  readonly least: number;
  readonly greatest: number;
  readonly expected: string;
}

function within(cell: Cell, argument: string, { least, greatest, expected }: Bounds): number {
  const value = readNumber(cell, argument);
  if (value >= least && value <= greatest) return value;
  throw new CellFault('#VALUE!', `${argument}: found ${value}; expected ${expected}`);
}

function zeroOr(cell: Cell, argument: string, bounds: Bounds): number {
  return cell === 0 ? 0 : within(cell, argument, bounds);
}

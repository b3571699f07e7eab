/** Density of the weights that a conventional mass stands for, kg/m³. Source: OIML R 111. */
export const CONVENTIONAL_DENSITY = 8000;

/** Air density that a conventional mass stands for, kg/m³. Source: OIML R 111. */
const CONVENTIONAL_AIR = 1.2;

/** Where and of what a weight hangs. */
export interface WeightConditions {
  /** Local gravity, m/s². */
  readonly gravity: number;
  /** Density of the air, kg/m³. */
  readonly airDensity: number;
  /** Density of the weight, kg/m³. */
  readonly density: number;
}

/**
 * Force of a weight hanging in air, N: m·g·(1 − ρa/ρ). Source: ASTM E74, there as M·g/9.80665·(1 − d/D) in kgf or lbf.
 * @param mass true mass, kg
 */
export function weightForce(mass: number, { gravity, airDensity, density }: WeightConditions): number {
  return mass * gravity * (1 - airDensity / density);
}

/**
 * True mass of a weight of given conventional mass, kg: m = mc·(1 − 1.2/8000)/(1 − 1.2/ρ). Source: OIML R 111.
 * @param density density of the weight, kg/m³, above that of air
 */
export function trueMass(conventionalMass: number, density: number): number {
  return (conventionalMass * (1 - CONVENTIONAL_AIR / CONVENTIONAL_DENSITY)) / (1 - CONVENTIONAL_AIR / density);
}

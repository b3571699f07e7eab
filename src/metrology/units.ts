import { decimalRatio, product, quotient, type Ratio } from './ratio';

/** What a unit measures. */
export type UnitKind = 'force' | 'torque' | 'mass';

/** A unit with its exact size. */
export interface Unit {
  readonly symbol: string;
  readonly kind: UnitKind;
  /** How many newtons, newton metres or kilograms it is. */
  readonly size: Ratio;
}

const exactly = decimalRatio;
/** Avoirdupois pound in kilograms, standard gravity in m/s² and inch in metres: exact by definition. */
const POUND = exactly('0.45359237');
const STANDARD_GRAVITY = exactly('9.80665');
const INCH = exactly('0.0254');
const POUND_FORCE = product(POUND, STANDARD_GRAVITY);
const sixteenth = (size: Ratio) => quotient(size, exactly('16'));
const thousand = (size: Ratio) => product(size, exactly('1000'));

const FORCES: Readonly<Record<string, Ratio>> = {
  N: exactly('1'), daN: exactly('10'), kN: exactly('1000'), MN: exactly('1000000'), mN: exactly('0.001'),
  lbf: POUND_FORCE, klbf: thousand(POUND_FORCE), kip: thousand(POUND_FORCE), ozf: sixteenth(POUND_FORCE),
  kgf: STANDARD_GRAVITY, gf: product(STANDARD_GRAVITY, exactly('0.001')), tf: thousand(STANDARD_GRAVITY), kp: STANDARD_GRAVITY,
};

const LENGTHS: Readonly<Record<string, Ratio>> = {
  m: exactly('1'), cm: exactly('0.01'), mm: exactly('0.001'), in: INCH, ft: product(INCH, exactly('12')),
};

/** Torques that the trade uses, each a force by a length. */
const TORQUES = [
  'N·m', 'kN·m', 'MN·m', 'mN·m', 'N·cm', 'N·mm', 'lbf·in', 'lbf·ft', 'klbf·ft', 'ozf·in', 'kgf·m', 'kgf·cm', 'gf·cm',
];

const MASSES: Readonly<Record<string, Ratio>> = {
  kg: exactly('1'), g: exactly('0.001'), mg: exactly('0.000001'), t: exactly('1000'), lb: POUND, oz: sixteenth(POUND),
};

/**
 * Every unit known. Sizes are products of exact definitions: 1 lb = 0.45359237 kg, g = 9.80665 m/s², 1 in = 25.4 mm.
 * Ounces are avoirdupois, tf is a force of 1000 kgf, kip is klbf by another name. Source: NIST SP 811, appendix B.
 */
export const UNITS: readonly Unit[] = [
  ...ofKind('force', Object.entries(FORCES)),
  ...ofKind('torque', TORQUES.map((symbol) => [symbol, torqueSize(symbol)])),
  ...ofKind('mass', Object.entries(MASSES)),
];

function ofKind(kind: UnitKind, sizes: readonly [string, Ratio][]): Unit[] {
  return sizes.map(([symbol, size]) => ({ symbol, kind, size }));
}

function torqueSize(symbol: string): Ratio {
  const [force, length] = symbol.split('·');
  return product(FORCES[force], LENGTHS[length]);
}

/**
 * Turns values in one unit into another of the same kind: value·(size of from)/(size of to).
 * The ratio of the sizes is exact; the value is rounded twice, so there and back agrees to 5 in 10¹⁶.
 */
export function converter(from: Unit, to: Unit): (value: number) => number {
  const { numerator, denominator } = quotient(from.size, to.size);
  const [by, over] = [Number(numerator), Number(denominator)];
  return (value) => (value * by) / over;
}

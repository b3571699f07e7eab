import { badInput } from './errors';
import { evaluate } from './polynomial';
import { fitPolynomial } from './polynomialFit';

/** Reference temperature of a calibration, °C. */
export const REFERENCE_TEMPERATURE = 23;

/** Temperature coefficient of steel elastic devices, per °C. Source: ASTM E74 (from memory). */
export const STEEL_COEFFICIENT = 0.00027;

/**
 * Temperature effect on zero: least-squares slope of the zero readings over temperature, output units per degree.
 * Source: ANSI/ISA-S37.1 vocabulary.
 */
export function zeroEffect(temperatures: readonly number[], zeros: readonly number[]): number {
  return fitPolynomial(temperatures, zeros, 1, { abscissa: 'temperature' }).coefficients[1];
}

/**
 * Temperature effect on span: least-squares slope of the spans over temperature as a fraction of the fitted span at the
 * reference temperature, per degree. Source: ANSI/ISA-S37.1 vocabulary.
 */
export function spanEffect(temperatures: readonly number[], spans: readonly number[], reference = REFERENCE_TEMPERATURE): number {
  const { coefficients } = fitPolynomial(temperatures, spans, 1, { abscissa: 'temperature' });
  const atReference = evaluate(coefficients, reference);
  if (atReference === 0) throw badInput(`spans: the fitted span at ${reference} degrees is 0; expected an output`);
  return coefficients[1] / atReference;
}

/** Effects of temperature on a transducer. */
export interface TemperatureEffects {
  /** Output units per degree. */
  readonly zero: number;
  /** Fraction of span per degree. */
  readonly span: number;
}

/**
 * Reading corrected to the reference temperature: (X − zero − zeroEffect·ΔT)/(1 + spanEffect·ΔT) + zero, ΔT = T − reference.
 * @param zero zero reading at the reference temperature, output units: the part of the reading that the span effect leaves alone
 */
export function correctedReading(
  reading: number, temperature: number, effects: TemperatureEffects, reference = REFERENCE_TEMPERATURE, zero = 0,
): number {
  const difference = temperature - reference;
  const growth = 1 + effects.span * difference;
  if (growth <= 0) {
    throw badInput(`spanEffect: found ${effects.span}; at ${difference} degrees from reference it leaves no span. Expected a fraction per degree`);
  }
  return (reading - zero - effects.zero * difference) / growth + zero;
}

/**
 * Deflection of a steel elastic device corrected to the reference temperature: d·(1 − K·(T − reference)).
 * Source: ASTM E74 (from memory).
 */
export function correctedDeflection(
  deflection: number, temperature: number, coefficient = STEEL_COEFFICIENT, reference = REFERENCE_TEMPERATURE,
): number {
  return deflection * (1 - coefficient * (temperature - reference));
}

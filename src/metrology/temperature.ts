import { badInput } from './errors';
import { evaluate } from './polynomial';
import { fitPolynomial } from './polynomialFit';

/** Reference temperature of a calibration, °C. */
export const REFERENCE_TEMPERATURE = 23;

/** Temperature coefficient of steel elastic devices, per °C. Source: ASTM E74 (from memory). */
export const STEEL_COEFFICIENT = 0.00027;

/** An effect of temperature with what is known of its scatter. */
export interface Effect {
  readonly value: number;
  /** In units of the value; undefined with two readings, which leave no degree of freedom. */
  readonly standardError: number | undefined;
  /** Readings it rests on. */
  readonly n: number;
}

/**
 * Temperature effect on zero: least-squares slope of the zero readings over temperature, output units per degree.
 * Source: ANSI/ISA-S37.1 vocabulary.
 */
export function zeroEffect(temperatures: readonly number[], zeros: readonly number[]): Effect {
  const { coefficients, standardErrors, n } = fitPolynomial(temperatures, zeros, 1, { abscissa: 'temperature' });
  return { value: coefficients[1], standardError: standardErrors[1], n };
}

/**
 * Temperature effect on span: least-squares slope b of the spans over temperature as a fraction of c, the fitted span at
 * the reference temperature, per degree. Source: ANSI/ISA-S37.1 vocabulary.
 *
 * Slope and mean span do not correlate, and c = mean + b·(reference − mean T), so to first order (JCGM 100) the standard
 * error of b/c is √((s_b·mean/c)² + (b/c)²·s²/n)/|c|.
 */
export function spanEffect(temperatures: readonly number[], spans: readonly number[], reference = REFERENCE_TEMPERATURE): Effect {
  const { coefficients, standardErrors, residualSd, n } = fitPolynomial(temperatures, spans, 1, { abscissa: 'temperature' });
  const atReference = evaluate(coefficients, reference);
  if (atReference === 0) throw badInput(`spans: the fitted span at ${reference} degrees is 0; expected an output`);
  const value = coefficients[1] / atReference;
  const ofSlope = standardErrors[1];
  if (ofSlope === undefined || residualSd === undefined) return { value, standardError: undefined, n };
  const mean = spans.reduce((sum, span) => sum + span / n, 0);
  const standardError = Math.hypot((ofSlope * mean) / atReference, (value * residualSd) / Math.sqrt(n)) / Math.abs(atReference);
  return { value, standardError, n };
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

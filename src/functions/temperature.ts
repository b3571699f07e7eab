import {
  correctedDeflection, correctedReading, type Effect, REFERENCE_TEMPERATURE, spanEffect, STEEL_COEFFICIENT, zeroEffect,
} from '../metrology/temperature';
import { counted } from '../metrology/wording';
import { eachWithBeside, type Together } from './beside';
import type { Cell, Cells } from './cells';
import { CellFault } from './faults';
import { readNumber, readPairs } from './readCell';
import { headed } from './table';

/**
 * Effect of temperature on zero and on span, by least squares over two temperatures or more.
 * @customfunction TEMPEFFECT
 * @group Reduction
 * @param {any[][]} temperatures Temperatures of the transducer, degrees; one column or row.
 * @param {any[][]} zeros Zero readings at those temperatures, output units.
 * @param {any[][]} spans Spans at those temperatures: net output at one and the same force, output units.
 * @param {any} [reference] Reference temperature, degrees; 23 if left out.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} Zero effect (output units per degree) and span effect (fraction of span per degree), side by side.
 * @formula zero effect = slope of zero over T
 * @formula span effect = (slope of span over T) / (fitted span at the reference temperature)
 * @source ANSI/ISA-S37.1 vocabulary
 * @note Parts come hot or icy out of the chamber: gloves, and wait until the transducer has settled. Stand clear of a loaded cell.
 * @example =PROVE.TEMPEFFECT({3;23;43},{0.01;0.012;0.014},{1.998;2;2.002},23,FALSE) → {0.0001,0.00005}
 */
export function tempEffect(temperatures: any[][], zeros: any[][], spans: any[][], reference?: any, headers?: any): any[][] {
  const { zero, span } = readEffects(temperatures, zeros, spans, reference);
  return headed(['Zero effect', 'Span effect'], [[zero.value, span.value]], headers);
}

/**
 * Report of the effect of temperature on zero and on span: each with its standard error.
 * @customfunction TEMPREPORT
 * @group Reduction
 * @param {any[][]} temperatures Temperatures of the transducer, degrees; one column or row.
 * @param {any[][]} zeros Zero readings at those temperatures, output units.
 * @param {any[][]} spans Spans at those temperatures: net output at one and the same force, output units.
 * @param {any} [reference] Reference temperature, degrees; 23 if left out.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} Table of four columns: effect, value (zero: output units per degree; span: fraction per degree), standard error, n.
 * @formula standard error of a slope b: s_b = s/√Σ(T − mean T)², s = √(Σ residual²/(n − 2))
 * @formula zero effect: b, s_b
 * @formula span effect: b/c, standard error √((s_b·mean span/c)² + (b/c)²·s²/n)/|c|, c = fitted span at the reference temperature
 * @source ANSI/ISA-S37.1 vocabulary; least squares, first-order propagation of JCGM 100
 * @note Two temperatures leave nothing to judge the scatter by: the standard error stays blank.
 * @note The line says nothing of drift or of a curve. Plot the readings, and come back to the first temperature at the end.
 * @note Parts come hot or icy out of the chamber: gloves, and wait until the transducer has settled. Stand clear of a loaded cell.
 * @example =PROVE.TEMPREPORT({13;23;33},{0.01;0.013;0.01},{1.99;2;2.01},23,FALSE) → {"Zero effect",0,0.000173205080756888,3;"Span effect",0.0005,0,3}
 */
export function tempReport(temperatures: any[][], zeros: any[][], spans: any[][], reference?: any, headers?: any): any[][] {
  const { zero, span } = readEffects(temperatures, zeros, spans, reference);
  const row = (name: string, { value, standardError, n }: Effect) => [name, value, standardError, n];
  return headed(['Effect', 'Value', 'Standard error', 'n'], [row('Zero effect', zero), row('Span effect', span)], headers);
}

function readEffects(temperatures: Cells, zeros: Cells, spans: Cells, reference: Cell): { zero: Effect; span: Effect } {
  const at = readNumber(reference, 'reference', REFERENCE_TEMPERATURE);
  const zeroLine = readLine(temperatures, zeros, 'zeros');
  const spanLine = readLine(temperatures, spans, 'spans');
  return { zero: zeroEffect(...zeroLine), span: spanEffect(...spanLine, at) };
}

/**
 * Readings corrected to the reference temperature.
 * @customfunction TEMPCORRECT
 * @group Reduction
 * @param {any[][]} readings Readings, output units; any block of cells.
 * @param {any[][]} temperatures Temperatures, degrees: one cell for all readings, one column (or row) beside them, or a block of the same shape.
 * @param {any} zeroEffect Temperature effect on zero, output units per degree.
 * @param {any} spanEffect Temperature effect on span, fraction of span per degree.
 * @param {any} [reference] Reference temperature, degrees; 23 if left out.
 * @param {any} [zero] Zero reading at the reference temperature, output units: the part of a reading that the span effect leaves alone; 0 if left out (net readings).
 * @returns {any[][]} Corrected readings, shaped like readings, in output units.
 * @formula corrected = (X − zero − zeroEffect·ΔT)/(1 + spanEffect·ΔT) + zero, ΔT = T − reference
 * @source ANSI/ISA-S37.1 vocabulary
 * @example =PROVE.TEMPCORRECT({2.003},{43},0.0001,0.00005) → {1.999000999000999}
 */
export function tempCorrect(
  readings: any[][], temperatures: any[][], zeroEffect: any, spanEffect: any, reference?: any, zero?: any,
): any[][] {
  const effects = { zero: readNumber(zeroEffect, 'zeroEffect'), span: readNumber(spanEffect, 'spanEffect') };
  const at = readNumber(reference, 'reference', REFERENCE_TEMPERATURE);
  const leftAlone = readNumber(zero, 'zero', 0);
  return eachWithBeside(readings, temperatures, beside('readings', 'temperatures'), (reading, t) => correctedReading(reading, t, effects, at, leftAlone));
}

/**
 * Deflections of a steel elastic device without temperature compensation, corrected to the reference temperature.
 * @customfunction ELASTICTEMP
 * @group Reduction
 * @param {any[][]} deflection Deflections (net readings), output units; any block of cells.
 * @param {any[][]} temperature Temperatures, °C: one cell for all, one column (or row) beside them, or a block of the same shape.
 * @param {any} [K] Temperature coefficient of the steel, per °C; 0.00027 if left out.
 * @param {any} [reference] Reference temperature, °C; 23 if left out.
 * @returns {any[][]} Corrected deflections, shaped like deflection, in output units.
 * @formula corrected = d·(1 − K·(T − reference))
 * @source ASTM E74 (from memory)
 * @example =PROVE.ELASTICTEMP({1000;2000},{25}) → {999.46;1998.92}
 */
export function elasticTemp(deflection: any[][], temperature: any[][], K?: any, reference?: any): any[][] {
  const coefficient = readNumber(K, 'K', STEEL_COEFFICIENT);
  const at = readNumber(reference, 'reference', REFERENCE_TEMPERATURE);
  return eachWithBeside(deflection, temperature, beside('deflection', 'temperature'), (d, t) => correctedDeflection(d, t, coefficient, at));
}

const beside = (readings: string, temperatures: string): Together =>
  ({ names: [readings, temperatures], nouns: ['a reading', 'a temperature'] });

/** Temperatures with a value read at each: two lists for a least-squares line. */
function readLine(temperatures: Cells, values: Cells, argument: string): [number[], number[]] {
  const pairs = readPairs(temperatures, values, ['temperatures', argument], 'temperature');
  const different = new Set(pairs.map(({ first }) => first)).size;
  if (different < 2) {
    throw new CellFault('#VALUE!', `${argument}: found readings at ${counted(different, 'different temperature')}; expected at least 2`);
  }
  return [pairs.map(({ first }) => first), pairs.map(({ second }) => second)];
}

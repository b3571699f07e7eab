import { formula, type Formula } from '../planBuilder';
import { checkHeading, type CheckLine, checkLines } from './checkLines';
import type { Desk } from './desk';
import type { ThermalCells } from './thermalSheet';

const FINE = '0.000000%';

type CheckedId = 'zero_effect' | 'zero_error' | 'zero_deviation' | 'span_effect' | 'span_error' | 'span_deviation';

/** Effects, their standard errors and the worst deviations again by built-in functions; gives the next free row. */
export function plainThermal(desk: Desk, row: number, cells: ThermalCells, at: (id: CheckedId) => string): number {
  const { cell, zeros, loaded, spans, reference, ratedOutput, rows } = cells;
  const missing = `COUNT(${spans})<${rows}`;
  const once = (text: string): Formula => formula(`IF(${missing},"",${text})`);
  const ofRated = (text: string): Formula => formula(`IF(OR(${missing},${ratedOutput}=""),"",${text})`);
  const [slope, intercept] = [`SLOPE(${spans},${cell})`, `INTERCEPT(${spans},${cell})`];
  const atReference = `(${intercept}+${slope}*${reference})`;
  const slopeError = (values: string) => `STEYX(${values},${cell})/SQRT(DEVSQ(${cell}))`;
  const spanError = `SQRT((${slopeError(spans)}*AVERAGE(${spans})/${atReference})^2+(${slope}/${atReference})^2*STEYX(${spans},${cell})^2/COUNT(${spans}))/ABS(${atReference})`;
  const line = (id: CheckedId, label: string, plain: Formula, words: string, isMagnitude = false): CheckLine => {
    const own = at(id);
    return {
      id, label, own: `IF(${own}="","",${isMagnitude ? `ABS(${own})` : own})`, plain, format: FINE, words,
      // An effect is small itself: a difference counts as a part of it, down to what binary fractions leave.
      scale: `(ABS(N(${own}))+1E-5)`,
    };
  };
  return checkLines(desk, checkHeading(desk, row), [
    line('zero_effect', 'Zero effect, per °C', ofRated(`SLOPE(${zeros},${cell})/${ratedOutput}`), 'SLOPE of zero/rated output'),
    line('zero_error', 'Its std. error, 10 °C', ofRated(`10*${slopeError(zeros)}/${ratedOutput}`), '10·STEYX/√DEVSQ(T)/RO'),
    line('zero_deviation', '|Zero off its line|', ofRated(`SUMPRODUCT(MAX(ABS(${zeros}-INTERCEPT(${zeros},${cell})-SLOPE(${zeros},${cell})*${cell})))/${ratedOutput}`), 'largest |zero − line|/RO', true),
    line('span_effect', 'Span effect, per °C', once(`${slope}/${atReference}`), 'SLOPE/(INTERCEPT + SLOPE·ref)'),
    line('span_error', 'Its std. error, 10 °C', once(`10*${spanError}`), 'STEYX, SLOPE, INTERCEPT propagated'),
    line('span_deviation', '|Span off its line|', once(`SUMPRODUCT(MAX(ABS(${loaded}-${zeros}-${intercept}-${slope}*${cell})))/ABS(${atReference})`), 'largest |span − line|/span at ref', true),
  ]);
}

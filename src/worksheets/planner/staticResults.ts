import { address, formula, type Formula } from '../planBuilder';
import { type ResultId, RESULTS, type SeriesTemplate } from '../templateSchema';
import { type Desk, PERCENT } from './desk';
import type { ResultLine } from './resultTable';
import { forces, onceRead, readings, type SeriesBlock } from './seriesBlock';
import { differentLoads, type SeriesAnswers } from './seriesForm';

export type StaticId = Exclude<ResultId, 'calibration'>;

/** A limit of another line, or the number that a template gives. */
export type Limits = (id: string) => number | Formula | undefined;

/** Cells that the results read. */
export interface ConditionCells {
  readonly capacity: string;
  /** None if the item has no rated output by specification. */
  readonly ratedOutput?: string;
}

/** A static characteristic as a line of the sheet. F, R: the ranges of forces and readings; RO: the cell of the output at capacity; Z: the first zero. */
interface StaticResult {
  readonly label: string;
  readonly call: string;
  /** As a reviewer reads it. */
  readonly shown: string;
}

const STATICS: Readonly<Record<Exclude<StaticId, 'sensitivity' | 'rated_output'>, StaticResult>> = {
  zero_balance: { label: 'Zero balance', call: 'PROVE.ZEROBALANCE(Z,RO)', shown: 'PROVE.ZEROBALANCE(zero,output)' },
  nonlinearity: { label: 'Non-linearity, terminal line', call: 'PROVE.NONLINEARITY(F,R)', shown: 'PROVE.NONLINEARITY(F,X)' },
  hysteresis: { label: 'Hysteresis', call: 'PROVE.HYSTERESIS(F,R)', shown: 'PROVE.HYSTERESIS(F,X)' },
  repeatability: { label: 'Repeatability', call: 'PROVE.REPEATABILITY(F,R)', shown: 'PROVE.REPEATABILITY(F,X)' },
  zero_return: { label: 'Zero return', call: 'PROVE.ZERORETURN(F,R)', shown: 'PROVE.ZERORETURN(F,X)' },
  combined_error: { label: 'Combined error', call: 'PROVE.COMBINEDERROR(F,R)', shown: 'PROVE.COMBINEDERROR(F,X)' },
  error_band: { label: 'Static error band, half-width', call: 'INDEX(PROVE.ERRORBAND(F,R,FALSE),1,1)', shown: 'PROVE.ERRORBAND(F,X)' },
};

/** Why a result cannot be computed from a series; undefined if it can. */
export function impossible(id: ResultId, { points, runs }: SeriesAnswers): string | undefined {
  const top = points.indexOf(Math.max(...points));
  const rising = new Set(points.slice(0, top + 1));
  if (id === 'nonlinearity' && differentLoads(points.slice(0, top + 1)) < 2) return 'non-linearity needs two loads or more on the way up';
  if (id === 'hysteresis' && !points.slice(top + 1).some((point) => point > 0 && rising.has(point))) return 'hysteresis needs a load on the way down that also stands on the way up';
  if (id === 'repeatability' && runs < 2) return 'repeatability needs two runs or more';
  if (id === 'zero_return' && points.at(-1) !== 0) return 'zero return needs a zero at the end';
  return undefined;
}

/** The results of a template that a series can give, in the order of the sheet, with those that they are computed from. */
export function possibleResults(template: SeriesTemplate, series: SeriesAnswers): readonly ResultId[] {
  const wanted = new Set<ResultId>(template.results);
  if (wanted.has('rated_output') || wanted.has('zero_balance')) wanted.add('sensitivity');
  return RESULTS.filter((id) => wanted.has(id) && impossible(id, series) === undefined);
}

/** Lines of static characteristics of a block; `name` makes the id of a line, `at` its address. */
export function staticLines(
  { item, formats }: Desk, block: SeriesBlock, ids: readonly StaticId[], cells: ConditionCells, limits: Limits,
  name: (id: string) => string, at: (id: StaticId) => string,
): ResultLine[] {
  return ids.map((id): ResultLine => {
    if (id === 'sensitivity') {
      return {
        id: name(id), label: 'Output at capacity', format: formats.output, unit: item.outputUnit,
        value: onceRead(block, `PROVE.SENSITIVITY(${forces(block)},${readings(block)},${cells.capacity})`),
        function: 'PROVE.SENSITIVITY(F,X,capacity)',
      };
    }
    const judged = { limit: limits(id), limitFormat: PERCENT, rule: 'magnitude' as const, ...(typeof limits(id) === 'object' ? {} : { name: id }) };
    if (id === 'rated_output') {
      const output = at('sensitivity');
      return {
        id: name(id), label: 'Against rated output as specified', format: PERCENT, unit: 'of spec.', judged, function: '|output|/rated output − 1',
        value: formula(`IF(OR(${output}="",${cells.ratedOutput}=""),"",ABS(${output})/${cells.ratedOutput}-1)`),
      };
    }
    const { label, call, shown } = STATICS[id];
    const zero = address(block.readingColumn, block.firstRow);
    const text = call.replace('F,R', `${forces(block)},${readings(block)}`).replace('Z,RO', `${zero},${id === 'zero_balance' ? at('sensitivity') : ''}`);
    return { id: name(id), label, format: PERCENT, unit: 'of RO', judged, function: shown, value: onceRead(block, text) };
  });
}

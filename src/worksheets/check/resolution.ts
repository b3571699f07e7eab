import { CLASS_MULTIPLES } from '../../metrology/loadingRange';
import { readingsOf, type Block } from '../block';
import type { FilledCell } from '../filledSheet';
import { shown } from '../shown';
import type { Finding } from './finding';
import { isBlank, type RunSheet } from './runSheet';
import { greatestForce, trendOf } from './trend';

/** Degrees above 2 need a resolution finer than this share of the output at the greatest force. Source: ASTM E74 (from memory). */
const FINE_SHARE = 50_000;

/**
 * A resolution that is not stated, or too coarse for the lowest force or for the degree of a polynomial calibration. A sheet that
 * says from where class AA must hold wants class AA; others are held to class A.
 */
export function resolution(sheet: RunSheet): Finding[] {
  const cell = sheet.cells.cell('resolution');
  if (!cell || sheet.blocks.every(isBlank)) return [];
  if (cell.value === null) {
    return [{ severity: 'missing', at: cell.at, message: `The resolution in ${cell.at} is empty; expected the least step of the reading, in output units` }];
  }
  if (typeof cell.value !== 'number' || cell.value < 0) return [];
  const degree = sheet.cells.cell('degree');
  const block = sheet.forceBlocks().find((candidate) => !isBlank(candidate));
  // A sheet that wants a class of its own table judges the resolution by that.
  if (!degree || !block || cell.value === 0 || sheet.cells.cell('class_wanted')) return [];
  return [...sheet.forceBlocks().flatMap((each) => lowestForce(sheet, each, cell.value as number)), ...degreeTooHigh(sheet, block, degree, cell)];
}

/** Output per unit of force and the greatest force, by the run with most readings. */
function span(block: Block): { slope: number; greatest: number } | undefined {
  const points = block.runs.map((_, run) => readingsOf(block, run)).reduce((most, run) => (run.length > most.length ? run : most));
  const trend = trendOf(points);
  return trend && { slope: Math.abs(trend.slope), greatest: greatestForce(points) };
}

function lowestForce(sheet: RunSheet, block: Block, step: number): Finding[] {
  const output = span(block);
  const loaded = block.applied.filter(({ value }) => typeof value === 'number' && value !== 0);
  if (!output || loaded.length === 0) return [];
  const size = ({ value }: FilledCell) => Math.abs(value as number);
  const lowest = loaded.reduce((least, cell) => (size(cell) < size(least) ? cell : least));
  const inForce = step / output.slope;
  const wanted = sheet.cells.number('limit_class_aa_from') === undefined ? 'A' : 'AA';
  if (size(lowest) >= CLASS_MULTIPLES[wanted] * inForce * (1 - 1e-9)) return [];
  return [{
    severity: 'odd', at: lowest.at,
    message: `${sheet.blockPrefix(block)}the lowest force, ${sheet.force(lowest.value as number)} in ${lowest.at}, is ${shown(Math.floor(size(lowest) / inForce))} resolutions of ${sheet.force(Number(inForce.toPrecision(3)))}; `
      + `expected at least ${CLASS_MULTIPLES[wanted]} for class ${wanted} (ASTM E74, from memory)`,
  }];
}

function degreeTooHigh(sheet: RunSheet, block: Block, degree: FilledCell, cell: FilledCell): Finding[] {
  const output = span(block);
  if (!output || typeof degree.value !== 'number' || degree.value <= 2) return [];
  const steps = output.slope * output.greatest / (cell.value as number);
  if (steps > FINE_SHARE) return [];
  return [{
    severity: 'wrong', at: degree.at,
    message: `${degree.at} holds degree ${degree.value}, and the resolution in ${cell.at} is 1/${shown(Math.round(steps))} of the output at ${sheet.force(output.greatest)}; `
      + `expected finer than 1/${FINE_SHARE} above degree 2 (ASTM E74, from memory)`,
  }];
}

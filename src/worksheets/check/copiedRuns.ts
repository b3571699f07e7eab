import { readingsOf, type Block } from '../block';
import type { Finding } from './finding';
import { readingStep } from './readingStep';
import type { RunSheet } from './runSheet';
import { greatestForce, trendOf } from './trend';

/** Equal runs are no wonder where there are few readings, or an instrument shows few steps. Common practice, no source. */
const LEAST_READINGS = 8;
const LEAST_STEPS = 100_000;

/** Runs that repeat an earlier run of their block to the last digit: likely copied. */
export function copiedRuns(sheet: RunSheet): Finding[] {
  return sheet.forceBlocks().filter((block) => isFine(sheet, block)).flatMap((block) => block.runs.flatMap((cells, run): Finding[] => {
    const original = block.runs.slice(0, run).findIndex((earlier) => earlier.every(({ value }, row) => value === cells[row].value));
    if (original < 0 || cells.some(({ value }) => typeof value !== 'number')) return [];
    const { at } = cells[0];
    return [{
      severity: 'odd', at,
      message: `${sheet.runName(block, run)}: from ${at} on, all ${cells.length} readings repeat run ${original + 1} to the last digit; expected some scatter: copied?`,
    }];
  }));
}

function isFine(sheet: RunSheet, block: Block): boolean {
  const points = readingsOf(block, 0);
  const trend = trendOf(points);
  if (!trend || points.length < LEAST_READINGS) return false;
  return Math.abs(trend.slope * greatestForce(points)) >= LEAST_STEPS * readingStep(sheet, block);
}

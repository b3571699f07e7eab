import { readingsOf, type AppliedReading, type Block } from '../block';
import { capped, type Finding } from './finding';
import { readingStep } from './readingStep';
import type { RunSheet } from './runSheet';
import { greatestForce, trendOf, type Trend } from './trend';

/** What the order of readings tells: findings, and the cells that no other check needs to look at again. */
export interface OrderOfReadings {
  readonly findings: readonly Finding[];
  /** Addresses of readings that are suspect already. */
  readonly suspects: ReadonlySet<string>;
}

/** Steps of force smaller than this share of the output at the greatest force, or than ten steps of the reading, are not judged. */
const LEAST_SHARE = 0.002;
const LEAST_STEPS = 10;

/**
 * Readings that break the order of their run: where |force| rises, the reading must move on, and where it falls, move back.
 * Two neighbours that fit each other's place look swapped; else the one farther from the trend of its run is suspect.
 */
export function readingOrder(sheet: RunSheet): OrderOfReadings {
  const suspects = new Set<string>();
  const findings = sheet.forceBlocks().flatMap((block) => {
    const step = readingStep(sheet, block);
    return capped(block.runs.flatMap((_, run) => inRun(sheet, block, run, step, suspects)), `readings of ${block.label.toLowerCase()} that break the order`);
  });
  return { findings, suspects };
}

function inRun(sheet: RunSheet, block: Block, run: number, step: number, suspects: Set<string>): Finding[] {
  const points = readingsOf(block, run);
  const trend = trendOf(points);
  if (!trend) return [];
  const least = Math.max(LEAST_STEPS * step, LEAST_SHARE * Math.abs(trend.slope) * greatestForce(points));
  return points.slice(1).flatMap((after, i): Finding[] => {
    const before = points[i];
    const expected = trend.at(after.applied) - trend.at(before.applied);
    const inOrder = (after.reading - before.reading) * Math.sign(expected) > 0;
    if (inOrder || Math.abs(expected) <= least || [before, after].some(({ cell }) => suspects.has(cell.at))) return [];
    const found = explained(sheet, trend, before, after);
    found.cells.forEach((at) => suspects.add(at));
    return [{ severity: 'wrong', at: found.cells[0], message: `${sheet.runName(block, run)}: ${found.words}` }];
  });
}

function explained(sheet: RunSheet, trend: Trend, before: AppliedReading, after: AppliedReading): { cells: string[]; words: string } {
  const [here, next] = [before.cell.at, after.cell.at];
  if (areSwapped(trend, before, after)) {
    return {
      cells: [here, next],
      words: `${here} holds ${sheet.output(before.reading)} and ${next} ${sheet.output(after.reading)}, each near what the other’s force should give; they look swapped`,
    };
  }
  const off = ({ applied, reading }: AppliedReading) => Math.abs(reading - trend.at(applied));
  const [suspect, other] = off(before) > off(after) ? [before, after] : [after, before];
  const same = suspect.reading === other.reading ? 'the same as' : 'out of order with';
  return {
    cells: [suspect.cell.at],
    words: `${suspect.cell.at} holds ${sheet.output(suspect.reading)} at ${sheet.force(suspect.applied)}, ${same} ${other.cell.at} at ${sheet.force(other.applied)}; `
      + `expected about ${sheet.output(rounded(trend.at(suspect.applied)))}: a mistyped digit, or a reading in the wrong row?`,
  };
}

/** Each reading lies close to where the other belongs, measured by the step between them. */
function areSwapped(trend: Trend, before: AppliedReading, after: AppliedReading): boolean {
  const near = 0.25 * Math.abs(trend.at(after.applied) - trend.at(before.applied));
  return Math.abs(before.reading - trend.at(after.applied)) < near && Math.abs(after.reading - trend.at(before.applied)) < near;
}

/** The trend is a line: no more than three digits of it are worth saying. */
function rounded(value: number): number {
  return Number(value.toPrecision(3));
}

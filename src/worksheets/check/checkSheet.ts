import type { ReadSheet } from '../readSheet';
import { appliedForces, appliedTimes, beyondStandard } from './appliedForces';
import { dates, standardDue, temperature } from './circumstances';
import { dueDate } from './dueDate';
import { emptyReadings, readingsThatAreNoNumbers } from './completeness';
import { copiedRuns } from './copiedRuns';
import { inOrder, type Finding } from './finding';
import { isUntouched, layout } from './layout';
import { outliers } from './outliers';
import { overwritten } from './overwritten';
import { readingOrder } from './readingOrder';
import { resolution } from './resolution';
import { outside, outsideTolerance, resultErrors } from './results';
import { RunSheet } from './runSheet';
import { emptyRows, orderOfRows, rowsThatAreNoNumbers } from './typedRows';
import { signOfRuns } from './signOfRuns';
import { zeroReturns } from './zeroReturn';

export type { Finding } from './finding';

/**
 * What is missing, odd or wrong in a filled-in sheet: the gravest first, then row by row. Sound sheets give none; a sheet
 * without readings gives what can be told before the first one.
 */
export function checkSheet(read: ReadSheet): readonly Finding[] {
  const sheet = new RunSheet(read);
  const empty = emptyReadings(sheet);
  const before = [...layout(sheet), ...empty, ...emptyRows(sheet), ...appliedForces(sheet), ...appliedTimes(sheet), ...beyondStandard(sheet), ...standardDue(sheet), ...overwritten(sheet)];
  return inOrder(isUntouched(sheet) ? before : [...before, ...ofReadings(sheet, empty.length > 0)]);
}

/** What can be told once there are readings. */
function ofReadings(sheet: RunSheet, someEmpty: boolean): Finding[] {
  const noNumbers = readingsThatAreNoNumbers(sheet);
  const order = readingOrder(sheet);
  const sign = signOfRuns(sheet);
  const copied = copiedRuns(sheet);
  const doubtful = [...sign, ...copied].flatMap(({ at }) => cellsOfRun(sheet, at));
  const readingsMissing = noNumbers.length > 0 || someEmpty;
  return [
    ...noNumbers, ...rowsThatAreNoNumbers(sheet), ...orderOfRows(sheet), ...dueDate(sheet), ...order.findings, ...sign, ...zeroReturns(sheet), ...copied,
    ...outliers(sheet, new Set([...order.suspects, ...doubtful])),
    ...resolution(sheet), ...temperature(sheet), ...dates(sheet),
    ...resultErrors(sheet, readingsMissing), ...outside(sheet), ...outsideTolerance(sheet),
  ];
}

/** Addresses of the run that a cell belongs to. */
function cellsOfRun(sheet: RunSheet, at: string): string[] {
  const run = sheet.blocks.flatMap(({ runs }) => runs).find((cells) => cells.some((cell) => cell.at === at)) ?? [];
  return run.map((cell) => cell.at);
}

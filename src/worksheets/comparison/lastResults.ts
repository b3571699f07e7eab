import { FilledSheet } from '../filledSheet';
import type { ReadSheet } from '../readSheet';
import { appliedOf, hasReadings, isIndication, resultOf, type RunSide, sidesOf, sideId } from './runSide';

/** The highest power of force that a calibration polynomial has. */
export const MOST_DEGREE = 5;

/** What an item gave at an earlier calibration, in one direction. */
export interface LastResults {
  /** Where it was read: the name of the sheet. */
  readonly where: string;
  /** The item's identification on that sheet, if it says one. */
  readonly identification?: string;
  /** Which block: "tension", or "system". */
  readonly block: string;
  /** Date, as a spreadsheet counts days. */
  readonly date?: number;
  /** Coefficients of output as a polynomial of force, constant first. */
  readonly coefficients?: readonly number[];
  /** Net output at capacity. */
  readonly output?: number;
  /** Output without load: the mean of the zeros before the runs. */
  readonly zero?: number;
  readonly capacity?: number;
  /** Units of what is applied and of the output. */
  readonly unit?: string;
  readonly outputUnit?: string;
}

/**
 * What the sheets of an earlier workbook say of its runs: an entry a sheet and block that gives an output. The latest first;
 * of one date as left before as found, the later sheet before the earlier.
 */
export function lastResults(sheets: readonly ReadSheet[]): LastResults[] {
  const found = sheets.flatMap((sheet) => (['as_found', 'as_left'] as const).flatMap((stage) => {
    const sides = sidesOf(sheet, stage);
    // A sheet without stages gives the same twice.
    const own = stage === 'as_found' || sides.some(({ block }) => block.id.startsWith(stage)) ? sides : [];
    return hasReadings(own) ? own.flatMap((side) => resultsOf(side) ?? []) : [];
  }));
  return found.reverse().sort((a, b) => (b.date ?? -Infinity) - (a.date ?? -Infinity));
}

/** What tells an item from others; undefined where it is not known. */
export interface ItemMark {
  readonly name: string | undefined;
  readonly identification: string | undefined;
}

/**
 * The results of an item's block among those of an earlier workbook: those under its identification; where none says it, those
 * under one that is part of it or that it is part of, a serial number say; else those of sheets that say no identification, before
 * others those that begin with the item's name. Undefined if there are none.
 */
export function lastOf(last: readonly LastResults[], block: string, { name = '', identification }: ItemMark): LastResults | undefined {
  const own = plain(identification);
  const unmarked = last.filter((one) => own === '' || plain(one.identification) === '');
  const candidates = [
    last.filter((one) => own !== '' && plain(one.identification) === own),
    last.filter((one) => isPart(plain(one.identification), own)),
    unmarked.filter(({ where }) => plain(name) !== '' && plain(where).startsWith(plain(name))),
    unmarked,
  ].find((some) => some.length > 0) ?? [];
  return candidates.find((one) => one.block === block);
}

function plain(words: string | undefined): string {
  return (words ?? '').trim().toLowerCase();
}

/** Whether one identification stands within the other. */
function isPart(one: string, other: string): boolean {
  return one !== '' && other !== '' && (one.includes(other) || other.includes(one));
}

function resultsOf(side: RunSide): LastResults | undefined {
  const { cells, sheet } = side;
  const output = outputAtCapacity(side);
  const coefficients = coefficientsOf(side);
  if (output === undefined && coefficients === undefined) return undefined;
  const known = {
    identification: cells.text('identification'), date: cells.number('date'), coefficients, output, zero: zeroOf(side),
    capacity: capacityOf(side), unit: cells.text(cells.cell('scale') ? 'output_unit' : 'unit'), outputUnit: cells.text('output_unit'),
  };
  return { where: sheet, block: sideId(side), ...Object.fromEntries(Object.entries(known).filter(([, value]) => value !== undefined)) };
}

/** Capacity in the unit of the values that the readings are compared with. */
function capacityOf({ cells }: RunSide): number | undefined {
  const capacity = cells.number('capacity');
  return capacity === undefined ? undefined : capacity * (cells.number('scale') ?? 1);
}

function coefficientsOf(side: RunSide): number[] | undefined {
  if (isIndication(side)) return undefined;
  const list: number[] = [];
  for (let power = 0; power <= MOST_DEGREE; power += 1) {
    const value = resultOf(side, `a${power}`)?.value;
    if (typeof value !== 'number') break;
    list.push(value);
  }
  return list.length > 1 ? list : undefined;
}

/** Mean net output at the greatest force, scaled to capacity; undefined while it is not there. */
function outputAtCapacity(side: RunSide): number | undefined {
  const applied = appliedOf(side);
  const capacity = capacityOf(side);
  const greatest = Math.max(...applied.map((value) => Math.abs(value ?? 0)));
  const top = applied.findIndex((value) => Math.abs(value ?? 0) === greatest);
  const output = meanOutput(side.cells, side, top);
  return output === undefined || greatest === 0 || capacity === undefined ? undefined : (output * capacity) / greatest;
}

function meanOutput(cells: FilledSheet, { block }: RunSide, row: number): number | undefined {
  const mean = cells.columns(`mean_${block.id}`)?.[0]?.[row]?.value;
  return typeof mean === 'number' ? mean : average((cells.rows(`net_${block.id}`)?.[row] ?? []).map(({ value }) => value));
}

function zeroOf({ block }: RunSide): number | undefined {
  const row = block.applied.findIndex(({ value }) => value === 0);
  return row < 0 ? undefined : average(block.runs.map((run) => run[row].value));
}

function average(values: readonly unknown[]): number | undefined {
  const numbers = values.filter((value) => typeof value === 'number');
  return numbers.length === 0 ? undefined : numbers.reduce((sum, value) => sum + value, 0) / numbers.length;
}

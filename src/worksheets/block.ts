import type { FilledCell, FilledSheet } from './filledSheet';

/** A block of readings: runs of readings beside the forces, or the times, that they were taken at. */
export interface Block {
  /** What follows `readings_` in the names of the sheet, like "as_found_tension". */
  readonly id: string;
  /** The id in words: "As found tension". */
  readonly label: string;
  /** "forces": readings at applied forces or torques. "times": readings under constant force. */
  readonly over: 'forces' | 'times';
  /** The applied forces, or the times, in the order of the readings. */
  readonly applied: readonly FilledCell[];
  /** A column of readings a run, each as long as `applied`. */
  readonly runs: readonly (readonly FilledCell[])[];
}

/** The blocks of a sheet, from top to bottom; a block whose ranges differ in length is left out. */
export function blocksOf(sheet: FilledSheet): Block[] {
  return sheet.namesAfter('readings_').flatMap((id): Block[] => {
    const over = sheet.cell(`forces_${id}`) ? 'forces' : 'times';
    const applied = sheet.columns(`${over}_${id}`)?.[0];
    const runs = sheet.columns(`readings_${id}`);
    if (!applied || !runs || runs[0].length !== applied.length) return [];
    return [{ id, label: inWords(id), over, applied, runs }];
  });
}

/** "as_found_tension" → "As found tension". */
export function inWords(id: string): string {
  const words = id.replace(/counter_clockwise/g, 'counter-clockwise').replace(/_/g, ' ').trim();
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** A reading, and the force or time it was taken at. */
export interface AppliedReading {
  /** Its row in the block, from 0. */
  readonly row: number;
  /** As applied: compression and counter-clockwise negative. */
  readonly applied: number;
  readonly reading: number;
  readonly cell: FilledCell;
}

/** The readings of one run that are numbers beside a number, in the order taken. */
export function readingsOf(block: Block, run: number): AppliedReading[] {
  return block.runs[run].flatMap((cell, row): AppliedReading[] => {
    const applied = block.applied[row].value;
    return typeof cell.value === 'number' && typeof applied === 'number' ? [{ row, applied, reading: cell.value, cell }] : [];
  });
}

/**
 * The same with net readings: those of the sheet where it has them all, else each reading less the zero before the run.
 * Undefined where the run has neither.
 */
export function netReadingsOf(sheet: FilledSheet, block: Block, run: number): AppliedReading[] | undefined {
  const raw = readingsOf(block, run);
  const nets = sheet.columns(`net_${block.id}`)?.[run];
  const ofSheet = raw.flatMap((point): AppliedReading[] => {
    const net = nets?.[point.row]?.value;
    return typeof net === 'number' ? [{ ...point, reading: net }] : [];
  });
  if (ofSheet.length === raw.length) return ofSheet;
  const zero = raw[0];
  return zero.row === 0 && zero.applied === 0 ? raw.map((point) => ({ ...point, reading: point.reading - zero.reading })) : undefined;
}

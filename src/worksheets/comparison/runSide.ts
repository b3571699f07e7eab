import { type Block, blocksOf, inWords } from '../block';
import { FilledSheet } from '../filledSheet';
import { address } from '../planBuilder';
import type { ReadSheet } from '../readSheet';
import { linkTo } from './links';

/** A block of a run, as another sheet refers to it. */
export interface RunSide {
  /** Name of the run's sheet, and the sheet. */
  readonly sheet: string;
  readonly cells: FilledSheet;
  readonly block: Block;
  /** What it is of, without the stage: "tension"; "" where a sheet of indications has one direction only. */
  readonly of: string;
}

/** Which readings of a sheet are meant, where it holds both. */
export type Stage = 'as_found' | 'as_left';

const STAGE = /^as_(found|left)(?:_|$)/;

/** The blocks of a run at applied forces: of a sheet with stages those of one stage, of another sheet all. */
export function sidesOf(sheet: ReadSheet, stage: Stage): RunSide[] {
  const cells = new FilledSheet(sheet);
  const blocks = blocksOf(cells).filter(({ over }) => over === 'forces');
  const staged = blocks.some(({ id }) => STAGE.test(id));
  return blocks
    .filter(({ id }) => !staged || id.startsWith(stage))
    .map((block) => ({ sheet: sheet.name, cells, block, of: block.id.replace(STAGE, '') }));
}

/** Whether readings of a stage are there, or any at all where the sheet has no stages. */
export function hasReadings(sides: readonly RunSide[]): boolean {
  return sides.some(({ block }) => block.runs.some((run) => run.some(({ value }) => value !== null)));
}

/** A block in words: "tension"; "system" where it has no name of its own. */
export function sideId({ of }: RunSide): string {
  return of === '' ? 'system' : of;
}

export function sideWords(side: RunSide): string {
  return inWords(sideId(side)).toLowerCase();
}

/** Whether the block is of indications in the unit of what is applied, whose nominal value is the applied one. */
export function isIndication({ cells, block }: RunSide): boolean {
  return cells.cell(`errors_${block.id}`) !== undefined;
}

/** Applied values by row; undefined where there is no number. */
export function appliedOf({ block }: RunSide): (number | undefined)[] {
  return block.applied.map(({ value }) => (typeof value === 'number' ? value : undefined));
}

/** The applied value of a row, as a formula gives it. */
export function appliedLink({ sheet, block }: RunSide, row: number): string {
  return linkTo(sheet, block.applied[row].at);
}

/** The mean net output of a row, as a formula names it; empty while there is none. */
export function outputLink({ sheet, cells, block }: RunSide, row: number): string {
  const mean = cells.columns(`mean_${block.id}`)?.[0]?.[row];
  if (mean) return linkTo(sheet, mean.at);
  const nets = rangeLink(sheet, (cells.rows(`net_${block.id}`) ?? [])[row] ?? []);
  return nets === undefined ? '""' : `IF(COUNT(${nets})=0,"",AVERAGE(${nets}))`;
}

/** Ranges of the readings without load, a range a row, in the order of the rows. */
export function zeroLinks({ sheet, block }: RunSide): string[] {
  return block.applied.flatMap(({ value }, row) => (value === 0 ? rangeLink(sheet, block.runs.map((run) => run[row])) ?? [] : []));
}

function rangeLink(sheet: string, cells: readonly { readonly column: number; readonly row: number }[]): string | undefined {
  if (cells.length === 0) return undefined;
  const [first, last] = [cells[0], cells[cells.length - 1]];
  const from = address(first.column, first.row);
  return linkTo(sheet, first === last ? from : `${from}:${address(last.column, last.row)}`);
}

/** The cell of a result of a block: of its own name, or of one that holds for the whole sheet. */
export function resultOf({ cells, block }: Pick<RunSide, 'cells' | 'block'>, id: string) {
  return cells.cell(`value_${id}_${block.id}`) ?? cells.cell(`value_${id}`);
}

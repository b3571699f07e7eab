import type { Block } from '../block';
import type { FilledCell } from '../filledSheet';
import { capped, type Finding } from './finding';
import { isBlank, type RunSheet } from './runSheet';

/** Readings that are not there yet: one finding a run, or one for the sheet if none is there. */
export function emptyReadings(sheet: RunSheet): Finding[] {
  if (sheet.blocks.length === 0) return [];
  if (sheet.blocks.every(isBlank)) {
    const { at } = sheet.blocks[0].runs[0][0];
    return [{ severity: 'missing', at, message: `No readings yet: the first belongs in ${at}` }];
  }
  return sheet.blocks.filter((block) => !isComplete(sheet, block)).flatMap((block) => {
    if (isBlank(block)) {
      const { at } = block.runs[0][0];
      return [{ severity: 'missing', at, message: `${block.label}: no readings yet, the first belongs in ${at}` }];
    }
    return block.runs.flatMap((_, run) => emptyInRun(sheet, block, run));
  });
}

/** A block with as many readings as the sheet says it needs, and one as left where nothing was adjusted. */
function isComplete(sheet: RunSheet, block: Block): boolean {
  if (isBlank(block)) return block.id.startsWith('as_left');
  const needed = sheet.cells.number(`needed_${block.id}`);
  const read = block.runs.flat().filter(({ value }) => value !== null).length;
  return needed !== undefined && read >= needed;
}

function emptyInRun(sheet: RunSheet, block: Block, run: number): Finding[] {
  const cells = block.runs[run];
  const empty = cells.filter(({ value }) => value === null);
  if (empty.length === 0) return [];
  const name = sheet.runName(block, run);
  const { at } = empty[0];
  if (empty.length === cells.length) {
    return [{ severity: 'missing', at, message: `${name}: all ${cells.length} readings are empty, from ${at} on` }];
  }
  const count = `${empty.length} of ${cells.length} readings ${empty.length === 1 ? `is empty, ${at}` : `are empty, first at ${at}`}`;
  return [{ severity: 'missing', at, message: `${name}: ${count}${zeroBeforeRun(sheet, block, empty[0], cells[0])}` }];
}

function zeroBeforeRun(sheet: RunSheet, block: Block, empty: FilledCell, first: FilledCell): string {
  const isZero = block.over === 'forces' && empty === first && block.applied[0].value === 0;
  return isZero && sheet.cells.cell(`net_${block.id}`) ? '; this is the zero before the run, without which it has no net readings' : '';
}

/** Readings that are text, true or false, or an error. */
export function readingsThatAreNoNumbers(sheet: RunSheet): Finding[] {
  const found = sheet.blocks.flatMap((block) => block.runs.flatMap((cells, run) => cells
    .filter(({ value }) => value !== null && typeof value !== 'number')
    .map(({ at, value }): Finding => ({ severity: 'wrong', at, message: `${sheet.runName(block, run)}: ${at} holds ${described(value)}; expected a number` }))));
  return capped(found, 'readings that are no numbers');
}

/** What a cell holds that should hold a number, in words. */
export function described(value: FilledCell['value']): string {
  if (value === null) return 'nothing';
  if (typeof value === 'number') return String(value);
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  if (typeof value !== 'string') return `the error ${value.error}`;
  const text = value.length > 24 ? `${value.slice(0, 23)}…` : value;
  return `the text “${text}”${looksLikeNumber(value) ? ', which looks like a number but is text: type it again, with a decimal point' : ''}`;
}

function looksLikeNumber(text: string): boolean {
  const digits = text.replace(/[\s\u00a0']/g, '').replace(',', '.').replace('−', '-');
  return digits !== '' && Number.isFinite(Number(digits));
}

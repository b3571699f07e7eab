import { appliedUnitOf } from '../appliedUnit';
import { blocksOf, inWords, type Block } from '../block';
import { FilledSheet } from '../filledSheet';
import type { ReadSheet } from '../readSheet';
import { withUnit } from '../shown';

/** A filled-in sheet as the checks see it: its cells, its blocks, and how to speak of them. */
export class RunSheet {
  readonly cells: FilledSheet;
  readonly blocks: readonly Block[];

  constructor(sheet: ReadSheet) {
    this.cells = new FilledSheet(sheet);
    this.blocks = blocksOf(this.cells);
  }

  /** Blocks of readings at applied forces. */
  forceBlocks(): readonly Block[] {
    return this.blocks.filter(({ over }) => over === 'forces');
  }

  /** "Run 2", "Tension, run 2", "Tension": no more than tells it from others. */
  runName(block: Block, run: number): string {
    const label = this.blocks.length > 1 ? block.label : '';
    if (block.runs.length === 1) return label || 'Readings';
    return label ? `${label}, run ${run + 1}` : `Run ${run + 1}`;
  }

  /** What stands before a message on a whole block: "Tension: ", or nothing where there is one block. */
  blockPrefix(block: Block): string {
    return this.blocks.length > 1 ? `${block.label}: ` : '';
  }

  /** What a result is called: the label beside its cell, after its block if there are several; else its id in words. */
  resultName(result: string): string {
    const cell = this.cells.cell(`value_${result}`);
    const label = cell && this.cells.labelOf(cell);
    if (!label) return inWords(result);
    const block = this.blocks.find(({ id }) => result.endsWith(`_${id}`));
    return block ? `${this.blockPrefix(block)}${label}` : label;
  }

  /** A force with its unit. */
  force(value: number): string {
    return withUnit(value, appliedUnitOf(this.cells).unit);
  }

  /** A reading with its unit. */
  output(value: number): string {
    return withUnit(value, this.cells.text('output_unit'));
  }
}

/** Whether nothing stands in any reading of the block. */
export function isBlank(block: Block): boolean {
  return block.runs.every((run) => run.every(({ value }) => value === null));
}

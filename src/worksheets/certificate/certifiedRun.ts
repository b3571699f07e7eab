import { type Block, blocksOf, inWords } from '../block';
import { type FilledCell, FilledSheet } from '../filledSheet';
import { address } from '../planBuilder';
import { RESULT } from '../planner/desk';
import type { ReadCell, ReadSheet } from '../readSheet';

/** "run": outputs of a transducer. "indication": a system or an indicator. "proving": a force-proving instrument. */
export type CertifiedKind = 'run' | 'indication' | 'proving';

/** A block of readings, and how the names of its results end. */
export interface CertifiedBlock {
  readonly id: string;
  /** "Tension", "As left compression". */
  readonly label: string;
  readonly block: Block;
  /** "" if the results of the sheet are those of the block, else "_tension". */
  readonly ending: string;
}

/** A result on its sheet, with what stands beside it. */
export interface CertifiedResult {
  readonly label: string;
  readonly unit: string;
  readonly cell: FilledCell;
  /** The cell of its limit and of the verdict, if it is judged: one without a limit is not. */
  readonly limit?: FilledCell;
  readonly verdict?: FilledCell;
}

/** A run as a certificate reads it, by the names of its sheet alone. */
export class CertifiedRun {
  readonly name: string;
  readonly cells: FilledSheet;
  readonly blocks: readonly CertifiedBlock[];
  private readonly contents: ReadonlyMap<string, ReadCell>;

  constructor(readonly sheet: ReadSheet) {
    this.name = sheet.name;
    this.cells = new FilledSheet(sheet);
    this.contents = new Map(sheet.cells.map((cell) => [cell.at, cell]));
    const results = this.cells.namesAfter('value_');
    this.blocks = blocksOf(this.cells).filter((block) => block.over === 'forces' && !isLeftOut(block))
      .map((block) => ({ id: block.id, label: inWords(block.id), block, ending: results.some((name) => name.endsWith(`_${block.id}`)) ? `_${block.id}` : '' }));
  }

  /** Undefined if the sheet has no results that a certificate states. */
  get kind(): CertifiedKind | undefined {
    if (this.cells.cell('proving_forces')) return 'proving';
    const [first] = this.blocks;
    if (!first || !this.cells.cell(`mean_${first.id}`)) return undefined;
    return this.cells.cell(`errors_${first.id}`) ? 'indication' : 'run';
  }

  get outputUnit(): string {
    return this.cells.text('output_unit') ?? '';
  }

  /** A result by its id; undefined if the sheet has none of that name. */
  result(id: string): CertifiedResult | undefined {
    const cell = this.cells.cell(`value_${id}`);
    if (!cell) return undefined;
    const verdict = this.cells.cell(`verdict_${id}`);
    const limit = verdict && this.at(RESULT.limit, verdict.row);
    const unit = this.at(cell.column + 1, cell.row).value;
    return {
      cell, label: this.cells.labelOf(cell) ?? inWords(id), unit: typeof unit === 'string' ? unit : '',
      ...(verdict && limit && limit.value !== null ? { verdict, limit } : {}),
    };
  }

  /** A condition by the name of its cell, or by the label two columns left of it. */
  condition(name: string, label: string): FilledCell | undefined {
    const named = this.cells.cell(name);
    if (named) return named;
    const found = this.sheet.cells.find(({ value }) => value === label);
    const [, letters, row] = /^([A-Z])(\d+)$/.exec(found?.at ?? '') ?? [];
    return letters === undefined ? undefined : this.at(letters.charCodeAt(0) - 64 + 2, Number(row));
  }

  /** The document that the procedure follows, as the head of the sheet begins to say; undefined if it names none. What is said there on limits is for the person at the bench. */
  get source(): string | undefined {
    const note = this.sheet.cells.find(({ value }) => typeof value === 'string' && value.startsWith('Source: '))?.value as string | undefined;
    const first = note?.replace(/^Source: /, '').replace(/ Yellow cells are to type in.*$/, '').split(/[;,(]/)[0].trim().replace(/\.$/, '');
    return first === undefined || first === '' || /^common practice/i.test(first) ? undefined : first;
  }

  /** The cell at a column and row, from 1. */
  at(column: number, row: number): FilledCell {
    const at = address(column, row);
    const cell = this.contents.get(at);
    return { at, column, row, ...cell, value: cell?.value === '' ? null : cell?.value ?? null };
  }
}

/** Readings as left that were not taken, since nothing was adjusted. */
function isLeftOut({ id, runs }: Block): boolean {
  return id.startsWith('as_left') && runs.every((run) => run.every(({ value }) => value === null));
}

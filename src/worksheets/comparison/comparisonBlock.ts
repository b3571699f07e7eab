import { address, fixed, formula } from '../planBuilder';
import { type Desk, PERCENT } from '../planner/desk';
import { highlightVerdicts } from '../planner/resultTable';
import { type Acceptance, acceptanceLine, acceptanceVerdict } from './acceptance';
import type { ComparedBlock } from './comparedBlock';
import type { HeadCells } from './comparisonHead';
import { heldBy, linkTo } from './links';
import { appliedLink, outputLink, type RunSide } from './runSide';

/** Columns of the table. */
const COLUMNS = { force: 1, found: 2, left: 3, shift: 4, relative: 5, before: 6, after: 7, limit: 8, verdictBefore: 9, verdictAfter: 10, last: 11 } as const;
type Column = keyof typeof COLUMNS;
/** Columns that the sheet is wide. */
export const WIDTH = COLUMNS.last;
/** The names of the columns, each before the name of its block. */
const NAMES: Readonly<Partial<Record<Column, string>>> = {
  force: 'force', found: 'found', left: 'left', shift: 'shift', relative: 'relative_shift', before: 'deviation_found', after: 'deviation_left',
  limit: 'allowed', verdictBefore: 'before', verdictAfter: 'after', last: 'last_shift',
};

/** Where a block stands on the sheet. */
export interface BlockCells {
  readonly block: ComparedBlock;
  readonly firstRow: number;
  readonly topRow: number;
  readonly lastRow: number;
  readonly nextRow: number;
  /** Output at capacity that everything is a fraction of, magnitude. */
  readonly output: string;
  /** What is applied at capacity, in the unit of the column of forces. */
  readonly full: string;
  /** +1 or −1: the way the output goes under load, as an expression. */
  readonly sign: string;
  /** True while outputs as found, or as left, are missing; conditions. */
  readonly foundMissing: string;
  readonly leftMissing: string;
  /** What the deviations before and after are judged by. */
  readonly accepted: { readonly before: Acceptance; readonly after: Acceptance };
  /** A column, or the cells from one row of the sheet to another. */
  readonly range: (column: Column, from?: number, to?: number) => string;
}

/** The table of a block from a row on: outputs, shift, deviation before and after with verdicts. The shift since last time is still to come. */
export function comparisonBlock(desk: Desk, row: number, block: ComparedBlock, head: HeadCells): BlockCells {
  const { sheet, width } = desk;
  const firstRow = row + 6;
  const lastRow = firstRow + block.pairs.length - 1;
  const topRow = firstRow + block.top;
  const range: BlockCells['range'] = (column, from = firstRow, to = lastRow) => (from === to ? address(COLUMNS[column], from) : `${address(COLUMNS[column], from)}:${address(COLUMNS[column], to)}`);
  const output = fixed(4, row + 1);
  const [top, topForce] = [fixed(COLUMNS.found, topRow), fixed(COLUMNS.force, topRow)];
  const run = (words: string, id: string, side: RunSide, column: 'found' | 'left', at: number) =>
    acceptanceLine(desk, at, { side, words, id: `${id}_${block.id}`, output, top: fixed(COLUMNS[column], topRow), tolerance: fixed(COLUMNS.limit, topRow) }, head);
  sheet.wide(1, row, width, 'heading', `As found and as left, ${block.words}`);
  const accepted = {
    before: run('as found', 'before', block.found, 'found', row + 2),
    after: run(block.left ? 'as left' : 'final', 'after', block.left ?? block.found, 'left', row + 3),
  };
  const cells: BlockCells = {
    block, firstRow, topRow, lastRow, nextRow: lastRow + 2, output, range, accepted,
    full: block.indication ? output : head.capacity, sign: `SIGN(${block.indication ? topForce : top})`,
    foundMissing: `COUNT(${range('found')})<${block.pairs.length}`,
    leftMissing: `COUNT(${range('left')})<${block.pairs.filter((pair) => pair !== undefined).length}`,
  };
  outputLine(desk, row + 1, cells, head, { top, topForce });
  heads(desk, row + 4, block);
  for (let i = 0; i < block.pairs.length; i += 1) pointRow(desk, firstRow + i, i, cells, head);
  (Object.keys(NAMES) as Column[]).forEach((column) => sheet.called(`${NAMES[column]}_${block.id}`, range(column)));
  highlightVerdicts(sheet, range('verdictBefore'));
  highlightVerdicts(sheet, range('verdictAfter'));
  return cells;
}

/** What the outputs are compared with, and which line that is. */
function outputLine({ sheet, item, formats }: Desk, row: number, { block: { found, indication } }: BlockCells, { capacity, ratedOutput }: HeadCells, { top, topForce }: { readonly top: string; readonly topForce: string }): void {
  sheet.put(1, row, 'label', 'RO: output at capacity').put(5, row, 'aside', item.outputUnit);
  if (indication) {
    const scale = found.cells.cell('scale');
    const times = scale ? `*${linkTo(found.sheet, scale.at)}` : '';
    sheet.put(4, row, 'result', formula(`IF(${capacity}="","",ABS(${capacity}${times}))`), formats.output).put(6, row, 'aside', 'as applied: deviations are from what should be indicated');
    return;
  }
  const own = `IF(OR(${top}="",N(${topForce})=0,${capacity}=""),"",ABS(${top}*${capacity}/${topForce}))`;
  sheet.put(4, row, 'result', formula(`IF(${ratedOutput}="",${own},ABS(${ratedOutput}))`), formats.output);
  sheet.put(6, row, 'aside', formula(`IF(${ratedOutput}="","as found; none specified: deviations are from the line through the ends of each run","as specified: deviations are from RO·force/capacity")`));
}

function heads({ sheet, item: { unit, outputUnit } }: Desk, row: number, { left, indication }: ComparedBlock): void {
  sheet.across(1, row, 'header', [indication ? 'Expected' : 'Force', 'As found', left ? 'As left' : 'Final', 'Shift', 'Shift', 'Deviation', 'Deviation', 'Tolerance ±', 'As found', left ? 'As left' : 'Final', 'Since last']);
  sheet.across(1, row + 1, 'header', [unit, outputUnit, outputUnit, 'of RO', 'of reading', 'found, of RO', `${left ? 'left' : 'final'}, of RO`, 'of RO', '', '', 'of reading']);
}

function pointRow({ sheet, formats }: Desk, row: number, index: number, { block, range, topRow, output, full, sign, accepted }: BlockCells, head: HeadCells): void {
  const { tolerance, ratedOutput } = head;
  const at = (column: Column) => range(column, row, row);
  const [force, found, left] = [at('force'), at('found'), at('left')];
  const put = (column: Column, role: 'reference' | 'result' | 'verdict', text: string, format?: string) => sheet.put(COLUMNS[column], row, role, formula(text), format);
  put('force', 'reference', heldBy(appliedLink(block.found, index)), formats.applied);
  put('found', 'reference', heldBy(outputLink(block.found, index)), formats.output);
  const pair = block.pairs[index];
  if (pair === undefined) sheet.put(COLUMNS.left, row, 'reference');
  else put('left', 'reference', block.left ? leftOutput(block.left, pair, force) : heldBy(found), formats.output);
  put('shift', 'result', `IF(OR(${found}="",${left}="",N(${output})=0),"",${sign}*(${left}-${found})/${output})`, PERCENT);
  put('relative', 'result', `IF(OR(${found}="",${left}="",N(${force})=0,N(${found})=0),"",${left}/${found}-1)`, PERCENT);
  const deviation = (own: string, greatest: string) => {
    const nominal = `${sign}*${own}/${output}-ABS(${force})/${full}`;
    if (block.indication) return `IF(OR(${own}="",N(${output})=0),"",${nominal})`;
    const terminal = `(${own}/${greatest}-${force}/${fixed(COLUMNS.force, topRow)})*ABS(${fixed(COLUMNS.force, topRow)})/${full}`;
    return `IF(OR(${own}="",N(${greatest})=0,N(${output})=0,N(${full})=0),"",IF(${ratedOutput}="",${terminal},${nominal}))`;
  };
  put('before', 'result', deviation(found, fixed(COLUMNS.found, topRow)), PERCENT);
  put('after', 'result', deviation(left, fixed(COLUMNS.left, topRow)), PERCENT);
  put('limit', 'reference', `IF(${tolerance}="",${ownTolerance(block, index, output)},${tolerance})`, PERCENT);
  put('verdictBefore', 'verdict', acceptanceVerdict(at('before'), at('limit'), accepted.before, head));
  put('verdictAfter', 'verdict', acceptanceVerdict(at('after'), at('limit'), accepted.after, head));
}

/** The output as left, brought to the force as found where the two were not quite the same. */
function leftOutput(left: NonNullable<ComparedBlock['left']>, row: number, force: string): string {
  const [applied, output] = [appliedLink(left, row), outputLink(left, row)];
  return `IF(OR(${output}="",${applied}="",${force}=""),"",IF(${applied}=${force},${output},IF(${applied}*${force}=0,"",${output}*${force}/${applied})))`;
}

/** The tolerance that a sheet of indications sets for the point itself, where the job sets none. */
function ownTolerance({ found }: ComparedBlock, index: number, output: string): string {
  const own = found.cells.columns(`tolerances_${found.block.id}`)?.[0]?.[index];
  if (!own) return '""';
  const link = linkTo(found.sheet, own.at);
  return `IF(OR(${link}="",N(${output})=0),"",${link}/${output})`;
}

/** Puts the shift since last time beside the points, once it is known where the two calibrations stand. */
export function lastShift({ sheet }: Desk, { firstRow, lastRow, range }: BlockCells, used: { readonly then: string; readonly now: string }): void {
  const count = lastRow - firstRow + 1;
  sheet.spill(COLUMNS.last, firstRow, 1, count, formula(`IF(OR(COUNT(${used.then})=0,COUNT(${used.now})=0,COUNT(${range('force')})<${count}),"",PROVE.SHIFT(${used.then},${used.now},${range('force')}))`), PERCENT);
}

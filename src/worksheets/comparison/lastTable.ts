import { STABILITY_LIMITS } from '../../metrology/stability';
import { address, fixed, formula } from '../planBuilder';
import { type Desk, PERCENT, RESULT } from '../planner/desk';
import { DATE } from '../planner/frame';
import { type ResultLine, resultTable } from '../planner/resultTable';
import { type BlockCells, lastShift, WIDTH } from './comparisonBlock';
import type { HeadCells } from './comparisonHead';
import { type LastResults, MOST_DEGREE } from './lastResults';
import { heldBy, linkTo } from './links';
import { resultOf, type RunSide, zeroLinks } from './runSide';

/** Columns: a label, then what was found at one calibration. */
const [LABEL, DAY, ZERO, OUTPUT, CAPACITY, COEFFICIENTS] = [1, 2, 3, 4, 5, 6];
const COEFFICIENT = '0.000E+00';

/** Where last time and now stand side by side. */
export interface LastCells {
  readonly nextRow: number;
  readonly cells: BlockCells;
  /** Coefficients that are compared: of both calibrations polynomials, or of both the line from zero to the output at capacity. */
  readonly then: string;
  readonly now: string;
  /** Cells of what is compared. */
  readonly zeroThen: string;
  readonly zeroNow: string;
  readonly outputThen: string;
  readonly outputNow: string;
  /** Cell of the force that the output of last time belongs to. */
  readonly capacityThen: string;
  /** Addresses of results: zero_change, span_change, zero_spread, stability. */
  readonly value: (id: string) => string;
  /** Name of a result of the block. */
  readonly named: (id: string) => string;
}

type Used = Omit<LastCells, 'value' | 'cells' | 'named'>;

/** Rows of last time and of as found. */
interface Rows {
  readonly lastRow: number;
  readonly foundRow: number;
}

/** What the part is planned from. */
export interface LastParts {
  readonly cells: BlockCells;
  readonly head: HeadCells;
  readonly last?: LastResults;
  /** Date of the last calibration as the job says it. */
  readonly lastDate?: number;
  /** Ends the names where the sheet has several blocks; else "". */
  readonly suffix: string;
}

/** Last time beside now for one block, what changed, and the shift of each point in the block's table. */
export function lastTable(desk: Desk, row: number, parts: LastParts): LastCells {
  const { sheet, width, item: { unit, outputUnit } } = desk;
  const { cells, suffix } = parts;
  const { block } = cells;
  const named = (id: string) => `${id}${suffix}`;
  sheet.wide(1, row, width, 'heading', `Last time and now, ${block.words}`);
  sheet.wide(1, row + 1, width, 'note', 'Last time comes from the workbook of the last calibration, or is typed: the output at capacity, or A0 to A5 of its polynomial, or both. Where both calibrations have a polynomial, these are compared; else the lines from zero to the output at capacity.');
  sheet.across(LABEL, row + 2, 'header', ['', 'Date', 'Zero', 'Output', 'at capacity', ...powers().map((k) => `A${k}`)]);
  sheet.across(LABEL, row + 3, 'header', ['', '', outputUnit, outputUnit, unit, ...powers().map((k) => (k === 0 ? outputUnit : k === 1 ? `per ${unit}` : ''))]);
  const lastRow = row + 4;
  const foundRow = lastRow + 2;
  lastLine(desk, lastRow, parts, named);
  runLine(desk, foundRow, 'As found', block.found, cells, parts.head.foundDate, outputOf(cells, 'found'));
  if (block.left) runLine(desk, foundRow + 1, 'As left', block.left, cells, parts.head.leftDate, outputOf(cells, 'left'));
  const used = comparedLines(desk, foundRow + (block.left ? 2 : 1), { lastRow, foundRow }, cells);
  lastShift(desk, cells, used);
  const table = resultTable(desk, used.nextRow + 1, `Since last time, ${block.words}`, changes({ lastRow, foundRow }, parts, used, named, unit));
  for (const id of ['zero_change', 'span_change', 'stability']) sheet.called(named(id), table.values.get(named(id)) as string);
  sheet.called(named('stability_verdict'), address(RESULT.verdict, Number(/\d+$/.exec(table.values.get(named('stability')) as string)?.[0])));
  return { ...used, nextRow: table.nextRow, cells, named, value: (id) => table.values.get(named(id)) as string };
}

function powers(): number[] {
  return Array.from({ length: MOST_DEGREE + 1 }, (_, k) => k);
}

/** Output at capacity from the table of the block. */
function outputOf({ topRow, range, full }: BlockCells, column: 'found' | 'left'): string {
  const [top, force] = [range(column, topRow, topRow), range('force', topRow, topRow)];
  return `IF(OR(${top}="",N(${force})=0,${full}=""),"",${top}*ABS(${full}/${force}))`;
}

/** The cells to type in, filled with what a workbook gave. */
function lastLine({ sheet, formats, item }: Desk, row: number, { last, lastDate }: LastParts, named: (id: string) => string): void {
  const put = (id: string, column: number, value: number | undefined, format: string) => {
    sheet.put(column, row, 'input', value, format).called(named(id), address(column, row));
  };
  sheet.put(LABEL, row, 'label', 'Last time');
  put('last_date', DAY, last ? last.date : lastDate, DATE);
  put('last_zero', ZERO, last?.zero, formats.output);
  put('last_output', OUTPUT, last?.output, formats.output);
  put('last_capacity', CAPACITY, last?.capacity, 'General');
  sheet.put(LABEL, row + 1, 'label', 'It is from').wide(DAY, row + 1, WIDTH - DAY + 1, 'input', last?.where).called(named('last_where'), address(DAY, row + 1));
  powers().forEach((k) => sheet.put(COEFFICIENTS + k, row, 'input', last?.coefficients?.[k], COEFFICIENT));
  sheet.called(named('last_coefficients'), `${address(COEFFICIENTS, row)}:${address(WIDTH, row)}`);
  sheet.validate({ range: address(DAY, row), rule: { kind: 'date' }, message: 'Expected the date of the last calibration, like 2026-11-25, or nothing.' });
  sheet.validate({ range: `${address(ZERO, row)}:${address(OUTPUT, row)}`, rule: { kind: 'number' }, message: `Expected an output of the last calibration in ${item.outputUnit}, as a number, or nothing.` });
  sheet.validate({ range: address(CAPACITY, row), rule: { kind: 'number', least: 0 }, message: `Expected the force of that output in ${item.unit}; nothing if it is the capacity of now.` });
  sheet.validate({ range: `${address(COEFFICIENTS, row)}:${address(WIDTH, row)}`, rule: { kind: 'number' }, message: 'Expected coefficients A0, A1 … of output as a polynomial of force in the units of this sheet, as numbers, or nothing.' });
}

/** What a run of now gave. */
function runLine({ sheet, formats }: Desk, row: number, label: string, side: RunSide, { full }: BlockCells, date: string, output: string): void {
  const [zero] = zeroLinks(side);
  sheet.put(LABEL, row, 'label', label).put(DAY, row, 'reference', formula(heldBy(date)), DATE);
  sheet.put(ZERO, row, 'reference', formula(zero === undefined ? '""' : `IF(COUNT(${zero})=0,"",AVERAGE(${zero}))`), formats.output);
  sheet.put(OUTPUT, row, 'reference', formula(output), formats.output).put(CAPACITY, row, 'reference', formula(heldBy(full)), 'General');
  powers().forEach((k) => {
    const cell = resultOf(side, `a${k}`);
    sheet.put(COEFFICIENTS + k, row, 'reference', formula(cell ? heldBy(linkTo(side.sheet, cell.at)) : '""'), COEFFICIENT);
  });
}

/** What is compared in fact: of last time and of now. */
function comparedLines({ sheet, formats }: Desk, row: number, { lastRow, foundRow }: Rows, { full }: BlockCells): Used {
  const nowRow = row + 1;
  const range = (at: number) => `${address(COEFFICIENTS, at)}:${address(WIDTH, at)}`;
  const capacity = `IF(${address(CAPACITY, lastRow)}="",${full},${address(CAPACITY, lastRow)})`;
  const polynomial = `(${powers().map((k) => `N(${address(COEFFICIENTS + k, lastRow)})*ABS(${address(CAPACITY, row)})^${k}`).join('+')})`;
  const [outputThen, outputNow] = [fixed(OUTPUT, row), fixed(OUTPUT, nowRow)];
  const typed = address(OUTPUT, lastRow);
  const missing = `OR(${outputThen}="",${outputNow}="")`;
  const bothFitted = `AND(COUNT(${range(lastRow)})>0,COUNT(${range(foundRow)})>0)`;
  ['Then', 'Now'].forEach((label, i) => {
    const at = row + i;
    const source = i === 0 ? lastRow : foundRow;
    sheet.put(LABEL, at, 'label', `Used: ${label.toLowerCase()}`).put(DAY, at, 'reference', formula(heldBy(address(DAY, source))), DATE);
    sheet.put(ZERO, at, 'result', formula(heldBy(address(ZERO, source))), formats.output);
    sheet.put(CAPACITY, at, 'reference', formula(i === 0 ? heldBy(capacity) : heldBy(full)), 'General');
    powers().forEach((k) => {
      const line = k === 1 ? `${address(OUTPUT, at)}/${address(CAPACITY, at)}` : '0';
      sheet.put(COEFFICIENTS + k, at, 'result', formula(`IF(${missing},"",IF(${bothFitted},N(${address(COEFFICIENTS + k, source)}),${line}))`), COEFFICIENT);
    });
  });
  sheet.put(OUTPUT, row, 'result', formula(`IF(N(${address(CAPACITY, row)})=0,"",IF(${typed}<>"",${typed},IF(COUNT(${range(lastRow)})=0,"",${polynomial})))`), formats.output);
  sheet.put(OUTPUT, nowRow, 'result', formula(heldBy(address(OUTPUT, foundRow))), formats.output);
  return {
    nextRow: nowRow + 1, then: range(row), now: range(nowRow), zeroThen: fixed(ZERO, row), zeroNow: fixed(ZERO, nowRow), outputThen, outputNow, capacityThen: fixed(CAPACITY, row),
  };
}

/** What changed since last time, as lines of a table of results. */
function changes({ lastRow, foundRow }: Rows, { cells, head }: LastParts, used: Used, named: (id: string) => string, unit: string): ResultLine[] {
  const { block, output, sign, range } = cells;
  const { loadingClass } = head;
  const [thenDay, nowDay] = [address(DAY, lastRow), address(DAY, foundRow)];
  const noOutput = `${used.outputThen}="",${used.outputNow}="",N(${output})=0`;
  const zeros = zeroLinks(block.found).join(',');
  const limits = Object.entries(STABILITY_LIMITS).reduceRight((rest, [name, limit]) => `IF(${loadingClass}="${name}",${limit},${rest})`, '""');
  const worst = (column: number) => formula(`IF(OR(COUNT(${used.then})=0,COUNT(${used.now})=0),"",INDEX(PROVE.STABILITY(${used.then},${used.now},${range('force')},"A",,FALSE),1,${column}))`);
  return [
    { id: named('days_since'), label: 'Days since last time', format: '0', unit: 'days', function: 'date as found − date of last time', value: formula(`IF(OR(${thenDay}="",${nowDay}=""),"",${nowDay}-${thenDay})`) },
    {
      id: named('zero_change'), label: 'Change of zero', format: PERCENT, unit: 'of RO', function: 'PROVE.ZEROSHIFT(then,now,RO): + with the load',
      value: formula(`IF(OR(${used.zeroThen}="",${used.zeroNow}="",${cells.foundMissing},N(${output})=0),"",PROVE.ZEROSHIFT(${used.zeroThen},${used.zeroNow},${sign}*${output}))`),
    },
    { id: named('span_change'), label: 'Change of span', format: PERCENT, unit: 'of RO', function: '(output now − output then)/RO', value: formula(`IF(OR(${noOutput}),"",${sign}*(${used.outputNow}-${used.outputThen}*ABS(${cells.full}/${used.capacityThen}))/${output})`) },
    {
      id: named('zero_spread'), label: 'Zeros as found, greatest − least', format: PERCENT, unit: 'of RO', function: 'all readings without load',
      value: formula(zeros === '' ? '""' : `IF(OR(COUNT(${zeros})<2,N(${output})=0),"",(MAX(${zeros})-MIN(${zeros}))/${output})`),
    },
    { id: named('stability'), label: 'Worst shift of a point', format: PERCENT, unit: 'of reading', function: 'PROVE.STABILITY(then,now,F,class)', value: worst(1), judged: { limit: formula(limits), limitFormat: PERCENT, rule: 'magnitude' } },
    { id: named('stability_force'), label: 'Where it stands', format: 'General', unit, function: 'the force of it', value: worst(2) },
  ];
}

import { address, formula } from '../planBuilder';
import { type CheckLine, checkHeading, checkLines } from './checkLines';
import { type Desk, PERCENT, RESULT, SCIENTIFIC } from './desk';
import type { ProvingBlocks, Series } from './provingReadings';

/**
 * Columns of the table that the plain formulas work on: force, its share of the greatest with its powers, then the figures. What
 * is fitted is how far the means lie off the line to the greatest, so that LINEST loses no digits of them.
 */
const [FORCE, SHARE, SQUARE, CUBE, MEAN, OFF, FITTED, B, SAME, V] = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
const MOST_DEGREE = CUBE - SHARE + 1;

/** Cells that the check reads besides the readings; none of them holds a function of the add-in. */
export interface CheckCells {
  /** Forces, magnitudes rising. */
  readonly sizes: readonly number[];
  readonly waiting: string;
  readonly degree: string;
  /** Lowest force wanted. */
  readonly from: string;
  readonly resolution: string;
  readonly standardUncertainty: string;
  readonly temperature: string;
  readonly decreasing: boolean;
  /** Address of a result of the add-in. */
  readonly at: (id: string) => string;
  /** Chosen forces: what ends the names of their figures, and their places. */
  readonly chosen: readonly (readonly [name: string, index: number])[];
}

/** Class figures, interpolation and uncertainty again by built-in functions from the typed cells; gives the next free row. */
export function provingCheck(desk: Desk, row: number, blocks: ProvingBlocks, cells: CheckCells): number {
  const { sheet, formats, item } = desk;
  const { waiting, decreasing } = cells;
  const count = cells.sizes.length;
  const head = checkHeading(desk, row);
  const first = head + 2;
  const places: Places = {
    cell: (column, index) => address(column, first + index),
    range: (from, last = count - 1, to = from) => `${address(from, first)}:${address(to, first + last)}`,
  };
  const { cell } = places;
  const once = (text: string) => formula(`IF(${waiting},"",${text})`);
  const lines = linesOf(desk, blocks, cells, places);
  const coefficient = (k: number) => address(RESULT.value, first + count + 2 + lines.findIndex(({ id }) => id === `interpolation_a${k}`));
  sheet.across(1, head, 'header', ['Force', 'x', 'x²', 'x³', 'Xr', 'Off the line', 'Xa', 'b', 'b′', ...(decreasing ? ['v'] : [])]);
  sheet.across(1, head + 1, 'header', [item.unit, 'of greatest', '', '', item.outputUnit, item.outputUnit, item.outputUnit, '', '', ...(decreasing ? [''] : [])]);
  cells.sizes.forEach((size, i) => {
    const at = first + i;
    const [x1, x2, x3, x5] = (['X1', 'X2', 'X3', 'X5'] as const).map((series) => netOf(blocks, series, i) as string);
    const [x4, x6] = [netOf(blocks, 'X4′', i), netOf(blocks, 'X6′', i)];
    sheet.put(FORCE, at, 'reference', size, formats.applied).put(SHARE, at, 'result', formula(`${cell(FORCE, i)}/${cell(FORCE, count - 1)}`), '0.0000');
    sheet.put(SQUARE, at, 'result', formula(`${cell(SHARE, i)}^2`), '0.0000').put(CUBE, at, 'result', formula(`${cell(SHARE, i)}^3`), '0.0000');
    sheet.put(MEAN, at, 'result', once(`(${x1}+${x3}+${x5})/3`), `${formats.output}0`);
    sheet.put(OFF, at, 'result', once(`${cell(MEAN, i)}-${cell(MEAN, count - 1)}*${cell(SHARE, i)}`), `${formats.output}0`);
    const terms = Array.from({ length: MOST_DEGREE + 1 }, (_, k) => (k === 0 ? coefficient(0) : `N(${coefficient(k)})*${cell(FORCE, i)}^${k}`));
    sheet.put(FITTED, at, 'result', once(terms.join('+')), `${formats.output}0`);
    sheet.put(B, at, 'result', once(`(MAX(${x1},${x3},${x5})-MIN(${x1},${x3},${x5}))/ABS(${cell(MEAN, i)})`), PERCENT);
    sheet.put(SAME, at, 'result', once(`ABS(${x2}-${x1})/ABS((${x1}+${x2})/2)`), PERCENT);
    if (decreasing) sheet.put(V, at, 'result', x4 && x6 ? once(`(ABS(${x4}-${x3})/ABS(${x3})+ABS(${x6}-${x5})/ABS(${x5}))/2`) : undefined, PERCENT);
  });
  return checkLines(desk, first + count + 1, lines.map(({ text, needs, ...line }) => ({
    ...line, own: `IF(${cells.at(line.id)}="","",${cells.at(line.id)})`, plain: formula(`IF(OR(${waiting}${needs ? `,${needs}` : ''}),"",${text})`),
  })));
}

/** The net reading of a series as the difference of typed cells; undefined where nothing is read. */
function netOf(blocks: ProvingBlocks, series: Series, index: number): string | undefined {
  const cells = blocks.at(series, index);
  return cells && `(${cells.typed}-${cells.zero})`;
}

/** A line whose plain formula is still to be made to wait for every reading, and for what else it needs. */
type PlainLine = Omit<CheckLine, 'own' | 'plain'> & { readonly text: string; readonly needs?: string };

/** Places in the table of plain figures. */
interface Places {
  readonly cell: (column: number, index: number) => string;
  readonly range: (from: number, last?: number, to?: number) => string;
}

function linesOf(desk: Desk, blocks: ProvingBlocks, cells: CheckCells, places: Places): PlainLine[] {
  const { cell, range } = places;
  const { degree, decreasing, from, chosen } = cells;
  const last = cells.sizes.length - 1;
  const output = `ABS(${cell(MEAN, last)})`;
  const share = { format: PERCENT, scale: '1' };
  const named = (index: number) => `at ${cells.sizes[index]} ${desk.item.unit}`;
  const worst = (figure: string, until = last) => `SUMPRODUCT(MAX((${range(FORCE, until)}>=${from}*(1-1E-9))*${figure}))`;
  const ofChosen = chosen.flatMap(([name, i]): PlainLine[] => [
    { id: `xr_${name}`, label: `Xr ${named(i)}`, text: cell(MEAN, i), format: `${desk.formats.output}0`, scale: output, words: '(X1 + X3 + X5)/3' },
    { id: `b_${name}`, label: `b ${named(i)}`, text: cell(B, i), ...share, words: '(max − min of X1, X3, X5)/|Xr|' },
    { id: `b_same_${name}`, label: `b′ ${named(i)}`, text: cell(SAME, i), ...share, words: '|X2 − X1|/mean of X1, X2' },
    ...(decreasing && i < last ? [{ id: `v_${name}`, label: `v ${named(i)}`, text: cell(V, i), ...share, words: 'mean of |X4′ − X3|/|X3|, |X6′ − X5|/|X5|' }] : []),
  ]);
  return [
    ...ofChosen,
    ...interpolation(cells, places, last),
    { id: 'worst_b', label: 'Greatest b', text: worst(range(B)), ...share, words: 'from the lowest force wanted on' },
    { id: 'worst_b_same', label: 'Greatest b′', text: worst(range(SAME)), ...share, words: '' },
    { id: 'worst_fc', label: 'Greatest |fc|', text: worst(`ABS(${range(MEAN)}/${range(FITTED)}-1)`), ...share, words: '|Xr/Xa − 1|, Xa by LINEST' },
    ...(decreasing ? [{ id: 'worst_v', label: 'Greatest v', text: worst(range(V, last - 1), last - 1), ...share, words: '' }] : []),
    ...(blocks.creep ? [{ id: 'creep', label: 'Creep c', text: creepError(blocks.creep, output), needs: `COUNT(${blocks.creep})<2`, ...share, words: '|i300 − i30|/|X_N|' }] : []),
    { id: 'f0', label: 'Greatest |f0|', text: `${zeroError(blocks)}/${output}`, ...share, words: '|zero after − zero before|/|X_N|' },
    { id: 'wc_greatest', label: `wc ${named(last)}`, text: combined(blocks, cells, places, `1/(${last + 1}-${degree}-1)`), format: '0.0000%', scale: '1', words: '√(w1² + … + w8²)' },
  ];
}

function interpolation({ degree }: CheckCells, { cell, range }: Places, last: number): PlainLine[] {
  // The powers up to the degree; not CHOOSE, which the grid's engine takes only with a number typed into it.
  const used = `IF(${degree}=1,${range(SHARE)},IF(${degree}=2,${range(SHARE, last, SQUARE)},${range(SHARE, last, CUBE)}))`;
  const greatest = cell(FORCE, last);
  return Array.from({ length: MOST_DEGREE + 1 }, (_, k) => ({
    id: `interpolation_a${k}`, label: `Interpolation A${k}`, text: `IF(${k}>${degree},"",(INDEX(LINEST(${range(OFF)},${used}),1,${degree}+1-${k})${k === 1 ? `+${cell(MEAN, last)}` : ''})/${greatest}^${k})`,
    format: SCIENTIFIC, scale: `ABS(${cell(MEAN, last)})/${greatest}^${k}`, words: k === 0 ? 'LINEST of what is off the line, on powers of x' : '',
  }));
}

function zeroError({ zeros }: ProvingBlocks): string {
  return `MAX(${zeros.map(({ before, after }) => `ABS(${after}-${before})`).join(',')})`;
}

function creepError(creep: string, output: string): string {
  const [early, late] = creep.split(':');
  return `ABS(${late}-${early})/${output}`;
}

/** wc at the greatest force, as one expression. */
function combined(blocks: ProvingBlocks, { sizes, resolution, standardUncertainty, temperature }: CheckCells, { cell, range }: Places, perFreedom: string): string {
  const last = sizes.length - 1;
  const mean = cell(MEAN, last);
  const output = `ABS(${mean})`;
  const scatter = (['X1', 'X3', 'X5'] as const).map((series) => `(${netOf(blocks, series, last) as string}-${mean})^2`).join('+');
  const fifth = blocks.creep
    ? `IF(COUNT(${blocks.creep})<2,0,${creepError(blocks.creep, output)}/SQRT(3))`
    : `${cell(V, last - 1)}/SQRT(27)`;
  const squares = [
    `(N(${standardUncertainty})/2)^2`, `(${scatter})/6/${mean}^2`, `${cell(SAME, last)}^2/3`, `(N(${resolution})/${output})^2/6`, `(${fifth})^2`,
    `(${zeroError(blocks)}/${output})^2`, `N(${temperature})^2/12`, `SUMPRODUCT((${range(MEAN)}-${range(FITTED)})^2)*${perFreedom}/${mean}^2`,
  ];
  return `SQRT(${squares.join('+')})`;
}

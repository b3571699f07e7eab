import { address, formula } from '../planBuilder';
import type { Desk } from './desk';
import type { ProvingSetup } from './provingForm';

/** Columns of the two blocks of readings, and of the reduced series beside the zeros. */
const LEFT = { applied: 1, typed: 2, net: 4 } as const;
const RIGHT = { applied: 6, typed: 7, net: 9 } as const;
const ZEROS = 9;
/** X1, X2, X3, X4′, X5, X6′ stand after the force. */
const SERIES = ['X1', 'X2', 'X3', 'X4′', 'X5', 'X6′'] as const;
const CREEP_TIMES = [0.5, 5];

/** The cells of the readings of a force-proving instrument, and the net series that are made of them. */
export interface ProvingReadings {
  readonly nextRow: number;
  /** Forces, magnitudes rising. */
  readonly sizes: readonly number[];
  /** True while readings are missing, as a condition in formulas. */
  readonly waiting: string;
  /** Ranges for the functions: forces, six columns of net series, zeros before and after. */
  readonly forces: string;
  readonly series: string;
  readonly zeros: string;
  /** Two cells, if creep is read. */
  readonly creep?: string;
  /** Mean deflection at the greatest force, as an expression: "" while it is not read. */
  readonly deflection: string;
  /** The cell of a force by its place, from 0. */
  readonly force: (index: number) => string;
  /** The net reading of a series at a force as the difference of typed cells; undefined where nothing is read. */
  readonly plain: (series: (typeof SERIES)[number], index: number) => string | undefined;
  /** Typed zeros, a pair a series. */
  readonly typedZeros: readonly (readonly [before: string, after: string])[];
}

/**
 * Readings to type in, in the order they are taken: X1 and X2 on the left; on the right X3 and X5, with the decreasing forces
 * X4′ and X6′ below them. Each series has its zero before and after.
 */
export function provingReadings(desk: Desk, row: number, setup: ProvingSetup, sizes: readonly number[]): ProvingReadings {
  const { sheet, width, item, formats } = desk;
  const { decreasing, positions, direction } = setup;
  const n = sizes.length;
  const sign = direction === 'compression' ? -1 : 1;
  const up = [0, ...sizes.map((force) => sign * force)];
  const [left, right] = [[...up, 0], [...up, ...(decreasing ? up.slice(1, -1).reverse() : []), 0]];
  sheet.wide(1, row, width, 'heading', `Readings in ${direction}`);
  sheet.wide(1, row + 1, width, 'note', 'Before X1 load three times to the greatest force, and once after each rotation; hold each force 60 s to 90 s before reading (ISO 376, from memory). Each series is net of the zero before it.');
  const [heads, firstRow] = [row + 2, row + 5];
  writeBlock(desk, { ...LEFT, id: 'first_position', heads, applied: left, names: ['X1', 'X2'], positions: positions.slice(0, 2) });
  writeBlock(desk, { ...RIGHT, id: 'rotated', heads, applied: right, names: decreasing ? ['X3, X4′', 'X5, X6′'] : ['X3', 'X5'], positions: positions.slice(2) });
  sheet.called('unit', address(1, firstRow - 1)).called('output_unit', address(2, firstRow - 1));

  const lastRow = firstRow + right.length - 1;
  const typed = [`${address(LEFT.typed, firstRow)}:${address(LEFT.typed + 1, firstRow + left.length - 1)}`, `${address(RIGHT.typed, firstRow)}:${address(RIGHT.typed + 1, lastRow)}`];
  const creep = decreasing ? undefined : creepCells(desk, lastRow + 2);
  const counted = creep ? creep.nextRow : lastRow + 1;
  const total = 2 * (left.length + right.length);
  sheet.put(1, counted, 'label', 'Readings typed').put(3, counted, 'result', formula(`COUNT(${typed.join(',')})${creep ? `+MIN(COUNT(${creep.range}),${creep.needed})` : ''}`), '0');
  sheet.put(4, counted, 'aside', 'needed for the results').put(6, counted, 'reference', creep ? formula(`${total}+${creep.needed}`) : total, '0');

  const rowOf = (series: string, index: number): number => (series === 'X4′' || series === 'X6′' ? firstRow + 2 * n - 1 - index : firstRow + 1 + index);
  const columnOf = (series: string, of: 'typed' | 'net'): number => (series === 'X1' || series === 'X2' ? LEFT[of] : RIGHT[of]) + (['X2', 'X5', 'X6′'].includes(series) ? 1 : 0);
  const isRead = (series: string, index: number): boolean => (series !== 'X4′' && series !== 'X6′') || (decreasing && index < n - 1);
  const typedZeros = ['X1', 'X2', 'X3', 'X5'].map((series): readonly [string, string] => {
    const column = columnOf(series, 'typed');
    return [address(column, firstRow), address(column, series === 'X1' || series === 'X2' ? firstRow + left.length - 1 : lastRow)];
  });
  const head = counted + 2;
  const first = head + 3;
  sheet.wide(1, head, ZEROS - 2, 'heading', 'Net series').wide(ZEROS, head, width - ZEROS + 1, 'heading', 'Zeros');
  sheet.across(1, head + 1, 'header', ['Force', ...SERIES]).across(1, head + 2, 'header', [item.unit, ...SERIES.map(() => item.outputUnit)]);
  sheet.down(1, first, 'reference', sizes, formats.applied);
  sizes.forEach((_, index) => SERIES.forEach((series, i) => {
    const net = address(columnOf(series, 'net'), rowOf(series, index));
    sheet.put(2 + i, first + index, 'result', isRead(series, index) ? formula(`IF(${net}="","",${net})`) : undefined, formats.output);
  }));
  sheet.across(ZEROS, head + 1, 'header', ['Series', 'Before', 'After']).across(ZEROS, head + 2, 'header', ['', item.outputUnit, item.outputUnit]);
  typedZeros.forEach((pair, i) => {
    const names = ['X1', 'X2', decreasing ? 'X3, X4′' : 'X3', decreasing ? 'X5, X6′' : 'X5'];
    sheet.put(ZEROS, first + i, 'label', names[i]);
    pair.forEach((at, j) => sheet.put(ZEROS + 1 + j, first + i, 'result', formula(`IF(${at}="","",${at})`), formats.output));
  });
  return {
    nextRow: first + Math.max(n, typedZeros.length) + 1, sizes, typedZeros, waiting: `$C$${counted}<$F$${counted}`,
    forces: `${address(1, first)}:${address(1, first + n - 1)}`, series: `${address(2, first)}:${address(1 + SERIES.length, first + n - 1)}`,
    zeros: `${address(ZEROS + 1, first)}:${address(ZEROS + 2, first + typedZeros.length - 1)}`,
    ...(creep ? { creep: creep.range } : {}),
    deflection: deflectionOf([0, 2, 4].map((series) => address(2 + series, first + n - 1))),
    force: (index) => address(1, first + index),
    plain: (series, index) => {
      const column = columnOf(series, 'typed');
      return isRead(series, index) ? `(${address(column, rowOf(series, index))}-${address(column, firstRow)})` : undefined;
    },
  };
}

function deflectionOf(nets: readonly string[]): string {
  return `IF(COUNT(${nets.join(',')})<${nets.length},"",AVERAGE(${nets.join(',')}))`;
}

/** One block: applied forces, two series to type in, and both net. */
interface BlockPlan {
  readonly id: string;
  readonly heads: number;
  readonly applied: readonly number[];
  readonly names: readonly string[];
  readonly positions: readonly string[];
  readonly typed: number;
  readonly net: number;
}

function writeBlock({ sheet, item, formats }: Desk, block: BlockPlan): void {
  const { id, heads, applied, names, positions, typed, net } = block;
  const column = typed - 1;
  const first = heads + 3;
  const last = first + applied.length - 1;
  const range = (from: number, to = from) => `${address(from, first)}:${address(to, last)}`;
  const { outputUnit, unit } = item;
  sheet.across(column, heads, 'header', ['Applied', ...names, ...names.map((name) => `Net ${name}`)]);
  sheet.across(column, heads + 1, 'header', ['', positions[0] ?? '', positions[1] ?? '', '', '']);
  sheet.across(column, heads + 2, 'header', [unit, outputUnit, outputUnit, outputUnit, outputUnit]);
  sheet.down(column, first, 'reference', applied, formats.applied);
  [0, 1].forEach((i) => sheet.down(typed + i, first, 'input', applied.map(() => undefined), formats.output));
  const readings = range(typed, typed + 1);
  sheet.spill(net, first, 2, applied.length, formula(`IF(COUNT(${readings})=0,"",PROVE.NET(${range(column)},${readings}))`), formats.output);
  sheet.validate({ range: readings, rule: { kind: 'number' }, message: `Expected a reading in ${outputUnit}, as a number, or nothing.` });
  sheet.called(`forces_${id}`, range(column)).called(`readings_${id}`, readings).called(`net_${id}`, range(net, net + 1));
}

/** Two readings for creep, and how many of them the results need. */
function creepCells({ sheet, item, width, formats }: Desk, row: number): { nextRow: number; range: string; needed: string } {
  sheet.wide(1, row, width, 'heading', 'Creep');
  sheet.wide(1, row + 1, width, 'note', '30 s and 300 s after the greatest force was applied, or after it was removed; set “needed” to 0 if it is not read.');
  sheet.across(1, row + 2, 'header', ['After, min', 'Reading']).put(4, row + 2, 'aside', 'needed').put(6, row + 2, 'input', CREEP_TIMES.length, '0');
  sheet.down(1, row + 3, 'reference', CREEP_TIMES, '0.0').down(2, row + 3, 'input', CREEP_TIMES.map(() => undefined), formats.output);
  const range = `${address(2, row + 3)}:${address(2, row + 4)}`;
  sheet.called('times_creep', `${address(1, row + 3)}:${address(1, row + 4)}`).called('readings_creep', range).called('needed_creep', address(6, row + 2));
  sheet.validate({ range, rule: { kind: 'number' }, message: `Expected a reading in ${item.outputUnit}, as a number, or nothing.` });
  sheet.validate({ range: address(6, row + 2), rule: { kind: 'whole', least: 0, greatest: CREEP_TIMES.length }, message: 'Expected 2, or 0 if creep is not read.' });
  return { nextRow: row + 6, range, needed: address(6, row + 2) };
}

import { address, formula } from '../planBuilder';
import type { Desk } from './desk';
import type { ProvingSetup } from './provingForm';

/** X1, X2, X3, X4′, X5, X6′: the columns of the series as the functions read them. */
export const SERIES = ['X1', 'X2', 'X3', 'X4′', 'X5', 'X6′'] as const;
export type Series = (typeof SERIES)[number];

/** Columns of the two blocks: applied forces, two series to type in, and both net. */
interface Columns {
  readonly applied: number;
  readonly typed: number;
  readonly net: number;
}
const LEFT: Columns = { applied: 1, typed: 2, net: 4 };
const RIGHT: Columns = { applied: 6, typed: 7, net: 9 };
const HEAD_ROWS = 3;
/** Where a series stands: its block, its place in it, and whether it runs down. */
const PLACES: Readonly<Record<Series, { readonly block: Columns; readonly second: 0 | 1; readonly falling: boolean }>> = {
  X1: { block: LEFT, second: 0, falling: false }, X2: { block: LEFT, second: 1, falling: false },
  X3: { block: RIGHT, second: 0, falling: false }, 'X4′': { block: RIGHT, second: 0, falling: true },
  X5: { block: RIGHT, second: 1, falling: false }, 'X6′': { block: RIGHT, second: 1, falling: true },
};
/** Minutes after the change of force. */
const CREEP_TIMES = [0.5, 5];

/** The cells that readings are typed into, and their net readings. */
export interface ProvingBlocks {
  readonly nextRow: number;
  /** True while readings are missing, as a condition in formulas. */
  readonly waiting: string;
  /** Two cells, if creep is read. */
  readonly creep?: string;
  /** The cells of a series at a force, by its place from 0; undefined where nothing is read. */
  readonly at: (series: Series, index: number) => SeriesCells | undefined;
  /** Typed zeros, a pair a series. */
  readonly zeros: readonly ZeroCells[];
}

/** A reading, the zero that it is net of, and the net reading. */
export interface SeriesCells {
  readonly typed: string;
  readonly zero: string;
  readonly net: string;
}

/** The zeros of a series, and of the decreasing one that follows it. */
export interface ZeroCells {
  readonly name: string;
  readonly before: string;
  readonly after: string;
}

/**
 * Readings to type in, in the order they are taken: X1 and X2 on the left; on the right X3 and X5, with the decreasing forces
 * X4′ and X6′ below them. Each series has its zero before and after.
 */
export function provingBlocks(desk: Desk, row: number, setup: ProvingSetup, sizes: readonly number[]): ProvingBlocks {
  const { sheet, width } = desk;
  const { decreasing, positions, direction } = setup;
  const up = [0, ...sizes.map((force) => (direction === 'compression' ? -force : force))];
  const names = { left: ['X1', 'X2'], right: decreasing ? ['X3, X4′', 'X5, X6′'] : ['X3', 'X5'] };
  sheet.wide(1, row, width, 'heading', `Readings in ${direction}`);
  sheet.wide(1, row + 1, width, 'note', 'Before X1 load three times to the greatest force, and once after each rotation; hold each force 60 s to 90 s before reading (ISO 376, from memory). Each series is net of the zero before it.');
  const first = row + 2 + HEAD_ROWS;
  const left = writeBlock(desk, { columns: LEFT, id: 'first_position', first, applied: [...up, 0], names: names.left, positions: positions.slice(0, 2) });
  const right = writeBlock(desk, { columns: RIGHT, id: 'rotated', first, applied: [...up, ...(decreasing ? up.slice(1, -1).reverse() : []), 0], names: names.right, positions: positions.slice(2) });
  sheet.called('unit', address(1, first - 1)).called('output_unit', address(2, first - 1));
  const creep = decreasing ? undefined : creepCells(desk, right.last + 2);
  const counted = creep?.nextRow ?? right.last + 1;
  const total = 2 * (left.last + right.last - 2 * first + 2);
  sheet.put(1, counted, 'label', 'Readings typed').put(3, counted, 'result', formula(`COUNT(${left.readings},${right.readings})${creep ? `+MIN(COUNT(${creep.range}),${creep.needed})` : ''}`), '0');
  sheet.put(4, counted, 'aside', 'needed for the results').put(6, counted, 'reference', creep ? formula(`${total}+${creep.needed}`) : total, '0').called('wanted_readings', address(6, counted));
  return {
    nextRow: counted + 2, waiting: `$C$${counted}<$F$${counted}`, ...(creep ? { creep: creep.range } : {}),
    at: (series, index) => {
      const { block, second, falling } = PLACES[series];
      if (falling && (!decreasing || index === sizes.length - 1)) return undefined;
      const at = falling ? first + 2 * sizes.length - 1 - index : first + 1 + index;
      return { typed: address(block.typed + second, at), zero: address(block.typed + second, first), net: address(block.net + second, at) };
    },
    zeros: [{ ...left, columns: LEFT, of: names.left }, { ...right, columns: RIGHT, of: names.right }].flatMap(({ last, columns, of }) => of.map((name, second): ZeroCells => (
      { name, before: address(columns.typed + second, first), after: address(columns.typed + second, last) }))),
  };
}

/** One block of readings. */
interface BlockPlan {
  readonly id: string;
  readonly columns: Columns;
  /** Row of the first reading. */
  readonly first: number;
  readonly applied: readonly number[];
  readonly names: readonly string[];
  readonly positions: readonly string[];
}

interface WrittenBlock {
  readonly last: number;
  readonly readings: string;
}

function writeBlock({ sheet, item: { unit, outputUnit }, formats }: Desk, { id, columns, first, applied, names, positions }: BlockPlan): WrittenBlock {
  const last = first + applied.length - 1;
  const range = (from: number, to = from) => `${address(from, first)}:${address(to, last)}`;
  const readings = range(columns.typed, columns.typed + 1);
  sheet.across(columns.applied, first - 3, 'header', ['Applied', ...names, ...names.map((name) => `Net ${name}`)]);
  sheet.across(columns.applied, first - 2, 'header', ['', positions[0] ?? '', positions[1] ?? '', '', '']);
  sheet.across(columns.applied, first - 1, 'header', [unit, outputUnit, outputUnit, outputUnit, outputUnit]);
  sheet.down(columns.applied, first, 'reference', applied, formats.applied);
  [0, 1].forEach((i) => sheet.down(columns.typed + i, first, 'input', applied.map(() => undefined), formats.output));
  sheet.spill(columns.net, first, 2, applied.length, formula(`IF(COUNT(${readings})=0,"",PROVE.NET(${range(columns.applied)},${readings}))`), formats.output);
  sheet.validate({ range: readings, rule: { kind: 'number' }, message: `Expected a reading in ${outputUnit}, as a number, or nothing.` });
  sheet.called(`forces_${id}`, range(columns.applied)).called(`readings_${id}`, readings).called(`net_${id}`, range(columns.net, columns.net + 1));
  return { last, readings };
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

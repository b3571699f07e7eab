import { address, formula } from '../planBuilder';
import type { Desk } from './desk';
import { type ProvingBlocks, SERIES } from './provingReadings';

/** Columns of the table of net series, and of the zeros beside it. */
const FORCE = 1;
const ZEROS = 9;
/** X1, X3 and X5, whose mean is Xr, by their places among the series. */
const ROTATED = [0, 2, 4];

/** The net series by force, as the functions read them. */
export interface ProvingSeries {
  readonly nextRow: number;
  /** Forces, magnitudes rising; six columns of net series; zeros before and after. */
  readonly forces: string;
  readonly series: string;
  readonly zeros: string;
  /** The cell of a force by its place, from 0. */
  readonly force: (index: number) => string;
  /** Mean deflection at the greatest force, as an expression: "" while it is not read. */
  readonly deflection: string;
}

/** Writes the net series with a row a force, and the zeros with a row a series. */
export function provingSeries({ sheet, width, item: { unit, outputUnit }, formats }: Desk, row: number, blocks: ProvingBlocks, sizes: readonly number[]): ProvingSeries {
  sheet.wide(FORCE, row, 1 + SERIES.length, 'heading', 'Net series').wide(ZEROS, row, width - ZEROS + 1, 'heading', 'Zeros');
  sheet.across(FORCE, row + 1, 'header', ['Force', ...SERIES]).across(FORCE, row + 2, 'header', [unit, ...SERIES.map(() => outputUnit)]);
  sheet.across(ZEROS, row + 1, 'header', ['Series', 'Before', 'After']).across(ZEROS, row + 2, 'header', ['', outputUnit, outputUnit]);
  const first = row + 3;
  const shown = (at: string) => formula(`IF(${at}="","",${at})`);
  sheet.down(FORCE, first, 'reference', sizes, formats.applied);
  sizes.forEach((_, index) => SERIES.forEach((series, i) => {
    const cells = blocks.at(series, index);
    sheet.put(FORCE + 1 + i, first + index, 'result', cells && shown(cells.net), formats.output);
  }));
  blocks.zeros.forEach(({ name, before, after }, i) => {
    sheet.put(ZEROS, first + i, 'label', name).across(ZEROS + 1, first + i, 'result', [shown(before), shown(after)], formats.output);
  });
  const last = first + sizes.length - 1;
  const greatest = ROTATED.map((series) => address(FORCE + 1 + series, last)).join(',');
  return {
    nextRow: first + Math.max(sizes.length, blocks.zeros.length) + 1,
    forces: `${address(FORCE, first)}:${address(FORCE, last)}`, series: `${address(FORCE + 1, first)}:${address(FORCE + SERIES.length, last)}`,
    zeros: `${address(ZEROS + 1, first)}:${address(ZEROS + 2, first + blocks.zeros.length - 1)}`,
    force: (index) => address(FORCE, first + index),
    deflection: `IF(COUNT(${greatest})<${ROTATED.length},"",AVERAGE(${greatest}))`,
  };
}

import { appliedUnitOf } from '../appliedUnit';
import { FilledSheet } from '../filledSheet';
import type { ChartSeries } from '../plan';
import { address, formula } from '../planBuilder';
import type { ReadSheet } from '../readSheet';
import { freeColumn } from './blockTable';
import { type CertificateDesk, section } from './certificateDesk';
import type { CertifiedBlock, CertifiedRun } from './certifiedRun';
import { decimalsOf, fixedFormat } from './digits';
import { type CertificatePlot, plotRow } from './plotSection';
import { type PointColumn, type PointTable, pointTable } from './pointTable';
import { indicationColumns, provingColumns, runColumns, uncertaintyOf } from './runPoints';

/** The tables of points of a certificate, to be written before their plots. */
export interface ResultTables {
  /** Columns of each table. */
  readonly widths: readonly number[];
  readonly write: (desk: CertificateDesk, row: number) => number;
  /** Draws the plots: beside the curve, whose section stands from one row to another, if it leaves the right half free; else below. */
  readonly plot: (desk: CertificateDesk, curve: number, row: number) => number;
}

/** Columns that a table may have so that two stand side by side. */
const HALF = 5;
/** Rows of a plot beside the curve. */
const BESIDE_CURVE = 11;

/** Columns that the page needs for its tables. */
export function widthOf({ widths }: ResultTables): number {
  return Math.max(...widths);
}

/** A table of points for each block of a run; two narrow ones stand side by side. */
export function resultTables(run: CertifiedRun, comparison: ReadSheet | undefined): ResultTables {
  const parts = run.kind === 'proving' ? [{ label: '', columns: provingColumns(run) }]
    : run.blocks.map((block) => ({ label: block.label, columns: run.kind === 'indication' ? indicationColumns(run, block) : runColumns(run, block, foundColumn(run, block, comparison)) }));
  const widths = parts.map(({ columns }) => columns.length);
  const beside = parts.length === 2 && widths.every((count) => count <= HALF);
  const half = Math.max(HALF - 1, ...widths);
  const written: PointTable[] = [];
  return {
    widths: beside ? [2 * half] : widths,
    write: (desk, start) => {
      let row = start;
      parts.forEach(({ label, columns }, i) => {
        if (beside) {
          if (i === 0) section(desk, row, 'Results');
          desk.sheet.put(1 + half * i, row + 1, 'text', label);
          written.push(pointTable(desk, row + 2, 1 + half * i, run.name, columns));
          return;
        }
        const below = section(desk, row, parts.length > 1 ? `Results, ${label.toLowerCase()}` : 'Results');
        const table = pointTable(desk, below, 1, run.name, columns);
        written.push(table);
        row = table.nextRow;
      });
      return beside ? Math.max(...written.map(({ nextRow }) => nextRow)) : row;
    },
    plot: (desk, curve, row) => {
      const plots = parts.flatMap(({ columns, label }, i) => plotsOf(desk, run, run.blocks[i], columns, written[i], parts.length > 1 ? `, ${label.toLowerCase()}` : ''));
      if (plots.length === 1 && row > curve) return Math.max(row, plotRow(desk, curve + 2, run.name, plots, freeColumn(desk, 1), BESIDE_CURVE));
      return plots.length === 0 ? row : plotRow(desk, section(desk, row, plots.length > 1 ? 'Plots' : 'Plot'), run.name, plots);
    },
  };
}

/** The outputs as found beside those of a run as left, from the comparison of both; undefined if there is none, or it compares other runs or other forces. */
function foundColumn(run: CertifiedRun, { id, block, ending }: CertifiedBlock, comparison: ReadSheet | undefined): PointColumn | undefined {
  if (!comparison) return undefined;
  const sheet = new FilledSheet(comparison);
  const [forces, found] = [sheet.columns(`force_${id}`)?.[0], sheet.columns(`found_${id}`)?.[0]];
  if (sheet.text('comparison_left') !== run.name || !forces || !found) return undefined;
  const free = new Set(forces.keys());
  const cells = block.applied.map(({ value }) => {
    const at = [...free].find((row) => forces[row].value === value);
    if (at === undefined) return undefined;
    free.delete(at);
    return found[at];
  });
  const format = fixedFormat(decimalsOf(uncertaintyOf(run, { id, block, ending, label: '' })?.output ?? 0));
  return cells.every((cell) => cell === undefined) ? undefined : { id: `found_${id}`, head: 'As found', unit: run.outputUnit, cells, sheet: comparison.name, format: () => format };
}

/** The lower limit of a plot, right of the page beside its table, on the way up: drawn twice its dashes would fill each other's gaps. */
function lowerLimit({ sheet, width }: CertificateDesk, table: PointTable, column: number, last: number): ChartSeries {
  for (let row = 0; row <= last; row += 1) {
    const upper = table.range(column, row, row).split(':')[0];
    sheet.put(width + 2, table.firstRow + row, 'reference', formula(`IF(${upper}="","",-${upper})`));
  }
  sheet.put(width + 2, table.firstRow - 1, 'note', 'lower limit, of the plot');
  return { name: '−tolerance', x: table.range(0, 0, last), y: `${address(width + 2, table.firstRow)}:${address(width + 2, table.firstRow + last)}`, drawn: 'limit' };
}

/** Residuals of each run with ±2.4·s, deviations, errors with their tolerance, or figures of a force-proving instrument. */
function plotsOf(desk: CertificateDesk, run: CertifiedRun, block: CertifiedBlock, columns: readonly PointColumn[], table: PointTable, of: string): CertificatePlot[] {
  const index = (id: string) => columns.findIndex((column) => column.id === id);
  const applied = columns[0].cells.map(({ value } = { value: null, at: '', column: 0, row: 0 }) => value);
  const loaded = applied.flatMap((value, row) => (value === 0 ? [] : [row]));
  if (loaded.length < 2) return [];
  const [from, to] = [loaded[0], loaded[loaded.length - 1]];
  const x = `${columns[0].head}, ${columns[0].unit || appliedUnitOf(run.cells).unit || ''}`;
  const series = (column: number, name: string, drawn: ChartSeries['drawn'], first = from, last = to): ChartSeries => ({ name, x: table.range(0, first, last), y: table.range(column, first, last), drawn });
  if (run.kind === 'proving') {
    return [{ title: 'Rotation b, repetition b′, interpolation fc', x, y: 'of output', series: [series(index('proving_b'), 'b', 'both'), series(index('proving_b_same'), 'b′', 'both'), series(index('proving_fc'), 'fc', 'both')] }];
  }
  const residuals = columns.flatMap(({ head }, i) => (head.startsWith('Residual') ? [i] : []));
  if (residuals.length > 0) {
    const limit = run.cells.cell(`residual_limit${block.ending}`);
    const top = block.block.applied.reduce((most, cell) => (Math.abs(Number(cell.value)) > Math.abs(Number(most.value)) ? cell : most));
    return [{
      title: `Residuals of the curve${of}`, x, y: run.outputUnit, series: residuals.map((column, i) => series(column, `Run ${i + 1}`, 'points')),
      ...(limit ? { limits: { name: '2.4·s', limit: limit.at, to: top.at } } : {}),
    }];
  }
  const errors = index(`errors_${block.id}`);
  if (errors >= 0) {
    const [tolerance, top] = [index(`tolerances_${block.id}`), applied.findIndex((value) => Math.abs(Number(value)) === Math.max(...applied.map((one) => Math.abs(Number(one)))))];
    return [{ title: `Error${of}`, x, y: run.outputUnit, series: [series(errors, 'Error', 'both', 0, applied.length - 1), series(tolerance, '+tolerance', 'limit', 0, top), lowerLimit(desk, table, tolerance, top)] }];
  }
  const deviations = index(`deviations_${block.id}`);
  return deviations < 0 ? [] : [{ title: `Deviation from the terminal line${of}`, x, y: 'of RO', series: [series(deviations, 'Mean of runs', 'both')] }];
}

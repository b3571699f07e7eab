import type { Block } from '../block';
import type { FilledCell, FilledSheet } from '../filledSheet';
import { appliedAxis, appliedUnitAxis } from './axis';
import type { PlotData, PlotSeries } from './plotData';
import { present, seriesOf } from './series';

/** Errors of a system or an indicator against what was applied: a series a block, with the tolerances beside them. */
export function errorsPlot(sheet: FilledSheet, blocks: readonly Block[]): PlotData[] {
  const columns = blocks.map((block) => ({
    block, errors: sheet.columns(`errors_${block.id}`)?.[0] ?? [], tolerances: sheet.columns(`tolerances_${block.id}`)?.[0] ?? [],
  }));
  const errors = present(columns.map((one) => seriesOf(one.block.label, one.block.applied, one.errors, 'both')));
  if (errors.length === 0) return [];
  const lines = columns
    .filter((one) => seriesOf('', one.block.applied, one.errors, 'both'))
    .flatMap(({ block, tolerances }) => toleranceLines(block.applied, tolerances));
  return [{
    id: 'errors', title: 'Error', x: appliedAxis(sheet), y: appliedUnitAxis(sheet, 'Error'), series: [...errors, ...eachOnce(lines)],
  }];
}

/** From the least to the greatest applied value, each once. */
function toleranceLines(applied: readonly FilledCell[], tolerances: readonly FilledCell[]): PlotSeries[] {
  const rising = applied
    .map((cell, row) => ({ cell, tolerance: tolerances[row] }))
    .filter(({ cell, tolerance }, row, all) => tolerance && all.findIndex((one) => one.cell.value === cell.value) === row)
    .sort((a, b) => Number(a.cell.value) - Number(b.cell.value));
  const line = (side: string, sign: number) => seriesOf(`Tolerance, ${side}`, rising.map(({ cell }) => cell), rising.map(({ tolerance }) => tolerance), 'limit', sign);
  return present([line('upper', 1), line('lower', -1)]);
}

/** As found and as left mostly have the same tolerances: lines that fall on each other are drawn once. */
function eachOnce(lines: readonly PlotSeries[]): PlotSeries[] {
  return lines.filter((line, i) => lines.findIndex((other) => JSON.stringify(other) === JSON.stringify(line)) === i);
}

import type { Block } from '../block';
import type { FilledSheet } from '../filledSheet';
import { appliedAxis, appliedUnitAxis } from './axis';
import type { PlotData, PlotSeries } from './plotData';
import { seriesOf } from './series';

/** The errors of a block, and the tolerances beside them. */
interface Errors {
  readonly errors: PlotSeries;
  readonly tolerances: PlotSeries | undefined;
}

/** Errors of a system or an indicator against what was applied: a series a block, with the tolerances as lines. */
export function errorsPlot(sheet: FilledSheet, blocks: readonly Block[]): PlotData[] {
  const drawn = blocks.flatMap((block): Errors[] => {
    const column = (name: string) => sheet.columns(`${name}_${block.id}`)?.[0] ?? [];
    const errors = seriesOf(block.label, block.applied, column('errors'), 'both');
    return errors ? [{ errors, tolerances: seriesOf(block.label, block.applied, column('tolerances'), 'limit') }] : [];
  });
  if (drawn.length === 0) return [];
  const series = [...drawn.map(({ errors }) => errors), ...toleranceLines(drawn.flatMap(({ tolerances }) => tolerances ?? []))];
  return [{ id: 'errors', title: 'Error', x: appliedAxis(sheet), y: appliedUnitAxis(sheet, 'Error'), series }];
}

/** As found and as left, up and down mostly have the same tolerances: one pair of lines then, else a pair a block. */
function toleranceLines(ofBlocks: readonly PlotSeries[]): PlotSeries[] {
  const all = pairs(ofBlocks);
  if (all.length === 0) return [];
  const agree = new Set(all.map(([x]) => x)).size === new Set(all.map(([x, y]) => `${x} ${y}`)).size;
  return agree ? bothSides('Tolerance', all) : ofBlocks.flatMap((one) => bothSides(`Tolerance ${one.name.toLowerCase()}`, pairs([one])));
}

function pairs(series: readonly PlotSeries[]): [x: number, y: number][] {
  return series.flatMap(({ x, y }) => x.map((at, i): [number, number] => [at, Math.abs(y[i] as number)]));
}

/** Lines above and below zero, from the least to the greatest applied value, each once. */
function bothSides(name: string, points: readonly (readonly [x: number, y: number])[]): PlotSeries[] {
  const rising = [...new Map(points).entries()].sort(([a], [b]) => a - b);
  const x = rising.map(([at]) => at);
  return [['upper', 1], ['lower', -1]].map(([side, sign]) => ({ name: `${name}, ${side}`, x: [...x], y: rising.map(([, y]) => Number(sign) * y), drawn: 'limit' }));
}

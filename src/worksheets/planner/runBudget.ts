import { address, type Formula, formula } from '../planBuilder';
import type { Budget, BudgetComponent, BudgetDecision } from './budget';
import type { Desk } from './desk';
import type { SeriesBlock } from './seriesBlock';

/** Cells that the budget of a block takes its values from; what a sheet does not have is left out. */
export interface RunBudgetCells {
  readonly block: SeriesBlock;
  readonly title: string;
  readonly suffix: string;
  /** Relative uncertainty of the standard, k = 2. */
  readonly standard: string;
  readonly resolution: string;
  /** The output (or what should be indicated) at the greatest load, as an expression. */
  readonly output: string;
  /** The greatest load, if it is in another unit than the output. */
  readonly load?: string;
  readonly fit?: { readonly sd: string; readonly degree: string };
  readonly repeatability?: string;
  readonly hysteresis?: string;
  readonly zeroReturn?: string;
  readonly decision?: BudgetDecision;
}

/** The usual components of a run, from its own results; temperature and others are left to be typed in. */
export function runBudget({ item }: Desk, cells: RunBudgetCells): Budget {
  const { block, title, suffix, standard, resolution, fit, repeatability, hysteresis, zeroReturn } = cells;
  const output = `ABS(${cells.output})`;
  const once = (cell: string, text: string): Formula => formula(`IF(${cell}="","",${text})`);
  const taken = (label: string, cell: string | undefined, text: (cell: string) => string): BudgetComponent[] =>
    (cell === undefined ? [] : [{ label, value: once(cell, text(cell)), distribution: 'rectangular' }]);
  return {
    title, suffix, block,
    components: [
      { label: 'Standard used, its U', value: once(standard, standard), distribution: 'normal' },
      ...(fit ? [scatter(block, output, fit.sd, fit.degree)] : taken('Repeatability, half the spread', repeatability, (cell) => `${cell}/2`)),
      { label: 'Resolution, one step', value: formula(`IF(${block.waiting},"",${resolution}/${output})`), distribution: 'resolution' },
      ...taken('Zero return', zeroReturn, (cell) => `ABS(${cell})`),
      ...taken('Hysteresis, half', hysteresis, (cell) => `ABS(${cell})/2`),
      { label: 'Temperature of the run', distribution: 'rectangular' },
    ],
    output: { at: output, unit: item.outputUnit },
    ...(cells.load === undefined ? {} : { load: { at: `ABS(${cells.load})`, unit: item.unit } }),
    ...(cells.decision ? { decision: cells.decision } : {}),
  };
}

/** Twice the residual standard deviation, so that the divisor of a normal one gives it back. */
function scatter(block: SeriesBlock, output: string, sd: string, degree: string): BudgetComponent {
  const underLoad = `${address(block.readingColumn, block.firstRow + 1)}:${address(block.netColumn - 1, block.answers.points.at(-1) === 0 ? block.lastRow - 1 : block.lastRow)}`;
  return {
    label: 'Scatter about the fit, 2·s', distribution: 'normal',
    value: formula(`IF(${sd}="","",2*${sd}/${output})`), dof: formula(`IF(${sd}="","",COUNT(${underLoad})-${degree}-1)`),
  };
}

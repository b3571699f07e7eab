import { appliedUnitOf } from '../appliedUnit';
import type { FilledCell } from '../filledSheet';
import type { CertifiedBlock, CertifiedRun } from './certifiedRun';
import { decimalsOf, fixedFormat, percentFormat, tellingDecimals, uncertaintyFormat } from './digits';
import type { PointColumn } from './pointTable';

/** U of a block as its run holds it: in output units at the greatest load, and as a fraction of the output there. */
export interface BlockUncertainty {
  readonly output: number;
  readonly relative: number;
}

/** Undefined while the sheet does not give it. */
export function uncertaintyOf(run: CertifiedRun, { ending }: CertifiedBlock): BlockUncertainty | undefined {
  const [output, relative] = [run.cells.number(`value_expanded_output${ending}`), run.cells.number(`value_expanded${ending}`)];
  return output === undefined || relative === undefined ? undefined : { output, relative };
}

/** Columns of a block of a transducer's run: what was applied, the mean output, what the polynomial gives and how far each run is off it, or the deviation from the terminal line, and U. */
export function runColumns(run: CertifiedRun, block: CertifiedBlock, found?: PointColumn): PointColumn[] {
  const { id } = block;
  const u = uncertaintyOf(run, block);
  const decimals = decimalsOf(u?.output ?? 0);
  const output = () => fixedFormat(decimals);
  const column = (name: string) => run.cells.columns(`${name}_${id}`)?.[0];
  const fitted = column('fitted');
  const residuals = run.cells.columns(`residuals_${id}`) ?? [];
  const deviations = residuals.length === 0 ? column('deviations') : undefined;
  const unit = run.outputUnit;
  return [
    applied(run, block), ...(found ? [found] : []),
    { id: `mean_${id}`, head: found ? 'Output, final' : 'Output', unit, cells: column('mean') ?? [], format: output },
    ...(fitted ? [{ id: `fitted_${id}`, head: 'Fitted', unit, cells: fitted.map((cell, row) => (block.block.applied[row].value === 0 ? undefined : cell)), format: output }] : []),
    ...residuals.map((cells, i): PointColumn => ({ head: `Residual ${i + 1}`, unit, cells, format: () => fixedFormat(decimals + 1) })),
    ...(deviations ? [{ id: `deviations_${id}`, head: 'Deviation', unit: 'of RO', cells: deviations, format: () => percentFormat(u?.relative ?? 0) }] : []),
    uncertainty(run, block),
  ];
}

/** Columns of a block of a system or an indicator. */
export function indicationColumns(run: CertifiedRun, block: CertifiedBlock): PointColumn[] {
  const { id } = block;
  const decimals = decimalsOf(uncertaintyOf(run, block)?.output ?? 0);
  const column = (name: string) => run.cells.columns(`${name}_${id}`)?.[0] ?? [];
  const [errors, tolerances] = [column('errors'), column('tolerances')];
  const unit = run.outputUnit;
  return [
    { ...applied(run, block), head: 'Applied' },
    { id: `mean_${id}`, head: 'Indication', unit, cells: column('mean'), format: () => fixedFormat(decimals) },
    { id: `errors_${id}`, head: 'Error', unit, cells: errors, format: (row) => fixedFormat(telling(errors[row], tolerances[row], decimals)) },
    { id: `tolerances_${id}`, head: 'Tolerance ±', unit, cells: tolerances, format: (row) => fixedFormat(Math.max(decimals, telling(errors[row], tolerances[row], decimals))) },
    { id: `verdicts_${id}`, head: 'Verdict', unit: '', cells: column('verdicts'), format: () => undefined, verdict: true },
    uncertainty(run, block),
  ];
}

/** Decimals at which an error beyond its tolerance looks beyond it. */
function telling(error: FilledCell | undefined, tolerance: FilledCell | undefined, decimals: number): number {
  return typeof error?.value === 'number' && typeof tolerance?.value === 'number' ? tellingDecimals(Math.abs(error.value), tolerance.value, decimals) : decimals;
}

/** Columns of a force-proving instrument, by force. */
export function provingColumns(run: CertifiedRun): PointColumn[] {
  const column = (name: string) => run.cells.columns(`proving_${name}`)?.[0] ?? [];
  const number = (cell: FilledCell | undefined) => (typeof cell?.value === 'number' ? cell.value : 0);
  const [means, w] = [column('xr'), column('w')];
  // The least of the absolute uncertainties gives the digits of all, so that none is cut short.
  const least = Math.min(...means.map((mean, i) => Math.abs(number(mean)) * number(w[i])).filter((value) => value > 0));
  const output = () => fixedFormat(decimalsOf(Number.isFinite(least) ? least : 0));
  const figure = (id: string, head: string, of: string): PointColumn => ({ id: `proving_${id}`, head, unit: of, cells: column(id), format: () => '0.000%' });
  const unit = run.outputUnit;
  return [
    { id: 'proving_forces', head: 'Force', unit: appliedUnitOf(run.cells).unit ?? '', cells: column('forces'), format: () => column('forces')[0]?.format },
    { id: 'proving_xr', head: 'Xr', unit, cells: means, format: output }, { id: 'proving_xa', head: 'Xa', unit, cells: column('xa'), format: output },
    figure('b', 'b', 'of Xr'), figure('b_same', 'b′', 'of mean'), figure('fc', 'fc', 'of Xa'),
    ...(column('v').some(({ value }) => value !== null) ? [figure('v', 'v', 'of X3, X5')] : []),
    { id: 'proving_class', head: 'Class', unit: '', cells: column('class'), format: () => undefined, verdict: true },
    { id: 'proving_w', head: 'W, k = 2', unit: 'of force', cells: w, format: (row) => percentFormat(number(w[row])) },
  ];
}

function applied(run: CertifiedRun, { id, block }: CertifiedBlock): PointColumn {
  return { id: `forces_${id}`, head: 'Applied', unit: appliedUnitOf(run.cells).unit ?? '', cells: block.applied, format: (row) => block.applied[row].format };
}

/** U in units of the output, beside every load. */
function uncertainty(run: CertifiedRun, { id, ending, block }: CertifiedBlock): PointColumn {
  const cell = run.cells.cell(`value_expanded_output${ending}`);
  const format = uncertaintyFormat(typeof cell?.value === 'number' ? cell.value : 0);
  return { id: `u_${id}`, head: 'U', unit: run.outputUnit, cells: block.applied.map(({ value }) => (value === 0 ? undefined : cell)), format: () => format };
}

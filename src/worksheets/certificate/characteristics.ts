import { blockTable, type BlockLine } from './blockTable';
import { type CertificateDesk, section } from './certificateDesk';
import type { CertifiedBlock, CertifiedResult, CertifiedRun } from './certifiedRun';
import { decimalsOf, fixedFormat, tellingDecimals } from './digits';
import { uncertaintyOf } from './runPoints';

/** What is stated of a block besides its curve, its output and the uncertainty of that, in the order of the certificate. */
const STATED = [
  'rated_output', 'zero_balance', 'nonlinearity', 'hysteresis', 'repeatability', 'zero_return', 'combined_error', 'error_band', 'greatest_error', 'points_outside',
  'class_aa', 'class_a', 'class_from', 'not_judged', 'worst_b', 'worst_b_same', 'worst_fc', 'worst_v', 'creep', 'f0', 'force_u', 'relative_resolution',
];
/** Words of the run's sheet that a narrow column would cut. */
const SHORTER: Readonly<Record<string, string>> = { rated_output: 'Against rated output', error_band: 'Static error band ±' };
/** Of two directions together; it stands with the second. */
const OF_BOTH = 'asymmetry';

/** Characteristics of every block with limits and verdicts, two that are judged by the same limits side by side; gives the next free row. */
export function characteristics(desk: CertificateDesk, start: number, run: CertifiedRun): number {
  const groups: readonly (readonly CertifiedBlock[])[] = run.blocks.length === 2 && STATED.every((id) => sameLimit(run, id)) ? [run.blocks] : run.blocks.map((block) => [block]);
  if (run.kind === 'proving') return table(desk, start, run, [{ ...run.blocks[0], ending: '' }], '');
  return groups.reduce((row, blocks) => table(desk, row, run, blocks, groups.length > 1 ? `, ${blocks[0].label.toLowerCase()}` : ''), start);
}

function sameLimit(run: CertifiedRun, id: string): boolean {
  const [first, second] = run.blocks.map(({ ending }) => run.result(`${id}${ending}`)?.limit?.value);
  return first === second;
}

function table(desk: CertificateDesk, start: number, run: CertifiedRun, blocks: readonly CertifiedBlock[], of: string): number {
  const lines = [...STATED.flatMap((id) => line(run, blocks, id)), ...bothLine(run, blocks)];
  if (lines.length === 0) return start;
  const row = section(desk, start, `Characteristics${of}${run.kind === 'proving' ? '' : ' (RO: output at capacity)'}`);
  return blockTable(desk, row, run.name, blocks.map(({ label }) => label), lines);
}

function line(run: CertifiedRun, blocks: readonly CertifiedBlock[], id: string): BlockLine[] {
  const ids = blocks.map(({ ending }) => `${id}${ending}`);
  const results = ids.map((name) => run.result(name));
  return results.some((result) => result) ? [{ ids, results, ...formats(run, blocks, results), ...(SHORTER[id] === undefined ? {} : { label: SHORTER[id] }) }] : [];
}

function bothLine(run: CertifiedRun, blocks: readonly CertifiedBlock[]): BlockLine[] {
  const result = blocks.length === 2 ? run.result(OF_BOTH) : undefined;
  return result ? [{ ids: ['', OF_BOTH], results: [undefined, result], ...formats(run, blocks, [result]) }] : [];
}

/**
 * Formats for a result and its limit: outputs and parts of them as far as U goes, all others as on their own sheet. One that is beyond its limit
 * gets as many decimals as it takes to show that; the limit shows all of its own.
 */
function formats(run: CertifiedRun, blocks: readonly CertifiedBlock[], results: readonly (CertifiedResult | undefined)[]): { readonly format: string; readonly limitFormat?: string } {
  const known = results.find((result) => result !== undefined) as CertifiedResult;
  const own = known.cell.format ?? '0';
  const isPercent = own.includes('%');
  const u = run.kind === 'proving' ? [] : blocks.flatMap((block) => uncertaintyOf(run, block) ?? []);
  const isOutput = known.unit === run.outputUnit;
  if (!isPercent && !isOutput) return { format: own, limitFormat: known.limit?.format ?? own };
  const usual = u.length === 0 ? decimalsIn(own) : Math.max(...u.map(({ output, relative }) => decimalsOf(isPercent ? 100 * relative : output)));
  const scale = isPercent ? 100 : 1;
  const decimals = Math.max(...results.map((result) => {
    const [value, limit] = [result?.cell.value, result?.limit?.value];
    return typeof value === 'number' && typeof limit === 'number' ? tellingDecimals(Math.abs(scale * value), scale * limit, usual) : usual;
  }));
  const format = (count: number) => `${fixedFormat(count)}${isPercent ? '%' : ''}`;
  return { format: format(decimals), limitFormat: format(Math.max(decimals, ...results.map((result) => (typeof result?.limit?.value === 'number' ? decimalsNeeded(scale * result.limit.value) : 0)))) };
}

function decimalsIn(format: string): number {
  return /\.(0+)/.exec(format)?.[1].length ?? 0;
}

/** Decimals that a limit is written with. */
function decimalsNeeded(value: number): number {
  return (String(Number(value.toPrecision(12))).split('.')[1] ?? '').length;
}

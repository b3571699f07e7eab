import { appliedUnitOf } from '../appliedUnit';
import { blockTable, type BlockLine } from './blockTable';
import { type CertificateDesk, paragraph, section } from './certificateDesk';
import type { CertifiedBlock, CertifiedResult, CertifiedRun } from './certifiedRun';

const POWERS = ['', '·F', '·F²', '·F³', '·F⁴', '·F⁵'];

/** Whether the blocks of a run have a calibration polynomial. */
export function hasCurve(run: CertifiedRun): boolean {
  return run.kind === 'proving' || run.blocks.some(({ ending }) => typeof run.result(`a0${ending}`)?.cell.value === 'number');
}

/** The calibration polynomial, its scatter and the lower limit factor; gives the next free row. */
export function curveSection(desk: CertificateDesk, start: number, run: CertifiedRun): number {
  if (!hasCurve(run)) return start;
  return run.kind === 'proving' ? provingCurve(desk, start, run) : polynomial(desk, start, run);
}

function polynomial(desk: CertificateDesk, start: number, run: CertifiedRun): number {
  const blocks = run.blocks.slice(0, 2);
  const degree = run.cells.number('degree') ?? 1;
  let row = section(desk, start, 'Calibration curve');
  row = paragraph(desk, row, 'text', `X = ${equation('A', degree)}, with F the magnitude of the load in ${unitOf(run)} and X the net output in ${run.outputUnit}; least squares over all readings under load.`);
  const line = (id: string, format: string, label?: string): BlockLine[] => oneLine(run, blocks, id, format, label);
  const own = (id: string) => run.result(`${id}${blocks[0].ending}`)?.cell.format ?? '0.00E+00';
  return blockTable(desk, row, run.name, blocks.map(({ label }) => label), [
    ...Array.from({ length: degree + 1 }, (_, k) => line(`a${k}`, '0.00000000E+00')).flat(),
    ...line('residual_sd', '0.0E+00', 'Standard deviation s'), ...line('limit_factor', own('limit_factor')),
  ]);
}

function provingCurve(desk: CertificateDesk, start: number, run: CertifiedRun): number {
  const degree = run.cells.number('degree') ?? 1;
  const form = run.cells.text('equation_form') ?? 'inverse';
  const line = (id: string, label: string): BlockLine[] => oneLine(run, [{ ending: '' }], id, '0.00000000E+00', label);
  let row = section(desk, start, 'Interpolation and equation of uncertainty');
  row = paragraph(desk, row, 'text', `Xa = ${equation('A', degree)} and W = ${form === 'inverse' ? 'a0 + a1/F' : form === 'linear' ? 'a0 + a1·F' : 'a0 + a1·F + a2·F²'}, with F the force in ${unitOf(run)} and Xa in ${run.outputUnit}. W by the equation is at no force of the table below the W found there.`);
  return blockTable(desk, row, run.name, [''], [
    ...Array.from({ length: degree + 1 }, (_, k) => line(`interpolation_a${k}`, `A${k}`)).flat(),
    ...line('equation_raised', 'a0 of the equation for W'), ...inUnit(line('equation_a1', 'a1 of the equation for W'), form === 'inverse' ? unitOf(run) : `1/${unitOf(run)}`),
    ...(form === 'quadratic' ? line('equation_a2', 'a2 of the equation for W') : []),
  ]);
}

/** The same lines in a unit that their own sheet leaves to the form of the equation. */
function inUnit(lines: readonly BlockLine[], unit: string): BlockLine[] {
  return lines.map((line) => ({ ...line, results: line.results.map((result) => result && { ...result, unit }) }));
}

/** A line for a result that any of the blocks has. */
export function oneLine(run: CertifiedRun, blocks: readonly Pick<CertifiedBlock, 'ending'>[], id: string, format: string, label?: string): BlockLine[] {
  const ids = blocks.map(({ ending }) => `${id}${ending}`);
  const results = ids.map((name): CertifiedResult | undefined => run.result(name));
  const isThere = results.some((result) => result !== undefined && result.cell.value !== null);
  return isThere ? [{ results, ids, format, ...(label === undefined ? {} : { label }) }] : [];
}

function equation(letter: string, degree: number): string {
  return Array.from({ length: degree + 1 }, (_, k) => `${letter}${k}${POWERS[k]}`).join(' + ');
}

function unitOf(run: CertifiedRun): string {
  return appliedUnitOf(run.cells).unit ?? '';
}

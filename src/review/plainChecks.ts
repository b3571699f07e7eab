import { found, held } from './finding';
import type { Expected } from './recompute/expected';
import type { ReviewedSheet } from './reviewedSheet';
import type { ReviewFinding } from './reviewFinding';

/** The sheet's own checks let pass what differs by this part. */
const AGREEMENT = 1e-8;
/** Columns from the plain value to the verdict on it. */
const VERDICT = 2;

/** Results that the plain formula beside them does not give, and verdicts on that which say something else. */
export function plainChecks(sheet: ReviewedSheet, expected: readonly Expected[]): ReviewFinding[] {
  const scales = new Map(expected.map(({ cell, scale }) => [cell.at, Math.abs(scale)]));
  return sheet.cells.namesAfter('plain_').flatMap((id): ReviewFinding[] => {
    const plain = sheet.cells.cell(`plain_${id}`);
    const own = sheet.cells.cell(`value_${id}`);
    if (!plain) return [];
    const verdict = sheet.beside(plain, VERDICT);
    if (verdict.value === 'differs') return [found(sheet, verdict, 'plain check', `${verdict.at} says “differs”: ${plain.at} holds ${held(plain.value, plain.format)}${own ? `, ${own.at} ${held(own.value, own.format)}` : ''}; expected both to agree`)];
    if (!own || plain.value === null || own.value === null) return [];
    if (agree(own.value, plain.value, scales.get(own.at) ?? 1)) return [];
    return [found(sheet, own, 'plain check', `${own.at} holds ${held(own.value, own.format)}, and the plain formula in ${plain.at} gives ${held(plain.value, plain.format)}; expected both to agree`)];
  });
}

/** Some plain formulas give the magnitude alone. */
function agree(own: unknown, plain: unknown, scale: number): boolean {
  if (typeof own !== 'number' || typeof plain !== 'number') return typeof own === typeof plain ? own === plain : false;
  const most = AGREEMENT * Math.max(Math.abs(own), scale, 1e-9);
  return Math.abs(own - plain) <= most || Math.abs(Math.abs(own) - plain) <= most;
}

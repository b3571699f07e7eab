import type { FilledCell } from '../worksheets/filledSheet';
import type { ReviewFinding } from './reviewFinding';
import type { ReviewedSheet } from './reviewedSheet';

/** A finding about a cell of a sheet. */
export function found(sheet: ReviewedSheet, { at }: Pick<FilledCell, 'at'>, kind: ReviewFinding['kind'], message: string, severity: ReviewFinding['severity'] = 'wrong'): ReviewFinding {
  return { severity, kind, sheet: sheet.name, at, message };
}

/** What a cell holds, in words; numbers to 12 digits, in per cent where the cell shows per cent. */
export function held(value: FilledCell['value'], format?: string): string {
  if (value === null || value === '') return 'nothing';
  if (typeof value === 'number') return format?.includes('%') ? `${digits(value * 100)} %` : digits(value);
  if (typeof value === 'object') return value.error;
  return typeof value === 'string' ? `“${value.length > 60 ? `${value.slice(0, 59)}…` : value}”` : String(value).toUpperCase();
}

function digits(value: number): string {
  return String(Number(value.toPrecision(12)));
}

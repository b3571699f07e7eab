import type { ReadValue } from '../readSheet';
import { valueOf } from './content';

/** Relative difference up to which two programs give the same. */
const AGREEMENT = 1e-9;
/** Below this, in the units of a cell, what is left of a difference of equal numbers is noise. */
const NOISE = 1e-15;

/** Whether two values are the same: numbers to 1e-9 of the greater, text to the letter; blank and an empty text are one. */
export function sameValue(a: ReadValue, b: ReadValue): boolean {
  if (typeof a === 'number' && typeof b === 'number') return Math.abs(a - b) <= Math.max(NOISE, AGREEMENT * Math.max(Math.abs(a), Math.abs(b)));
  if (isBlank(a) || isBlank(b)) return isBlank(a) && isBlank(b);
  if (typeof a === 'object' && typeof b === 'object') return a?.error === b?.error;
  return a === b;
}

function isBlank(value: ReadValue): boolean {
  return value === null || value === '';
}

/** Whether a constant is the one that a record holds: numbers as doubles, text to the letter. */
export function sameConstant(content: string, value: ReadValue): boolean {
  const recorded = valueOf(content);
  if (typeof recorded === 'object' && typeof value === 'object') return recorded?.error === value?.error;
  return recorded === value || (isBlank(recorded) && isBlank(value));
}

/** A number in a formula: programs write 1E-9 as 0.000000001 when they save. No part of a name or of an address. */
const NUMERAL = /(?<![\w.$])(?:\d+\.?\d*|\.\d+)(?:E[+-]?\d+)?(?![\w.!:])/g;

/** Whether two formulas are the same, apart from the case of names, blanks, the way numbers are written, and quotes that a sheet's name does not need. */
export function sameFormula(a: string, b: string): boolean {
  return a === b || plain(a) === plain(b);
}

function plain(formula: string): string {
  return formula.split(/("(?:[^"]|"")*")/).map((part, i) => (i % 2 === 1 ? part : outsideText(part))).join('');
}

/** Blanks inside of a sheet's quoted name stay; it is compared without regard to case, as sheets are. */
function outsideText(code: string): string {
  return code.split(/('(?:[^']|'')*')/).map((part, i) => {
    if (i % 2 === 0) return part.replace(/\s+/g, '').toUpperCase().replace(NUMERAL, (digits) => String(Number(digits)));
    return (/^'[A-Za-z_][A-Za-z0-9_]*'$/.test(part) ? part.slice(1, -1) : part).toUpperCase();
  }).join('');
}

/** Whether a formula calls a cell function of this program. */
export function callsCellFunction(formula: string): boolean {
  return /\bPROVE\.[A-Z]/i.test(formula.replace(/"(?:[^"]|"")*"/g, '""'));
}

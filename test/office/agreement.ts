/** Whether LibreOffice, which knows nothing of the engine, computes the same from plain formulas. */
import { addressOf, rangeOf } from '../../src/hosts/address';
import type { CellContent, CellValue } from '../../src/hosts/sheetHost';
import type { SheetPlan } from '../../src/worksheets/plan';
import { isPlain } from './plainFormulas';

/** A sheet as the engine computed it: the value of every cell, constants included. */
export interface ComputedSheet {
  readonly plan: SheetPlan;
  readonly values: (at: string) => CellValue;
}

/** How many cells were compared, and what is wrong with them, each with its place. */
export interface Agreement {
  readonly compared: number;
  readonly faults: readonly string[];
}

const RELATIVE = 1e-9;
/** Rounding of numbers that a formula reads; what it gives may be far smaller than they are. */
const ROUNDING = 1e-13;
/** A count of digits that agree: LibreOffice takes nearly equal numbers for equal when it subtracts, so it cannot count the last ones. */
const DIGIT_COUNT = '-LOG10(ABS(';
const REFERENCE = /(?<![\w.!'$])\$?[A-Z]{1,3}\$?[1-9]\d*(?::\$?[A-Z]{1,3}\$?[1-9]\d*)?(?![\w.(!])/g;

/** Compares what every plain formula of a sheet gives in LibreOffice with what it gives in the engine. */
export function compareFormulas({ plan, values }: ComputedSheet, recalculated: readonly CellContent[]): Agreement {
  const found = new Map(recalculated.map((cell) => [cell.at, cell.value]));
  const cells = plan.cells.filter(({ formula }) => formula !== undefined && isPlain(formula) && !formula.includes(DIGIT_COUNT));
  const faults = cells.flatMap(({ at, formula = '' }) =>
    differs(found.get(at) ?? null, values(at), tolerance(formula, plan, values)).map((fault) => `${plan.name}!${at} ${formula}: ${fault}`));
  return { compared: cells.length, faults };
}

/**
 * Compares each result of the add-in (its cell is named value_…) with the cell that computes it from plain formulas alone
 * (plain_…). Only numbers count as compared.
 */
export function compareChecks({ plan, values }: ComputedSheet, recalculated: readonly CellContent[]): Agreement {
  const found = new Map(recalculated.map((cell) => [cell.at, cell.value]));
  const ranges = new Map((plan.names ?? []).map(({ name, range }) => [name, range]));
  const results = [...ranges.keys()].filter((name) => name.startsWith('plain_')).map((name) => name.slice('plain_'.length));
  const faults = results.flatMap((result) => {
    const [plain, value] = [ranges.get(`plain_${result}`) ?? '', ranges.get(`value_${result}`)];
    if (value === undefined) return [`${plan.name}: found plain_${result} without value_${result}`];
    const formula = plan.cells.find(({ at }) => at === plain)?.formula;
    if (formula === undefined || !isPlain(formula)) return [`${plan.name}!${plain}: found ${formula}; expected a plain formula for plain_${result}`];
    return differs(found.get(plain) ?? null, asChecked(values(value), plain, plan), tolerance(formula, plan, values)).map((fault) => `${plan.name}, ${result}: ${fault}`);
  });
  const numbers = results.filter((result) => {
    const value = ranges.get(`value_${result}`);
    return value !== undefined && typeof values(value) === 'number';
  });
  return { compared: numbers.length, faults };
}

/** A result as its check has it: the magnitude, if the line of the check is named so, like |Hysteresis|. */
function asChecked(value: CellValue, at: string, plan: SheetPlan): CellValue {
  const label = plan.cells.find((cell) => cell.at === `A${/\d+$/.exec(at)?.[0]}`)?.value;
  return typeof value === 'number' && typeof label === 'string' && label.startsWith('|') ? Math.abs(value) : value;
}

/** What is wrong with a value, if anything. */
function differs(found: CellValue, expected: CellValue, allowed: number): string[] {
  const fault = [`LibreOffice found ${shown(found)}; the engine ${shown(expected)}`];
  if (typeof expected === 'number' && typeof found === 'number') {
    return Math.abs(found - expected) <= Math.max(RELATIVE * Math.abs(expected), allowed) ? [] : fault;
  }
  return shown(found) === shown(expected) ? [] : fault;
}

function shown(value: CellValue): string {
  if (value === null || value === '') return 'nothing';
  return typeof value === 'object' ? value.error : JSON.stringify(value);
}

/** What a formula may differ by because of what it reads: where it subtracts numbers, by as much as each of them may differ. */
function tolerance(formula: string, plan: SheetPlan, values: (at: string) => CellValue): number {
  const subtracts = formula.replace(/"[^"]*"/g, '').includes('-');
  return (subtracts ? RELATIVE : ROUNDING) * greatestRead(formula, plan, values);
}

/** The greatest magnitude among the numbers in the cells that a formula names. */
function greatestRead(formula: string, plan: SheetPlan, values: (at: string) => CellValue): number {
  const named = (plan.names ?? []).filter(({ name }) => new RegExp(`(?<![\\w.])${name}(?![\\w.(])`, 'i').test(formula)).map(({ range }) => range);
  const ranges = [...(formula.replace(/"[^"]*"/g, '').match(REFERENCE) ?? []), ...named].map(rangeOf);
  let greatest = 0;
  for (const range of ranges) {
    for (let row = range.startRow; row <= range.endRow; row += 1) {
      for (let column = range.startColumn; column <= range.endColumn; column += 1) {
        const value = values(addressOf({ row, column }));
        if (typeof value === 'number') greatest = Math.max(greatest, Math.abs(value));
      }
    }
  }
  return greatest;
}

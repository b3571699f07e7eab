import metadata from '@generated/functions.json';
import { addressOf, rangeOf } from '../address';
import { type FormulaReference, referencesIn } from './formulaReferences';

const NAMED = /^(\w+)(?: row (\d+))?(?:,? column (\d+))?:/;
/** An error inside another argument, in brackets behind its code. */
const PASSED_ON = /: the cell holds \S+ \((.+)\)$/;
const CALL = /PROVE\.([A-Z][A-Z0-9._]*)\s*\(/gi;

const parameterNames = new Map(metadata.functions.map(({ id, parameters }) => [id, parameters.map(({ name }) => name)]));

/**
 * The cells that a message of a cell function speaks of, by the formula that gave it: in "=PROVE.NET(A9:A14,B9:D14)",
 * "readings row 3, column 2: …" is C11, and without the column B11:D11. Undefined unless the formula leaves no doubt.
 */
export function faultyInput(formula: string, message: string): FormulaReference | undefined {
  const [, passedOn] = PASSED_ON.exec(message) ?? [];
  return named(formula, message) ?? (passedOn === undefined ? undefined : faultyInput(formula, passedOn));
}

function named(formula: string, message: string): FormulaReference | undefined {
  const [, name, row, column] = NAMED.exec(message) ?? [];
  if (!name) return undefined;
  const found = new Map<string, FormulaReference>();
  for (const argument of argumentsNamed(formula, name)) {
    const cell = cellIn(argument, row === undefined ? undefined : Number(row), column === undefined ? undefined : Number(column));
    if (!cell) return undefined;
    found.set(`${cell.sheet ?? ''}!${cell.range}`, cell);
  }
  return found.size === 1 ? [...found.values()][0] : undefined;
}

/** What stands for an argument in every call of a PROVE function that has one of that name. */
function argumentsNamed(formula: string, name: string): string[] {
  return [...formula.matchAll(CALL)].flatMap((call) => {
    const index = parameterNames.get(call[1].toUpperCase())?.indexOf(name) ?? -1;
    const given = index < 0 ? undefined : splitArguments(formula.slice(call.index + call[0].length))[index];
    return given?.trim() ? [given.trim()] : [];
  });
}

/** The arguments of a call, from the text after its opening bracket. */
function splitArguments(text: string): string[] {
  const parts = [''];
  let depth = 0;
  let quote = '';
  for (const letter of text) {
    if (quote) quote = letter === quote ? '' : quote;
    else if (letter === '"' || letter === "'") quote = letter;
    else if (letter === '(' || letter === '{') depth += 1;
    else if (letter === '}' || (letter === ')' && depth > 0)) depth -= 1;
    else if (letter === ')') return parts;
    else if (letter === ',' && depth === 0) {
      parts.push('');
      continue;
    }
    parts[parts.length - 1] += letter;
  }
  return parts;
}

/** A row, or one cell, of an argument that is a plain reference; rows and columns count from 1. */
function cellIn(argument: string, row?: number, column?: number): FormulaReference | undefined {
  const [reference] = referencesIn(argument);
  if (!reference || !/^[^(){}"+*/^&<>=]+$/.test(argument) || referencesIn(argument).length !== 1) return undefined;
  const { startRow, startColumn, endRow, endColumn } = rangeOf(reference.range);
  const isList = startRow === endRow && endColumn > startColumn;
  const first = isList
    ? { row: startRow, column: startColumn + (column ?? 1) - 1 }
    : { row: startRow + (row ?? 1) - 1, column: startColumn + (column ?? 1) - 1 };
  const last = row === undefined && (isList ? column === undefined : endRow > startRow)
    ? { row: endRow, column: endColumn }
    : { row: first.row, column: isList || column !== undefined ? first.column : endColumn };
  if (first.row > endRow || first.column > endColumn) return undefined;
  const [start, end] = [addressOf(first), addressOf(last)];
  return { ...reference, range: start === end ? start : `${start}:${end}` };
}

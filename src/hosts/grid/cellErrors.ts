import type { Injector, IRange, Worksheet } from '@univerjs/core';
import { addressOf, type CellPlace, placeOf, rangeOf } from '../address';
import { isErrorCode } from './cellData';
import type { CellReader, FormulaFound } from './cellReader';
import { faultyInput } from './faultyInput';
import { type FormulaReference, referencesIn } from './formulaReferences';
import { messageAt } from './messages';
import { errorMessage, nameMessage } from './nativeErrors';
import { syntaxProblem } from './syntax';

/** A cell by its sheet and address. */
export interface NamedCell {
  readonly sheetId: string;
  readonly sheetName: string;
  readonly address: string;
}

/** An error in a cell, named by the cell whose formula failed first: the cell itself unless it passes an error on. */
export interface ErrorFound extends NamedCell {
  readonly code: string;
  /** Why, in words; names the cell to mend if it is known. */
  readonly message: string;
  /** The cell to mend, if the message speaks of one. */
  readonly input?: NamedCell;
  /** True if the words are about this very input, not about the code in general. */
  readonly worded: boolean;
}

/** How many cells back an error is followed to where it began. */
const DEEPEST = 30;

/** Says why cells hold errors, and which cell is to blame. */
export class CellErrors {
  constructor(private readonly cells: CellReader, private readonly injector: Injector) {}

  /** The error a cell holds, followed back to the cell it began in; undefined if it holds none. */
  at(sheetId: string, place: CellPlace, depth = 0): ErrorFound | undefined {
    const code = this.codeAt(sheetId, place);
    if (code === undefined) return undefined;
    const sheet = this.cells.sheet(sheetId);
    const source = this.cells.formulaAt(sheetId, place);
    if (!sheet || !source) return undefined;
    const message = this.misspelling(code, source) ?? messageAt(this.cells.unitId, sheetId, source.row, source.column);
    const input = message === undefined ? undefined : this.inputOf(sheet, source, message);
    const earlier = message === undefined ? this.firstPassedOn(sheet, source, code) : input;
    const origin = earlier && depth < DEEPEST ? this.at(earlier.sheetId, placeOf(earlier.address), depth + 1) : undefined;
    return origin ?? {
      ...cellOn(sheet, source),
      code,
      message: withPlace(message ?? errorMessage(code), input && nameOf(input, sheetId)),
      ...(input ? { input } : {}),
      worded: message !== undefined,
    };
  }

  /** What makes cells of a sheet hold errors: each cause once, those with words first, else row by row. */
  on(sheetId: string): ErrorFound[] {
    const found = new Map<string, ErrorFound>();
    this.cells.sheet(sheetId)?.getCellMatrix().forValue((row, column) => {
      const error = this.at(sheetId, { row, column });
      if (error && !found.has(causeOf(error))) found.set(causeOf(error), error);
    });
    const all = [...found.values()];
    return [...all.filter(({ worded }) => worded), ...all.filter(({ worded }) => !worded)];
  }

  private codeAt(sheetId: string, place: CellPlace): string | undefined {
    const value = this.cells.valueAt(sheetId, place);
    return isErrorCode(value) ? value : undefined;
  }

  /** What is wrong with the formula as it is written. A function that is given the error only knows that it came in. */
  private misspelling(code: string, { formula }: FormulaFound): string | undefined {
    return code === '#NAME?' ? nameMessage(this.injector, formula) : syntaxProblem(formula);
  }

  /** The first cell a formula refers to that holds the same error. */
  private firstPassedOn(sheet: Worksheet, { formula }: FormulaFound, code: string): NamedCell | undefined {
    for (const reference of referencesIn(formula)) {
      const cell = this.firstIn(sheet, reference, (found) => found === code);
      if (cell) return cell;
    }
    return undefined;
  }

  /** The cell that a message speaks of. Of a whole row, that is the first with an error. */
  private inputOf(sheet: Worksheet, { formula }: FormulaFound, message: string): NamedCell | undefined {
    const reference = faultyInput(formula, message);
    if (!reference) return undefined;
    const isOne = !reference.range.includes(':');
    return this.firstIn(sheet, reference, (code) => isOne || code !== undefined);
  }

  private firstIn(sheet: Worksheet, { sheet: name, range }: FormulaReference, is: (code?: string) => boolean): NamedCell | undefined {
    const target = name === undefined ? sheet : this.cells.sheetNamed(name);
    const place = target && placesIn(rangeOf(range)).find((candidate) => is(this.codeAt(target.getSheetId(), candidate)));
    return target && place && cellOn(target, place);
  }
}

function placesIn({ startRow, endRow, startColumn, endColumn }: IRange): CellPlace[] {
  const places: CellPlace[] = [];
  for (let row = startRow; row <= endRow; row += 1) {
    for (let column = startColumn; column <= endColumn; column += 1) places.push({ row, column });
  }
  return places;
}

function cellOn(sheet: Worksheet, place: CellPlace): NamedCell {
  return { sheetId: sheet.getSheetId(), sheetName: sheet.getName(), address: addressOf(place) };
}

/** Says a cell's name as the user of a sheet knows it: with the sheet only if it is another one. */
export function nameOf({ sheetId, sheetName, address }: NamedCell, onSheet: string): string {
  return sheetId === onSheet ? address : `${sheetName}!${address}`;
}

/** Errors of several formulas that one cell is to blame for have the same cause. */
export function causeOf({ sheetId, address, input }: ErrorFound): string {
  return input ? `${input.sheetId} ${input.address}` : `${sheetId} ${address}`;
}

/** "readings row 3: found …" → "readings row 3 (C11): found …". */
function withPlace(message: string, name?: string): string {
  if (name === undefined) return message;
  const place = ` (${name}): `;
  return message.includes(': found ') ? message.replace(': found ', `${place}found `) : message.replace(': ', place);
}

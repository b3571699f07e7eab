/** What `npm run evaluate` and the tests of the engine run in node: bundled to build/evaluate.cjs. */
import { readFileSync } from 'node:fs';
import type { Cell } from '../../functions/cells';
import { CellError } from './cellData';
import { readCommandLine, USAGE } from './commandLine';
import { readCsv } from './csv';
import { Engine, type EngineValue } from './engine';

export { CellError } from './cellData';
export { Engine } from './engine';
export { GridSheets } from './gridSheets';
export { describeCellFunctions, descriptionOf } from './describeFunctions';
export { messageAt } from './messages';

const DATA_SHEET = 'Data';

/** The size of the sheet beyond the data: results up to this size fit, and whole columns and rows are so long. */
const SPARE_ROWS = 20_000;
const SPARE_COLUMNS = 100;

/** Where the output goes, a line at a time. */
export interface Output {
  out(line: string): void;
  error(line: string): void;
}

/** Runs the command line evaluator and returns its exit code: 0, 1 if a formula gives an error, 2 if nothing could be evaluated. */
export async function main(args: readonly string[], output: Output): Promise<number> {
  try {
    const { help, dataFile, formulas } = readCommandLine(args);
    if (help) {
      output.out(USAGE);
      return 0;
    }
    const cells = dataFile === undefined ? [] : readData(dataFile);
    return await evaluateAll(cells, formulas, output);
  } catch (error) {
    output.error(`evaluate: ${error instanceof Error ? error.message : String(error)}`);
    output.error('See npm run --silent evaluate -- --help');
    return 2;
  }
}

async function evaluateAll(cells: readonly (readonly Cell[])[], formulas: readonly string[], output: Output): Promise<number> {
  const columns = cells.reduce((width, row) => Math.max(width, row.length), 0) + SPARE_COLUMNS;
  const engine = new Engine([{ name: DATA_SHEET, cells, rows: cells.length + SPARE_ROWS, columns }]);
  let code = 0;
  try {
    for (const formula of formulas) {
      const value = await engine.evaluate(DATA_SHEET, formula);
      output.out(JSON.stringify(value));
      if (hasError(value)) code = 1;
    }
  } finally {
    engine.dispose();
  }
  return code;
}

function readData(file: string): Cell[][] {
  let text: string;
  try {
    text = readFileSync(file, 'utf8');
  } catch (error) {
    throw new Error(`${file}: cannot be read (${(error as Error).message})`, { cause: error });
  }
  try {
    return readCsv(text);
  } catch (error) {
    throw new Error(`${file}, ${(error as Error).message}; expected comma-separated values`, { cause: error });
  }
}

function hasError(value: EngineValue | EngineValue[][]): boolean {
  return Array.isArray(value) ? value.some((row) => row.some(hasError)) : value instanceof CellError;
}

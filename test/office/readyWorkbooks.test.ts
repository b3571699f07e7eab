/**
 * The ready workbooks as LibreOffice computes and prints them. What custom functions give stands in their cells as constants;
 * every plain formula is stored with a wrong value, so that what is read and printed was computed by LibreOffice.
 */
import { placeOf } from '../../src/hosts/address';
import { engineSheets } from '../../src/hosts/file/engineSheets';
import { readWorkbook, type ReadSheet } from '../../src/hosts/file/readWorkbook';
import { readyWorkbooks } from '../../src/hosts/file/readyWorkbooks';
import { writeWorkbook } from '../../src/hosts/file/writeWorkbook';
import type { CellValue } from '../../src/hosts/sheetHost';
import type { SheetPlan } from '../../src/worksheets/plan';
import { Engine } from '../engine/bundle';
import { type Agreement, compareChecks, compareFormulas, type ComputedSheet } from './agreement';
import { converted, missing, timeFor } from './libreOffice';
import { pagesOf } from './pdfWords';
import { plainFormulas } from './plainFormulas';
import { usedArea, withPrintArea } from './printLayout';
import { printingFaults } from './printing';

const workbooks = readyWorkbooks();
const sheets = new Map<string, readonly ComputedSheet[]>();
let recalculated: ReadonlyMap<string, readonly ReadSheet[]>;
let printed: ReadonlyMap<string, Uint8Array>;

/** The sheets of a workbook with the values of all their cells. */
async function computed(plans: readonly SheetPlan[]): Promise<ComputedSheet[]> {
  const engine = new Engine(engineSheets(plans));
  try {
    await engine.calculate();
    return plans.map((plan) => {
      const matrix = engine.values(plan.name, usedArea(plan));
      const values = (at: string): CellValue => {
        const { row, column } = placeOf(at);
        return matrix[row]?.[column] ?? null;
      };
      return { plan: withPrintArea(plan), values };
    });
  } finally {
    engine.dispose();
  }
}

/** The file in which LibreOffice has everything to compute. */
function withoutValues(computedSheets: readonly ComputedSheet[]): Promise<Uint8Array> {
  return writeWorkbook(computedSheets.map(({ plan, values }) => ({ plan: plainFormulas(plan, values), values: () => -1 })));
}

/** What a comparison found in all sheets of a workbook. */
function inSheets(file: string, compare: (sheet: ComputedSheet, cells: ReadSheet['cells']) => Agreement): Agreement {
  const found = (sheets.get(file) ?? []).map((sheet, i) => compare(sheet, recalculated.get(file)?.[i].cells ?? []));
  return { compared: found.reduce((sum, { compared }) => sum + compared, 0), faults: found.flatMap(({ faults }) => faults) };
}

const withOffice = missing ? describe.skip : describe;

withOffice(missing ? `NOT RUN: ${missing}` : 'in LibreOffice', () => {
  beforeAll(async () => {
    const files = new Map<string, Uint8Array>();
    for (const { file, plans } of workbooks) {
      sheets.set(file, await computed(plans));
      files.set(file, await withoutValues(sheets.get(file) as ComputedSheet[]));
    }
    recalculated = new Map([...converted(files, 'xlsx')].map(([file, bytes]) => [file, readWorkbook(bytes)]));
    printed = converted(files, 'pdf');
  }, 3 * timeFor(workbooks.length));

  test.each(workbooks)('$file: every plain formula gives what the engine gives', ({ file }) => {
    const { compared, faults } = inSheets(file, compareFormulas);
    expect(faults).toEqual([]);
    expect(compared).toBeGreaterThan(0);
    process.stderr.write(`${file}: ${compared} plain formulas computed anew\n`);
  });

  test.each(workbooks)('$file: the check with plain formulas confirms the add-in', ({ file }) => {
    const { compared, faults } = inSheets(file, compareChecks);
    expect(faults).toEqual([]);
    const hasChecks = sheets.get(file)?.some(({ plan }) => plan.names?.some(({ name }) => name.startsWith('plain_')));
    // Without readings there is nothing to confirm.
    if (hasChecks && !file.endsWith('-empty.xlsx')) expect(compared).toBeGreaterThan(0);
    process.stderr.write(`${file}: ${compared} results of the add-in confirmed\n`);
  });

  test.each(workbooks)('$file: prints every cell whole, one sheet wide', ({ file }) => {
    expect(printingFaults(sheets.get(file) ?? [], pagesOf(printed.get(file) as Uint8Array))).toEqual([]);
  });
});

/**
 * The issue copies of the ready workbooks in LibreOffice, which knows no cell function: they open without #NAME?, show the same
 * numbers, and their plain formulas, stored with wrong values here, are computed anew and agree.
 */
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { engineSheets } from '../../src/hosts/file/engineSheets';
import { issueCopy } from '../../src/hosts/file/issueCopy';
import { type ReadCell, readWorkbook, type ReadSheet } from '../../src/hosts/file/readWorkbook';
import { readyWorkbooks } from '../../src/hosts/file/readyWorkbooks';
import { writeWorkbook } from '../../src/hosts/file/writeWorkbook';
import type { CellValue } from '../../src/hosts/sheetHost';
import type { SheetPlan } from '../../src/worksheets/plan';
import { CellError, Engine } from '../engine/bundle';
import { compareFormulas } from './agreement';
import { converted, missing, timeFor } from './libreOffice';

const workbooks = readyWorkbooks().filter(({ file }) => !file.endsWith('-empty.xlsx'));
const originals = new Map<string, readonly ReadSheet[]>();
const copies = new Map<string, readonly ReadSheet[]>();
let opened: ReadonlyMap<string, readonly ReadSheet[]>;
let recalculated: ReadonlyMap<string, readonly ReadSheet[]>;

async function written(plans: readonly SheetPlan[]): Promise<Uint8Array> {
  const engine = new Engine(engineSheets(plans));
  try {
    await engine.calculate();
    const valueOf = (sheet: string, at: string): CellValue => {
      const value = engine.value(sheet, at);
      return value instanceof CellError ? { error: value.error } : value;
    };
    return await writeWorkbook(plans.map((plan) => ({ plan, values: (at) => valueOf(plan.name, at) })));
  } finally {
    engine.dispose();
  }
}

/** The file with -1 stored for what every formula gave. */
function withWrongValues(file: Uint8Array): Uint8Array {
  const parts = unzipSync(file);
  for (const part of Object.keys(parts).filter((name) => name.startsWith('xl/worksheets/sheet'))) {
    parts[part] = strToU8(strFromU8(parts[part]).replace(/<c\b([^>]*)>(<f\b.*?<\/f>)<v>.*?<\/v><\/c>/gs, (_, attributes: string, formula: string) =>
      `<c${attributes.replace(/ t="[^"]*"/, '')}>${formula}<v>-1</v></c>`));
  }
  return zipSync(parts);
}

/** What two readings of a sheet hold differently, to 1e-9; an empty text is as good as nothing. */
function disagreements(expected: ReadSheet, found: ReadSheet): string[] {
  const cells = new Map(found.cells.map((cell) => [cell.at, cell.value]));
  return expected.cells.filter(({ at, value }) => !same(value, cells.get(at) ?? null))
    .map(({ at, value }) => `${expected.name}!${at}: found ${JSON.stringify(cells.get(at) ?? null)}; expected ${JSON.stringify(value)}`);
}

function same(expected: CellValue, found: CellValue): boolean {
  if (typeof expected === 'number' && typeof found === 'number') return Math.abs(expected - found) <= 1e-9 * Math.max(1, Math.abs(expected));
  // A truth value comes back as one or as a number.
  if (typeof expected === 'boolean') return Number(expected) === Number(found);
  return JSON.stringify(expected === '' ? null : expected) === JSON.stringify(found === '' ? null : found);
}

const plain = ({ formula }: ReadCell): boolean => formula !== undefined && !formula.includes('PROVE.');

function valuesOf(sheet: ReadSheet | undefined): (at: string) => CellValue {
  const values = new Map(sheet?.cells.map(({ at, value }) => [at, value]));
  return (at) => values.get(at) ?? null;
}

const withOffice = missing ? describe.skip : describe;

withOffice(missing ? `NOT RUN: ${missing}` : 'in LibreOffice', () => {
  beforeAll(async () => {
    const files = new Map<string, Uint8Array>();
    for (const { file, plans } of workbooks) {
      const bytes = await written(plans);
      originals.set(file, readWorkbook(bytes));
      files.set(file, issueCopy(bytes));
      copies.set(file, readWorkbook(files.get(file) as Uint8Array));
    }
    const read = (bytes: ReadonlyMap<string, Uint8Array>) => new Map([...bytes].map(([file, one]) => [file, readWorkbook(one)]));
    opened = read(converted(files, 'xlsx', 'never'));
    recalculated = read(converted(new Map([...files].map(([file, bytes]) => [file, withWrongValues(bytes)])), 'xlsx', 'always'));
  }, 3 * timeFor(workbooks.length));

  test.each(workbooks)('$file: the copy holds the values of the workbook, its plain formulas and its names, and no cell function', ({ file }) => {
    const [before, after] = [originals.get(file) ?? [], copies.get(file) ?? []];
    expect(after.map(({ name }) => name)).toEqual(before.map(({ name }) => name));
    after.forEach((sheet, i) => {
      expect(sheet.cells.map(({ at, value }) => [at, value])).toEqual(before[i].cells.map(({ at, value }) => [at, value]));
      expect(sheet.cells.filter(({ formula }) => formula).map(({ at, formula }) => [at, formula])).toEqual(before[i].cells.filter(plain).map(({ at, formula }) => [at, formula]));
      expect(sheet.names).toEqual(before[i].names);
    });
  });

  test.each(workbooks)('$file: opens without #NAME? and shows the same numbers', ({ file }) => {
    const found = opened.get(file) ?? [];
    expect(JSON.stringify(found)).not.toContain('#NAME?');
    expect((originals.get(file) ?? []).flatMap((sheet, i) => disagreements(sheet, found[i]))).toEqual([]);
  });

  test.each(workbooks)('$file: every plain formula is computed anew and agrees', ({ file, plans }) => {
    const found = plans.map((plan, i) => compareFormulas({ plan, values: valuesOf(originals.get(file)?.[i]) }, recalculated.get(file)?.[i].cells ?? []));
    expect(found.flatMap(({ faults }) => faults)).toEqual([]);
    const compared = found.reduce((sum, one) => sum + one.compared, 0);
    expect(compared).toBeGreaterThan(0);
    process.stderr.write(`${file}: ${compared} plain formulas of the issue copy computed anew\n`);
  });
});

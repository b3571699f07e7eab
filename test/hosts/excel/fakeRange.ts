import { addressOf, rangeOf } from '../../../src/hosts/address';
import type { FakeExcel } from './fakeExcel';
import { fakeObject, settable } from './fakeProxy';
import { addressesIn, cellAt, type FakeSheet, refusal, shownAt, spillParentOf, typeInto, usedArea } from './fakeState';

type Held = () => FakeSheet;
type Area = ReturnType<typeof rangeOf>;
type Bag = Record<string, unknown>;

/** A range by its address or by its first row, first column and size; the whole sheet if undefined. */
export function rangeObject(excel: FakeExcel, held: Held, open: Held, at?: string | readonly [number, number, number, number]): object {
  let area: Area | undefined;
  excel.ask('Worksheet.getRange', () => {
    held();
    area = at === undefined ? undefined : typeof at === 'string' ? parsed(at) : sized(...at);
  });
  const here = (): Area => {
    if (!area) throw refusal('InvalidArgument');
    return area;
  };
  const address = (): string => textOf(here());
  const bagFor = (bags: Record<string, Bag>): Bag => {
    bags[address()] ??= {};
    return bags[address()];
  };
  return fakeObject(excel, {
    type: 'Range',
    members: {
      fakeAddress: address,
      format: {
        font: settable(excel, 'RangeFont', () => open().font),
        protection: fakeObject(excel, { type: 'FormatProtection', read: () => ({ locked: isLocked(held(), textOf({ ...here(), endRow: here().startRow, endColumn: here().startColumn })) }) }),
      },
      getSpillParentOrNullObject: () => spillParentObject(excel, held, here),
      dataValidation: settable(excel, 'DataValidation', () => bagFor(open().validations)),
      conditionalFormats: {
        add: (type: string) => {
          const custom: Bag = {};
          excel.ask('ConditionalFormatCollection.add', () => { open().highlights.unshift({ range: address(), type, custom }); });
          return { custom: settable(excel, 'CustomConditionalFormat', () => custom) };
        },
      },
      merge: () => excel.ask('Range.merge', () => { open().merges.push(address()); }),
      select: () => excel.ask('Range.select', () => {
        if (excel.workbook.active !== held().id) throw refusal('InvalidOperation');
        held().selection = address();
      }),
      setCellProperties: (rows: Bag[][]) => excel.ask('Range.setCellProperties', () => setEach(here(), rows, (cell, properties) => {
        if (Object.keys(properties).length > 0) cellAt(open(), cell).properties = properties;
      })),
      setRowProperties: (rows: unknown[]) => excel.ask('Range.setRowProperties', () => setLines(open().rows, here().startRow, lengthOf(here(), 'Row'), rows)),
      setColumnProperties: (columns: unknown[]) => excel.ask('Range.setColumnProperties', () =>
        setLines(open().columns, here().startColumn, lengthOf(here(), 'Column'), columns)),
      getMergedAreasOrNullObject: () => mergedObject(excel, held),
    },
    read: () => contentOf(excel, held(), here()),
    write: (name, value) => {
      // On a protected sheet only cells that are not locked take what is typed.
      const sheet = name === 'formulas' && addressesIn(here()).every((at) => !isLocked(held(), at)) ? held() : open();
      if (name === 'formulas') setEach(here(), value as unknown[][], (cell, typed) => { if (typed !== null) typeInto(sheet, cell, typed); });
      else if (name === 'numberFormat') setEach(here(), value as unknown[][], (cell, format) => { if (format !== null) cellAt(sheet, cell).numberFormat = String(format); });
      else throw refusal('InvalidArgument');
    },
  });
}

/** What of a sheet shows something; a null object if nothing does, or if there is no such sheet. */
export function usedRangeObject(excel: FakeExcel, find: () => FakeSheet | undefined, valuesOnly: boolean): object {
  if (!valuesOnly) throw new Error('the stand-in knows only the range of values');
  let area: Area | undefined;
  excel.ask('Worksheet.getUsedRangeOrNullObject', () => {
    const sheet = find();
    area = sheet && usedArea(sheet, excel.results);
  });
  return fakeObject(excel, {
    type: 'Range',
    read: () => {
      const sheet = find();
      return sheet && area && { address: textOf(area), rowIndex: area.startRow, columnIndex: area.startColumn, ...contentOf(excel, sheet, area) };
    },
  });
}

function contentOf({ results }: FakeExcel, sheet: FakeSheet, area: Area): Bag {
  const each = (of: (at: string) => unknown): unknown[][] => Array.from({ length: lengthOf(area, 'Row') }, (_, row) =>
    Array.from({ length: lengthOf(area, 'Column') }, (__, column) => of(addressOf({ row: area.startRow + row, column: area.startColumn + column }))));
  const plain = (at: string): unknown => {
    const shown = shownAt(sheet, at, results);
    return shown === null ? '' : typeof shown === 'object' ? shown.error : shown;
  };
  return {
    formulas: each((at) => sheet.cells[at]?.formula ?? plain(at)),
    values: each(plain),
    valueTypes: each((at) => {
      const shown = shownAt(sheet, at, results);
      if (shown === null) return 'Empty';
      return typeof shown === 'object' ? 'Error' : { number: 'Double', string: 'String', boolean: 'Boolean' }[typeof shown as 'number' | 'string' | 'boolean'];
    }),
    numberFormat: each((at) => sheet.cells[at]?.numberFormat ?? 'General'),
  };
}

/** Cells are locked unless their format says otherwise; it counts once the sheet is protected. */
function isLocked({ cells }: FakeSheet, at: string): boolean {
  const format = cells[at]?.properties?.format as { protection?: { locked?: boolean } } | undefined;
  return format?.protection?.locked ?? true;
}

/** The cell whose formula spills into this one, itself included; a null object if none does. */
function spillParentObject(excel: FakeExcel, held: Held, here: () => Area): object {
  let parent: string | undefined;
  excel.ask('Range.getSpillParentOrNullObject', () => { parent = spillParentOf(held(), textOf(here()), excel.results); });
  return fakeObject(excel, { type: 'Range', read: () => (parent === undefined ? undefined : { address: `'${held().name}'!${parent}` }) });
}

function mergedObject(excel: FakeExcel, held: Held): object {
  const read = (): Bag | undefined => {
    const { name, merges } = held();
    return merges.length === 0 ? undefined : { address: merges.map((merge) => `'${name.replaceAll("'", "''")}'!${merge}`).join(', ') };
  };
  return fakeObject(excel, { type: 'RangeAreas', read });
}

function setEach<T>(area: Area, rows: readonly (readonly T[])[], set: (at: string, value: T) => void): void {
  // Excel refuses a block that is not of the range's size.
  if (rows.length !== lengthOf(area, 'Row') || rows.some((row) => row.length !== lengthOf(area, 'Column'))) throw refusal('InvalidArgument');
  addressesIn(area).forEach((at, i) => set(at, rows[Math.floor(i / rows[0].length)][i % rows[0].length]));
}

function setLines(target: Bag, first: number, count: number, lines: readonly unknown[]): void {
  if (lines.length !== count) throw refusal('InvalidArgument');
  lines.forEach((line, i) => { target[first + i] = line; });
}

function lengthOf(area: Area, way: 'Row' | 'Column'): number {
  return area[`end${way}`] - area[`start${way}`] + 1;
}

function parsed(address: string): Area {
  try {
    return rangeOf(address);
  } catch {
    throw refusal('InvalidArgument');
  }
}

function sized(row: number, column: number, rows: number, columns: number): Area {
  return { startRow: row, startColumn: column, endRow: row + rows - 1, endColumn: column + columns - 1 };
}

function textOf({ startRow, startColumn, endRow, endColumn }: Area): string {
  const first = addressOf({ row: startRow, column: startColumn });
  const last = addressOf({ row: endRow, column: endColumn });
  return first === last ? first : `${first}:${last}`;
}

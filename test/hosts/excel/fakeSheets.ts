import { rangeObject, usedRangeObject } from './fakeRange';
import { chartsObject } from './fakeCharts';
import type { FakeExcel } from './fakeExcel';
import { fakeObject, settable } from './fakeProxy';
import { type FakeSheet, refusal } from './fakeState';

type Held = () => FakeSheet;

const EVENTS = ['onChanged', 'onCalculated', 'onActivated', 'onAdded', 'onDeleted', 'onNameChanged'];

/** The sheets of the workbook. */
export function sheetsObject(excel: FakeExcel): object {
  const { workbook } = excel;
  const byKey = (key: string): FakeSheet | undefined =>
    workbook.sheets.find(({ id, name }) => id === key || name.toUpperCase() === key.toUpperCase());
  const members = {
    add: (name: string) => instantiated(excel, 'WorksheetCollection.add', () => {
      checkName(excel, name);
      return excel.add(name);
    }),
    getItem: (key: string) => instantiated(excel, 'WorksheetCollection.getItem', () => existing(byKey(key))),
    getItemOrNullObject: (key: string) => instantiated(excel, 'WorksheetCollection.getItemOrNullObject', () => byKey(key)),
    getActiveWorksheet: () => instantiated(excel, 'WorksheetCollection.getActiveWorksheet', () => existing(byKey(workbook.active))),
    ...Object.fromEntries(EVENTS.map((name) => [name, {
      add: (handler: () => Promise<void>) => excel.ask(`${name}.add`, () => { excel.handlers.set(name, handler); }),
    }])),
  };
  const item = (sheet: FakeSheet) => (names: readonly string[]): object =>
    sheetObject(excel, () => existing(byKey(sheet.id)), Object.fromEntries(names.map((name) => [name, sheet[name as keyof FakeSheet]])));
  return fakeObject(excel, { type: 'WorksheetCollection', members, read: () => ({ items: workbook.sheets.map(item) }) });
}

/** Finding an object is a call of its own, which may fail. */
function instantiated(excel: FakeExcel, words: string, find: () => FakeSheet | undefined): object {
  let found: FakeSheet | undefined;
  excel.ask(words, () => { found = find(); });
  return sheetObject(excel, () => found);
}

function existing(sheet: FakeSheet | undefined): FakeSheet {
  if (!sheet) throw refusal('ItemNotFound');
  return sheet;
}

function checkName({ workbook }: FakeExcel, name: string, except?: FakeSheet): void {
  if (name.length === 0 || name.length > 31 || /[[\]:*?/\\]/.test(name)) throw refusal('InvalidArgument');
  if (workbook.sheets.some((sheet) => sheet !== except && sheet.name.toUpperCase() === name.toUpperCase())) throw refusal('ItemAlreadyExists');
}

function sheetObject(excel: FakeExcel, find: () => FakeSheet | undefined, preloaded: Record<string, unknown> = {}): object {
  const held: Held = () => existing(find());
  const open: Held = () => {
    const sheet = held();
    if (sheet.protection) throw refusal('AccessDenied');
    return sheet;
  };
  const range = (address?: string): object => rangeObject(excel, held, open, address);
  const members = {
    ...preloaded,
    getRange: range,
    getRangeByIndexes: (row: number, column: number, rows: number, columns: number) => rangeObject(excel, held, open, [row, column, rows, columns]),
    getUsedRangeOrNullObject: (valuesOnly: boolean) => usedRangeObject(excel, find, valuesOnly),
    names: namesObject(excel, held),
    charts: chartsObject(excel, open),
    freezePanes: { freezeRows: (count: number) => excel.ask('FreezePanes.freezeRows', () => { held().frozenRows = count; }) },
    protection: fakeObject(excel, {
      type: 'WorksheetProtection',
      members: { protect: (options: Record<string, unknown>) => excel.ask('Protection.protect', () => { open().protection = options; }) },
      read: () => ({ protected: held().protection !== undefined }),
    }),
    pageLayout: pageObject(excel, open),
    horizontalPageBreaks: { add: (at: string) => excel.ask('PageBreakCollection.add', () => { open().pageBreaks.push(at); }) },
    activate: () => excel.ask('Worksheet.activate', () => {
      if (held().visibility !== 'Visible') throw refusal('InvalidOperation');
      excel.workbook.active = held().id;
    }),
    calculate: () => excel.ask('Worksheet.calculate', () => undefined),
    delete: () => excel.ask('Worksheet.delete', () => remove(excel, held())),
  };
  return fakeObject(excel, {
    type: 'Worksheet',
    members,
    read: () => {
      const sheet = find();
      return sheet && { id: sheet.id, name: sheet.name, visibility: sheet.visibility };
    },
    write: (name, value) => {
      if (name !== 'name') throw refusal('InvalidArgument');
      checkName(excel, String(value), held());
      held().name = String(value);
    },
  });
}

function remove({ workbook }: FakeExcel, sheet: FakeSheet): void {
  const visible = workbook.sheets.filter(({ visibility }) => visibility === 'Visible');
  if (visible.length === 1 && visible[0] === sheet) throw refusal('InvalidOperation');
  const index = workbook.sheets.indexOf(sheet);
  workbook.sheets.splice(index, 1);
  if (workbook.active === sheet.id) workbook.active = (workbook.sheets[index] ?? workbook.sheets[index - 1]).id;
}

function namesObject(excel: FakeExcel, held: Held): object {
  const add = (name: string, range: { readonly fakeAddress: () => string }): void => excel.ask('NamedItemCollection.add', () => {
    if (held().names.some((known) => known.name.toUpperCase() === name.toUpperCase())) throw refusal('ItemAlreadyExists');
    held().names.push({ name, range: range.fakeAddress(), visible: true });
  });
  const item = ({ name, range, visible }: FakeSheet['names'][number]) => (): object => ({
    name, visible, type: 'Range', formula: `='${held().name.replaceAll("'", "''")}'!${range.replace(/([A-Z]+)(\d+)/g, '$$$1$$$2')}`,
  });
  return fakeObject(excel, { type: 'NamedItemCollection', members: { add }, read: () => ({ items: held().names.map(item) }) });
}

/** As in Excel, what is set for printing shows up among the names of the sheet. */
function pageObject(excel: FakeExcel, open: Held): object {
  const own = (name: string, range: string): void => { open().names.push({ name, range, visible: true }); };
  return settable(excel, 'PageLayout', () => open().page, {
    setPrintArea: (area: string) => excel.ask('PageLayout.setPrintArea', () => own('Print_Area', area)),
    setPrintTitleRows: (rows: string) => excel.ask('PageLayout.setPrintTitleRows', () => {
      open().page.titleRows = rows;
      own('Print_Titles', rows);
    }),
    setPrintMargins: (unit: string, margins: object) => excel.ask('PageLayout.setPrintMargins', () => { open().page.margins = { unit, ...margins }; }),
  });
}

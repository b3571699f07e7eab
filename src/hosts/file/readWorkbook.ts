import { strFromU8, unzipSync } from 'fflate';
import { XMLParser } from 'fast-xml-parser';
import { placeOf, rangeOf } from '../address';
import type { CellContent, CellValue, SheetContent } from '../sheetHost';
import { fromStored, moved } from './storedFormula';

/** A cell of a file; its value is the constant, or what the formula gave when the file was saved. */
export interface ReadCell extends CellContent {
  /** Rows and columns that the formula spills over, if more than its own cell. */
  readonly spill?: { readonly rows: number; readonly columns: number };
}

/** A sheet as a file holds it; names that the program itself makes for printing are left out. */
export interface ReadSheet extends SheetContent {
  readonly cells: readonly ReadCell[];
}

/** What the parser gives for an element: attributes begin with "@", children are always lists, text is "#text". */
interface Element {
  readonly [name: string]: readonly Element[] | string | undefined;
}

const parser = new XMLParser({
  ignoreAttributes: false, attributeNamePrefix: '@', parseTagValue: false, parseAttributeValue: false, trimValues: false,
  alwaysCreateTextNode: true, htmlEntities: true, isArray: (_name, _path, _leaf, isAttribute) => !isAttribute,
});

/** Number formats that a file names by number alone, as far as English programs write them. */
const BUILT_IN: Readonly<Record<string, string>> = {
  1: '0', 2: '0.00', 3: '#,##0', 4: '#,##0.00', 9: '0%', 10: '0.00%', 11: '0.00E+00', 12: '# ?/?', 13: '# ??/??', 14: 'm/d/yyyy',
  15: 'd-mmm-yy', 16: 'd-mmm', 17: 'mmm-yy', 18: 'h:mm AM/PM', 19: 'h:mm:ss AM/PM', 20: 'h:mm', 21: 'h:mm:ss', 22: 'm/d/yyyy h:mm',
  37: '#,##0 ;(#,##0)', 38: '#,##0 ;[Red](#,##0)', 39: '#,##0.00;(#,##0.00)', 40: '#,##0.00;[Red](#,##0.00)',
  45: 'mm:ss', 46: '[h]:mm:ss', 47: 'mmss.0', 48: '##0.0E+0', 49: '@',
};

/** Reads the sheets of a workbook file (.xlsx). Throws if it is none. */
export function readWorkbook(file: Uint8Array): ReadSheet[] {
  const parts = new Parts(file);
  const workbook = parts.read('xl/workbook.xml', 'workbook');
  const targets = new Map(children(parts.read('xl/_rels/workbook.xml.rels', 'Relationships'), 'Relationship')
    .map((relation) => [relation['@Id'], String(relation['@Target']).replace(/^\/?(?:xl\/)?/, 'xl/')]));
  const strings = parts.has('xl/sharedStrings.xml') ? children(parts.read('xl/sharedStrings.xml', 'sst'), 'si').map(plainText) : [];
  const formats = numberFormats(parts.read('xl/styles.xml', 'styleSheet'));
  const names = children(child(workbook, 'definedNames'), 'definedName');
  return children(child(workbook, 'sheets'), 'sheet').map((entry, index) => {
    const sheet = parts.read(targets.get(entry['@r:id']) ?? '', 'worksheet');
    return {
      name: String(entry['@name']),
      cells: readCells(child(sheet, 'sheetData'), strings, formats),
      merges: children(child(sheet, 'mergeCells'), 'mergeCell').map((merge) => String(merge['@ref'])),
      names: names.filter((name) => name['@localSheetId'] === String(index)).flatMap(readName),
    };
  });
}

/** The parts of a file, as XML. */
class Parts {
  private readonly files: Record<string, Uint8Array>;

  constructor(file: Uint8Array) {
    try {
      this.files = unzipSync(file);
    } catch (error) {
      throw new Error('found a file that is no zip archive; expected a workbook (.xlsx)', { cause: error });
    }
  }

  has(part: string): boolean {
    return part in this.files;
  }

  /** The root element of a part. */
  read(part: string, root: string): Element {
    if (!this.has(part)) throw new Error(`found no part "${part}"; expected a workbook (.xlsx)`);
    const element = child(parser.parse(strFromU8(this.files[part])) as Element, root);
    if (!element) throw new Error(`${part}: found no <${root}>; expected a workbook (.xlsx)`);
    return element;
  }
}

function children(element: Element | undefined, name: string): readonly Element[] {
  const found = element?.[name];
  return typeof found === 'object' ? found : [];
}

function child(element: Element | undefined, name: string): Element | undefined {
  return children(element, name)[0];
}

function text(element: Element | undefined): string {
  const found = element?.['#text'];
  return typeof found === 'string' ? found : '';
}

/** Text of a string item, whether plain or in runs of several looks. */
function plainText(item: Element): string {
  const runs = children(item, 'r');
  const found = [item, ...runs].flatMap((holder) => children(holder, 't')).map(text).join('');
  // Letters that XML cannot hold are stored by their codes.
  return found.replace(/_x([0-9A-F]{4})_/gi, (_, code: string) => String.fromCharCode(parseInt(code, 16)));
}

/** The number format of each cell style; undefined for general. */
function numberFormats(styles: Element): readonly (string | undefined)[] {
  const own = new Map(children(child(styles, 'numFmts'), 'numFmt').map((format) => [format['@numFmtId'], String(format['@formatCode'])]));
  return children(child(styles, 'cellXfs'), 'xf').map((style) => own.get(style['@numFmtId']) ?? BUILT_IN[String(style['@numFmtId'])]);
}

function readCells(data: Element | undefined, strings: readonly string[], formats: readonly (string | undefined)[]): ReadCell[] {
  const shared = new SharedFormulas();
  return children(data, 'row').flatMap((row) => children(row, 'c')).flatMap((cell) => readCell(cell, strings, formats, shared));
}

/** Formulas that were filled down or right: a file spells out the first and only names it in the others. */
class SharedFormulas {
  private readonly first = new Map<unknown, { readonly at: string; readonly formula: string }>();

  /** The formula of a cell, spelt out. */
  of(at: string, stored: Element): string {
    if (stored['@t'] !== 'shared') return text(stored);
    const known = this.first.get(stored['@si']);
    if (!known) {
      this.first.set(stored['@si'], { at, formula: text(stored) });
      return text(stored);
    }
    const [from, to] = [placeOf(known.at), placeOf(at)];
    return moved(known.formula, to.row - from.row, to.column - from.column);
  }
}

function readCell(cell: Element, strings: readonly string[], formats: readonly (string | undefined)[], shared: SharedFormulas): ReadCell[] {
  const at = String(cell['@r']);
  const stored = child(cell, 'f');
  const value = readValue(cell, strings);
  if (value === null && !stored) return [];
  const format = formats[Number(cell['@s'] ?? 0)];
  const size = stored?.['@t'] === 'array' ? sizeOf(String(stored['@ref'])) : undefined;
  return [{
    at,
    value,
    ...(stored ? { formula: fromStored(shared.of(at, stored)) } : {}),
    ...(size && size.rows * size.columns > 1 ? { spill: size } : {}),
    ...(format === undefined ? {} : { format }),
  }];
}

function readValue(cell: Element, strings: readonly string[]): CellValue {
  const kind = cell['@t'];
  if (kind === 'inlineStr') return plainText(child(cell, 'is') ?? {});
  const held = child(cell, 'v');
  if (!held) return null;
  const written = text(held);
  if (kind === 's') return strings[Number(written)] ?? '';
  if (kind === 'str') return written;
  if (kind === 'b') return written === '1';
  if (kind === 'e') return { error: written };
  return Number(written);
}

function sizeOf(range: string): { rows: number; columns: number } {
  const { startRow, endRow, startColumn, endColumn } = rangeOf(range);
  return { rows: endRow - startRow + 1, columns: endColumn - startColumn + 1 };
}

/** A name that stands for one range; names for printing and names of formulas are left out. */
function readName(element: Element): { name: string; range: string }[] {
  const name = String(element['@name']);
  const range = text(element).split('!').at(-1)?.replaceAll('$', '') ?? '';
  return name.startsWith('_xlnm.') || !isRange(range) ? [] : [{ name, range }];
}

function isRange(text: string): boolean {
  try {
    text.split(':').forEach(placeOf);
    return true;
  } catch {
    return false;
  }
}

import { knownError } from './cellValue';
import { callsCellFunction } from './storedFormula';
import { unescaped } from './xmlText';

/** A cell of a sheet's XML: attributes, and what is in it. */
const CELL = /<c\b([^>]*?)\/>|<c\b([^>]*)>(.*?)<\/c>/gs;
const FORMULA = /<f\b([^>]*?)(?:\/>|>(.*?)<\/f>)/s;
const VALUE = /<v\b[^>]*?(?:\/>|>(.*?)<\/v>)/s;

/** Everything on the sheet is locked, and objects with it; cells can still be selected and read. */
const PROTECTION = '<sheetProtection sheet="1" objects="1" scenarios="1"/>';

/**
 * The XML of a sheet in which every formula that calls a cell function has become the value it gave; plain formulas stay, with
 * their values. The whole sheet is protected, without a password.
 * Throws, naming the cell, on a formula without a value, and on an error that says it was not computed, like #NAME?.
 */
export function issuedSheet(xml: string, sheet: string): string {
  const data = /<sheetData\b[^>]*?(?:\/>|>.*<\/sheetData>)/s.exec(xml);
  if (!data) throw new Error(`${sheet}: found no <sheetData>; expected the sheet of a workbook (.xlsx)`);
  const shared = sharedFormulas(data[0]);
  const cells = data[0].replace(CELL, (whole, empty: string | undefined, attributes: string, content: string) =>
    (empty === undefined ? issuedCell(whole, attributes, content, shared, sheet) : whole));
  const [before, after] = [xml.slice(0, data.index), xml.slice(data.index + data[0].length)];
  const rest = after
    .replace(/<sheetProtection\b[^>]*?(?:\/>|>.*?<\/sheetProtection>)/s, '')
    .replace(/<protectedRanges\b.*?<\/protectedRanges>/s, '');
  const calculation = /^\s*<sheetCalcPr\b[^>]*\/>/.exec(rest)?.[0] ?? '';
  refuseRules(rest, sheet);
  return before + cells + calculation + PROTECTION + rest.slice(calculation.length);
}

/** Formulas that were filled down: a file spells out the first of each group. */
function sharedFormulas(data: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const [, , , content = ''] of data.matchAll(CELL)) {
    const [, attributes = '', text] = FORMULA.exec(content) ?? [];
    const group = attribute(attributes, 't') === 'shared' ? attribute(attributes, 'si') : undefined;
    if (group !== undefined && text) found.set(group, unescaped(text));
  }
  return found;
}

function issuedCell(whole: string, attributes: string, content: string, shared: ReadonlyMap<string, string>, sheet: string): string {
  const stored = FORMULA.exec(content);
  if (!stored) return whole;
  const place = `'${sheet.replaceAll("'", "''")}'!${attribute(attributes, 'r') ?? ''}`;
  const formula = stored[2] ? unescaped(stored[2]) : shared.get(attribute(stored[1], 'si') ?? '') ?? '';
  const value = VALUE.exec(content);
  const kind = attribute(attributes, 't');
  if (!value && kind !== 'str') throw new Error(`${place}: found a formula without a value; compute the workbook first`);
  if (kind === 'e') knownError(unescaped(value?.[1] ?? ''), place);
  if (!callsCellFunction(formula)) return whole;
  const kept = attributes.replace(/\s(?:cm|t)="[^"]*"/g, '');
  const text = value?.[1] ?? '';
  // An empty text stays one: a blank cell would count as 0 in the formulas that read it.
  if (kind === 'str') return `<c${kept} t="inlineStr"><is><t xml:space="preserve">${text}</t></is></c>`;
  return `<c${kept}${kind === undefined ? '' : ` t="${kind}"`}><v>${text}</v></c>`;
}

/** Conditions of looks and of what may be typed call no cell function: without the add-in they would have no answer. */
function refuseRules(rest: string, sheet: string): void {
  for (const [, text = ''] of rest.matchAll(/<formula[12]?>(.*?)<\/formula[12]?>/gs)) {
    if (callsCellFunction(unescaped(text))) throw new Error(`${sheet}: found ${unescaped(text)} in a condition; an issue copy takes conditions of plain formulas`);
  }
}

function attribute(attributes: string, name: string): string | undefined {
  return new RegExp(`(?:^|\\s)${name}="([^"]*)"`).exec(attributes)?.[1];
}

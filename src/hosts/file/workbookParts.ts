/**
 * What the writing library cannot write, put into the parts of its file: validations and conditional formats, values
 * spilled as errors, page breaks, how Excel computes when it opens the file, and the order of parts of a chart.
 */
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import type { SheetPlan } from '../../worksheets/plan';
import { pageBreaks } from '../pageBreaks';
import { LINE } from '../roleLooks';
import { TEXT_MARK } from './cellValue';
import { looksXml, rulesXml } from './sheetRules';

/** An error that stands in a cell where a formula of another cell spills. */
export interface SpilledError {
  readonly at: string;
  readonly code: string;
}

/** What to add to one sheet. */
export interface SheetAddition {
  readonly plan: SheetPlan;
  readonly spilledErrors: readonly SpilledError[];
  /** Cell or range that is selected when the file is opened; A1 if omitted. */
  readonly selection?: string;
}

const GRID_LINES =
  `<c:majorGridlines><c:spPr><a:ln w="6350"><a:solidFill><a:srgbClr val="${LINE.slice(1).toUpperCase()}"/></a:solidFill></a:ln></c:spPr></c:majorGridlines>`;

/** The file with everything added. */
export function completed(file: Uint8Array, sheets: readonly SheetAddition[]): Uint8Array {
  const parts = unzipSync(file);
  const change = (part: string, edit: (xml: string) => string) => {
    if (!parts[part]) throw new Error(`the workbook file has no part ${part}`);
    parts[part] = strToU8(edit(strFromU8(parts[part])));
  };
  sheets.forEach((sheet, i) => change(`xl/worksheets/sheet${i + 1}.xml`, (xml) => completeSheet(xml, sheet)));
  change('xl/styles.xml', (xml) => replaced(xml, /<dxfs count="0"\/>/, looksXml()));
  // The library asks for a recalculation on opening, which would turn every custom function to #NAME? where it is not installed.
  change('xl/workbook.xml', (xml) => replaced(xml, /<calcPr [^>]*\/>/, '<calcPr calcId="191029"/>'));
  Object.keys(parts).filter((part) => part.startsWith('xl/charts/chart')).forEach((part) => change(part, completeChart));
  return zipSync(parts);
}

function completeSheet(xml: string, { plan, spilledErrors, selection }: SheetAddition): string {
  let done = xml.replaceAll(TEXT_MARK, '');
  for (const { at, code } of spilledErrors) {
    done = replaced(done, new RegExp(`(<c r="${at}"[^>]*)><v>0</v>`), `$1 t="e"><v>${code}</v>`);
  }
  if (selection !== undefined) done = withSelection(done, selection);
  const rules = rulesXml(plan);
  if (rules !== '') done = replaced(done, /<pageMargins /, (found) => rules + found);
  const breaks = breaksXml(pageBreaks(plan));
  return breaks === '' ? done : replaced(done, /<\/headerFooter>/, (found) => found + breaks);
}

function breaksXml(rows: readonly number[]): string {
  if (rows.length === 0) return '';
  const breaks = rows.map((row) => `<brk id="${row}" max="16383" man="1"/>`).join('');
  return `<rowBreaks count="${rows.length}" manualBreakCount="${rows.length}">${breaks}</rowBreaks>`;
}

/** The sheet with a cell or range selected, in the pane below the rows that stay in view if there are any. */
function withSelection(xml: string, selection: string): string {
  const selected = `activeCell="${selection.split(':')[0]}" sqref="${selection}"/>`;
  return xml.includes('<selection ')
    ? replaced(xml, /(<selection [^>]*)\/>/, `$1 ${selected}`)
    : replaced(xml, /<sheetView ([^>]*)\/>/, `<sheetView $1><selection ${selected}</sheetView>`);
}

function completeChart(xml: string): string {
  return xml
    // The schema wants the look of a series before its marker; the library writes them the other way round.
    .replace(/(<c:marker>.*?<\/c:marker>)(<c:spPr>.*?<\/c:spPr>)(?=<c:xVal>)/g, '$2$1')
    // Numbers of an axis stay at the edge where values go below zero.
    .replaceAll('<c:tickLblPos val="nextTo"/>', '<c:tickLblPos val="low"/>')
    // Grid lines stand back behind the data.
    .replaceAll('<c:majorGridlines/>', GRID_LINES);
}

/** Replaces the first match, which must be there: a library that writes otherwise must not go unnoticed. */
function replaced(xml: string, pattern: RegExp, by: string | ((found: string) => string)): string {
  if (!pattern.test(xml)) throw new Error(`the workbook file has no ${pattern.source}`);
  return typeof by === 'string' ? xml.replace(pattern, by) : xml.replace(pattern, by);
}

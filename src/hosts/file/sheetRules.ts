import type { Highlight, SheetPlan, Validation } from '../../worksheets/plan';
import { HIGHLIGHT_LOOKS } from '../roleLooks';

/** Excel's limits: letters of an error message, and of a list of words. */
const MESSAGE_LIMIT = 225;
const LIST_LIMIT = 255;
/** The largest numbers that Excel takes in a rule, for a side without a limit. */
const BOUNDLESS = 9.99e307;

const LOOKS = Object.keys(HIGHLIGHT_LOOKS) as Highlight['look'][];

/** The conditional formats and data validations of a sheet as the XML that the writing library cannot make; "" if there are none. */
export function rulesXml({ name, highlights = [], validations = [] }: SheetPlan): string {
  const formats = highlights.map(({ range, formula, look }, i) =>
    `<conditionalFormatting sqref="${range}"><cfRule type="expression" dxfId="${LOOKS.indexOf(look)}" priority="${i + 1}">` +
    `<formula>${escaped(formula.replace(/^=/, ''))}</formula></cfRule></conditionalFormatting>`);
  const checks = validations.map((validation) => validationXml(name, validation));
  return formats.join('') + (checks.length > 0 ? `<dataValidations count="${checks.length}">${checks.join('')}</dataValidations>` : '');
}

/** The looks that the conditional formats name, as the part of styles.xml that holds them. */
export function looksXml(): string {
  const looks = LOOKS.map((look) => {
    const { color, fill } = HIGHLIGHT_LOOKS[look];
    return `<dxf><font><b/><color rgb="${argb(color)}"/></font><fill><patternFill><bgColor rgb="${argb(fill)}"/></patternFill></fill></dxf>`;
  });
  return `<dxfs count="${looks.length}">${looks.join('')}</dxfs>`;
}

function validationXml(sheet: string, { range, rule, message }: Validation): string {
  if (message.length > MESSAGE_LIMIT) {
    throw new Error(`${sheet}!${range}: found a message of ${message.length} letters; Excel takes ${MESSAGE_LIMIT} at most`);
  }
  const [type, first, second] = bounds(`${sheet}!${range}`, rule);
  return `<dataValidation type="${type}" allowBlank="1" showErrorMessage="1" error="${escaped(message)}" sqref="${range}">` +
    `<formula1>${escaped(first)}</formula1>${second === undefined ? '' : `<formula2>${escaped(second)}</formula2>`}</dataValidation>`;
}

/** Kind of the rule and its limits; the operator is "between", which is the default. */
function bounds(place: string, rule: Validation['rule']): [type: string, first: string, second?: string] {
  switch (rule.kind) {
    case 'number': return ['decimal', limit(rule.least ?? -BOUNDLESS), limit(rule.greatest ?? BOUNDLESS)];
    case 'whole': return ['whole', limit(rule.least), limit(rule.greatest)];
    // Days from 1900-01-01 to 9999-12-31, all that Excel knows.
    case 'date': return ['date', '1', '2958465'];
    case 'list': return ['list', wordList(place, rule.words)];
  }
}

/** A number as a formula writes it. */
function limit(value: number): string {
  return String(value).toUpperCase();
}

function wordList(place: string, words: readonly string[]): string {
  const odd = words.find((word) => /[,"]/.test(word));
  if (odd !== undefined) throw new Error(`${place}: found "${odd}" in a list; words without commas and quotes were expected`);
  const list = words.join(',');
  if (list.length > LIST_LIMIT) throw new Error(`${place}: found a list of ${list.length} letters; Excel takes ${LIST_LIMIT} at most`);
  return `"${list}"`;
}

function argb(color: string): string {
  return `FF${color.slice(1).toUpperCase()}`;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}

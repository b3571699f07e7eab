import type { Highlight, SheetPlan, Validation } from '../../worksheets/plan';
import { acceptedList, acceptedMessage, BOUNDLESS } from '../excelLimits';
import { HIGHLIGHT_LOOKS } from '../roleLooks';

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
  const [type, first, second] = bounds(`${sheet}!${range}`, rule);
  return `<dataValidation type="${type}" allowBlank="1" showErrorMessage="1" error="${escaped(acceptedMessage(`${sheet}!${range}`, message))}" sqref="${range}">` +
    `<formula1>${escaped(first)}</formula1>${second === undefined ? '' : `<formula2>${escaped(second)}</formula2>`}</dataValidation>`;
}

/** Kind of the rule and its limits; the operator is "between", which is the default. */
function bounds(place: string, rule: Validation['rule']): [type: string, first: string, second?: string] {
  switch (rule.kind) {
    case 'number': return ['decimal', limit(rule.least ?? -BOUNDLESS), limit(rule.greatest ?? BOUNDLESS)];
    case 'whole': return ['whole', limit(rule.least), limit(rule.greatest)];
    // Days from 1900-01-01 to 9999-12-31, all that Excel knows.
    case 'date': return ['date', '1', '2958465'];
    case 'list': return ['list', `"${acceptedList(place, rule.words)}"`];
  }
}

/** A number as a formula writes it. */
function limit(value: number): string {
  return String(value).toUpperCase();
}

function argb(color: string): string {
  return `FF${color.slice(1).toUpperCase()}`;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}

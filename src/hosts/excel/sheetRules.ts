import type { SheetPlan, Validation } from '../../worksheets/plan';
import { acceptedList, acceptedMessage, BOUNDLESS } from '../excelLimits';
import { HIGHLIGHT_LOOKS } from '../roleLooks';

/** What may be typed into the ranges of a plan; anything else is refused with its message. */
export function addValidations(sheet: Excel.Worksheet, { validations = [] }: SheetPlan): void {
  for (const { range, rule, message } of validations) {
    const validation = sheet.getRange(range).dataValidation;
    validation.rule = ruleFor(range, rule);
    validation.ignoreBlanks = true;
    validation.errorAlert = { title: 'Check the entry', message: acceptedMessage(range, message), showAlert: true, style: 'Stop' };
  }
}

/** Looks that depend on a condition. Excel puts each new one before the others, so the last is added first. */
export function addHighlights(sheet: Excel.Worksheet, { highlights = [] }: SheetPlan): void {
  for (const { range, formula, look } of [...highlights].reverse()) {
    const { custom } = sheet.getRange(range).conditionalFormats.add('Custom');
    custom.rule.formula = `=${formula.replace(/^=/, '')}`;
    custom.format.font.bold = true;
    custom.format.font.color = HIGHLIGHT_LOOKS[look].color;
    custom.format.fill.color = HIGHLIGHT_LOOKS[look].fill;
  }
}

function ruleFor(range: string, rule: Validation['rule']): Excel.DataValidationRule {
  switch (rule.kind) {
    case 'number': return { decimal: bounds(rule.least, rule.greatest) };
    case 'whole': return { wholeNumber: bounds(rule.least, rule.greatest) };
    // All the days that Excel knows.
    case 'date': return { date: { formula1: '1900-01-01', formula2: '9999-12-31', operator: 'Between' } };
    case 'list': return { list: { source: acceptedList(range, rule.words), inCellDropDown: true } };
  }
}

function bounds(least?: number, greatest?: number): Excel.BasicDataValidation {
  if (least !== undefined && greatest === undefined) return { formula1: least, operator: 'GreaterThanOrEqualTo' };
  return { formula1: least ?? -BOUNDLESS, formula2: greatest ?? BOUNDLESS, operator: 'Between' };
}

import { BooleanNumber, DataValidationErrorStyle, DataValidationOperator, DataValidationType, type ISheetDataValidationRule } from '@univerjs/core';
import type { CFRuleType, CFSubRuleType, IConditionFormattingRule, IFormulaHighlightCell } from '@univerjs/sheets-conditional-formatting';
import type { Highlight, SheetPlan, Validation } from '../../worksheets/plan';
import { rangeOf } from '../address';
import { HIGHLIGHT_LOOKS } from '../roleLooks';
import { withRanges } from './nameText';

// Written out, since their package brings the whole of drawing with it.
const HIGHLIGHT = 'highlightCell' as CFRuleType.highlightCell;
const BY_FORMULA = 'formula' as CFSubRuleType.formula;

/** The largest numbers of a rule, for a side without a limit. */
const BOUNDLESS = 9.99e307;
/** The first and the last day that a spreadsheet knows, as numbers. */
const FIRST_DAY = '1';
const LAST_DAY = '2958465';

/** What may be typed into the cells of a plan, as the grid keeps it. */
export function validationRules(plan: SheetPlan, sheetId: string): ISheetDataValidationRule[] {
  return (plan.validations ?? []).map((validation, index) => ({
    uid: `${sheetId} validation ${index + 1}`,
    ranges: [rangeOf(validation.range)],
    ...condition(validation.rule),
    allowBlank: true,
    showErrorMessage: true,
    error: validation.message,
    errorStyle: DataValidationErrorStyle.STOP,
  }));
}

function condition(rule: Validation['rule']): Pick<ISheetDataValidationRule, 'type' | 'operator' | 'formula1' | 'formula2' | 'showDropDown'> {
  const between = (type: DataValidationType, formula1: string, formula2: string) => ({ type, operator: DataValidationOperator.BETWEEN, formula1, formula2 });
  switch (rule.kind) {
    case 'number': return between(DataValidationType.DECIMAL, String(rule.least ?? -BOUNDLESS), String(rule.greatest ?? BOUNDLESS));
    case 'whole': return between(DataValidationType.WHOLE, String(rule.least), String(rule.greatest));
    case 'date': return between(DataValidationType.DATE, FIRST_DAY, LAST_DAY);
    case 'list': return { type: DataValidationType.LIST, formula1: rule.words.join(','), showDropDown: true };
  }
}

/** The looks of a plan that depend on a condition, as the grid keeps them: what stands first wins. */
export function highlightRules(plan: SheetPlan, sheetId: string): IConditionFormattingRule<IFormulaHighlightCell>[] {
  return (plan.highlights ?? []).map(({ range, formula, look }, index) => ({
    cfId: `${sheetId} highlight ${index + 1}`,
    ranges: [rangeOf(range)],
    stopIfTrue: false,
    rule: {
      type: HIGHLIGHT,
      subType: BY_FORMULA,
      // Names are not looked up in conditions.
      value: withRanges(`=${formula.replace(/^=/, '')}`, (name) => plan.names?.find((known) => sameName(known.name, name))?.range),
      style: styleOf(look),
    },
  }));
}

function styleOf(look: Highlight['look']): IFormulaHighlightCell['style'] {
  const { color, fill } = HIGHLIGHT_LOOKS[look];
  return { bl: BooleanNumber.TRUE, cl: { rgb: color }, bg: { rgb: fill } };
}

function sameName(a: string, b: string): boolean {
  return a.toLowerCase() === b.toLowerCase();
}

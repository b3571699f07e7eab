import { checkSheet } from '../worksheets/check/checkSheet';
import { builtInTemplates } from '../worksheets/library';
import { changedTemplate, planSheet, questions, suggestedAnswers } from '../worksheets/planner';
import { sheetPlots } from '../worksheets/plots/sheetPlots';
import { readTemplate, templateText } from '../worksheets/template';
import { isRun } from './check/isRun';
import type { PaneParts } from './pane';

/** What the pane takes from the worksheets: templates and planner, the check and the plots. */
export const worksheetParts: Pick<PaneParts, 'planning' | 'isRun' | 'check' | 'plots'> = {
  planning: { builtInTemplates, readTemplate, templateText, questions, suggestedAnswers, planSheet, changedTemplate },
  isRun,
  check: checkSheet,
  plots: sheetPlots,
};

import type { Question } from '../question';
import type { SummingTemplate } from '../templateSchema';
import type { AnswerReader } from './answerReader';
import { changedItem, itemQuestions, readItem, split, suggestedItem } from './itemForm';
import type { Procedure } from './procedure';
import { planSumming, type SummingSetup } from './summingSheet';

/** Cells joined in parallel in a junction box. */
export const summingProcedure: Procedure<SummingTemplate, SummingSetup> = {
  questions: (template, answers) => {
    const [item, rest] = split(itemQuestions(template, answers));
    return [...item, CELLS, ...rest];
  },
  suggested: (template) => ({ ...suggestedItem(template), cells: String(template.cells) }),
  read,
  plan: planSumming,
  changed: (template, { item, cells }) => ({ ...template, item: changedItem(item), cells }),
};

const CELLS: Question = { id: 'cells', label: 'Cells at the box', group: 'Procedure', kind: 'number', optional: false, help: 'How many are joined, 2 to 8; a cell without load is joined all the same.' };

function read(reader: AnswerReader, template: SummingTemplate): SummingSetup | undefined {
  const item = readItem(reader, template);
  const cells = reader.number('cells', { least: 2, greatest: 8, whole: true });
  if (item === undefined || cells === undefined) return undefined;
  if (item.outputUnit !== 'mV/V') reader.warn('output_unit', `Found ${item.outputUnit}: the sum is that of bridges joined in parallel, whose outputs are in mV/V.`);
  if (item.ratedOutput === undefined) reader.warn('rated_output', 'Without a rated output the zero of the box is not judged until one is typed on the sheet.');
  return { item, cells };
}

import type { Question } from '../question';
import type { InspectionTemplate } from '../templateSchema';
import type { AnswerReader } from './answerReader';
import { type InspectionSetup, planInspection } from './inspectionSheet';
import { changedItem, itemQuestions, readItem, split, suggestedItem } from './itemForm';
import type { Procedure } from './procedure';

/** What came in, before anything is loaded. */
export const inspectionProcedure: Procedure<InspectionTemplate, InspectionSetup> = {
  questions: (template, answers) => {
    const [item, rest] = split(itemQuestions(template, answers));
    return [...item, ...OWN, ...rest];
  },
  suggested: (template) => ({ ...suggestedItem(template), resistance: String(template.bridge.resistance), insulation: String(template.insulation) }),
  read,
  plan: planInspection,
  changed: (template, { item, resistance, insulation }) => ({ ...template, item: changedItem(item), bridge: { ...template.bridge, resistance }, insulation }),
};

const OWN: readonly Question[] = [
  { id: 'resistance', label: 'Bridge resistance', unit: 'Ω', group: 'Bridge', kind: 'number', optional: false, help: 'Nominal resistance of each arm; an ideal bridge reads three quarters of it between neighbouring corners.' },
  { id: 'insulation', label: 'Least insulation', unit: 'MΩ', group: 'Bridge', kind: 'number', optional: false, help: 'Usual expectation: 5000 MΩ when new, doubtful under 1000 MΩ (common practice, no source).' },
];

function read(reader: AnswerReader, template: InspectionTemplate): InspectionSetup | undefined {
  const item = readItem(reader, template);
  const resistance = reader.number('resistance', { above: 0 });
  const insulation = reader.number('insulation', { above: 0 });
  if (item === undefined || resistance === undefined || insulation === undefined) return undefined;
  if (item.ratedOutput === undefined) reader.warn('rated_output', 'Without a rated output the zero cannot be told as a part of it until one is typed on the sheet.');
  const isRatio = item.outputUnit === 'mV/V';
  if (!isRatio) reader.warn('output_unit', `Left out: zero of the arms, shunt check, evidence and re-zero calculator, which need readings in mV/V; found ${item.outputUnit}.`);
  return { item, resistance, insulation, isRatio };
}

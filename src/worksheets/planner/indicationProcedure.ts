import type { Question } from '../question';
import type { IndicationTemplate } from '../templateSchema';
import type { AnswerReader } from './answerReader';
import { rounded } from './desk';
import { type IndicationSetup, planIndication } from './indicationSheet';
import { changedItem, itemQuestions, readItem, split, suggestedItem } from './itemForm';
import type { Procedure } from './procedure';
import { changedSeries, checkSeries, readSeries, seriesQuestions, suggestedSeries } from './seriesForm';
import { impossible } from './staticResults';

/** Indications in engineering units against what they should be: a system of transducer and indicator, or an indicator fed by a simulator. */
export const indicationProcedure: Procedure<IndicationTemplate, IndicationSetup> = {
  questions: (template, answers) => {
    const [item, rest] = split(itemQuestions(template, answers));
    return [...item, ...(template.scale === undefined ? [] : [SCALE]), ...seriesQuestions(template), ...TOLERANCES, ...rest];
  },
  suggested: (template) => ({
    ...suggestedItem(template), ...suggestedSeries(template),
    tolerance_reading: String(rounded(template.tolerance.ofReading * 100)), tolerance_capacity: String(rounded(template.tolerance.ofCapacity * 100)),
    ...(template.scale === undefined ? {} : { scale: String(template.scale) }),
  }),
  read,
  plan: planIndication,
  changed: (template, { item, series, tolerance, scale }) => ({ ...template, item: changedItem(item), ...changedSeries(series), tolerance, ...(scale === undefined ? {} : { scale }) }),
};

const SCALE: Question = {
  id: 'scale', label: 'Scale', unit: 'indicated per mV/V', group: 'Item', kind: 'number', optional: false, help: 'What the indicator shows for one mV/V, as it is set up.',
};
const TOLERANCES: readonly Question[] = [
  { id: 'tolerance_reading', label: 'Tolerance of reading', unit: '%', group: 'Tolerance', kind: 'number', optional: false, help: 'Allowed error as a part of what should be indicated; the greater of both counts.' },
  { id: 'tolerance_capacity', label: 'Tolerance of capacity', unit: '%', group: 'Tolerance', kind: 'number', optional: false, help: 'Allowed error as a part of capacity. Each point’s tolerance can be changed on the sheet.' },
];

function read(reader: AnswerReader, template: IndicationTemplate): IndicationSetup | undefined {
  const item = readItem(reader, template);
  const series = readSeries(reader, template);
  const scale = template.scale === undefined ? undefined : reader.number('scale', { above: 0 });
  const ofReading = reader.number('tolerance_reading', { least: 0, greatest: 100 });
  const ofCapacity = reader.number('tolerance_capacity', { least: 0, greatest: 100 });
  if (template.scale === undefined && item !== undefined && item.outputUnit !== item.unit) {
    reader.refuse('output_unit', `Found ${item.outputUnit}; expected ${item.unit}, the unit of what is applied, since the error is their difference.`);
  }
  if (item === undefined || series === undefined || ofReading === undefined || ofCapacity === undefined) return undefined;
  if (template.scale !== undefined && scale === undefined) return undefined;
  checkSeries(reader, item, series);
  for (const id of template.results) {
    const why = impossible(id, series);
    if (why !== undefined) reader.warn('points', `Left out: ${why}.`);
  }
  const least = Math.min(...series.points.filter((point) => point > 0)) / 100 * item.capacity * (scale ?? 1) * (ofReading / 100);
  if (Math.max(least, item.capacity * (scale ?? 1) * (ofCapacity / 100)) < item.resolution) {
    reader.warn('resolution', 'The tolerance of the lowest point is less than one step of the resolution.');
  }
  return { item, series, tolerance: { ofReading: rounded(ofReading / 100), ofCapacity: rounded(ofCapacity / 100) }, ...(scale === undefined ? {} : { scale }) };
}

import type { Answers, Question } from '../question';
import { DIRECTIONS, type ThermalTemplate } from '../templateSchema';
import type { AnswerReader } from './answerReader';
import { rounded } from './desk';
import { changedItem, checkStandard, itemQuestions, readItem, split, suggestedItem } from './itemForm';
import type { Procedure } from './procedure';
import { planThermal, type ThermalSetup } from './thermalSheet';

const FEWEST = 3;
const MOST = 20;
/** Minutes of soak under which a word is said. Common practice, no source. */
const USUAL_SOAK = 30;

/** Zero and span at several temperatures. */
export const thermalProcedure: Procedure<ThermalTemplate, ThermalSetup> = {
  questions: (template, answers) => {
    const [item, rest] = split(itemQuestions(template, answers));
    return [...item, ...ownQuestions(template), ...rest];
  },
  suggested: (template): Answers => ({
    ...suggestedItem(template), direction: template.direction, load: String(template.load),
    temperatures: template.temperatures.join(', '), soak: String(template.limits.soak),
  }),
  read,
  plan: planThermal,
  changed: (template, { item, direction, load, temperatures, soak }) => ({
    ...template, item: changedItem(item), direction, load, temperatures: [...temperatures], limits: { ...template.limits, soak },
  }),
};

function ownQuestions({ quantity }: ThermalTemplate): Question[] {
  const own = { group: 'Procedure', optional: false } as const;
  return [
    { ...own, id: 'direction', label: 'Direction', kind: 'choice', choices: DIRECTIONS[quantity].map((value) => ({ value, label: value })), help: 'Direction of the load that the span is taken at.' },
    { ...own, id: 'load', label: 'Load for the span', unit: '% of capacity', kind: 'number', help: 'The same at every temperature; stay within the safe overload of everything in the load train when it is hot.' },
    { ...own, id: 'temperatures', label: 'Chamber at', unit: '°C', kind: 'numbers', help: 'In the order taken, at least three different ones; end with the first again to see drift.' },
    { ...own, id: 'soak', label: 'Least soak', unit: 'min', kind: 'number', help: 'Minutes at a temperature before it is read, by the size of the item; the sheet judges those typed by it.' },
  ];
}

function read(reader: AnswerReader, template: ThermalTemplate): ThermalSetup | undefined {
  const item = readItem(reader, template);
  const direction = reader.choice<ThermalTemplate['direction']>('direction', DIRECTIONS[template.quantity]);
  const load = reader.number('load', { above: 0, greatest: 150 });
  const temperatures = readTemperatures(reader);
  const soak = reader.number('soak', { least: 0, greatest: 10_000 });
  if (item === undefined || direction === undefined || load === undefined || temperatures === undefined || soak === undefined) return undefined;
  const force = rounded((item.capacity * load) / 100);
  checkStandard(reader, item, force, 'the load is');
  if (load > 100) reader.warn('load', `The load is ${load} % of capacity: check the safe overload of cell, adapters and frame, which falls with heat.`);
  if (item.ratedOutput === undefined) reader.warn('rated_output', 'Without a rated output there is no zero effect as a part of it until one is typed on the sheet.');
  if (soak < USUAL_SOAK) reader.warn('soak', `The soak is shorter than ${USUAL_SOAK} minutes: few cells are at one temperature throughout by then.`);
  return { item, direction, load, temperatures, soak };
}

function readTemperatures(reader: AnswerReader): readonly number[] | undefined {
  const temperatures = reader.numbers('temperatures', { least: -200, greatest: 500 });
  if (temperatures === undefined) return undefined;
  if (temperatures.length > MOST) return reader.refuse('temperatures', `Found ${temperatures.length} temperatures; expected ${MOST} at most.`);
  const different = new Set(temperatures).size;
  if (different < FEWEST) {
    return reader.refuse('temperatures', `Found ${different} different temperature${different === 1 ? '' : 's'}; expected at least ${FEWEST}, so that what is off a line shows.`);
  }
  return temperatures;
}

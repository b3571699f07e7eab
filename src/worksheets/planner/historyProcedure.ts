import type { Answers, Question } from '../question';
import type { HistoryTemplate } from '../templateSchema';
import type { AnswerReader } from './answerReader';
import { rounded } from './desk';
import { type HistorySetup, planHistory } from './historySheet';
import { changedItem, itemQuestions, readItem, split, suggestedItem } from './itemForm';
import type { Procedure } from './procedure';

const CLASSES = ['AA', 'A'] as const;
const LONGEST = 600;

/** Calibrations of one item by date. */
export const historyProcedure: Procedure<HistoryTemplate, HistorySetup> = {
  questions: (template, answers) => {
    const [item, rest] = split(itemQuestions(template, answers));
    return [...item, ...OWN, ...rest];
  },
  suggested: (template): Answers => ({
    ...suggestedItem(template), rows: String(template.rows), class: template.class, change: String(rounded(100 * template.limits.change)),
    interval: String(template.interval.now), least_interval: String(template.interval.least), greatest_interval: String(template.interval.greatest),
  }),
  read,
  plan: planHistory,
  changed: (template, { item, rows, loadingClass, change, now, least, greatest }) => ({
    ...template, item: changedItem(item), rows, class: loadingClass, interval: { ...template.interval, now, least, greatest }, limits: { ...template.limits, change },
  }),
};

const own = { group: 'History', optional: false } as const;
const OWN: readonly Question[] = [
  { ...own, id: 'rows', label: 'Room for calibrations', kind: 'number', help: 'Rows of the table, 3 to 60; those left blank count for nothing.' },
  { ...own, id: 'class', label: 'Loading class', kind: 'choice', choices: CLASSES.map((value) => ({ value, label: value })), help: 'Its limit is what the shift between two calibrations is held against.' },
  { ...own, id: 'change', label: 'Allowed change', unit: '% of reading', kind: 'number', help: 'Since the first calibration, both ways: the limits that the prediction band is to meet. They can be typed on the sheet.' },
  { ...own, id: 'interval', label: 'Interval so far', unit: 'months', kind: 'number', help: 'What the methods start from.' },
  { ...own, id: 'least_interval', label: 'Least interval', unit: 'months', kind: 'number', help: 'No method proposes less; the customer says which.' },
  { ...own, id: 'greatest_interval', label: 'Greatest interval', unit: 'months', kind: 'number', help: 'No method proposes more; a rule of the customer or of a standard.' },
];

function read(reader: AnswerReader, template: HistoryTemplate): HistorySetup | undefined {
  const item = readItem(reader, template);
  const rows = reader.number('rows', { least: 3, greatest: 60, whole: true });
  const loadingClass = reader.choice('class', CLASSES);
  const percent = reader.number('change', { above: 0, greatest: 100 });
  const months = { above: 0, greatest: LONGEST };
  const [now, least, greatest] = [reader.number('interval', months), reader.number('least_interval', months), reader.number('greatest_interval', months)];
  if (item === undefined || rows === undefined || loadingClass === undefined || percent === undefined) return undefined;
  if (now === undefined || least === undefined || greatest === undefined) return undefined;
  if (least > greatest) return reader.refuse('least_interval', `Found ${least} months; expected not more than the greatest interval, ${greatest} months.`);
  if (now < least || now > greatest) reader.warn('interval', `The interval so far, ${now} months, is not between the least and the greatest, ${least} and ${greatest} months.`);
  if (greatest > 26) reader.warn('greatest_interval', `Found ${greatest} months; ASTM E74 and ISO 376 (from memory) ask for calibration every 24 and 26 months at the latest.`);
  if (item.ratedOutput === undefined) reader.warn('rated_output', 'Without a rated output there is no shift of zero as a part of it until one is typed on the sheet.');
  return { item, rows, loadingClass, change: rounded(percent / 100), now, least, greatest };
}

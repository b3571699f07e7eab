import { UNITS } from '../../metrology/units';
import type { Question } from '../question';
import type { RunTemplate } from '../templateSchema';
import type { AnswerReader } from './answerReader';
import { MOST_DEGREE } from './calibration';
import { changedItem, type ItemAnswers, itemQuestions, readItem, split, suggestedItem } from './itemForm';
import type { Procedure } from './procedure';
import { planRun, type RunSetup } from './runSheet';
import { changedSeries, checkSeries, differentLoads, readSeries, type SeriesAnswers, seriesQuestions, suggestedSeries } from './seriesForm';
import { impossible } from './staticResults';

/** Runs of a transducer: readings of its output at applied forces or torques. */
export const runProcedure: Procedure<RunTemplate, RunSetup> = {
  questions: (template, answers) => {
    const [item, rest] = split(itemQuestions(template, answers));
    return [...item, ...seriesQuestions(template), CORRECTED, ...(fits(template) ? [DEGREE] : []), TEDS, ...rest];
  },
  suggested: (template) => ({ ...suggestedItem(template), ...suggestedSeries(template), corrected: template.corrected ? 'yes' : 'no', teds: template.teds ? 'yes' : 'no', ...(fits(template) ? { degree: String(template.degree ?? 2) } : {}) }),
  read,
  plan: planRun,
  changed: (template, { item, series, corrected, teds, degree }) => ({ ...template, item: changedItem(item), ...changedSeries(series), corrected, teds, ...(degree === undefined ? {} : { degree }) }),
};

const DEGREE: Question = {
  id: 'degree', label: 'Degree of the polynomial', group: 'Procedure', kind: 'number', optional: false,
  help: 'To begin with; the sheet finds the degree of best fit, and its cell can be changed.',
};

const CORRECTED: Question = {
  id: 'corrected', label: 'Temperature', group: 'Procedure', kind: 'choice', optional: false,
  choices: [{ value: 'no', label: 'as read' }, { value: 'yes', label: 'corrected to the reference' }],
  help: 'Correcting needs the temperature effects of the transducer; they are typed on the sheet.',
};

const TEDS: Question = {
  id: 'teds', label: 'TEDS content', group: 'Procedure', kind: 'choice', optional: false,
  choices: [{ value: 'no', label: 'none' }, { value: 'yes', label: 'a block of its own' }],
  help: 'What an electronic data sheet in the transducer must hold, filled from the results, and its bytes.',
};

function fits({ results }: RunTemplate): boolean {
  return results.includes('calibration');
}

function read(reader: AnswerReader, template: RunTemplate): RunSetup | undefined {
  const item = readItem(reader, template);
  const series = readSeries(reader, template);
  const corrected = reader.choice('corrected', ['no', 'yes']);
  const teds = reader.choice('teds', ['no', 'yes']);
  const degree = fits(template) ? reader.number('degree', { least: 1, greatest: MOST_DEGREE, whole: true }) : undefined;
  if (item === undefined || series === undefined || corrected === undefined || teds === undefined || (fits(template) && degree === undefined)) return undefined;
  checkSeries(reader, item, series);
  for (const id of template.results) {
    const why = impossible(id, series);
    if (why !== undefined) reader.warn(why.startsWith('repeat') ? 'runs' : 'points', `Left out: ${why}.`);
  }
  if (teds === 'yes' && !UNITS.some(({ symbol }) => symbol === item.unit)) reader.refuse('unit', `Found ${item.unit}; expected a unit that is known, since a data sheet holds newtons or newton metres.`);
  if (degree !== undefined) checkCalibration(reader, item, series, degree);
  return { item, series, corrected: corrected === 'yes', teds: teds === 'yes', degree };
}

/** What a calibration polynomial needs, and what a run for it is by ASTM E74 (from memory). */
function checkCalibration(reader: AnswerReader, { resolution, ratedOutput }: ItemAnswers, { points, runs }: SeriesAnswers, degree: number): void {
  const loads = points.filter((point) => point > 0).length;
  const different = differentLoads(points);
  // The degree of best fit needs three different loads.
  const least = Math.max(3, degree + 1);
  if (different < least || loads * runs < degree + 2) {
    reader.refuse('degree', `Found degree ${degree} for ${different} different loads; expected at least ${least} different loads and ${degree + 2} readings under load.`);
    return;
  }
  const asked = 'ASTM E74 (from memory) asks for';
  if (loads * runs < 30) reader.warn('runs', `${loads * runs} applications of load; ${asked} 30 or more.`);
  if (different < 10) reader.warn('points', `${different} different loads; ${asked} 10 or more, one in each tenth of the range.`);
  if (runs < 3) reader.warn('runs', `${runs === 1 ? '1 run' : `${runs} runs`}; ${asked} 3 with a rotation between them.`);
  if (ratedOutput === undefined) return;
  const greatest = (ratedOutput * Math.max(...points)) / 100;
  if (degree > 2 && resolution > greatest / 50_000) reader.warn('resolution', `Degree ${degree} needs a resolution finer than 1/50 000 of the output at the greatest load by ASTM E74 (from memory); found 1/${Math.round(greatest / resolution)}.`);
  const lowest = Math.min(...points.filter((point) => point > 0)) / 100 * ratedOutput;
  if (lowest < 400 * resolution) reader.warn('resolution', `The lowest load is ${Math.floor(lowest / resolution)} steps of the resolution; class A needs 400 by ASTM E74 (from memory).`);
}

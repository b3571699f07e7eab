import { UNITS } from '../../metrology/units';
import type { Answers, Question } from '../question';
import { DIRECTIONS, type Direction, type SeriesTemplate } from '../templateSchema';
import type { AnswerReader } from './answerReader';
import { checkStandard, type ItemAnswers } from './itemForm';

/** What a series of readings is told: what is applied, how often, and what is taken off. */
export interface SeriesAnswers {
  readonly directions: readonly (Direction | 'positive' | 'negative')[];
  /** Percent of capacity, in the order applied; the first is 0, the last may be, no other is. */
  readonly points: readonly number[];
  readonly runs: number;
  /** One a run, or none. */
  readonly positions: readonly string[];
  readonly zero: SeriesTemplate['zero'];
  readonly applied: SeriesTemplate['applied'];
}

const ZEROS: readonly { readonly value: SeriesTemplate['zero']; readonly label: string }[] = [
  { value: 'initial', label: 'the zero before the run' },
  { value: 'average', label: 'the mean of first and last zero' },
  { value: 'interpolated', label: 'between first and last zero, by row' },
];

const APPLIED: readonly { readonly value: SeriesTemplate['applied']; readonly label: string }[] = [
  { value: 'planned', label: 'as planned' },
  { value: 'typed', label: 'typed on the sheet' },
  { value: 'weights', label: 'computed from dead weights' },
];

/** Dead weights give a force; a torque or a signal they do not. */
function waysOfApplying({ quantity }: SeriesTemplate) {
  return quantity === 'force' ? APPLIED : APPLIED.slice(0, 2);
}

export function seriesQuestions(template: SeriesTemplate): Question[] {
  const own = { group: 'Procedure', optional: false } as const;
  return [
    { ...own, id: 'directions', label: template.quantity === 'signal' ? 'Polarity' : 'Direction', kind: 'choices', choices: DIRECTIONS[template.quantity].map((value) => ({ value, label: value })), help: 'Each gets a block of readings of its own.' },
    { ...own, id: 'points', label: 'Points', unit: '%', kind: 'numbers', help: 'Percent of capacity in the order applied, the zero first; end with 0 to read the zero again.' },
    { ...own, id: 'runs', label: 'Runs', kind: 'number', help: 'How often the series is run, 1 to 6.' },
    { ...own, id: 'positions', label: 'Positions', kind: 'words', optional: true, help: 'How the transducer stands in each run, like 0°, 120°, 240°; leave it empty if it is not turned.' },
    { ...own, id: 'applied', label: 'Applied values', kind: 'choice', choices: waysOfApplying(template), help: 'Whether the points stand as planned, or what was really applied is typed in or computed.' },
    { ...own, id: 'zero', label: 'Zero taken off', kind: 'choice', choices: ZEROS, help: 'What the net readings are net of.' },
  ];
}

export function suggestedSeries({ directions, points, runs, positions, zero, applied }: SeriesTemplate): Answers {
  return { directions: directions.join(', '), points: points.join(', '), runs: String(runs), positions: (positions ?? []).join(', '), zero, applied };
}

export function readSeries(reader: AnswerReader, template: SeriesTemplate): SeriesAnswers | undefined {
  const directions = reader.choices<SeriesAnswers['directions'][number]>('directions', DIRECTIONS[template.quantity]);
  const points = readPoints(reader);
  const runs = reader.number('runs', { least: 1, greatest: 6, whole: true });
  const zero = reader.choice('zero', ZEROS.map(({ value }) => value));
  const applied = reader.choice('applied', waysOfApplying(template).map(({ value }) => value));
  const positions = reader.words('positions').map((word) => word.slice(0, 16));
  if (runs !== undefined && positions.length > 0 && positions.length !== runs) {
    return reader.refuse('positions', `Found ${positions.length}; expected one for each of the ${runs} runs, or none.`);
  }
  if (directions === undefined || points === undefined || runs === undefined || zero === undefined || applied === undefined) return undefined;
  if (zero !== 'initial' && points.at(-1) !== 0) {
    return reader.refuse('zero', 'Found no zero at the end of the points; expected one for this way of taking the zero off, or “the zero before the run”.');
  }
  return { directions, points, runs, positions, zero, applied };
}

function readPoints(reader: AnswerReader): readonly number[] | undefined {
  const points = reader.numbers('points', { least: 0, greatest: 150 });
  if (points === undefined) return undefined;
  if (points.length > 60) return reader.refuse('points', `Found ${points.length} points; expected 60 at most.`);
  if (points[0] !== 0) return reader.refuse('points', `Found ${points[0]} % first; expected the zero, 0.`);
  const between = points.slice(1, -1).indexOf(0);
  if (between >= 0) return reader.refuse('points', `Found a zero at place ${between + 2}, between loads; expected each cycle as a run of its own.`);
  if (!points.some((point) => point > 0)) return reader.refuse('points', 'Found no load; expected at least one point above 0 %.');
  return points;
}

/** Units of force that dead weights can be computed in. */
function isForceUnit(symbol: string): boolean {
  return UNITS.some((unit) => unit.kind === 'force' && unit.symbol === symbol);
}

/** Says what of item and series cannot work together, or is not usual. */
export function checkSeries(reader: AnswerReader, item: ItemAnswers, { points, runs, applied }: SeriesAnswers): void {
  if (applied === 'weights' && !isForceUnit(item.unit)) reader.refuse('unit', `Found ${item.unit}; expected a unit of force that is known, like kN or lbf, to compute it from dead weights.`);
  const most = Math.max(...points);
  const greatest = (item.capacity * most) / 100;
  checkStandard(reader, item, greatest, 'the points go to');
  if (most > 100) reader.warn('points', `The points go to ${most} % of capacity: check the safe overload of cell, adapters and frame.`);
  if (points.at(-1) !== 0) reader.warn('points', 'The run does not end with a zero, so there is no zero return.');
  const top = points.indexOf(most);
  const outOfOrder = points.findIndex((point, i) => i > 0 && (i <= top ? point <= points[i - 1] : point > points[i - 1] || (point === points[i - 1] && point === most)));
  if (outOfOrder > 0) reader.warn('points', `The point at place ${outOfOrder + 1}, ${points[outOfOrder]} %, is out of order: points usually rise to the greatest and then fall.`);
  if (runs * points.length > 240) reader.warn('runs', `${runs} runs of ${points.length} points are ${runs * points.length} readings: the sheet will be long.`);
}

/** Different loads above zero. */
export function differentLoads(points: readonly number[]): number {
  return new Set(points.filter((point) => point > 0)).size;
}

/** The series of a template as answered. */
export function changedSeries({ directions, points, runs, positions, zero, applied }: SeriesAnswers): Pick<SeriesTemplate, 'directions' | 'points' | 'runs' | 'positions' | 'zero' | 'applied'> {
  return { directions: [...directions], points: [...points], runs, zero, applied, positions: positions.length > 0 ? [...positions] : undefined };
}

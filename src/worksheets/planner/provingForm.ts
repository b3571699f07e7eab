import { EQUATION_FORMS, type EquationForm } from '../../metrology/forceProvingEquation';
import { GREATEST_PROVING_DEGREE } from '../../metrology/forceProving';
import { PROVING_CLASS_NAMES } from '../../metrology/forceProvingLimits';
import type { Answers, Question } from '../question';
import { DIRECTIONS, type ProvingTemplate } from '../templateSchema';
import type { AnswerReader } from './answerReader';
import { rounded } from './desk';
import { checkStandard, type ItemAnswers, itemQuestions, readItem, split, suggestedItem } from './itemForm';

/** What a sheet of a force-proving instrument is planned from. */
export interface ProvingSetup {
  readonly item: ItemAnswers;
  readonly direction: ProvingTemplate['direction'];
  /** True: decreasing forces follow the series X3 and X5. */
  readonly decreasing: boolean;
  /** Percent of capacity, rising, zeros left out. */
  readonly points: readonly number[];
  /** How the instrument stands in the series X1, X2, X3 and X5; or none. */
  readonly positions: readonly string[];
  readonly degree: number;
  readonly equation: EquationForm;
  readonly classWanted: ProvingTemplate['classWanted'];
  /** Percent of capacity. */
  readonly classFrom: number;
}

/** Series that are run upwards: X1, X2, X3, X5. */
const SERIES = 4;
/** Forces that the standard asks for at least, and the share of the greatest that each must have. Source: ISO 376:2011 (from memory). */
const USUAL_FORCES = 8;
const LEAST_PERCENT = 2;
/** A class must hold down to here at least, percent of the greatest force. Source: ISO 376:2011 (from memory). */
const CLASS_HOLDS_FROM = 50;
const MOST_FORCES = 30;
const USES = ['increasing and decreasing', 'increasing only'] as const;
const EQUATIONS: Readonly<Record<EquationForm, string>> = { inverse: 'W = a0 + a1/F', linear: 'W = a0 + a1·F', quadratic: 'W = a0 + a1·F + a2·F²' };

export function provingQuestions(template: ProvingTemplate, answers: Answers): readonly Question[] {
  const [item, rest] = split(itemQuestions(template, answers));
  const procedure = { group: 'Procedure', optional: false } as const;
  const wanted = { group: 'Class', optional: false } as const;
  return [
    ...item,
    { ...procedure, id: 'direction', label: 'Direction', kind: 'choice', choices: DIRECTIONS.force.map((value) => ({ value, label: value })), help: 'Tension and compression are calibrated on sheets of their own.' },
    { ...procedure, id: 'use', label: 'Forces', kind: 'choice', choices: USES.map((value) => ({ value, label: value })), help: 'Increasing and decreasing: X4′ and X6′ follow X3 and X5, and reversibility is judged. Increasing only: creep is judged instead.' },
    { ...procedure, id: 'points', label: 'Forces at', unit: '%', kind: 'numbers', help: 'Percent of capacity, rising, at least 8; the zeros before and after each series are added by themselves.' },
    { ...procedure, id: 'positions', label: 'Positions', kind: 'words', optional: true, help: 'How the instrument stands in X1, X2 (the same), X3 and X5, like 0°, 0°, 120°, 240°.' },
    { ...procedure, id: 'degree', label: 'Degree of the interpolation', kind: 'number', help: 'Of the polynomial for output over force, 1 to 3; can be changed on the sheet.' },
    { ...procedure, id: 'equation', label: 'Equation of uncertainty', kind: 'choice', choices: EQUATION_FORMS.map((value) => ({ value, label: EQUATIONS[value] })), help: 'Form of the equation fitted to the uncertainties W; can be changed on the sheet.' },
    { ...wanted, id: 'class_wanted', label: 'Class wanted', kind: 'choice', choices: PROVING_CLASS_NAMES.map((value) => ({ value, label: `class ${value}` })), help: 'The verdict is for this class.' },
    { ...wanted, id: 'class_from', label: 'It must hold from', unit: '% of capacity', kind: 'number', help: 'The class must hold from this force to the greatest one.' },
    ...rest,
  ];
}

export function suggestedProving(template: ProvingTemplate): Answers {
  const { direction, decreasing, points, positions, degree, equation, classWanted, classFrom } = template;
  return {
    ...suggestedItem(template), direction, use: USES[decreasing ? 0 : 1], points: points.join(', '), positions: (positions ?? []).join(', '),
    degree: String(degree), equation, class_wanted: classWanted, class_from: String(classFrom),
  };
}

export function readProvingAnswers(reader: AnswerReader, template: ProvingTemplate): ProvingSetup | undefined {
  const item = readItem(reader, template);
  const direction = reader.choice<ProvingTemplate['direction']>('direction', DIRECTIONS.force);
  const use = reader.choice('use', USES);
  const degree = reader.number('degree', { least: 1, greatest: GREATEST_PROVING_DEGREE, whole: true });
  const equation = reader.choice('equation', EQUATION_FORMS);
  const classWanted = reader.choice('class_wanted', PROVING_CLASS_NAMES);
  const classFrom = reader.number('class_from', { above: 0 });
  const points = readForces(reader);
  const positions = reader.words('positions').map((word) => word.slice(0, 16));
  if (positions.length !== 0 && positions.length !== SERIES) {
    return reader.refuse('positions', `Found ${positions.length}; expected four, for X1, X2, X3 and X5, or none.`);
  }
  if (!item || !direction || !use || degree === undefined || !equation || !classWanted || classFrom === undefined || !points) return undefined;
  const setup = { item, direction, decreasing: use === USES[0], points, positions, degree, equation, classWanted, classFrom };
  checkTogether(reader, setup, template);
  return setup;
}

function readForces(reader: AnswerReader): readonly number[] | undefined {
  const points = reader.numbers('points', { least: 0, greatest: 150 });
  if (points === undefined) return undefined;
  if (points.length > MOST_FORCES) return reader.refuse('points', `Found ${points.length} forces; expected ${MOST_FORCES} at most.`);
  if (points.includes(0)) return reader.refuse('points', 'Found a zero; expected forces only: the zeros before and after each series are added by themselves.');
  const wrong = points.findIndex((point, i) => i > 0 && point <= points[i - 1]);
  return wrong < 0 ? points : reader.refuse('points', `Found ${points[wrong]} % at place ${wrong + 1}; expected forces that rise: the decreasing ones follow by themselves.`);
}

/** Says what cannot work together, and what the standard asks for beyond it. */
function checkTogether(reader: AnswerReader, { item, points, positions, degree, classWanted, classFrom }: ProvingSetup, { limits }: ProvingTemplate): void {
  const [lowest, greatest] = [points[0], points[points.length - 1]];
  const force = rounded((item.capacity * greatest) / 100);
  if (points.length < degree + 2) {
    reader.refuse('points', `Found ${points.length} forces; expected ${degree + 2} or more for degree ${degree}, and ${USUAL_FORCES} after ISO 376 (from memory).`);
  } else if (points.length < USUAL_FORCES) {
    reader.warn('points', `Found ${points.length} forces; ISO 376 asks for ${USUAL_FORCES} or more (from memory).`);
  }
  checkStandard(reader, item, force, 'the forces go to');
  if (greatest > 100) reader.warn('points', `The forces go to ${greatest} % of capacity: check the safe overload of instrument, adapters and frame.`);
  if (lowest < (LEAST_PERCENT * greatest) / 100) reader.warn('points', `The lowest force is below ${LEAST_PERCENT} % of the greatest, where no class holds (ISO 376, from memory).`);
  if (classFrom < lowest) reader.refuse('class_from', `Found ${classFrom} %; expected ${lowest} % or more, the lowest force that is applied.`);
  if (classFrom > (CLASS_HOLDS_FROM * greatest) / 100) {
    reader.refuse('class_from', `Found ${classFrom} %; expected ${rounded((CLASS_HOLDS_FROM * greatest) / 100)} % at most: a class holds over ${CLASS_HOLDS_FROM} % to 100 % of the greatest force or not at all (ISO 376, from memory).`);
  }
  if (positions.length > 0 && positions[0] !== positions[1]) reader.warn('positions', `X1 stands at ${positions[0]} and X2 at ${positions[1]}: b′ is for the same position.`);
  if (new Set(positions).size < SERIES - 1 && positions.length > 0) reader.warn('positions', 'X1, X3 and X5 stand in fewer than three positions: b is for a rotated instrument.');
  const share = limits[CLASS_KEYS[classWanted]].resolution;
  if (item.ratedOutput !== undefined && share !== undefined && item.resolution > share * item.ratedOutput * (classFrom / 100) * (1 + 1e-9)) {
    reader.warn('resolution', `At ${classFrom} % the output is about ${Math.floor((item.ratedOutput * classFrom) / 100 / item.resolution)} resolutions; class ${classWanted} needs ${Math.round(1 / share)}.`);
  }
}

/** Where a template keeps the limits of a class. */
export const CLASS_KEYS = { '00': 'class_00', '0.5': 'class_05', '1': 'class_1', '2': 'class_2' } as const;

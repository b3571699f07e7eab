import { AnswerReader } from '../planner/answerReader';
import { rounded } from '../planner/desk';
import { dateText, serialOf } from '../check/serialDate';
import { suggestedAnswers } from '../planner';
import type { Answers, Problem, Question } from '../question';
import type { Template } from '../template';
import { allUnits, calibrationTemplates, CLASSES, DECISION_RULES, MOST_ITEMS, unitsOf } from './jobTerms';

/** What a job is begun with; everything else is typed on its sheet. */
export interface JobAnswers {
  readonly number: string;
  readonly laboratory: string;
  readonly customer: string;
  readonly procedure: Template;
  /** Fractions. */
  readonly tolerance?: number;
  readonly class?: (typeof CLASSES)[number];
  readonly decisionRule: (typeof DECISION_RULES)[number];
  /** Months. */
  readonly leastInterval?: number;
  readonly greatestInterval?: number;
  readonly items: readonly string[];
  readonly capacity: number;
  readonly unit: string;
  readonly outputUnit: string;
  readonly resolution: number;
  readonly ratedOutput?: number;
  readonly standard: string;
  readonly verifiedFrom?: number;
  readonly verifiedTo?: number;
  /** Relative, k = 2, a fraction. */
  readonly uncertainty?: number;
  readonly due?: number;
}

const NO_CLASS = 'none';
const FIRST_PROCEDURE = 'ten-point-force';
/** An item's name begins the names of its sheets, which have 31 characters. */
const LONGEST_NAME = 18;
const NAME = /^[^\\/?*[\]:'\p{Cc}]+$/u;

/** The questions of a new job. Units follow what is answered already. */
export function jobQuestions(answers: Answers): readonly Question[] {
  const { unit = '', output_unit: outputUnit = '' } = answers;
  const job = { group: 'Job' } as const;
  const asked = { group: 'Requirement' } as const;
  const item = { group: 'Items' } as const;
  const standard = { group: 'Standard', optional: true } as const;
  const choices = (list: readonly string[]) => list.map((value) => ({ value, label: value }));
  return [
    { ...job, id: 'number', label: 'Job number', kind: 'text', optional: false, help: 'As the laboratory counts its jobs.' },
    { ...job, id: 'laboratory', label: 'Laboratory', kind: 'text', optional: true, help: 'As the certificate will name it; its address is typed on the sheet.' },
    { ...job, id: 'customer', label: 'Customer', kind: 'text', optional: true, help: 'Whom the certificate is for; the address is typed on the sheet.' },
    { ...asked, id: 'procedure', label: 'Procedure', kind: 'choice', choices: choices(calibrationTemplates().map(({ title }) => title)), optional: false, help: 'What the items are calibrated by, as found and as left.' },
    { ...asked, id: 'tolerance', label: 'Tolerance', unit: '%', kind: 'number', optional: true, help: 'Greatest deviation allowed, in percent of the output at capacity; leave it empty if a class is asked alone.' },
    { ...asked, id: 'class', label: 'Class required', kind: 'choice', choices: choices([NO_CLASS, ...CLASSES]), optional: false, help: 'AA and A are loading ranges of ASTM E74; 00 to 2 are classes of ISO 376.' },
    { ...asked, id: 'decision_rule', label: 'Decision rule', kind: 'choice', choices: choices(DECISION_RULES), optional: false, help: 'Simple: the uncertainty is not added. Guarded: it is taken off the limit. Agreed with the customer beforehand.' },
    { ...asked, id: 'least_interval', label: 'Least interval', unit: 'months', kind: 'number', optional: true, help: 'Until the next calibration, as the customer asks.' },
    { ...asked, id: 'greatest_interval', label: 'Greatest interval', unit: 'months', kind: 'number', optional: true, help: 'By a rule of the customer or of a standard.' },
    { ...item, id: 'items', label: 'Items', kind: 'words', optional: false, help: `One to ${MOST_ITEMS} names, parted by commas: transducers, bridges of one, or directions. Each begins the names of its sheets, so ${LONGEST_NAME} characters at most.` },
    { ...item, id: 'capacity', label: 'Capacity', unit, kind: 'number', optional: false, help: 'Of every item; one that differs is changed on the sheet, as all that follows.' },
    { ...item, id: 'unit', label: 'Unit of capacity', kind: 'choice', choices: choices(allUnits()), optional: false, help: 'Of force or torque; for an indicator, of its signal.' },
    { ...item, id: 'output_unit', label: 'Unit of the readings', kind: 'text', optional: false, help: 'As the indicator shows it: mV/V for a transducer, the engineering unit for a system.' },
    { ...item, id: 'resolution', label: 'Resolution', unit: outputUnit, kind: 'number', optional: false, help: 'Smallest step of the reading.' },
    { ...item, id: 'rated_output', label: 'Rated output as specified', unit: outputUnit, kind: 'number', optional: true, help: 'Output at capacity by the specification; leave it empty if there is none.' },
    { ...standard, id: 'standard', label: 'Standard used', kind: 'text', help: 'Its identification; more standards are typed on the sheet.' },
    { ...standard, id: 'verified_from', label: 'Verified from', unit, kind: 'number', help: 'Least value that it is verified for.' },
    { ...standard, id: 'verified_to', label: 'Verified up to', unit, kind: 'number', help: 'Greatest value that it is verified for.' },
    { ...standard, id: 'uncertainty', label: 'Its uncertainty, k = 2', unit: '%', kind: 'number', help: 'Relative expanded uncertainty from its certificate.' },
    { ...standard, id: 'due', label: 'Calibrated until', kind: 'text', help: 'A date, like 2026-11-25.' },
  ];
}

/** What the form of a new job holds at first. */
export function suggestedJob(): Answers {
  const template = firstProcedure();
  const { unit, output_unit, resolution } = suggestedAnswers(template);
  const blank = Object.fromEntries(jobQuestions({}).map(({ id }) => [id, '']));
  return { ...blank, procedure: template.title, class: NO_CLASS, decision_rule: DECISION_RULES[0], unit, output_unit, resolution };
}

function firstProcedure(): Template {
  return calibrationTemplates().find(({ id }) => id === FIRST_PROCEDURE) ?? calibrationTemplates()[0];
}

/** The answers read and checked together; without a job if a problem refuses. */
export function readJobAnswers(answers: Answers): { readonly problems: readonly Problem[]; readonly job?: JobAnswers } {
  const reader = new AnswerReader(answers);
  const job = read(reader);
  if (job) checkTogether(reader, job);
  const refused = reader.problems.some(({ severity }) => severity === 'refuse');
  return { problems: reader.problems, ...(refused || !job ? {} : { job }) };
}

function read(reader: AnswerReader): JobAnswers | undefined {
  const templates = calibrationTemplates();
  const number = reader.text('number', 40);
  const title = reader.choice('procedure', templates.map((template) => template.title));
  const tolerance = reader.number('tolerance', { above: 0, greatest: 100, optional: true });
  const chosen = reader.choice('class', [NO_CLASS, ...CLASSES]);
  const decisionRule = reader.choice('decision_rule', DECISION_RULES);
  const leastInterval = reader.number('least_interval', { above: 0, greatest: 600, optional: true });
  const greatestInterval = reader.number('greatest_interval', { above: 0, greatest: 600, optional: true });
  const items = readItems(reader);
  const capacity = reader.number('capacity', { above: 0 });
  const unit = reader.choice('unit', allUnits());
  const outputUnit = reader.text('output_unit', 12);
  const resolution = reader.number('resolution', { above: 0 });
  const ratedOutput = reader.number('rated_output', { above: 0, optional: true });
  const verifiedFrom = reader.number('verified_from', { least: 0, optional: true });
  const verifiedTo = reader.number('verified_to', { above: 0, optional: true });
  const uncertainty = reader.number('uncertainty', { above: 0, greatest: 100, optional: true });
  const due = readDate(reader, 'due');
  const procedure = templates.find((template) => template.title === title);
  if (number === undefined || !procedure || !chosen || !decisionRule || !items || capacity === undefined || !unit || !outputUnit || resolution === undefined) return undefined;
  return {
    number, procedure, decisionRule, items, capacity, unit, outputUnit, resolution, ratedOutput, leastInterval, greatestInterval, verifiedFrom, verifiedTo, due,
    laboratory: reader.typed('laboratory').slice(0, 120), customer: reader.typed('customer').slice(0, 120), standard: reader.typed('standard').slice(0, 80),
    class: chosen === NO_CLASS ? undefined : chosen, tolerance: asFraction(tolerance), uncertainty: asFraction(uncertainty),
  };
}

function asFraction(percent: number | undefined): number | undefined {
  return percent === undefined ? undefined : rounded(percent / 100);
}

function readItems(reader: AnswerReader): readonly string[] | undefined {
  const items = reader.words('items');
  if (items.length === 0 || items.length > MOST_ITEMS) return reader.refuse('items', `Found ${items.length === 0 ? 'nothing' : `${items.length} names`}; expected 1 to ${MOST_ITEMS} names.`);
  const odd = items.find((name) => name.length > LONGEST_NAME || !NAME.test(name));
  if (odd !== undefined) return reader.refuse('items', `Found “${odd}”; expected a name of ${LONGEST_NAME} characters at most, without \\ / ? * [ ] : and apostrophes.`);
  const twice = items.find((name, i) => items.findIndex((other) => other.toLowerCase() === name.toLowerCase()) < i);
  return twice === undefined ? items : reader.refuse('items', `Found “${twice}” twice; expected each name once.`);
}

function readDate(reader: AnswerReader, question: string): number | undefined {
  const text = reader.typed(question);
  if (text === '') return undefined;
  const serial = serialOf(text);
  return serial !== undefined && dateText(serial) === text ? serial : reader.refuse(question, `Found “${text}”; expected a date, like 2026-11-25.`);
}

/** Says what cannot work together, or is not usual. */
function checkTogether(reader: AnswerReader, job: JobAnswers): void {
  const { procedure, unit, capacity, leastInterval, greatestInterval, verifiedFrom, verifiedTo } = job;
  if (!unitsOf(procedure).includes(unit)) reader.refuse('unit', `Found ${unit}; expected ${unitsOf(procedure).join(', ')}, which “${procedure.title}” is run in.`);
  if (leastInterval !== undefined && greatestInterval !== undefined && leastInterval > greatestInterval) {
    reader.refuse('least_interval', `Found ${leastInterval} months; expected not more than the greatest interval, ${greatestInterval} months.`);
  }
  if (verifiedFrom !== undefined && verifiedTo !== undefined && verifiedFrom >= verifiedTo) {
    reader.refuse('verified_from', `Found ${verifiedFrom} ${unit}; expected less than what the standard is verified up to, ${verifiedTo} ${unit}.`);
  }
  if (verifiedTo !== undefined && verifiedTo < capacity) reader.warn('verified_to', `The standard is verified up to ${verifiedTo} ${unit}, below the capacity, ${capacity} ${unit}: points beyond it will be refused.`);
  if (job.tolerance === undefined && job.class === undefined) reader.warn('tolerance', 'Neither a tolerance nor a class is asked: nothing says what is good enough.');
  const isProving = procedure.kind === 'proving';
  const isProvingClass = job.class !== undefined && !/^A/.test(job.class);
  if (job.class !== undefined && isProving !== isProvingClass) reader.warn('class', `Class ${job.class} is ${isProvingClass ? 'of ISO 376' : 'a loading range of ASTM E74'}; “${procedure.title}” does not tell it.`);
}

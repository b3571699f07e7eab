import { rounded } from '../planner/desk';
import { questions, suggestedAnswers } from '../planner';
import type { Answers } from '../question';
import type { Template } from '../template';
import { DIRECTIONS } from '../templateSchema';
import type { Job, JobItem, Step } from './job';
import { standardOf } from './readJob';

const LONGEST_SHEET_NAME = 31;
/** Characters that a sheet's name cannot have. */
const ODD = /[\\/?*[\]:'\p{Cc}]/gu;

/** What a sheet is called by, after the item: of a step of the way, or of a kind of template. */
const STEP_WORDS: Partial<Record<Step, string>> = { inspected: 'inspection', as_found: 'as found', as_left: 'as left', certificate: 'certificate' };
const KIND_WORDS: Readonly<Record<Template['kind'], string>> = {
  run: 'run', indication: 'run', proving: 'run', inspection: 'inspection', creep: 'creep', thermal: 'temperature', history: 'history', summing: 'summing box',
};

/**
 * The answers that a template suggests, with what the job says of the item in their place. A rated output is taken from the job
 * alone: one that nobody specified would be judged by. Of an indicator's template, whose capacity is a signal, the item is left
 * as suggested unless the job's unit is one of a signal.
 * @param step the step that the sheet is for, which it is named after; else it is named after the kind of template
 */
export function answersForItem(job: Job, item: JobItem, template: Template, step?: Step): Answers {
  const suggested = suggestedAnswers(template);
  const known: Record<string, string | undefined> = {
    ...(speaksOf(template, item) ? ofItem(item) : {}), ...ofRequirement(job, template), ...ofStandard(job, item), ...directions(item, template),
    sheet: sheetNameOf(item, STEP_WORDS[step ?? 'received'] ?? KIND_WORDS[template.kind]),
  };
  const asked = new Set(questions(template, suggested).map(({ id }) => id));
  const answered = Object.entries(known).filter((entry): entry is [string, string] => entry[1] !== undefined && asked.has(entry[0]));
  return { ...suggested, ...Object.fromEntries(answered) };
}

/** "Cell A as found": the item's name cut so that the rest fits. */
export function sheetNameOf(item: JobItem, words: string): string {
  const name = (item.name.value ?? '').replace(ODD, ' ').replace(/\s+/g, ' ').trim();
  return `${name.slice(0, LONGEST_SHEET_NAME - words.length - 1).trim()} ${words}`.trim();
}

function speaksOf(template: Template, item: JobItem): boolean {
  return template.quantity !== 'signal' || item.unit.value === template.item.unit;
}

function ofItem(item: JobItem): Record<string, string | undefined> {
  return {
    capacity: text(item.capacity.value), unit: item.unit.value, output_unit: item.output_unit.value, resolution: text(item.resolution.value),
    rated_output: text(item.rated_output.value) ?? '',
  };
}

/** The tolerance as one of capacity; the class and the intervals, where the template asks for them. */
function ofRequirement({ fields }: Job, template: Template): Record<string, string | undefined> {
  const { tolerance, class: wanted, least_interval: least, greatest_interval: greatest } = fields;
  const offered = questions(template, {}).flatMap(({ id, choices = [] }) => (/^class(_wanted)?$/.test(id) ? choices.map(({ value }) => [id, value] as const) : []));
  return {
    ...(tolerance.value === undefined ? {} : { tolerance_reading: '0', tolerance_capacity: String(rounded(100 * tolerance.value)) }),
    ...Object.fromEntries(offered.filter(([, value]) => value === wanted.value)),
    least_interval: text(least.value), greatest_interval: text(greatest.value),
  };
}

function ofStandard(job: Job, item: JobItem): Record<string, string | undefined> {
  const standard = standardOf(job, item);
  const inUnit = standard !== undefined && standard.unit.value === item.unit.value;
  return { standard: item.standard.value, standard_capacity: inUnit ? text(standard.verified_to.value) : undefined };
}

/** For a template with a choice of directions, or of one; "both" is the pair of the template's quantity. */
function directions({ direction }: JobItem, { quantity }: Template): Record<string, string | undefined> {
  const pair: readonly string[] = DIRECTIONS[quantity];
  if (direction.value === 'both') return { directions: pair.join(', ') };
  return direction.value !== undefined && pair.includes(direction.value) ? { directions: direction.value, direction: direction.value } : {};
}

/** A number as it would be typed, small ones without an exponent. */
function text(value: number | undefined): string | undefined {
  if (value === undefined) return undefined;
  return Math.abs(value) < 1e-6 && value !== 0 ? value.toFixed(12).replace(/0+$/, '') : String(value);
}

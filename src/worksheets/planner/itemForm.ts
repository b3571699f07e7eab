import type { Answers, Question } from '../question';
import type { Template } from '../templateSchema';
import type { AnswerReader } from './answerReader';
import { rounded } from './desk';

/** What every sheet is told of the item, the standard and itself. */
export interface ItemAnswers {
  /** Name of the sheet to be. */
  readonly sheet: string;
  readonly capacity: number;
  /** Unit of what is applied. */
  readonly unit: string;
  readonly outputUnit: string;
  /** Smallest step that the output is read to. */
  readonly resolution: number;
  /** Output at capacity as specified; undefined if it is not. */
  readonly ratedOutput?: number;
  readonly standard?: string;
  /** Greatest value that the standard is verified for. */
  readonly standardCapacity?: number;
}

const UNITS = {
  force: ['N', 'kN', 'MN', 'lbf', 'klbf', 'kgf', 'ozf'],
  torque: ['N·m', 'kN·m', 'mN·m', 'lbf·in', 'lbf·ft', 'ozf·in', 'kgf·m'],
  signal: ['mV/V'],
};
/** Characters that a spreadsheet takes in a sheet's name, up to 31; no apostrophe, which would have to be doubled in formulas. */
const SHEET_NAME = /^[^\\/?*[\]:'\p{Cc}]{1,31}$/u;
const RESERVED = 'history';

/** The questions on item, standard and sheet. Units follow what is answered. */
export function itemQuestions(template: Template, answers: Answers): Question[] {
  const unit = answers.unit ?? template.item.unit;
  const outputUnit = answers.output_unit ?? template.item.outputUnit;
  const isSignal = template.quantity === 'signal';
  const applied = isSignal ? 'signal' : template.quantity;
  const own = { group: 'Item', optional: false } as const;
  const standard = { group: 'Standard', optional: true } as const;
  return [
    { ...own, id: 'capacity', label: isSignal ? 'Greatest signal' : 'Capacity', unit, kind: 'number', help: `Greatest ${applied} of the item; the points are percentages of it.` },
    { ...own, id: 'unit', label: `Unit of ${applied}`, kind: 'choice', choices: unitChoices(template), help: 'All applied values on the sheet are in this unit.' },
    { ...own, id: 'output_unit', label: 'Unit of the readings', kind: 'text', help: 'As the indicator shows it: mV/V for a transducer, the engineering unit for a system.' },
    { ...own, id: 'resolution', label: 'Resolution', unit: outputUnit, kind: 'number', help: 'Smallest step of the reading. It sets the digits that the sheet shows.' },
    ...(template.item.outputUnit === 'mV/V' && template.kind !== 'indication'
      ? [{ ...own, optional: true, id: 'rated_output', label: 'Rated output as specified', unit: outputUnit, kind: 'number' as const, help: 'Output at capacity by the specification; leave it empty if there is none.' }]
      : []),
    ...(template.kind === 'inspection' || template.kind === 'summing' || template.kind === 'history' ? [] : [
      { ...standard, id: 'standard', label: isSignal ? 'Simulator used' : 'Standard used', kind: 'text' as const, help: 'Its identification; can be typed on the sheet later.' },
      { ...standard, id: 'standard_capacity', label: 'Verified up to', unit, kind: 'number' as const, help: 'Greatest value that the standard is verified for. Points beyond it are refused.' },
    ]),
    { id: 'sheet', label: 'Name of the sheet', group: 'Sheet', kind: 'text', optional: false, help: 'Up to 31 characters, without \\ / ? * [ ] : and apostrophes.' },
  ];
}

function unitChoices(template: Template): { value: string; label: string }[] {
  return [...new Set([...UNITS[template.quantity], template.item.unit])].map((value) => ({ value, label: value }));
}

export function suggestedItem({ item, title }: Template): Answers {
  return {
    capacity: String(item.capacity), unit: item.unit, output_unit: item.outputUnit, resolution: plain(item.resolution),
    rated_output: item.ratedOutput === undefined ? '' : String(item.ratedOutput), standard: '', standard_capacity: '',
    sheet: sheetNameOf(title),
  };
}

/** A title as a name of a sheet; of a long one the part before the first comma, or as many whole words as fit. */
function sheetNameOf(title: string): string {
  const name = title.replace(/[\\/?*[\]:']/g, ' ');
  const short = name.length > 31 ? name.split(',')[0] : name;
  return short.length > 31 ? short.slice(0, 32).replace(/(\s(and|of|on|the|with|in|for))*\s\S*$/, '') : short.trim();
}

/** A small number without an exponent. */
function plain(value: number): string {
  return value < 1e-6 ? value.toFixed(12).replace(/0+$/, '') : String(value);
}

export function readItem(reader: AnswerReader, template: Template): ItemAnswers | undefined {
  const sheet = readSheetName(reader);
  const capacity = reader.number('capacity', { above: 0 });
  const unit = reader.choice('unit', unitChoices(template).map(({ value }) => value));
  const outputUnit = reader.text('output_unit', 12);
  const resolution = reader.number('resolution', { above: 0 });
  const ratedOutput = reader.number('rated_output', { above: 0, optional: true });
  const standardCapacity = reader.number('standard_capacity', { above: 0, optional: true });
  if (sheet === undefined || capacity === undefined || unit === undefined || outputUnit === undefined || resolution === undefined) return undefined;
  const standard = reader.typed('standard').slice(0, 80);
  return {
    sheet, capacity, unit, outputUnit, resolution, standardCapacity,
    ...(ratedOutput === undefined ? {} : { ratedOutput }), ...(standard === '' ? {} : { standard }),
  };
}

function readSheetName(reader: AnswerReader): string | undefined {
  const name = reader.text('sheet', 31);
  if (name === undefined || (SHEET_NAME.test(name) && name.toLowerCase() !== RESERVED)) return name;
  return reader.refuse('sheet', `Found “${name}”; expected a name without \\ / ? * [ ] : and apostrophes, other than “History”.`);
}

/** Refuses a standard that is not verified as far as the loads go; `what` says what goes there, like "the load is". */
export function checkStandard(reader: AnswerReader, { standardCapacity, unit }: ItemAnswers, greatest: number, what: string): void {
  const load = rounded(greatest);
  if (standardCapacity === undefined || load <= standardCapacity) return;
  reader.refuse('standard_capacity', `Found a standard verified up to ${standardCapacity} ${unit}; ${what} ${load} ${unit}, beyond it.`);
}

/** The item of a template as answered. */
export function changedItem({ capacity, unit, outputUnit, resolution, ratedOutput }: ItemAnswers): Template['item'] {
  return { capacity, unit, outputUnit, resolution, ...(ratedOutput === undefined ? {} : { ratedOutput }) };
}

/** The questions on the item, and those on standard and sheet, which come last. */
export function split(questions: readonly Question[]): [Question[], Question[]] {
  return [questions.filter(({ group }) => group === 'Item'), questions.filter(({ group }) => group !== 'Item')];
}

import { address, fixed } from '../planBuilder';
import type { SheetPlan, Validation } from '../plan';
import type { Template } from '../templateSchema';
import { type Desk, UPRIGHT_WIDTH } from './desk';
import type { ItemAnswers } from './itemForm';

const FIRST_LINE = 5;
const VALUE = 3;
const RIGHT_LABEL = 6;
const RIGHT_VALUE = 8;
export const DATE = 'yyyy-mm-dd';
const NUMBER = { kind: 'number' } as const;
const DAY = { kind: 'date' } as const;
const EXPECTATION = { number: 'a number', whole: 'a whole number', date: 'a date, like 2026-11-25', list: 'one of the list' };

/** A line of "Item and conditions". */
export interface ConditionLine {
  readonly label: string;
  /** The name that says what its cell holds, if anything reads it. */
  readonly name?: string;
  readonly value?: string | number;
  readonly format?: string;
  readonly rule?: Validation['rule'];
}

/** What stands above the readings. */
export interface OpenSheet {
  readonly nextRow: number;
  /** Address of a condition by the name of its cell. */
  readonly cell: (name: string) => string;
}

/** Title, item and conditions, cautions; gives the next free row. `more` stands left below what every sheet has, `beside` right. */
export function openSheet({ sheet, width, item }: Desk, template: Template, more: readonly ConditionLine[] = [], beside: readonly ConditionLine[] = []): OpenSheet {
  sheet.wide(1, 1, width, 'title', template.title);
  sheet.wide(1, 2, width, 'subtitle', template.purpose);
  sheet.wide(1, 3, width, 'note', `Source: ${template.source} Yellow cells are to type in; everything else computes.`);
  sheet.wide(1, 4, width, 'heading', 'Item and conditions');
  const { unit, outputUnit } = item;
  const isBench = template.kind === 'inspection' || template.kind === 'summing';
  const isHistory = template.kind === 'history';
  const left: ConditionLine[] = [
    { label: 'Customer', name: 'customer' }, { label: 'Item', name: 'item' }, { label: 'Identification', name: 'identification' },
    { label: `Capacity, ${unit}`, name: 'capacity', value: item.capacity, rule: NUMBER },
    ...(template.kind === 'indication' ? [] : [{ label: `Rated output, ${outputUnit}`, name: 'rated_output', value: item.ratedOutput, rule: NUMBER }]),
    { label: `Resolution, ${outputUnit}`, name: 'resolution', value: item.resolution, rule: NUMBER },
    ...(isHistory ? [] : [{ label: 'Condition as received', name: 'condition' }, { label: 'Indicator and cable' }]),
    ...(isBench || isHistory ? [] : [{ label: 'Machine and adapters' }, { label: 'Exercise loads' }]),
    ...more,
  ];
  const signed: ConditionLine[] = [{ label: 'Technician', name: 'technician' }, { label: 'Date', name: 'date', format: DATE, rule: DAY }];
  const right: ConditionLine[] = [...(isHistory ? [] : circumstances(template, item)), ...signed, ...beside];
  left.forEach((line, i) => conditionLine(sheet, line, 1, VALUE, RIGHT_LABEL - 1, FIRST_LINE + i));
  right.forEach((line, i) => conditionLine(sheet, line, RIGHT_LABEL, RIGHT_VALUE, width, FIRST_LINE + i));
  const row = FIRST_LINE + Math.max(left.length, right.length) + 1;
  template.cautions.forEach((caution, i) => sheet.wide(1, row + i, width, 'caution', caution));
  const places = new Map([...placesOf(left, VALUE), ...placesOf(right, RIGHT_VALUE)]);
  return {
    nextRow: row + template.cautions.length + (template.cautions.length > 0 ? 1 : 0),
    cell: (name) => {
      const found = places.get(name);
      if (found === undefined) throw new Error(`the sheet has no condition "${name}"`);
      return found;
    },
  };
}

/** What a measurement is made with and under. */
function circumstances({ kind, quantity }: Template, { unit, standard, standardCapacity }: ItemAnswers): ConditionLine[] {
  return [
    ...(kind === 'inspection' || kind === 'summing' ? [{ label: 'Instruments used' }] : [
      { label: quantity === 'signal' ? 'Simulator used' : 'Standard used', name: 'standard', value: standard },
      { label: `Verified up to, ${unit}`, name: 'standard_capacity', value: standardCapacity, rule: NUMBER },
      { label: 'Its uncertainty, k = 2', name: 'standard_uncertainty', format: '0.000%', rule: NUMBER },
    ]),
    { label: 'Due date', name: 'standard_due', format: DATE, rule: DAY },
    { label: 'Place', name: 'place' },
    { label: 'Room temperature, °C', name: 'temperature', format: '0.0', rule: NUMBER },
    { label: 'Reference temp., °C', name: 'reference_temperature', value: 23, format: '0.0', rule: NUMBER },
    { label: 'Humidity, %', name: 'humidity', format: '0', rule: NUMBER },
  ];
}

function placesOf(lines: readonly ConditionLine[], column: number): [string, string][] {
  return lines.flatMap(({ name }, i): [string, string][] => (name === undefined ? [] : [[name, fixed(column, FIRST_LINE + i)]]));
}

function conditionLine(sheet: Desk['sheet'], { label, name, value, format, rule }: ConditionLine, labelColumn: number, first: number, last: number, row: number): void {
  const at = address(first, row);
  sheet.put(labelColumn, row, labelColumn === RIGHT_LABEL ? 'aside' : 'label', label).wide(first, row, last - first + 1, 'input', value, format);
  if (name !== undefined) sheet.called(name, at);
  if (rule !== undefined) sheet.validate({ range: at, rule, message: `${label}: expected ${EXPECTATION[rule.kind]}.` });
}

const REMARK_ROWS = 3;

/** Decision rule, remarks and signatures below everything else; gives the finished plan. */
export function closeSheet({ sheet, width }: Desk, row: number, template: Pick<Template, 'decisionRule'>): SheetPlan {
  sheet.wide(1, row, width, 'heading', 'Decision rule, remarks, signatures');
  sheet.wide(1, row + 1, width, 'text', template.decisionRule);
  for (let i = 0; i < REMARK_ROWS; i += 1) {
    sheet.put(1, row + 2 + i, 'label', i === 0 ? 'Remarks' : undefined).wide(VALUE, row + 2 + i, width - VALUE + 1, 'input');
  }
  const signed = row + 2 + REMARK_ROWS + 1;
  ['Calibrated by', 'Reviewed by'].forEach((label, i) => {
    sheet.put(1, signed + i, 'label', label).wide(VALUE, signed + i, 3, 'input');
    sheet.put(RIGHT_LABEL, signed + i, 'aside', 'Date').wide(RIGHT_VALUE, signed + i, width - RIGHT_VALUE + 1, 'input', undefined, DATE);
  });
  const last = signed + 1;
  return sheet.plan(1, { locked: true, print: { area: `A1:${address(width, last)}`, landscape: width > UPRIGHT_WIDTH, repeatRows: [1, 1] } });
}

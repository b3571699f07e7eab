import type { Validation } from '../plan';
import { DATE } from '../planner/frame';
import type { JobFields, JobItem, JobStandard, Step } from './job';
import { CLASSES, DECISION_RULES, ITEM_DIRECTIONS } from './jobTerms';

/** A cell, a row or a column of the job sheet: what it is called, and what it may hold. */
export interface JobLine<Field extends string> {
  /** Ends its name on the sheet. */
  readonly field: Field;
  readonly label: string;
  readonly kind: 'words' | 'number' | 'date';
  readonly format?: string;
  readonly rule?: Validation['rule'];
}

const words = <F extends string>(field: F, label: string): JobLine<F> => ({ field, label, kind: 'words' });
const oneOf = <F extends string>(field: F, label: string, list: readonly string[]): JobLine<F> => ({ field, label, kind: 'words', rule: { kind: 'list', words: list } });
const date = <F extends string>(field: F, label: string): JobLine<F> => ({ field, label, kind: 'date', format: DATE, rule: { kind: 'date' } });
const number = <F extends string>(field: F, label: string, format?: string, least?: number, greatest?: number): JobLine<F> => ({
  field, label, kind: 'number', ...(format === undefined ? {} : { format }), rule: { kind: 'number', ...(least === undefined ? {} : { least }), ...(greatest === undefined ? {} : { greatest }) },
});

/** Said once for the whole job: who it is for. */
export const CUSTOMER_LINES: readonly JobLine<keyof JobFields>[] = [
  words('number', 'Job number'), words('laboratory', 'Laboratory'), words('laboratory_address', 'Its address'), words('customer', 'Customer'),
  words('customer_address', 'Its address'), words('order', 'Order'), words('place', 'Place'), words('procedure', 'Procedure'),
];

/** And what is asked. */
export const REQUIREMENT_LINES: readonly JobLine<keyof JobFields>[] = [
  number('tolerance', 'Tolerance, of output at capacity', '0.000%', 0, 1), oneOf('class', 'Class required', CLASSES), oneOf('decision_rule', 'Decision rule', DECISION_RULES),
  number('temperature_least', 'Room from, °C', '0.0'), number('temperature_greatest', 'Room to, °C', '0.0'),
  number('least_interval', 'Least interval, months', '0', 0), number('greatest_interval', 'Greatest interval, months', '0', 0),
];

/** Below everything else. */
export const REMARKS_LINE: JobLine<keyof JobFields> = words('remarks', 'Remarks');

/** What is said of each item, a row each. */
export const ITEM_LINES: readonly JobLine<Exclude<keyof JobItem, 'index' | 'way'>>[] = [
  words('name', 'Name within the job'), words('identification', 'Make, type, serial number'), oneOf('direction', 'Direction', ITEM_DIRECTIONS),
  number('capacity', 'Capacity', undefined, 0), words('unit', 'Unit of capacity'), words('output_unit', 'Unit of the readings'),
  number('resolution', 'Resolution, as read', undefined, 0), number('rated_output', 'Rated output', undefined, 0), words('standard', 'Standard, its id'),
  date('received', 'Received on'), words('condition', 'Condition as received'), date('last_calibrated', 'Last calibrated on'),
];

/** The steps that have a row. */
export type WayStep = Exclude<Step, 'received'>;

/** The steps of each item, a row each, and what is expected there. */
export const WAY_LINES: readonly { readonly step: WayStep; readonly label: string; readonly expected: string }[] = [
  { step: 'inspected', label: 'Inspected', expected: 'the inspection’s sheet, or words on what was seen' },
  { step: 'as_found', label: 'As found', expected: 'the run’s sheet' },
  { step: 'adjusted', label: 'Adjusted or repaired', expected: 'what was done, or “no adjustment made”' },
  { step: 'as_left', label: 'As left', expected: 'the run’s sheet' },
  { step: 'decided', label: 'Decided', expected: 'the decision, in words' },
  { step: 'certificate', label: 'Certificate', expected: 'the certificate’s sheet' },
  { step: 'reviewed', label: 'Reviewed', expected: 'the review’s sheet, or by whom and when' },
];

/** What is said of each standard, a column each. */
export const STANDARD_LINES: readonly JobLine<keyof JobStandard>[] = [
  words('id', 'Id'), words('description', 'Description'), number('verified_from', 'Verified from', undefined, 0), number('verified_to', 'Verified to', undefined, 0),
  words('unit', 'Unit'), number('uncertainty', 'Relative U, k = 2', '0.0000%', 0, 1), date('due', 'Due date'), words('certificate', 'Certificate, by whom'),
];

import type { Job, JobItem, JobStandard } from '../job/job';
import { DATE } from '../planner/frame';
import { joinedFrom, shownFrom } from './cellReference';
import { type CertificateDesk, type Field, fieldPairs, linked, paragraph, roomInPair, section, wideField } from './certificateDesk';
import type { CertifiedRun } from './certifiedRun';
import { percentFormat } from './digits';

/** What stands above the results. */
export interface HeadParts {
  readonly job: Job;
  readonly item: JobItem;
  readonly run: CertifiedRun;
  readonly standard: JobStandard | undefined;
  readonly number: string;
  /** Day of issue, as a spreadsheet counts days; undefined if it is to be typed. */
  readonly issued: number | undefined;
}

/** Who certifies, for whom, what, when and how, and by which standard. Gives the next free row. */
export function certificateHead(desk: CertificateDesk, parts: HeadParts): number {
  const { sheet, width } = desk;
  const { job: { fields, sheet: jobSheet }, number, issued } = parts;
  sheet.wide(1, 1, width, 'title', 'Calibration certificate');
  sheet.wide(1, 2, width, 'subtitle', joinedFrom(jobSheet, [fields.laboratory.at, fields.laboratory_address.at]));
  let row = fieldPairs(desk, 3, [[
    { label: 'Certificate number', content: number, called: 'certificate_number' },
    issued === undefined ? { label: 'Date of issue', content: undefined, format: DATE, typed: true, called: 'certificate_issued' } : { label: 'Date of issue', content: issued, format: DATE, called: 'certificate_issued' },
  ]]);
  if (issued === undefined) sheet.validate({ range: 'G3', rule: { kind: 'date' }, message: 'Expected the date of issue, like 2026-11-25.' });
  row = customerAndItem(desk, row, parts);
  row = procedure(desk, row, parts);
  return traceability(desk, row, parts);
}

function customerAndItem(desk: CertificateDesk, start: number, { job, item, run }: HeadParts): number {
  const { fields, sheet } = job;
  const day = { format: DATE };
  let row = section(desk, start, 'Customer and item');
  row = wideField(desk, row, { label: 'Customer', content: joinedFrom(sheet, [fields.customer.at, fields.customer_address.at]), words: words(fields.customer.value, fields.customer_address.value) });
  row = wideField(desk, row, { label: 'Item', content: joinedFrom(sheet, [item.name.at, item.identification.at]), words: words(item.name.value, item.identification.value), called: 'certificate_item' });
  const resolution = run.cells.cell('resolution');
  row = fieldPairs(desk, row, [
    [linked(`Capacity, ${item.unit.value ?? ''}`.replace(/, $/, ''), sheet, item.capacity.at), item.direction.value === undefined ? undefined : linked('Direction', sheet, item.direction.at)],
    [item.rated_output.value === undefined ? undefined : linked(`Rated output, ${run.outputUnit}`, sheet, item.rated_output.at), resolution && linked(`Resolution, ${run.outputUnit}`, run.name, resolution.at)],
    [linked('Date received', sheet, item.received.at, day), fields.order.value === undefined ? undefined : linked('Order', sheet, fields.order.at)],
  ].filter(([left, right]) => left || right) as [Field | undefined, Field | undefined][]);
  return wideField(desk, row, linked('Condition as received', sheet, item.condition.at, { words: item.condition.value ?? '' }));
}

function procedure(desk: CertificateDesk, start: number, { job, run }: HeadParts): number {
  const condition = (label: string, name: string, own = label, format?: string): Field | undefined => {
    const cell = run.condition(name, own);
    return cell && (cell.value !== null || name === 'temperature' || name === 'date') ? linked(label, run.name, cell.at, { format, ...(typeof cell.value === 'string' ? { words: cell.value } : {}) }) : undefined;
  };
  let row = section(desk, start, 'Calibration');
  row = wideField(desk, row, linked('Procedure', job.sheet, job.fields.procedure.at));
  const { source } = run;
  if (source !== undefined) row = wideField(desk, row, { label: 'It follows', content: source, words: source });
  const all = [
    condition('Date of calibration', 'date', 'Date', DATE), linked('Place', job.sheet, job.fields.place.at),
    condition('Room temperature, °C', 'temperature', 'Room temperature, °C', '0.0'), condition('Humidity, %', 'humidity', 'Humidity, %', '0'),
    condition('Machine, adapters', 'machine', 'Machine and adapters'), condition('Indicator, cable', 'indicator', 'Indicator and cable'),
    condition('Exercise loads', 'exercise', 'Exercise loads'), condition('Reference temp., °C', 'reference_temperature', 'Reference temp., °C', '0.0'),
  ].filter((field): field is Field => field !== undefined);
  const long = all.filter((field) => (field.words ?? '').length > roomInPair(desk));
  const found = all.filter((field) => !long.includes(field));
  row = fieldPairs(desk, row, found.flatMap((field, i): (readonly [Field, Field | undefined])[] => (i % 2 === 0 ? [[field, found[i + 1]]] : [])));
  return long.reduce((next, field) => wideField(desk, next, field), row);
}

function traceability(desk: CertificateDesk, start: number, { job, standard }: HeadParts): number {
  let row = section(desk, start, 'Traceability');
  if (!standard) return row;
  const { sheet } = job;
  const { unit, uncertainty } = standard;
  const of = unit.value === undefined ? '' : `, ${unit.value}`;
  row = wideField(desk, row, { label: 'Standard used', content: joinedFrom(sheet, [standard.id.at, standard.description.at]), words: words(standard.id.value, standard.description.value) });
  row = wideField(desk, row, linked('Its certificate', sheet, standard.certificate.at, { words: standard.certificate.value ?? '' }));
  row = fieldPairs(desk, row, [
    [{ label: 'Its uncertainty, k = 2', content: shownFrom(sheet, uncertainty.at), format: percentFormat(uncertainty.value ?? 0) }, linked('Calibrated until', sheet, standard.due.at, { format: DATE })],
    [linked(`Verified from${of}`, sheet, standard.verified_from.at), linked(`Verified to${of}`, sheet, standard.verified_to.at)],
  ]);
  return paragraph(desk, row, 'note', 'Through this standard and its certificate the results are traceable to the International System of Units (SI).');
}

function words(...parts: readonly (string | undefined)[]): string {
  return parts.filter((part) => part !== undefined && part !== '').join(', ');
}

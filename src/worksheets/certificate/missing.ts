import { described, emptyReadings, readingsThatAreNoNumbers } from '../check/completeness';
import { RunSheet } from '../check/runSheet';
import { dateText, serialOf } from '../check/serialDate';
import type { FilledCell } from '../filledSheet';
import { comparedOutcome } from '../job/decision';
import type { Job, JobCell, JobItem, Missing } from '../job/job';
import { NO_ADJUSTMENT } from '../job/jobTerms';
import { standardOf } from '../job/readJob';
import type { ReadSheet } from '../readSheet';
import { CertifiedRun } from './certifiedRun';

/** What a certificate is made from. */
export interface CertificateSources {
  readonly job: Job;
  readonly item: JobItem;
  /** The sheet of the run whose results are certified. */
  readonly run: ReadSheet;
  readonly comparison?: ReadSheet;
  /** The other sheets of the workbook, if they are at hand. */
  readonly sheets?: readonly ReadSheet[];
}

/**
 * What a certificate must state and is not there yet, each with the cell where it belongs: what ISO/IEC 17025:2017, 7.8.2 and 7.8.4
 * ask for (from memory), and that the results are complete and decided on. Empty if the certificate can be written.
 */
export function missingForCertificate(sources: CertificateSources): readonly Missing[] {
  const run = new CertifiedRun(sources.run);
  if (run.kind === undefined) {
    return [{ sheet: run.name, at: 'A1', message: `“${run.name}” holds no results that a certificate states; expected the sheet of a run, a system, an indicator or a force-proving instrument` }];
  }
  return [...ofJob(sources), ...ofStandard(sources, run), ...ofRun(run), ...ofResults(run), ...ofAdjustment(sources, run), ...ofDecision(sources, run)];
}

function ofJob({ job, item }: CertificateSources): Missing[] {
  const { fields, sheet } = job;
  const needed: readonly (readonly [JobCell, string, string])[] = [
    [fields.number, 'number of the job', 'its number'], [fields.laboratory, 'laboratory', 'its name'], [fields.laboratory_address, 'address of the laboratory', 'its address'],
    [fields.customer, 'customer', 'its name'], [fields.customer_address, 'address of the customer', 'its address'], [fields.place, 'place of calibration', 'where the runs are made'],
    [fields.procedure, 'procedure', 'the procedure used'],
    [item.identification, 'identification of the item', 'make, type and serial number'], [item.capacity, 'capacity of the item', 'a number'],
    [item.received, 'day on which the item was received', 'a date, like 2026-11-25'], [item.condition, 'condition as received', 'words on it'], [item.standard, 'standard used', 'its id, as in the table of standards'],
  ];
  return needed.filter(([{ value }]) => value === undefined).map(([{ at }, what, expected]) => empty(sheet, at, what, expected));
}

function ofStandard({ job, item }: CertificateSources, run: CertifiedRun): Missing[] {
  if (item.standard.value === undefined) return [];
  const { sheet } = job;
  const standard = standardOf(job, item);
  if (!standard) return [{ sheet, at: item.standard.at, message: `The standard “${item.standard.value}” of ${item.standard.at} is not in the table of standards; expected one of its ids` }];
  const { id } = standard;
  const needed: readonly (readonly [JobCell, string, string])[] = [
    [standard.certificate, `certificate of the standard ${id.value ?? ''}`, 'its number and who issued it'], [standard.uncertainty, `uncertainty of the standard ${id.value ?? ''}`, 'a relative expanded uncertainty, k = 2'],
    [standard.due, `day until which the standard ${id.value ?? ''} is calibrated`, 'a date, like 2026-11-25'],
  ];
  const day = serialOf(run.cells.cell('date')?.value);
  const due = standard.due.value;
  return [
    ...needed.filter(([{ value }]) => value === undefined).map(([{ at }, what, expected]) => empty(sheet, at, what, expected)),
    ...(due !== undefined && day !== undefined && day > due
      ? [{ sheet, at: standard.due.at, message: `The standard ${id.value ?? ''} was calibrated until ${dateText(due)} (${standard.due.at}), and the run is of ${dateText(day)}; expected a standard in calibration` }] : []),
  ];
}

function ofRun(run: CertifiedRun): Missing[] {
  const conditions: readonly (readonly [string, string, string, string])[] = [
    ['date', 'Date', 'day of the run', 'a date, like 2026-11-25'], ['technician', 'Technician', 'technician', 'the name of who calibrated'], ['temperature', 'Room temperature, °C', 'temperature of the room', 'a number, in °C'],
  ];
  return conditions.flatMap(([name, label, what, expected]): Missing[] => {
    const cell = run.condition(name, label);
    if (cell === undefined) return [{ sheet: run.name, at: 'A1', message: `The sheet has no cell for the ${what}; expected one` }];
    if (cell.value === null) return [empty(run.name, cell.at, what, expected)];
    const fits = name === 'date' ? serialOf(cell.value) !== undefined : name === 'temperature' ? typeof cell.value === 'number' : true;
    return fits ? [] : [wrong(run.name, cell, `The ${what}`, expected)];
  });
}

/** Readings that are not there, results that are errors, and an uncertainty that was not computed. */
function ofResults(run: CertifiedRun): Missing[] {
  const sheet = new RunSheet(run.sheet);
  const readings = [...emptyReadings(sheet), ...readingsThatAreNoNumbers(sheet)].map(({ at, message }): Missing => ({ sheet: run.name, at, message }));
  const errors = run.cells.namesAfter('value_').flatMap((id): Missing[] => {
    const cell = run.cells.cell(`value_${id}`);
    return cell && typeof cell.value === 'object' && cell.value !== null ? [wrong(run.name, cell, run.cells.labelOf(cell) ?? id, 'a result')] : [];
  });
  if (readings.length > 0) return [...readings, ...errors];
  const names = run.kind === 'proving' ? ['value_wc_greatest'] : run.blocks.map(({ ending }) => `value_expanded_output${ending}`);
  const uncertain = names.flatMap((name): Missing[] => {
    const cell = run.cells.cell(name);
    if (cell && cell.value !== null) return [];
    return [{ sheet: run.name, at: cell?.at ?? 'A1', message: `The uncertainty${cell ? ` in ${cell.at}` : ''} is not computed; expected U, from a budget with the uncertainty of the standard` }];
  });
  return [...errors, ...uncertain];
}

/** An item that was adjusted after the run: its results hold no longer. */
function ofAdjustment({ job, item, run: { name } }: CertificateSources, run: CertifiedRun): Missing[] {
  const { adjusted, as_left: left, as_found: found } = item.way;
  const words = adjusted.value?.trim().toLowerCase();
  const isFoundOnly = found.value === name && left.value !== name && !run.blocks.some(({ id }) => id.startsWith('as_left'));
  if (words === undefined || words === NO_ADJUSTMENT || words.startsWith('skipped') || !isFoundOnly) return [];
  return [{ sheet: job.sheet, at: left.at, message: `The item was adjusted (${adjusted.at}) after the run “${name}”; expected the run as left, whose results hold now` }];
}

function ofDecision({ job, item, run: own, comparison }: CertificateSources, run: CertifiedRun): Missing[] {
  const { sheet, fields } = job;
  const { decided } = item.way;
  const rule = fields.decision_rule;
  const others = run.cells.namesAfter('decision_rule').map((ending) => `decision_rule${ending}`).concat(run.cells.cell('decision_rule') ? ['decision_rule'] : []);
  return [
    ...(rule.value === undefined ? [empty(sheet, rule.at, 'decision rule', '“simple” or “guarded”')] : []),
    ...others.flatMap((name): Missing[] => {
      const cell = run.cells.cell(name);
      return cell && rule.value !== undefined && cell.value !== rule.value
        ? [{ sheet: run.name, at: cell.at, message: `The decision rule in ${cell.at} is ${described(cell.value)}; expected “${rule.value}”, as the job asks (${rule.at})` }] : [];
    }),
    ...(decided.value === undefined || decided.value.trim().toLowerCase().startsWith('skipped') ? [empty(sheet, decided.at, 'decision', 'the decision on the item, in words')] : []),
    ...againstComparison(sheet, decided, comparison, comparedOutcome(own, comparison)),
  ];
}

/** A decision in free words is taken at its first word: one that begins with "within" or "pass" fits no comparison that is outside. */
function againstComparison(sheet: string, decided: JobCell<string>, comparison: ReadSheet | undefined, outcome: string | undefined): Missing[] {
  if (outcome === undefined || !/^outside\b/i.test(outcome) || !/^(within|pass)/i.test(decided.value?.trim() ?? '')) return [];
  return [{ sheet, at: decided.at, message: `The decision in ${decided.at} is ${described(decided.value ?? null)}, and “${comparison?.name ?? ''}” says “${outcome}” of this run; expected a decision that says so, or other words` }];
}

function empty(sheet: string, at: string, what: string, expected: string): Missing {
  return { sheet, at, message: `The ${what} is not stated: ${at} is empty; expected ${expected}` };
}

function wrong(sheet: string, cell: FilledCell, what: string, expected: string): Missing {
  return { sheet, at: cell.at, message: `${what}: ${cell.at} holds ${described(cell.value)}; expected ${expected}` };
}

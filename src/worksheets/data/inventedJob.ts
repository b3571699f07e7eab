import { suggestedJob } from '../job/jobForm';
import { planJob } from '../job/planJob';
import type { Entry, SheetPlan } from '../plan';
import type { Answers } from '../question';

/** A job that was made up, for demonstration and tests only: two cells of a crane, with a tolerance of 0.1 % of output at capacity. */
export function inventedJob(): Answers {
  return {
    ...suggestedJob(),
    number: 'DEMO-2026-041', laboratory: 'Saltmarsh Force Bench (invented)', customer: 'Tidewater Crane Hire (invented)', tolerance: '0.1', class: 'A',
    decision_rule: 'simple', least_interval: '6', greatest_interval: '24', items: 'Cell A, Cell B', capacity: '20', unit: 'kN', output_unit: 'mV/V',
    resolution: '0.00001', rated_output: '2', standard: 'DEMO-STD-3', verified_from: '0.5', verified_to: '25', uncertainty: '0.02', due: '2027-01-13',
  };
}

type Told = Readonly<Record<string, string | number>>;

const FIELDS: Told = {
  laboratory_address: 'Bay 2, Saltmarsh (invented)', customer_address: 'Quay 5, Tidewater (invented)', order: 'DEMO-PO-77', place: 'Invented bench, bay 2',
  temperature_least: 18, temperature_greatest: 28, remarks: 'INVENTED JOB, for demonstration only.',
};

/** Of each item; dates as a spreadsheet counts days: received 2026-11-23, last calibrated 2025-11-20. */
const ITEMS: readonly Told[] = [
  { identification: 'Invented cell, DEMO-0017', direction: 'compression', received: 46_349, condition: 'clean, cable rubbed near the gland', last_calibrated: 45_981 },
  { identification: 'Invented cell, DEMO-0018', direction: 'compression', received: 46_349, condition: 'clean, nothing to be seen', last_calibrated: 45_981 },
];

/** Of the standard in the first row of the table. */
const STANDARD: Told = { description: 'Dead-weight frame', certificate: 'DEMO-C-204, Invented Metrology Office' };

/** What is typed on the sheet of the invented job beyond what its form asks. */
export function inventedJobEntries(plan: SheetPlan): readonly Entry[] {
  const first = (name: string, columns = 0): string => {
    const [, letter, row] = /^([A-Z])(\d+)/.exec(plan.names?.find((entry) => entry.name === name)?.range ?? '') as RegExpExecArray;
    return `${String.fromCharCode(letter.charCodeAt(0) + columns)}${row}`;
  };
  const entries = (prefix: string, told: Told, columns = 0): Entry[] => Object.entries(told).map(([field, value]) => ({ at: first(`${prefix}_${field}`, columns), value }));
  return [...entries('job', FIELDS), ...ITEMS.flatMap((told, i) => entries('item', told, i)), ...entries('standards', STANDARD)];
}

/** The sheet of the invented job with everything typed. */
export function inventedJobSheet(): SheetPlan {
  const { plan } = planJob(inventedJob());
  if (!plan) throw new Error('the invented job was refused');
  const entries = new Map(inventedJobEntries(plan).map(({ at, value }) => [at, value]));
  return { ...plan, cells: plan.cells.map((cell) => (entries.has(cell.at) ? { ...cell, value: entries.get(cell.at) ?? undefined } : cell)) };
}

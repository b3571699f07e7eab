/** Whole jobs with invented readings, computed, and the certificate of each. */
import { usedArea } from '../../office/printLayout';
import { addressOf, rangeOf } from '../../../src/hosts/address';
import { engineSheets } from '../../../src/hosts/file/engineSheets';
import { planCertificate, type PlannedCertificate } from '../../../src/worksheets/certificate/certificate';
import { planComparison } from '../../../src/worksheets/comparison/comparison';
import { withInventedReadings } from '../../../src/worksheets/data/inventedReadings';
import { inventedJobSheet } from '../../../src/worksheets/data/inventedJob';
import { answersForItem } from '../../../src/worksheets/job/answersForItem';
import type { Job, JobItem, Step } from '../../../src/worksheets/job/job';
import { linkedToJob } from '../../../src/worksheets/job/linkedToJob';
import { jobOf } from '../../../src/worksheets/job/readJob';
import { builtInTemplates } from '../../../src/worksheets/library';
import type { SheetPlan } from '../../../src/worksheets/plan';
import { planSheet } from '../../../src/worksheets/planner';
import type { Answers } from '../../../src/worksheets/question';
import type { ReadSheet, ReadValue } from '../../../src/worksheets/readSheet';
import { Engine } from '../../engine/bundle';

/** A job to be certified. */
export interface JobToCertify {
  readonly template: string;
  readonly answers?: Answers;
  /** True: adjusted, with a run as left and a comparison; the certificate is of the run as left. */
  readonly adjusted?: boolean;
  /** What the job asks beyond the invented one, by the names of its cells. */
  readonly asks?: Readonly<Record<string, string | number>>;
}

/** A computed job, and its certificate, computed too if it could be planned. */
export interface CertifiedJob {
  readonly plans: readonly SheetPlan[];
  readonly sheets: readonly ReadSheet[];
  readonly job: Job;
  readonly item: JobItem;
  readonly run: ReadSheet;
  readonly comparison?: ReadSheet;
  readonly certificate: PlannedCertificate;
  /** What a cell of a sheet holds. */
  readonly value: (sheet: string, at: string) => ReadValue;
}

export const NUMBER = 'DEMO-C-2026-117';
export const ISSUED = 46_353;

/** Job and sheets of its first item, from the receipt to the decision, then the certificate. */
export async function certifiedJob({ template: id, answers = {}, adjusted = false, asks = {} }: JobToCertify): Promise<CertifiedJob> {
  const template = builtInTemplates().find((candidate) => candidate.id === id)!;
  const started = filled(inventedJobSheet(), { job_procedure: template.title, ...template.quantity === 'torque' ? { item_direction: 'clockwise', item_unit: 'N·m', standards_unit: 'N·m' } : {}, ...asks });
  const job = jobOf(await read([started]))!;
  const [item] = job.items;
  const run = (step: Step) => linkedToJob(withInventedReadings(planSheet(template, { ...answersForItem(job, item, template, step), ...answers, sheet: `Cell A ${step.replace('_', ' ')}` }).plan!), job, item);
  const found = adjusted ? shifted(run('as_found'), 1.0009) : run('as_found');
  const left = adjusted ? run('as_left') : undefined;
  const way = { way_inspected: 'skipped: new cell', way_as_found: found.name, way_adjusted: adjusted || id === 'system' ? 'zero trimmed in the junction box, 12 kΩ across arm 2' : 'no adjustment made', ...(left ? { way_as_left: left.name } : {}), way_decided: 'pass: within the tolerance asked' };
  const base = [filled(started, way), found, ...(left ? [left] : [])];
  const sheets = await read(base);
  const known = jobOf(sheets)!;
  const last = sheets.find(({ name }) => name === (left ?? found).name)!;
  const compare = planComparison({ job: known, item: known.items[0], found: sheets.find(({ name }) => name === found.name)!, ...(left ? { left: last } : {}), name: 'Cell A comparison' }).plan;
  const plans = compare ? [...base, compare] : base;
  const computed = await read(plans);
  const comparison = compare && computed.find(({ name }) => name === compare.name);
  const certified = computed.find(({ name }) => name === last.name)!;
  const certificate = planCertificate({ job: known, item: known.items[0], run: certified, ...(comparison ? { comparison } : {}), sheets: computed, number: NUMBER, name: 'Cell A certificate', issued: ISSUED });
  const all = certificate.plan ? [...plans, certificate.plan] : plans;
  const everything = await read(all);
  const values = new Map(everything.map(({ name, cells }) => [name, new Map(cells.map((cell) => [cell.at, cell.value]))]));
  return {
    plans: all, sheets: everything, job: known, item: known.items[0], run: certified, ...(comparison ? { comparison } : {}), certificate,
    value: (sheet, at) => values.get(sheet)?.get(at) ?? null,
  };
}

/** A plan with constants in the first cells of names. */
export function filled(plan: SheetPlan, told: Readonly<Record<string, string | number | undefined>>): SheetPlan {
  const first = (name: string) => plan.names?.find((entry) => entry.name === name)?.range.split(':')[0];
  const values = new Map(Object.entries(told).map(([name, value]) => [first(name), value]));
  return { ...plan, cells: plan.cells.map((cell) => (values.has(cell.at) ? { ...cell, formula: undefined, value: values.get(cell.at) } : cell)) };
}

/** The same readings of a cell that gives a little more output. */
function shifted(plan: SheetPlan, factor: number): SheetPlan {
  const ranges = (plan.names ?? []).filter(({ name }) => name.startsWith('readings_')).map(({ range }) => rangeOf(range));
  const at = new Set(ranges.flatMap(({ startRow, endRow, startColumn, endColumn }) => Array.from({ length: endRow - startRow + 1 }, (_, i) => Array.from({ length: endColumn - startColumn + 1 }, (__, j) => addressOf({ row: startRow + i, column: startColumn + j }))).flat()));
  return { ...plan, cells: plan.cells.map((cell) => (at.has(cell.at) && typeof cell.value === 'number' ? { ...cell, value: Number((cell.value * factor).toFixed(5)) } : cell)) };
}

/** Sheets as they are read back once the engine of the page has computed them. */
export async function read(plans: readonly SheetPlan[]): Promise<ReadSheet[]> {
  const engine = new Engine(engineSheets(plans));
  try {
    await engine.calculate();
    return plans.map((plan) => {
      const matrix = engine.values(plan.name, usedArea(plan));
      const planned = new Map(plan.cells.map((cell) => [cell.at, cell]));
      const cells = matrix.flatMap((row, i) => row.flatMap((value, j) => {
        const at = addressOf({ row: i, column: j });
        const cell = planned.get(at);
        return value === null && cell?.formula === undefined ? [] : [{ at, value: value as ReadValue, ...(cell?.formula === undefined ? {} : { formula: cell.formula }), ...(cell?.format === undefined ? {} : { format: cell.format }) }];
      }));
      return { name: plan.name, cells, names: plan.names ?? [] };
    });
  } finally {
    engine.dispose();
  }
}

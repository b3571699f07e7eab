/** The review: silent on whole jobs, signed and issued, and finding seeded faults, each at its cell. */
import { issueCopy } from '../../src/hosts/file/issueCopy';
import { readWorkbook } from '../../src/hosts/file/readWorkbook';
import { writeWorkbook } from '../../src/hosts/file/writeWorkbook';
import { rebuilt } from '../../src/review/rebuilt';
import { review } from '../../src/review/review';
import type { FindingKind } from '../../src/review/reviewFinding';
import { ReviewedSheet } from '../../src/review/reviewedSheet';
import { jobOf } from '../../src/worksheets/job/readJob';
import type { SheetPlan } from '../../src/worksheets/plan';
import type { ReadSheet } from '../../src/worksheets/readSheet';
import { readySheets } from '../../src/worksheets/readySheets';
import { planRecord } from '../../src/worksheets/record/planRecord';
import { beside, cellOf, changed, LiveWorkbook, stale, typed, valueAt } from '../review/workbooks';
import { certifiedJob, type JobToCertify } from '../worksheets/certificate/certifiedJobs';

jest.setTimeout(300_000);

const TODAY = 46_360;
const SIGNATURE = { by: 'A. Nother (invented)', on: 46_354, version: 'test' };

/** A workbook as plans, as read from the grid's engine, from a file, and from its issue copy. */
interface Sample {
  readonly live: LiveWorkbook;
  readonly sheets: ReadSheet[];
  readonly file: ReadSheet[];
  readonly issued: ReadSheet[];
}

async function sampleOf(plans: readonly SheetPlan[]): Promise<Sample> {
  const live = await LiveWorkbook.of(plans);
  const bytes = await writeWorkbook(plans.map((plan) => ({ plan, values: live.values(plan.name) })));
  return { live, sheets: await live.read(), file: readWorkbook(bytes) as ReadSheet[], issued: readWorkbook(issueCopy(bytes)) as ReadSheet[] };
}

/** A whole job of one item, signed if asked. */
async function jobOfItem(of: JobToCertify, signed: boolean): Promise<Sample> {
  const { plans, sheets, certificate } = await certifiedJob(of);
  expect(certificate.missing).toEqual([]);
  return sampleOf(signed ? [...plans, planRecord(sheets, SIGNATURE)] : plans);
}

function findingsOf(sheets: readonly ReadSheet[]): string[] {
  return review(sheets, { today: TODAY }).findings.map(({ sheet, at, kind, message }) => `${kind} ${sheet}!${at}: ${message}`);
}

const JOBS: readonly (readonly [string, JobToCertify])[] = [
  ['five points, adjusted', { template: 'five-point', adjusted: true }], ['ten points, nothing adjusted', { template: 'ten-point-force' }],
  ['ISO 376', { template: 'iso-376' }], ['a system', { template: 'system', answers: { output_unit: 'kN', resolution: '0.001' } }],
  ['five points, adjusted, guarded', { template: 'five-point', adjusted: true, asks: { job_decision_rule: 'guarded', job_tolerance: 0.005 } }],
  ['two points, adjusted', { template: 'two-point', adjusted: true }],
];

test.each(JOBS)('a whole job, signed, gives no finding: from the grid, from a file, as an issue copy: %s', async (_, of) => {
  const { sheets, file, issued } = await jobOfItem(of, true);
  for (const read of [sheets, file, issued]) expect(findingsOf(read)).toEqual([]);
  expect(review(issued)).toMatchObject({ record: 'as signed', agreeing: review(sheets).recomputed });
  const job = jobOf(sheets);
  expect(sheets.filter((sheet) => !sheet.name.startsWith('Record') && !rebuilt(new ReviewedSheet(sheet), job, sheets))).toEqual([]);
});

/** What is wrong, and where the review must say so. */
interface Fault {
  readonly what: string;
  readonly kind: FindingKind;
  readonly sheet: string;
  /** The cell that a finding of the kind must name. */
  readonly at: string;
  readonly sheets: readonly ReadSheet[];
}

const LEFT = 'Cell A as left';
const FOUND = 'Cell A as found';
const COMPARED = 'Cell A comparison';
const CERTIFICATE = 'Cell A certificate';

/** Seeded faults, one each in a copy of a sound workbook: some recomputed as a program would, others in a stored file that nobody recomputed. */
async function faults(): Promise<Fault[]> {
  const list: Fault[] = [];
  const add = (what: string, kind: FindingKind, sheet: string, at: string, sheets: readonly ReadSheet[]) => { list.push({ what, kind, sheet, at, sheets }); };

  const single = async (id: string) => {
    const plan = readySheets().find((one) => one.id === id)!.filled;
    const live = await LiveWorkbook.of([plan]);
    const sheets = await live.read();
    return {
      live, sheets, name: plan.name,
      at: (name: string, row = 0, column = 0) => cellOf(sheets, plan.name, name, row, column),
      number: (at: string) => valueAt(sheets, plan.name, at) as number,
      edit: (at: string, change: Parameters<typeof changed>[3]) => changed(sheets, plan.name, at, change),
    };
  };

  const ten = await single('ten-point-force');
  const five = await single('five-point');
  const iso = await single('iso-376');
  const history = await single('history');
  const thermal = await single('thermal');
  const creep = await single('creep');
  const summing = await single('summing-box');
  const inspection = await single('receiving-inspection');
  const system = await single('system');

  // Stored values that are not what the readings give.
  const result = (of: typeof ten, what: string, at: string, change: Parameters<typeof stale>[0]) => add(what, 'result', of.name, at, of.edit(at, stale(change)));
  result(ten, 'coefficient A1, changed in its eighth digit', ten.at('value_a1'), (value) => value * (1 + 2e-8));
  result(five, 'non-linearity, a hundredth of its last shown digit', five.at('value_nonlinearity_tension'), (value) => value + 1e-7);
  result(iso, 'b of ISO 376, its last shown digit', iso.at('value_worst_b'), (value) => value - 1e-5);
  result(history, 'day on which the band meets the limit, a month later', history.at('value_limit_date'), (value) => value + 30);
  result(thermal, 'span effect, a thousandth less', thermal.at('value_span_effect'), (value) => value * 0.999);
  result(creep, 'creep, its sign turned', creep.at('value_creep'), (value) => -value);
  result(summing, 'change of the box, one step of the resolution', summing.at('value_box_change'), (value) => value + 1e-5);
  result(inspection, 'arm 2, a thousandth of an ohm', inspection.at('value_arm_2'), (value) => value + 1e-3);
  result(system, 'error of one point, made small', system.at('errors_as_found', 4), () => 0.001);
  result(ten, 'expanded uncertainty, a hundredth less', ten.at('value_expanded'), (value) => value * 0.99);
  result(ten, 'load from which class A holds, a little lower', ten.at('value_class_a'), (value) => value * 0.98);
  const [reading, net] = [five.at('readings_tension', 4, 1), five.at('net_tension', 4, 1)];
  add('last digit of a reading in a file that was not recomputed', 'result', five.name, net, five.edit(reading, stale((value) => value + 1e-5)));
  const rotated = iso.at('readings_rotated', 6, 0);
  add('a reading of X3, half a percent off, not recomputed', 'result', iso.name, iso.at('net_rotated', 6, 0), iso.edit(rotated, stale((value) => value * 1.005)));

  // Plain formulas.
  const plain = five.at('plain_hysteresis_compression');
  add('plain value that differs in its sixth digit', 'plain check', five.name, five.at('value_hysteresis_compression'), five.edit(plain, stale((value) => value + 1e-7)));
  add('plain formula replaced by the value of the function', 'overwritten', five.name, plain, five.edit(plain, typed()));

  // Formulas overwritten.
  const over = (of: typeof ten, what: string, at: string, value?: number | string) => add(what, 'overwritten', of.name, at, of.edit(at, typed(value)));
  over(five, 'mean of a row, by the same number', five.at('mean_tension', 3));
  over(ten, 'residual standard deviation, by the same number', ten.at('value_residual_sd'));
  over(five, 'verdict, by the word it said', five.at('verdict_nonlinearity_tension'));
  over(thermal, 'outcome for the customer, by words', thermal.at('verdict_overall'), 'within specification in all 8 judged');
  over(system, 'error of a point, by the same number', system.at('errors_as_left', 3));
  over(ten, 'contribution to the uncertainty, by nought', ten.at('components_compression', 0), 0);
  over(inspection, 'expected resistance between corners, by the measured one', beside(inspection.at('corners', 1), 2), 262.51);
  const linearity = five.at('value_nonlinearity_tension');
  add('non-linearity from another line', 'overwritten', five.name, linearity, five.edit(linearity, ({ formula }) => ({ formula: formula!.replace('))', ',"bestfit"))') })));
  const loads = five.at('forces_compression', 2);
  add('applied force, another number', 'overwritten', five.name, loads, five.edit(loads, stale((value) => value * 1.01)));

  // Limits against the template.
  const limit = async (of: typeof ten, what: string, at: string, value: number | null) => add(what, 'limit', of.name, at, await of.live.withEdits([[of.name, at, value]]));
  await limit(five, 'limit of non-linearity, 0.05 % to 0.06 %', five.at('limit_nonlinearity'), 0.0006);
  await limit(ten, 'load from which class A must hold, higher', ten.at('limit_class_a_from'), ten.number(ten.at('limit_class_a_from')) * 1.5);
  await limit(creep, 'limit of creep, taken away', creep.at('limit_creep'), null);
  await limit(inspection, 'tolerance of a corner, doubled', beside(inspection.at('corners', 2), 4), 0.02);
  await limit(system, 'tolerance of one point, a tenth wider', system.at('tolerances_as_left', 5), system.number(system.at('tolerances_as_left', 5)) * 1.1);
  const classRow = Number(/\d+/.exec(iso.sheets[0].cells.find(({ at, value }) => /^A\d+$/.test(at) && value === 'class 1')!.at)![0]);
  await limit(iso, 'limit of b in class 1, that of class 2', `B${classRow}`, 0.004);

  // Digits that hide a failure: the limit a little below the value, so that both look alike in fewer digits.
  const tight = five.number(linearity) === 0 ? 1e-4 : Math.abs(five.number(linearity)) * 0.98;
  const failing = await five.live.withEdits([[five.name, five.at('limit_nonlinearity'), tight]]);
  expect(findingsOf(failing)).toEqual([]);
  const coarse = changed(changed(failing, five.name, linearity, () => ({ format: '0.00%' })), five.name, five.at('limit_nonlinearity'), () => ({ format: '0.00%' }));
  add('number formats in which value and limit look alike', 'rounding', five.name, linearity, coarse);
  const rounded = changed(changed(failing, five.name, linearity, ({ formula, value }) => ({ formula: `=ROUND(${formula!.slice(1)},3)`, value: Number((value as number).toFixed(3)) })), five.name, five.at('verdict_nonlinearity_tension'), () => ({ value: 'within' }));
  add('a rounded formula, and a verdict on what it gives', 'rounding', five.name, linearity, rounded);
  add('the same, in its verdict', 'result', five.name, five.at('verdict_nonlinearity_tension'), rounded);

  // A whole job, not signed.
  const { sheets, live } = await jobOfItem({ template: 'five-point', adjusted: true }, false);
  const at = (sheet: string, name: string, row = 0, column = 0) => cellOf(sheets, sheet, name, row, column);
  const job = (what: string, kind: FindingKind, sheet: string, where: string, edited: readonly ReadSheet[]) => add(what, kind, sheet, where, edited);
  const due = at('Job', 'standards_due');
  job('standard due a day before the run', 'standard', LEFT, at(LEFT, 'date'), await live.withEdits([['Job', due, (valueAt(sheets, LEFT, at(LEFT, 'date')) as number) - 1]]));
  job('standard verified to less than the greatest load', 'standard', LEFT, at(LEFT, 'forces_compression', 5), await live.withEdits([['Job', at('Job', 'standards_verified_to'), 19.9]]));
  job('standard verified from more than the lowest load', 'standard', LEFT, at(LEFT, 'forces_compression', 1), await live.withEdits([['Job', at('Job', 'standards_verified_from'), 4.5]]));
  job('a standard that is not in the table', 'standard', LEFT, at(LEFT, 'standard'), await live.withEdits([[LEFT, at(LEFT, 'standard'), 'DEMO-STD-9']]));
  job('a standard verified in another unit', 'standard', LEFT, at(LEFT, 'forces_compression', 1), await live.withEdits([['Job', at('Job', 'standards_unit'), 'kgf']]));
  job('an uncertainty better than that of the standard', 'standard', LEFT, at(LEFT, 'standard_uncertainty'), await live.withEdits([[LEFT, at(LEFT, 'standard_uncertainty'), 0.0001]]));
  job('room warmer than the job allows', 'limit', LEFT, at(LEFT, 'temperature'), await live.withEdits([[LEFT, at(LEFT, 'temperature'), 28.5]]));
  job('rated output typed over the reference to the job', 'overwritten', LEFT, at(LEFT, 'rated_output'), await live.withEdits([[LEFT, at(LEFT, 'rated_output'), 2.001]]));
  const foundCell = at(COMPARED, 'found_compression', 3);
  job('comparison: output as found typed in', 'overwritten', COMPARED, foundCell, changed(sheets, COMPARED, foundCell, typed()));
  const tolerance = sheets.find(({ name }) => name === COMPARED)!.cells.find(({ at: one }) => one === at(COMPARED, 'tolerance'))!.at;
  job('comparison: tolerance typed over that of the job', 'overwritten', COMPARED, tolerance, changed(sheets, COMPARED, tolerance, typed(0.0015)));
  const shown = at(CERTIFICATE, 'shown_hysteresis');
  job('certificate: a result typed in', 'overwritten', CERTIFICATE, shown, changed(sheets, CERTIFICATE, shown, typed()));
  job('certificate: a stored value other than that of the run', 'result', CERTIFICATE, shown, changed(sheets, CERTIFICATE, shown, stale((value) => value * 0.9)));
  const point = at(CERTIFICATE, 'shown_mean_compression', 2);
  job('certificate: a point shown from another row', 'overwritten', CERTIFICATE, point, changed(sheets, CERTIFICATE, point, ({ formula }) => ({ formula: formula!.replace(/\$(\d+)/g, (_, row) => `$${Number(row) + 1}`) })));
  const left = at(LEFT, 'readings_compression', 3, 0);
  const last = valueAt(sheets, LEFT, left) as number;
  job('certificate: fingerprint of other readings, a last digit', 'record', CERTIFICATE, at(CERTIFICATE, 'certificate_fingerprint'), await live.withEdits([[LEFT, left, Number((last + 1e-5).toFixed(5))]]));

  // The same under a guarded rule: a point that keeps the tolerance but not what U leaves of it, and one that nothing can judge.
  const guarded = await jobOfItem({ template: 'five-point', adjusted: true, asks: { job_decision_rule: 'guarded', job_tolerance: 0.005 } }, false);
  const deviation = Math.abs(valueAt(guarded.sheets, COMPARED, at(COMPARED, 'deviation_left_compression', 3)) as number);
  const expanded = valueAt(guarded.sheets, COMPARED, at(COMPARED, 'expanded_after_compression')) as number;
  const [narrowed, after] = [await guarded.live.withEdits([['Job', at('Job', 'job_tolerance'), deviation + expanded / 2]]), at(COMPARED, 'after_compression', 3)];
  job('comparison: within the tolerance, but not by U as the rule asks', 'result', COMPARED, after, changed(narrowed, COMPARED, after, () => ({ value: 'within' })));
  job('comparison: judged under the rule guarded without U', 'result', COMPARED, after, changed(guarded.sheets, COMPARED, at(COMPARED, 'expanded_after_compression'), () => ({ value: '' })));
  const allowed = at(COMPARED, 'accepted_after_compression');
  job('comparison: limit of acceptance typed in', 'overwritten', COMPARED, allowed, changed(guarded.sheets, COMPARED, allowed, typed()));

  // The same job, signed; everything is recomputed after the change.
  const signed = await jobOfItem({ template: 'five-point', adjusted: true }, true);
  const edit = (what: string, kind: FindingKind, sheet: string, where: string, value: number | string | null) => signed.live.withEdits([[sheet, where, value]]).then((edited) => add(what, kind, sheet, where, edited));
  await edit('after signing: last digit of a reading', 'reading', LEFT, left, Number((last + 1e-5).toFixed(5)));
  await edit('after signing: a reading deleted', 'reading', FOUND, at(FOUND, 'readings_compression', 6, 1), null);
  await edit('after signing: a limit, narrower', 'limit', LEFT, at(LEFT, 'limit_hysteresis'), 0.00049);
  await edit('after signing: tolerance of the job, 0.1 % to 0.12 %', 'limit', 'Job', at('Job', 'job_tolerance'), 0.0012);
  await edit('after signing: name of the technician', 'changed', LEFT, at(LEFT, 'technician'), 'B. Nother (invented)');
  const up = changed(signed.sheets, LEFT, at(LEFT, 'value_repeatability'), ({ formula }) => ({ formula: `=0+${formula!.slice(1)}` }));
  add('after signing: a formula changed that gives the same', 'overwritten', LEFT, at(LEFT, 'value_repeatability'), up);
  add('after signing: the run as found taken away', 'changed', FOUND, 'A1', signed.sheets.filter(({ name }) => name !== FOUND));
  const ledger = signed.sheets.find(({ name }) => name === 'Record')!.cells.find(({ value }) => value === String(last))!.at;
  add('a line of the record changed', 'record', 'Record', 'A1', changed(signed.sheets, 'Record', ledger, typed(String(last + 1e-5))));

  // Its issue copy.
  add('issue copy: a reading', 'reading', LEFT, left, changed(signed.issued, LEFT, left, stale((value) => value + 1e-5)));
  const value = at(LEFT, 'value_combined_error');
  add('issue copy: a result that is a value there', 'overwritten', LEFT, value, changed(signed.issued, LEFT, value, stale((one) => one * 0.95)));
  const verdict = at(LEFT, 'verdict_overall');
  add('issue copy: a plain formula typed over', 'overwritten', LEFT, verdict, changed(signed.issued, LEFT, verdict, typed()));
  return list;
}

test('every seeded fault is found, at its cell', async () => {
  const seeded = await faults();
  expect(seeded.length).toBeGreaterThanOrEqual(40);
  expect(new Set(seeded.map(({ what }) => what)).size).toBe(seeded.length);
  const missed = seeded.flatMap(({ what, kind, sheet, at, sheets }) => {
    const { findings } = review(sheets, { today: TODAY });
    const hit = findings.find((one) => one.kind === kind && one.sheet === sheet && one.at === at);
    if (hit && (hit.message.includes(at) || kind === 'record' || at === 'A1')) return [];
    return [`${what}: expected ${kind} at ${sheet}!${at}; found ${findings.map((one) => `${one.kind} ${one.sheet}!${one.at} ${one.message}`).join(' | ') || 'nothing'}`];
  });
  expect(missed).toEqual([]);
});

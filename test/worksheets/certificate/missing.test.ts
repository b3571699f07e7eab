import { planCertificate } from '../../../src/worksheets/certificate/certificate';
import { missingForCertificate } from '../../../src/worksheets/certificate/missing';
import { inventedJobSheet } from '../../../src/worksheets/data/inventedJob';
import type { Entry } from '../../../src/worksheets/plan';
import type { ReadValue } from '../../../src/worksheets/readSheet';
import { cellOf, job } from '../job/jobSheets';
import { SampleSheet } from '../sampleSheet';

const sheet = inventedJobSheet();
const at = (name: string, columns = 0) => cellOf(sheet, name, columns);
const DECIDED: readonly Entry[] = [
  { at: at('job_procedure'), value: 'Two points' }, { at: at('way_as_found'), value: 'Sample' }, { at: at('way_adjusted'), value: 'no adjustment made' }, { at: at('way_decided'), value: 'pass' },
];

/** A run of two points with what a certificate reads; a value of null empties a condition. */
function run(told: Readonly<Record<string, ReadValue>> = {}): SampleSheet {
  const held: Record<string, ReadValue> = { date: 46_351, technician: 'A. Nother (invented)', temperature: 22.8, needed_tension: 3, value_expanded: 0.0002, value_expanded_output: 0.0004, value_coverage_factor: 2, ...told };
  const made = new SampleSheet().range('forces_tension', 1, 20, [[0], [20], [0]]).range('readings_tension', 2, 20, [[0.0123], [2.0124], ['last' in told ? null : 0.0124]])
    .range('mean_tension', 3, 20, [[0], [2.0001], [0.0001]]);
  Object.entries(held).forEach(([name, value], i) => made.single(name, `H${2 + i}`, value));
  return made;
}

function missing(entries: readonly Entry[] = [], told: Readonly<Record<string, ReadValue>> = {}) {
  const known = job([...DECIDED, ...entries]);
  return missingForCertificate({ job: known, item: known.items[0], run: run(told).read() });
}

describe('a decision beside the comparison of its run', () => {
  const against = (words: string, outcome: string, left = 'no adjustment made') => {
    const known = job([...DECIDED, { at: at('way_decided'), value: words }]);
    const comparison = { ...new SampleSheet().single('comparison_found', 'D1', 'Sample').single('comparison_left', 'D2', left).single('outcome_after', 'D3', outcome).read(), name: 'Compared' };
    return missingForCertificate({ job: known, item: known.items[0], run: run().read(), comparison });
  };

  test.each(['within specification in all 5 judged', 'Within the tolerance', 'pass', ' passed'])('that is outside is named where it says “%s”', (words) => {
    expect(against(words, 'outside in 2 of 12 judged')).toEqual([{ sheet: 'Job', at: at('way_decided'), message: expect.stringContaining('“Compared” says “outside in 2 of 12 judged” of this run') as string }]);
  });

  test('is taken where the two agree, in other words, and of another run', () => {
    expect(against('outside the tolerance in 2 of 12 points', 'outside in 2 of 12 judged')).toEqual([]);
    expect(against('limited to 10 kN', 'outside in 2 of 12 judged')).toEqual([]);
    expect(against('pass', 'within specification in all 12 judged')).toEqual([]);
    expect(against('pass', 'outside in 2 of 12 judged', 'Another run')).toEqual([]);
  });
});

test('a job that is decided and a run that is complete miss nothing', () => {
  expect(missing()).toEqual([]);
});

test.each([
  ['job_laboratory', 'laboratory'], ['job_laboratory_address', 'address of the laboratory'], ['job_customer', 'customer'], ['job_customer_address', 'address of the customer'], ['job_place', 'place of calibration'],
  ['job_number', 'number of the job'], ['job_procedure', 'procedure'], ['job_decision_rule', 'decision rule'], ['item_identification', 'identification of the item'], ['item_received', 'day on which the item was received'],
  ['item_condition', 'condition as received'], ['item_standard', 'standard used'], ['way_decided', 'decision'], ['standards_certificate', 'certificate of the standard DEMO-STD-3'],
  ['standards_uncertainty', 'uncertainty of the standard DEMO-STD-3'], ['standards_due', 'day until which the standard DEMO-STD-3 is calibrated'],
])('%s left empty stops the certificate, by its cell', (name, what) => {
  const cell = at(name);
  const found = missing([{ at: cell, value: null }]);
  expect(found).toEqual([{ sheet: 'Job', at: cell, message: expect.stringContaining(`The ${what} is not stated: ${cell} is empty; expected `) as string }]);
});

test.each([['date', 'day of the run'], ['technician', 'technician'], ['temperature', 'temperature of the room']])('the %s of the run left empty stops the certificate', (name, what) => {
  expect(missing([], { [name]: null })).toEqual([{ sheet: 'Sample', at: expect.stringMatching(/^H\d+$/) as string, message: expect.stringContaining(what) as string }]);
});

test('a temperature in words is named with what stands there', () => {
  expect(missing([], { temperature: 'warm' })[0].message).toMatch(/H4 holds the text “warm”; expected a number, in °C/);
});

test('a standard that was overdue on the day of the run counts as missing, on its last day it does not', () => {
  const due = at('standards_due');
  expect(missing([{ at: due, value: 46_350 }])).toEqual([{ sheet: 'Job', at: due, message: `The standard DEMO-STD-3 was calibrated until 2026-11-24 (${due}), and the run is of 2026-11-25; expected a standard in calibration` }]);
  expect(missing([{ at: due, value: 46_351 }])).toEqual([]);
});

test('a standard that the table does not hold is named', () => {
  expect(missing([{ at: at('item_standard'), value: 'DEMO-STD-9' }])[0].message).toContain('The standard “DEMO-STD-9”');
});

test('an empty reading stops the certificate before its uncertainty is asked for', () => {
  expect(missing([], { last: 0, value_expanded_output: null }).map(({ at: cell }) => cell)).toEqual(['B22']);
});

test('an uncertainty that is not computed, and a result that is an error, are named', () => {
  expect(missing([], { value_expanded_output: null })[0].message).toMatch(/uncertainty in H7 is not computed/);
  expect(missing([], { value_expanded: { error: '#N/A' } })[0].message).toMatch(/H6 holds the error #N\/A; expected a result/);
});

test('a run as found of an item that was adjusted afterwards is refused', () => {
  expect(missing([{ at: at('way_adjusted'), value: 'zero trimmed' }])).toEqual([{ sheet: 'Job', at: at('way_as_left'), message: expect.stringContaining('expected the run as left') as string }]);
  expect(missing([{ at: at('way_adjusted'), value: 'zero trimmed' }, { at: at('way_as_left'), value: 'Sample' }])).toEqual([]);
});

test('a decision that was skipped, and a rule other than the job’s, are named', () => {
  expect(missing([{ at: at('way_decided'), value: 'skipped: no time' }])).toHaveLength(1);
  expect(missing([], { decision_rule: 'guarded' })[0].message).toMatch(/The decision rule in H9 is the text “guarded”; expected “simple”/);
});

test('a sheet without results of a run is refused in words', () => {
  const known = job(DECIDED);
  const inspection = new SampleSheet().single('value_arm_1', 'D5', 350).read();
  expect(missingForCertificate({ job: known, item: known.items[0], run: inspection })).toEqual([{ sheet: 'Sample', at: 'A1', message: expect.stringContaining('holds no results that a certificate states') as string }]);
});

test('a certificate needs a number, and a name of its own', () => {
  const known = job(DECIDED);
  const parts = { job: known, item: known.items[0], run: run().read(), number: 'C-1', name: 'Certificate' };
  expect(planCertificate(parts).plan?.name).toBe('Certificate');
  expect(planCertificate({ ...parts, number: ' ' }).missing[0].message).toContain('has no number');
  expect(planCertificate({ ...parts, name: 'Sample' }).plan).toBeUndefined();
  expect(planCertificate({ ...parts, name: 'a/b' }).missing[0].message).toContain('“a/b”');
});

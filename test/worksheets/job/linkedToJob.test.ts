import { inventedJobSheet } from '../../../src/worksheets/data/inventedJob';
import { answersForItem } from '../../../src/worksheets/job/answersForItem';
import { linkedToJob } from '../../../src/worksheets/job/linkedToJob';
import { builtInTemplates } from '../../../src/worksheets/library';
import type { Entry, SheetPlan } from '../../../src/worksheets/plan';
import { planSheet, questions, suggestedAnswers } from '../../../src/worksheets/planner';
import type { Answers } from '../../../src/worksheets/question';
import { cellOf, firstItem, job, template } from './jobSheets';

const sheet = inventedJobSheet();

function answers(id: string, entries: readonly Entry[] = [], step?: 'inspected' | 'as_found' | 'as_left') {
  const own = job(entries);
  return answersForItem(own, firstItem(own), template(id), step);
}

function linked(id: string, change: Answers = {}, entries: readonly Entry[] = []): SheetPlan {
  const own = job(entries);
  const { plan, problems } = planSheet(template(id), { ...answersForItem(own, firstItem(own), template(id)), ...change });
  if (!plan) throw new Error(JSON.stringify(problems));
  return linkedToJob(plan, own, firstItem(own));
}

/** What stands in the cell of a name. */
function held(plan: SheetPlan, name: string) {
  const { role, value, formula } = plan.cells.find(({ at }) => at === cellOf(plan, name))!;
  return formula ?? `${role} ${value ?? ''}`.trim();
}

const shows = (name: string, columns = 0) => {
  const at = cellOf(sheet, name, columns).replace(/([A-Z]+)(\d+)/, '$$$1$$$2');
  return `=IF('Job'!${at}="","",'Job'!${at})`;
};

describe('answers for an item', () => {
  test('what the job says takes the place of what the template suggests', () => {
    expect(answers('ten-point-force', [{ at: cellOf(sheet, 'item_capacity'), value: 12.5 }], 'as_found')).toEqual({
      ...suggestedAnswers(template('ten-point-force')), capacity: '12.5', unit: 'kN', output_unit: 'mV/V', resolution: '0.00001', rated_output: '2',
      standard: 'DEMO-STD-3', standard_capacity: '25', directions: 'compression', sheet: 'Cell A as found',
    });
  });

  test('both directions are the pair of the procedure’s quantity', () => {
    const both = [{ at: cellOf(sheet, 'item_direction'), value: 'both' }];
    expect(answers('ten-point-force', both).directions).toBe('tension, compression');
    expect(answers('ten-point-torque', both).directions).toBe('clockwise, counter-clockwise');
    expect(answers('creep', both).direction).toBe(suggestedAnswers(template('creep')).direction);
  });

  test('a rated output that nobody specified is not suggested', () => {
    expect(answers('ten-point-force', [{ at: cellOf(sheet, 'item_rated_output'), value: null }]).rated_output).toBe('');
  });

  test('a standard verified in another unit gives no greatest value', () => {
    expect(answers('ten-point-force', [{ at: cellOf(sheet, 'standards_unit'), value: 'lbf' }])).toMatchObject({ standard: 'DEMO-STD-3', standard_capacity: '' });
  });

  test('tolerance, class and intervals go where a template asks for them', () => {
    expect(answers('system')).toMatchObject({ tolerance_reading: '0', tolerance_capacity: '0.1' });
    expect(answers('history')).toMatchObject({ class: 'A', least_interval: '6', greatest_interval: '24' });
    expect(answers('iso-376', [{ at: cellOf(sheet, 'job_class'), value: '0.5' }]).class_wanted).toBe('0.5');
    expect(answers('iso-376').class_wanted).toBe(suggestedAnswers(template('iso-376')).class_wanted);
  });

  test('a transducer is not taken for the indicator of a simulator', () => {
    expect(answers('indicator-simulator')).toMatchObject({ capacity: suggestedAnswers(template('indicator-simulator')).capacity, unit: 'mV/V' });
  });

  test('a long name is cut so that the word for the step still stands', () => {
    const long = [{ at: cellOf(sheet, 'item_name'), value: 'Quay crane: the left cell of four' }];
    expect(answers('ten-point-force', long, 'as_left').sheet).toBe('Quay crane the left cel as left');
    expect(answers('receiving-inspection', long).sheet.length).toBeLessThanOrEqual(31);
  });

  test.each(builtInTemplates().map((own) => [own.id, own] as const))('%s: only what it asks is answered', (_, own) => {
    const given = answersForItem(job(), firstItem(), own);
    expect(Object.keys(given).sort()).toEqual(Object.keys(suggestedAnswers(own)).sort());
    expect(questions(own, given).map(({ id }) => id).filter((id) => given[id] === undefined)).toEqual([]);
  });
});

describe('a run linked to the job', () => {
  test('what the job knows is read from it, and can no longer be typed over', () => {
    const plan = linked('ten-point-force');
    const known = ['customer', 'item', 'identification', 'capacity', 'resolution', 'rated_output', 'place', 'condition', 'standard', 'standard_capacity', 'standard_uncertainty', 'standard_due'];
    expect(known.map((name) => held(plan, name))).toEqual([
      shows('job_customer'), shows('item_name'), shows('item_identification'), shows('item_capacity'), shows('item_resolution'), shows('item_rated_output'), shows('job_place'),
      shows('item_condition'), shows('standards_id'), shows('standards_verified_to'), shows('standards_uncertainty'), shows('standards_due'),
    ]);
    const cells = known.map((name) => cellOf(plan, name));
    expect(plan.cells.filter(({ at, role }) => cells.includes(at) && role === 'input')).toEqual([]);
    expect(plan.validations!.filter(({ range }) => cells.includes(range))).toEqual([]);
    expect(plan.validations!.length).toBeGreaterThan(0);
  });

  test('what belongs to the run stays to be typed', () => {
    const plan = linked('ten-point-force');
    expect(['temperature', 'humidity', 'date', 'technician'].map((name) => held(plan, name))).toEqual(['input', 'input', 'input', 'input']);
  });

  test('the second item is read from its own column', () => {
    const own = job();
    const { plan } = planSheet(template('two-point'), answersForItem(own, own.items[1], template('two-point')));
    expect(held(linkedToJob(plan!, own, own.items[1]), 'capacity')).toBe(shows('item_capacity', 1));
  });

  test('what was answered otherwise for this sheet stays as answered', () => {
    const plan = linked('ten-point-force', { capacity: '10', standard: 'borrowed' });
    expect(['capacity', 'standard', 'standard_capacity', 'standard_uncertainty', 'standard_due'].map((name) => held(plan, name))).toEqual(['input 10', 'input borrowed', 'input 25', 'input', 'input']);
  });

  test('another standard of the table is referred to by its own row', () => {
    const plan = linked('two-point', { standard: 'demo-std-4', standard_capacity: '' }, [{ at: cellOf(sheet, 'standards_id').replace(/\d+/, (row) => String(Number(row) + 1)), value: 'DEMO-STD-4' }]);
    const second = shows('standards_due').replace(/\$(\d+)/g, (_, row) => `$${Number(row) + 1}`);
    expect(held(plan, 'standard_due')).toBe(second);
  });

  test('a number in another unit than the sheet’s is not read', () => {
    const plan = linked('two-point', { unit: 'N', capacity: '20', standard_capacity: '' });
    expect(['capacity', 'standard_capacity', 'standard_due'].map((name) => held(plan, name))).toEqual(['input 20', 'input', shows('standards_due')]);
  });

  test('the rule of decision and the tolerance of capacity are the job’s', () => {
    const plan = linked('system', { output_unit: 'kN' });
    expect([held(plan, 'tolerance_capacity'), held(plan, 'decision_rule_as_found'), held(plan, 'decision_rule_as_left')]).toEqual([shows('job_tolerance'), shows('job_decision_rule'), shows('job_decision_rule')]);
  });

  test('the due date of an inspection’s instruments is not the standard’s', () => {
    const plan = linked('receiving-inspection');
    expect([held(plan, 'standard_due'), held(plan, 'customer')]).toEqual(['input', shows('job_customer')]);
  });

  test('linking again changes nothing', () => {
    const plan = linked('ten-point-force');
    expect(linkedToJob(plan, job(), firstItem())).toEqual(plan);
  });
});

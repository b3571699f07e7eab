import fc from 'fast-check';
import { rangeOf } from '../../../src/hosts/address';
import { inventedJob, inventedJobEntries } from '../../../src/worksheets/data/inventedJob';
import { jobQuestions, suggestedJob } from '../../../src/worksheets/job/jobForm';
import { planJob } from '../../../src/worksheets/job/planJob';
import type { Answers } from '../../../src/worksheets/question';
import { cellOf } from './jobSheets';

function told(change: Answers): string[] {
  return planJob({ ...inventedJob(), ...change }).problems.map(({ severity, question, message }) => `${severity} ${question}: ${message}`);
}

function planned(change: Answers = {}) {
  const { plan, problems } = planJob({ ...inventedJob(), ...change });
  if (!plan) throw new Error(JSON.stringify(problems));
  return plan;
}

test('every question has a suggested answer, and only what nobody else can know is refused at first', () => {
  const asked = jobQuestions({}).map(({ id }) => id);
  expect(Object.keys(suggestedJob()).sort()).toEqual([...asked].sort());
  const { problems, plan } = planJob(suggestedJob());
  expect(plan).toBeUndefined();
  expect(problems.filter(({ severity }) => severity === 'refuse').map(({ question }) => question)).toEqual(['number', 'items', 'capacity']);
});

test('units follow what is answered', () => {
  const units = jobQuestions({ unit: 'lbf', output_unit: 'mV/V' }).flatMap(({ id, unit }) => (unit === undefined ? [] : [`${id} ${unit}`]));
  expect(units).toEqual(expect.arrayContaining(['capacity lbf', 'verified_to lbf', 'resolution mV/V', 'tolerance %', 'least_interval months']));
});

test.each<[string, Answers, string]>([
  ['a job without a number is refused', { number: ' ' }, 'refuse number: Found nothing; expected a text.'],
  ['seven items are refused', { items: 'a,b,c,d,e,f,g' }, 'refuse items: Found 7 names; expected 1 to 6 names.'],
  ['the same item twice is refused', { items: 'Cell A, cell a' }, 'refuse items: Found “cell a” twice; expected each name once.'],
  ['a name that no sheet can begin with is refused', { items: 'A/B' }, 'refuse items: Found “A/B”; expected a name of 18 characters at most, without \\ / ? * [ ] : and apostrophes.'],
  ['a name too long for a sheet is refused', { items: 'The cell of the quay crane' }, 'refuse items: Found “The cell of the quay crane”'],
  ['a unit of another quantity is refused', { unit: 'N·m' }, 'refuse unit: Found N·m; expected N, kN, MN'],
  ['a least interval beyond the greatest is refused', { least_interval: '36' }, 'refuse least_interval: Found 36 months; expected not more than the greatest interval, 24 months.'],
  ['a standard verified backwards is refused', { verified_from: '30' }, 'refuse verified_from: Found 30 kN; expected less than what the standard is verified up to, 25 kN.'],
  ['a date that is none is refused', { due: '2027-02-30' }, 'refuse due: Found “2027-02-30”; expected a date, like 2026-11-25.'],
  ['a date of another form is refused', { due: '13.1.2027' }, 'refuse due: Found “13.1.2027”; expected a date, like 2026-11-25.'],
  ['a decimal comma is refused', { tolerance: '0,1' }, 'refuse tolerance: Found “0,1”; expected a number with a decimal point above 0, of 100 at most.'],
  ['a standard below capacity is warned of', { verified_to: '15' }, 'warn verified_to: The standard is verified up to 15 kN, below the capacity, 20 kN'],
  ['neither tolerance nor class is warned of', { tolerance: '', class: 'none' }, 'warn tolerance: Neither a tolerance nor a class is asked'],
  ['a class that the procedure does not tell is warned of', { class: '0.5' }, 'warn class: Class 0.5 is of ISO 376; “Ten-point run, force” does not tell it.'],
  ['a loading range asked of a force-proving instrument is warned of', { class: 'AA', procedure: 'Force-proving instrument, ISO 376' }, 'warn class: Class AA is a loading range of ASTM E74'],
])('%s', (_, change, expected) => {
  expect(told(change).join('\n')).toContain(expected);
});

test('the invented job gives no problem', () => {
  expect(told({})).toEqual([]);
});

test('percentages become fractions, and what is said of all items stands in the column of each', () => {
  const plan = planned();
  const value = (at: string) => plan.cells.find((cell) => cell.at === at)?.value;
  expect([value(cellOf(plan, 'job_tolerance')), value(cellOf(plan, 'standards_uncertainty')), value(cellOf(plan, 'standards_due'))]).toEqual([0.001, 0.0002, 46_400]);
  expect([0, 1, 2].map((i) => [value(cellOf(plan, 'item_name', i)), value(cellOf(plan, 'item_capacity', i))])).toEqual([['Cell A', 20], ['Cell B', 20], [undefined, undefined]]);
});

test('everything that is typed is open to typing, everything else is locked, and all is within an upright page', () => {
  const plan = planned({ items: 'a, b, c, d, e, f' });
  expect([plan.locked, plan.print?.landscape]).toEqual([true, false]);
  const page = rangeOf(plan.print!.area);
  for (const { at } of plan.cells) {
    const { endRow, endColumn } = rangeOf(at);
    expect([at, endRow <= page.endRow, endColumn <= page.endColumn]).toEqual([at, true, true]);
  }
  const roles = new Map(plan.cells.map(({ at, role }) => [at, role]));
  for (const { name, range } of plan.names!) {
    expect([name, roles.get(range.split(':')[0]), roles.get(range.split(':').at(-1)!)]).toEqual([name, 'input', 'input']);
  }
  for (const { range } of plan.validations!) expect(roles.get(range.split(':')[0])).toBe('input');
});

test('names are told apart, and what is typed for the demonstration stands in cells to type in', () => {
  const plan = planned();
  const names = plan.names!.map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
  const roles = new Map(plan.cells.map(({ at, role }) => [at, role]));
  const entries = inventedJobEntries(plan);
  expect(entries.length).toBeGreaterThan(15);
  expect(entries.filter(({ at }) => roles.get(at) !== 'input')).toEqual([]);
});

test('whatever is typed, there is a plan or a reason, and the reason names a question', () => {
  const questions = jobQuestions({}).map(({ id }) => id);
  const text = fc.oneof(fc.string(), fc.constantFrom('', '-1', '0', '1e999', '0,5', '=1', 'NaN', '2026-13-01', 'A;B,C', '100000'));
  fc.assert(fc.property(fc.constantFrom(...questions), text, (question, typed) => {
    const { problems, plan } = planJob({ ...inventedJob(), [question]: typed });
    expect(plan === undefined).toBe(problems.some(({ severity }) => severity === 'refuse'));
    for (const problem of problems) {
      expect(questions).toContain(problem.question);
      expect(problem.message).toMatch(/^[A-Z].*\.$/s);
    }
  }), { numRuns: 150 });
});

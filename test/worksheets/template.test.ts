/** Template files: what is refused and how it is told, that the schema for editors is the one that is checked, and that words stay words. */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { toJsonSchema } from '@valibot/to-json-schema';
import fc from 'fast-check';
import { builtInTemplates } from '../../src/worksheets/library';
import { planSheet, suggestedAnswers } from '../../src/worksheets/planner';
import { readTemplate, TemplateError, templateText } from '../../src/worksheets/template';
import { templateSchema } from '../../src/worksheets/templateSchema';

const templates = builtInTemplates();
const folder = path.join(__dirname, '..', '..', 'templates');

function problemsOf(text: string): readonly string[] {
  try {
    readTemplate(text);
  } catch (error) {
    if (error instanceof TemplateError) return error.problems;
    throw error;
  }
  return [];
}

/** A template as data that can be changed. */
function copy(id: string): any {
  return JSON.parse(templateText(templates.find((template) => template.id === id)!));
}

test('templates/template.schema.json says what the program checks (UPDATE_SCHEMA=1 writes it anew)', () => {
  const file = path.join(folder, 'template.schema.json');
  const schema = { title: 'Run template of Provingsheet, form 1', ...toJsonSchema(templateSchema, { errorMode: 'ignore' }) };
  if (process.env.UPDATE_SCHEMA) writeFileSync(file, `${JSON.stringify(schema, null, 2)}\n`);
  expect(JSON.parse(readFileSync(file, 'utf8'))).toEqual(JSON.parse(JSON.stringify(schema)));
});

test('a template read, written as text and read again is the same', () => {
  for (const template of templates) expect(readTemplate(templateText(template))).toEqual(template);
});

test('every template carries limits or a tolerance for its verdicts, a source, a decision rule and cautions', () => {
  for (const template of templates) {
    expect(Object.keys(template.limits).length).toBeGreaterThan(0);
    expect(template.cautions.length).toBeGreaterThan(0);
    expect(template.source).toMatch(/from memory|common practice|no source|S37/i);
  }
});

describe('a broken template names the path, what was found and what was expected', () => {
  test.each<[string, (template: any) => void, string]>([
    ['a capacity as text', (t) => { t.item.capacity = '20'; }, 'item.capacity: found "20"; expected a number'],
    ['a negative capacity', (t) => { t.item.capacity = -1; }, 'item.capacity: found -1; expected a number above 0, in the unit of the item'],
    ['no points', (t) => { delete t.points; }, 'points: found nothing; expected this field'],
    ['a first point that is no zero', (t) => { t.points = [10, 100]; }, 'points: found a list; expected the first point to be 0'],
    ['a zero between loads', (t) => { t.points = [0, 50, 0, 100]; }, 'points: found a list; expected loads above 0 between the first and the last point'],
    ['a point beyond overload', (t) => { t.points = [0, 400]; }, 'points.1: found 400; expected 150 % at most'],
    ['an unknown result', (t) => { t.results = ['nonlinearity', 'accuracy']; }, 'results.1: found "accuracy"; expected one of sensitivity, rated_output, zero_balance'],
    ['a limit in percent instead of a fraction', (t) => { t.limits.nonlinearity = 5; }, 'limits.nonlinearity: found 5; expected a limit as a fraction, 1 at most'],
    ['a field that no template has', (t) => { t.macro = 'run me'; }, 'macro: found a field that no template has; expected it to be left out'],
    ['another form', (t) => { t.form = 2; }, 'form: found 2; expected 1, the form that this version reads'],
    ['another kind', (t) => { t.kind = 'survey'; }, 'kind: found "survey"; expected'],
    ['a direction of torque for a force', (t) => { t.directions = ['clockwise']; }, 'directions.0: found "clockwise"; expected one of "tension", "compression" for force'],
    ['fewer positions than runs', (t) => { t.positions = ['0°']; }, 'positions: found 1; expected one for each of the 3 runs, or none'],
    ['a title of two lines', (t) => { t.title = 'a\nb'; }, 'title: found "a\nb"; expected a text of one line'],
    ['half a run', (t) => { t.runs = 2.5; }, 'runs: found 2.5; expected a whole number of runs'],
  ])('%s', (_, change, expected) => {
    const template = copy('ten-point-force');
    change(template);
    expect(problemsOf(JSON.stringify(template)).join('\n')).toContain(expected);
  });

  test('all that is wrong is told at once', () => {
    const template = { ...copy('ten-point-force'), runs: 0, zero: 'none' };
    expect(problemsOf(JSON.stringify(template))).toHaveLength(2);
  });

  test.each([['no JSON', '{"form": 1,'], ['a list', '[]'], ['a number', '1'], ['an empty file', ''], ['100 001 characters', ' '.repeat(100_001)]])('%s', (_, text) => {
    expect(problemsOf(text).join()).toMatch(/^(the file|kind): found .*expected/);
  });
});

test('what is read is plain data: keys like __proto__ are refused and change nothing', () => {
  const text = templateText(templates[0]).replace('"form": 1', '"form": 1, "__proto__": {"polluted": true}, "constructor": 1');
  expect(problemsOf(text).join()).toMatch(/__proto__|constructor/);
  expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
});

test('words of a template or an answer reach a sheet as text only: formulas are the same whatever they say', () => {
  const hostile = fc.constantFrom('=PROVE.FIT(1)', '=HYPERLINK("http://x","y")', '+1+cmd', '@SUM(A1)', '-2', '"&A1&"', '<b>', '=IMAGE("x")', "'=1", '");A1(');
  fc.assert(fc.property(fc.constantFrom(...templates), hostile, hostile, (template, word, other) => {
    const words = word.trim();
    const changed = { ...template, title: words, purpose: other, source: words, decisionRule: other, cautions: [words, other] } as typeof template;
    const before = planSheet(template, { ...suggestedAnswers(template), sheet: 'Run' });
    const after = planSheet(changed, { ...suggestedAnswers(template), sheet: 'Run', standard: other });
    const formulas = (plan: typeof before.plan) => plan!.cells.flatMap(({ formula }) => (formula === undefined ? [] : [formula.replace(/\d+/g, '0')]));
    expect(formulas(after.plan)).toEqual(formulas(before.plan));
    const texts = after.plan!.cells.filter(({ value }) => value === words || value === other);
    expect(texts.length).toBeGreaterThan(0);
    expect(texts.every(({ formula }) => formula === undefined)).toBe(true);
  }));
});

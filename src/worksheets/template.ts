import * as v from 'valibot';
import { DIRECTIONS, type Template, templateSchema } from './templateSchema';

export type { Template } from './templateSchema';

/** Characters that a template file may have; a real one has some thousand. */
const LONGEST = 100_000;

/** A template that cannot be used: where in it, what was found, what was expected; a line each. */
export class TemplateError extends Error {
  constructor(readonly problems: readonly string[]) {
    super(problems.join('\n'));
    this.name = 'TemplateError';
  }
}

/**
 * Reads the text of a template file.
 * @throws TemplateError with the path of each bad field, what was found and what was expected
 */
export function readTemplate(text: string): Template {
  if (text.length > LONGEST) throw new TemplateError([`the file: found ${text.length} characters; expected ${LONGEST} at most`]);
  const result = v.safeParse(templateSchema, parseJson(text));
  if (!result.success) throw new TemplateError(result.issues.map((issue) => `${v.getDotPath(issue) ?? 'the file'}: ${wording(issue)}`));
  const problems = contradictions(result.output);
  if (problems.length > 0) throw new TemplateError(problems);
  return result.output;
}

/** A template as the text of a file. */
export function templateText(template: Template): string {
  return `${JSON.stringify(template, null, 2)}\n`;
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    throw new TemplateError([`the file: found no JSON (${error instanceof Error ? error.message : String(error)}); expected a template file`]);
  }
}

/** The schema's own wording names types; ours, where a rule has one, says what is expected. */
function wording(issue: v.BaseIssue<unknown>): string {
  const isKey = issue.type === 'strict_object';
  if (isKey && issue.expected === 'never') return 'found a field that no template has; expected it to be left out';
  if (isKey && issue.received === 'undefined') return 'found nothing; expected this field';
  const expected = issue.message.startsWith('expected') ? issue.message : `expected ${KINDS[issue.expected ?? ''] ?? issue.expected ?? 'something else'}`;
  return `found ${KINDS[issue.received] ?? issue.received}; ${expected}`;
}

const KINDS: Readonly<Record<string, string>> = {
  undefined: 'nothing', Array: 'a list', Object: 'an object', number: 'a number', string: 'a text', boolean: 'true or false',
};

/** What fields say of each other that cannot be true at once. */
function contradictions(template: Template): string[] {
  const problems: string[] = [];
  const possible: readonly string[] = DIRECTIONS[template.quantity];
  const check = (direction: string, path: string): void => {
    if (!possible.includes(direction)) problems.push(`${path}: found "${direction}"; expected one of "${possible.join('", "')}" for ${template.quantity}`);
  };
  if ('directions' in template) template.directions.forEach((direction, i) => check(direction, `directions.${i}`));
  if (template.kind === 'creep' || template.kind === 'thermal' || template.kind === 'proving') check(template.direction, 'direction');
  if ('runs' in template && template.positions && template.positions.length !== template.runs) {
    problems.push(`positions: found ${template.positions.length}; expected one for each of the ${template.runs} runs, or none`);
  }
  if (template.kind === 'history' && template.interval.least > template.interval.greatest) {
    problems.push(`interval.least: found ${template.interval.least}; expected not more than interval.greatest, ${template.interval.greatest}`);
  }
  if (template.kind === 'indication' && (template.quantity === 'signal') !== (template.scale !== undefined)) {
    problems.push(`scale: found ${template.scale ?? 'nothing'}; expected a number for quantity "signal", and nothing for others`);
  }
  if ('applied' in template && template.applied === 'weights' && template.quantity !== 'force') {
    problems.push(`applied: found "weights" for ${template.quantity}; expected "planned" or "typed", since dead weights give a force`);
  }
  if (template.kind === 'indication' && template.results.includes('calibration')) {
    problems.push('results: found "calibration"; expected it in templates of kind "run" only');
  }
  return problems;
}

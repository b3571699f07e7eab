import { builtInTemplates } from '../../src/worksheets/library';
import { planSheet, suggestedAnswers } from '../../src/worksheets/planner';

test.each(builtInTemplates().map((template) => [template.id, template] as const))('%s: the suggested answers make a sheet', (_, template) => {
  const { problems, plan } = planSheet(template, suggestedAnswers(template));
  expect(problems.filter(({ severity }) => severity === 'refuse')).toEqual([]);
  expect(plan).toBeDefined();
});

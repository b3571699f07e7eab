import functions from '@generated/functions.json';
import { computed, describeCellFunctions, descriptionOf } from './bundle';

test('every cell function is described, with required and optional arguments told apart', async () => {
  const engine = await computed({ name: 'A', cells: [] });
  describeCellFunctions(engine.injector);
  for (const { id, parameters } of functions.functions) {
    const described = descriptionOf(engine.injector, `PROVE.${id}`);
    expect(described?.functionParameter.map(({ name, require }) => [name, require])).toEqual(
      parameters.map((parameter) => [parameter.name, 'optional' in parameter && parameter.optional ? 0 : 1]),
    );
  }
});

test('a description holds the summary, formula, source and an example', async () => {
  const engine = await computed({ name: 'A', cells: [] });
  describeCellFunctions(engine.injector);
  const described = descriptionOf(engine.injector, 'prove.net');
  expect(described?.functionName).toBe('PROVE.NET');
  expect(described?.abstract).toMatch(/^Net readings/);
  for (const part of ['Formula: ', 'Source: ', 'Example: =PROVE.NET(']) expect(described?.description).toContain(part);
});

test('the example of each argument is that of the help', async () => {
  const engine = await computed({ name: 'A', cells: [] });
  describeCellFunctions(engine.injector);
  const described = descriptionOf(engine.injector, 'PROVE.NET');
  expect(described?.functionParameter.map(({ example }) => example)).toEqual(['{0;50;100;0}', '{0.01;1.01;2.012;0.014}', '']);
});

import { freeName, sheetNameProblem } from '../../../src/taskpane/build/sheetName';

test.each([
  ['', 'needs a name'],
  ['   ', 'needs a name'],
  ['x'.repeat(32), '32 characters'],
  ['Run/2', '“/”'],
  ['Run [2]', '“[”'],
  ["'Run", 'apostrophe'],
  ['run', '“run” already'],
  [' Run ', 'already'],
])('the name “%s” is refused, and told why', (name, words) => {
  expect(sheetNameProblem(name, ['Run'])).toContain(words);
});

test('a free name of 31 characters is taken', () => {
  expect(sheetNameProblem('x'.repeat(31), ['Run'])).toBeUndefined();
});

test('the first free number is offered, in any case of letters', () => {
  expect(freeName('Run', ['Run', 'run 2', 'RUN 3'])).toBe('Run 4');
});

test('a long name is cut so that the number fits', () => {
  const name = freeName('x'.repeat(31), ['x'.repeat(31)]);
  expect(name).toBe(`${'x'.repeat(29)} 2`);
  expect(sheetNameProblem(name, ['x'.repeat(31)])).toBeUndefined();
});

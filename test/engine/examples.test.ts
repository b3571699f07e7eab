import help from '@generated/help.json';
import { CellError, computed } from './bundle';

const examples = help.flatMap(({ examples: list }) => list.map(({ formula, result }) => ({ formula, result })));

/** Results in the help are written short; a number must agree to 9 digits, or to 1e-12 if it is next to nothing. */
function agrees(found: unknown, expected: unknown): boolean {
  if (Array.isArray(found) && Array.isArray(expected)) {
    return found.length === expected.length && found.every((cell, index) => agrees(cell, expected[index]));
  }
  if (typeof found !== 'number' || typeof expected !== 'number') return found === expected;
  return Math.abs(found - expected) <= Math.max(1e-9 * Math.abs(expected), 1e-12);
}

test.each(examples)('$formula gives $result, as its help says', async ({ formula, result }) => {
  const engine = await computed({ name: 'A', cells: [] });
  const found = await engine.evaluate('A', formula);
  const expected = await engine.evaluate('A', `=${result}`);
  expect(expected).not.toBeInstanceOf(CellError);
  if (!agrees(found, expected)) expect(found).toEqual(expected);
});

test('the comparison itself tells results apart', () => {
  expect(agrees([[1], [2]], [[1], [2 + 1e-8]])).toBe(false);
  expect(agrees([[1]], 1)).toBe(false);
  expect(agrees('PASS', 'FAIL')).toBe(false);
  expect(agrees([[1], [2 + 1e-12]], [[1], [2]])).toBe(true);
});

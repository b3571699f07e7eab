import { quoted, unquoted, withRanges } from '../../../src/hosts/grid/nameText';

const TABLE: Record<string, string> = { forces: 'A5:A9', '0,5': 'never', x: 'B1', 'Run 1!forces': "'Run 1'!C1:C3" };
const expand = (formula: string): string => withRanges(formula, (name, sheet) => TABLE[sheet === undefined ? name : `${sheet}!${name}`]);

test.each([
  ['=SUM(forces)', '=SUM(A5:A9)'],
  ['=forces*x-x', '=A5:A9*B1-B1'],
  ["=SUM('Run 1'!forces)", "=SUM('Run 1'!C1:C3)"],
])('%s becomes %s', (formula, expected) => {
  expect(expand(formula)).toBe(expected);
});

test.each([
  ['quoted text', '="forces ""forces"""'],
  ['a function of that name', '=forces(1)'],
  ['the name of a sheet', '=forces!A1'],
  ['a quoted name of a sheet', "='forces x'!A1+'x forces'!#REF!"],
  ['part of a longer name', '=my_forces+forces2+x.y'],
  ['a cell or number that holds its letter', '=X1+1E5+$X$2'],
  ['a name of a sheet that has none', '=Other!forces'],
])('%s stays', (_what, formula) => {
  expect(expand(formula)).toBe(formula);
});

test('a sheet’s name is quoted and unquoted with its apostrophes', () => {
  expect(quoted("Bench 1's run")).toBe("'Bench 1''s run'");
  expect(unquoted(quoted("Bench 1's run"))).toBe("Bench 1's run");
  expect(unquoted('Data')).toBe('Data');
});

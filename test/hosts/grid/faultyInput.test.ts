import { faultyInput } from '../../../src/hosts/grid/faultyInput';

const FORMULA = '=PROVE.NET(A9:A14,$B$9:$D$14,"average")';

test.each([
  ['readings row 3, column 2: found the text "x"', FORMULA, 'C11'],
  ['readings row 3: the cell holds #VALUE!', FORMULA, 'B11:D11'],
  ['forces row 1: found nothing', FORMULA, 'A9'],
  ['forces: found 6 rows', FORMULA, 'A9:A14'],
  ['readings column 4: found TRUE', '=PROVE.NET(A1:F1,A2:F2)', 'D2'],
  ['readings row 2: found the text "x"', '=2*PROVE.SENSITIVITY(A1:A4,B1:B4)+1', 'B2'],
  ['ratedOutput: the cell holds #VALUE! (readings row 3: found TRUE)', '=PROVE.ZEROBALANCE(B1,PROVE.SENSITIVITY(A1:A4,B1:B4))', 'B3'],
  ['degree: found 9', '=PROVE.FIT(A1:A9,B1:B9,C3)', 'C3'],
])('"%s" in %s means %s', (message, formula, range) => {
  expect(faultyInput(formula, message)).toEqual({ range });
});

test('a range on another sheet keeps its sheet', () => {
  expect(faultyInput("=PROVE.NET('Run, 1'!A9:A14,'Run, 1'!B9:B14)", 'readings row 2: found TRUE')).toEqual({ sheet: 'Run, 1', range: 'B10' });
});

test.each([
  ['an argument that is no plain reference', '=PROVE.NET(A1:A4,2*B1:B4)', 'readings row 2: found TRUE'],
  ['a message that names no argument', FORMULA, 'the result is out of the range of numbers'],
  ['two calls with different ranges', '=PROVE.SENSITIVITY(A1:A4,B1:B4)+PROVE.SENSITIVITY(A1:A4,C1:C4)', 'readings row 2: found TRUE'],
  ['a row past the range', '=PROVE.NET(A1:A4,B1:B4)', 'readings row 9: found TRUE'],
  ['a constant', '=PROVE.NET({0;1},{0;TRUE})', 'readings row 2: found TRUE'],
])('%s names no cell', (_what, formula, message) => {
  expect(faultyInput(formula, message)).toBeUndefined();
});

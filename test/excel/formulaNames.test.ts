import { cellFunctionsIn } from '../../src/functions/formulaNames';

test.each([
  ['a single call', '=PROVE.FIT(A1:A9,B1:B9,2)', ['FIT']],
  ['nested calls, in the order they stand', '=INDEX(PROVE.RESPONSE(PROVE.FIT(A1:A9,B1:B9,2),C1),1)', ['RESPONSE', 'FIT']],
  ['a name called twice, once', '=PROVE.UNIT(A1,"N","kN")+PROVE.UNIT(A2,"N","kN")', ['UNIT']],
  ['lower case', '=prove.net(A1:A9,B1:B9)', ['NET']],
  ['a space before the bracket, and line breaks', '=\n  PROVE.NET (A1:A9,\n B1:B9)', ['NET']],
  ['the name a saved workbook uses', '=_xldudf_PROVE_FIT(A1:A9,B1:B9,2)', ['FIT']],
  ['a name with an implicit intersection', '=@PROVE.FIT(A1:A9,B1:B9,2)', ['FIT']],
  ['a call after an operator', '=-PROVE.GRAVITY(52)*PROVE.AIRDENSITY(20,1013,50)', ['GRAVITY', 'AIRDENSITY']],
])('%s is found', (_, formula, ids) => {
  expect(cellFunctionsIn(formula)).toEqual(ids);
});

test.each([
  ['text in quotes', '="PROVE.FIT(A1)"&"say ""PROVE.NET(x)"""'],
  ['a quoted sheet name', "='PROVE.FIT(1)'!A1"],
  ['a column of a table', '=Runs[PROVE.FIT(x)]'],
  ['a longer name', '=IMPROVE.FIT(A1)+MY_PROVE.FIT(A1)+A.PROVE.FIT(A1)'],
  ['a name without a call', '=PROVE.FIT'],
  ['a constant that only looks like one', 'PROVE.FIT(A1)'],
  ['an empty cell', ''],
  ['a number', 12.5],
  ['nothing', undefined],
])('%s is no call', (_, formula) => {
  expect(cellFunctionsIn(formula)).toEqual([]);
});

test('a call beside quoted text is still found', () => {
  expect(cellFunctionsIn('="PROVE.NET("&PROVE.FIT(\'Run "1"\'!A1:A9,B1:B9,1)')).toEqual(['FIT']);
});

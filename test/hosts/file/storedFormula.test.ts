import { fromStored, moved, needsArray, toStored } from '../../../src/hosts/file/storedFormula';

describe('a formula in a file', () => {
  test.each([
    ['PROVE.FIT(A1:A9,2)', '_xldudf_PROVE_FIT(A1:A9,2)'],
    ['INDEX(prove.fit(A1),1)&"PROVE.FIT("', 'INDEX(_xldudf_PROVE_FIT(A1),1)&"PROVE.FIT("'],
    ["'PROVE.FIT(x)'!A1+PROVE.NET(A1)", "'PROVE.FIT(x)'!A1+_xldudf_PROVE_NET(A1)"],
    ['"say ""PROVE.FIT("" twice"', '"say ""PROVE.FIT("" twice"'],
    ['SUM(A1:A2)', 'SUM(A1:A2)'],
  ])('%s is stored as %s', (typed, stored) => expect(toStored(typed)).toBe(stored));

  test.each([
    ['_xldudf_PROVE_FIT(A1:A9,2)', '=PROVE.FIT(A1:A9,2)'],
    ['_xlfn.T.INV.2T(0.05,10)+_xlfn._xlws.SORT(A1:A3)', '=T.INV.2T(0.05,10)+SORT(A1:A3)'],
    ['"_xlfn."&_xlfn.LET(_xlpm.x,1,_xlpm.x)', '="_xlfn."&LET(x,1,x)'],
  ])('%s is read as %s', (stored, typed) => expect(fromStored(stored)).toBe(typed));

  test.each([
    ['SUM(B2:$C$3)+B$2*$C3', 2, 1, 'SUM(C4:$C$3)+C$2*$C5'],
    ['LOG10(A1)&"A1"', 1, 0, 'LOG10(A2)&"A1"'],
    ["'Run A1'!A1+T.INV.2T(A1,Z9)", 0, 1, "'Run A1'!B1+T.INV.2T(B1,AA9)"],
  ])('%s, %i down and %i right, reads %s', (formula, down, right, expected) => expect(moved(formula, down, right)).toBe(expected));
});

describe('what must be a dynamic array', () => {
  const plan = { names: [{ name: 'forces', range: 'A1:A9' }, { name: 'capacity', range: 'B1' }] };
  test.each([
    '=PROVE.SENSITIVITY(A1,B1)', '=A1:A3', '=SUM(A1:A3*B1:B3)', '=SUMSQ(A1:A3-B1:B3)', '=MAX(ABS(A1:A3))', '=-A1:A3', '=INDEX(LINEST(B1:B9,A1:A9^{1,2}),1)',
    '=LINEST(B1:B9,A1:A9)', '=SUM(forces^2)', '=SUM((A1:A3))', '=IF(A1:A3>0,1,0)', '=SUM({1,2})', "=MAX(ABS('Run 1'!$A$1:$A$3))",
  ])('%s', (formula) => expect(needsArray(formula, plan)).toBe(true));
  test.each([
    '=A1+B1*2', '=SUM(A1:A3)', '=IF(COUNTBLANK(A1:A3)>0,"A1:A3 - fill","")', '=SUMPRODUCT(A1:A3,B1:B3)/SUM($A$1:$A$3)', '=capacity*2', '=COUNT(forces)',
    '=VLOOKUP("a",A1:C9,2,FALSE)', '=STDEV.S(B1:B9)*T.INV.2T(0.05,COUNT(forces)-1)',
  ])('not %s', (formula) => expect(needsArray(formula, plan)).toBe(false));
});

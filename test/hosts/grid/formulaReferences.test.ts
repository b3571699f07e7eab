import { referencesIn } from '../../../src/hosts/grid/formulaReferences';

test('references are found with and without a sheet, in order, without their dollar signs', () => {
  expect(referencesIn("=SUM($A$1:B4)+Sheet2!C3*'It''s'!d5")).toEqual([
    { range: 'A1:B4' }, { sheet: 'Sheet2', range: 'C3' }, { sheet: "It's", range: 'D5' },
  ]);
});

test('function names, quoted text and words with digits are no references', () => {
  expect(referencesIn('=LOG10(2)&"B4"&PROVE.FIT2(1)&name1x')).toEqual([]);
});

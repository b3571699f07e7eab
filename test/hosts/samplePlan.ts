/** A small sheet with one of everything that a plan can say, and the values that its formulas give. */
import type { CellValue } from '../../src/hosts/sheetHost';
import type { PlanCell, SheetPlan } from '../../src/worksheets/plan';

const FORCES = [0, 5, 10, 15, 20];
const DEVIATIONS = [0, -0.00021, -0.0003, -0.00018, 0.00004];

/** 2026-11-25, as a spreadsheet counts days. */
export const DAY = 46351;

export const VALUES: Readonly<Record<string, CellValue>> = {
  B5: DEVIATIONS[0], B6: DEVIATIONS[1], B7: DEVIATIONS[2], B8: DEVIATIONS[3], B9: DEVIATIONS[4],
  C5: 1e-20, C6: 'ten & <more>', C7: { error: '#N/A' }, C8: true, C9: null,
  D5: 0.30000000000000004, D6: 'yes', D7: '', D8: '12', D9: 'TRUE',
  E5: true, E6: { error: '#DIV/0!' }, E7: 2.2281388519649385, E8: -0.00013, E9: 'a "quoted" PROVE.FIT(1)',
};

const cells: PlanCell[] = [
  { at: 'A1', role: 'title', value: 'Sample of a run' },
  { at: 'A2', role: 'caution', value: 'Stand clear of the load train. '.repeat(6) },
  ...['Force, kN', 'Deviation', 'Spilled', 'Text', 'Other'].map((value, i): PlanCell => ({ at: `${'ABCDE'[i]}4`, role: 'header', value })),
  ...FORCES.map((value, i): PlanCell => ({ at: `A${5 + i}`, role: 'input', value, format: '0.0' })),
  { at: 'B5', role: 'result', formula: '=PROVE.DEVIATIONS(A5:A9,A5:A9)', spill: { rows: 5, columns: 2 }, format: '0.000%' },
  ...FORCES.slice(1).map((_, i): PlanCell => ({ at: `B${6 + i}`, role: 'result', format: '0.000%' })),
  { at: 'D5', role: 'result', formula: '=A6+0.1', format: '0.00' },
  { at: 'D6', role: 'result', formula: '=IF(A6>0,"yes","no")' },
  { at: 'D7', role: 'result', formula: '=IF(A5="","none","")' },
  { at: 'D8', role: 'result', formula: '=TEXT(A6+7,"0")' },
  { at: 'D9', role: 'result', formula: '=IF(A6<0,"FALSE","TRUE")' },
  { at: 'E5', role: 'result', formula: '=A6>1' },
  { at: 'E6', role: 'result', formula: '=A6/A5' },
  { at: 'E7', role: 'result', formula: '=T.INV.2T(0.05,10)', format: '0.0000' },
  { at: 'E8', role: 'result', formula: '=SUM(forces*B5:B9)/SUM(A5:A9)', format: '0.00E+00' },
  { at: 'E9', role: 'result', formula: '="a ""quoted"" PROVE.FIT(1)"' },
  ...FORCES.flatMap((_, i): PlanCell[] => [
    { at: `F${5 + i}`, role: 'reference', value: (i - 2) * 1e-4 },
    { at: `H${5 + i}`, role: 'reference', value: (2 - i) * 1.5e-4 },
  ]),
  // The ends of the limit line, apart from the readings.
  { at: 'I5', role: 'reference', value: 0 }, { at: 'I6', role: 'reference', value: 20 },
  { at: 'J5', role: 'reference', value: 5e-4 }, { at: 'J6', role: 'reference', value: 5e-4 },
  { at: 'A11', role: 'label', value: '=SUM(A5:A9) as text' },
  { at: 'A12', role: 'input', value: '-12' },
  { at: 'B12', role: 'input', value: true },
  { at: 'C12', role: 'input' },
  { at: 'D12', role: 'reference', value: ' spaces \n and a line ' },
  { at: 'E12', role: 'input', value: DAY, format: 'yyyy-mm-dd' },
  { at: 'A13', role: 'formula', value: 'PROVE.DEVIATIONS(forces,readings)' },
];

export const plan: SheetPlan = {
  name: "Bench 1's run",
  columns: [14, 12, 16, 14, 22],
  cells,
  merges: ['A1:E1', 'A2:E2', 'A11:C11', 'A13:C13'],
  frozenRows: 4,
  names: [{ name: 'forces', range: 'A5:A9' }, { name: 'first_force', range: 'A5' }],
  validations: [
    { range: 'A5:A9', rule: { kind: 'number', least: 0 }, message: 'A force of 0 or more & below "overload".' },
    { range: 'C12', rule: { kind: 'list', words: ['tension', 'compression'] }, message: 'Choose a direction.' },
    { range: 'B12', rule: { kind: 'whole', least: 1, greatest: 9 }, message: 'A whole number from 1 to 9.' },
    { range: 'E12', rule: { kind: 'date' }, message: 'A date.' },
  ],
  highlights: [
    { range: 'B5:B9', formula: '=ABS($B5)<0.0002', look: 'pass' },
    { range: 'B5:B9', formula: '=ABS($B5)>=0.0002', look: 'fail' },
    { range: 'D5:D9', formula: 'D5="yes"', look: 'doubt' },
  ],
  charts: [{
    title: 'Deviation from the terminal line',
    over: 'A15:E30',
    x: 'Force, kN',
    y: 'of rated output',
    series: [
      { name: 'Run 1', x: 'A5:A9', y: 'B5:B9', drawn: 'points' },
      { name: 'Fit', x: 'A5:A9', y: 'F5:F9', drawn: 'line' },
      { name: 'Limit', x: 'I5:I6', y: 'J5:J6', drawn: 'limit' },
      { name: 'Run 2', x: 'A5:A9', y: 'H5:H9', drawn: 'both' },
    ],
  }],
  locked: true,
  print: { area: 'A1:E32', landscape: true, repeatRows: [1, 4] },
};

/** How cell functions read ranges: blanks, text, booleans, errors, shapes, directions, options, headers. */
import { CellFault } from '../../src/functions/faults';
import { callFunction } from '../../src/functions/call';
import { column, columns, fault, number, table } from './call';

const forces = column(0, 50, 100, 0);

describe('ranges', () => {
  test('a row blank in both is skipped, and its place in the result stays blank', () => {
    expect(table('NET', column(0, null, 50, 100), column(0.5, null, 1.5, 2.5))).toEqual(column(0, '', 1, 2));
  });
  test('a force with a blank reading is skipped for that run only', () => {
    expect(table('NET', column(0, 50, 100), columns([1, 2, 3], [1, null, 4]))).toEqual(columns([0, 1, 2], [0, '', 3]));
  });
  test('a formula that gives empty text counts as blank', () => {
    expect(table('NET', column(0, '', 100), column(1, '', 3))).toEqual(column(0, '', 2));
  });
  test('text names the row and what was found', () => {
    expect(fault('NET', forces, column(0, 1, '2,012', 0))).toBe('#VALUE!: readings row 3: found the text "2,012"; expected a number');
  });
  test('in a block of several runs the column is named too', () => {
    expect(fault('NET', forces, columns([0, 1, 2, 0], [0, 1, 'x', 0]))).toBe('#VALUE!: readings row 3, column 2: found the text "x"; expected a number');
  });
  test('a boolean is no number', () => {
    expect(fault('NET', column(0, true, 100, 0), column(0, 1, 2, 0))).toBe('#VALUE!: forces row 2: found TRUE; expected a number');
  });
  test('a reading without a force names the row', () => {
    expect(fault('NET', column(0, null, 100, 0), column(0, 1, 2, 0))).toBe('#VALUE!: readings row 2: found the reading 1 without a force; expected a force beside it');
  });
  test('an error in an input cell comes out as that error', () => {
    expect(fault('NET', forces, column(0, new CellFault('#DIV/0!', ''), 2, 0))).toBe('#DIV/0!: readings row 2: the cell holds #DIV/0!');
    expect(fault('ZEROBALANCE', new CellFault('#REF!', ''), 2)).toBe('#REF!: zeroOutput: the cell holds #REF!');
  });
  test('a block that mixes directions is refused with both rows', () => {
    expect(fault('NET', column(0, 50, -50, 0), column(0, 1, -1, 0))).toMatch(/^#VALUE!: forces row 3: found -50, but row 2 holds 50; expected one direction/);
  });
  test('ranges of different length are refused with both lengths', () => {
    expect(fault('NET', forces, column(0, 1, 2))).toBe('#VALUE!: forces has 4 rows and readings 3; expected the same number');
  });
  test('a forces block must have one column, or one a run', () => {
    expect(fault('NET', columns([0, 1], [0, 1]), columns([0, 1], [0, 1], [0, 1]))).toMatch(/forces has 2 columns; expected 1, or one for each of the 3 runs/);
  });
  test('each run may have forces of its own', () => {
    // Both runs read 2 at 100, in different rows; actual forces may differ a little from run to run.
    expect(number('SENSITIVITY', columns([0, 50, 100, 0], [0, 100, 50, 0]), columns([0, 1, 2, 0], [0, 2, 1, 0]))).toBeCloseTo(2, 14);
    expect(number('SENSITIVITY', columns([0, 100.2], [0, 99.8]), columns([0, 2.004], [0, 1.996]), 100)).toBeCloseTo(2, 14);
  });
  test('runs that go to different forces are refused', () => {
    expect(fault('SENSITIVITY', columns([0, 100], [0, 200]), columns([0, 1], [0, 2]))).toBe('#VALUE!: forces: run 2 goes to 200, run 1 to 100; expected the same greatest force in every run');
  });
  test('… from one per cent of capacity on', () => {
    expect(fault('SENSITIVITY', columns([0, 100], [0, 103]), columns([0, 2], [0, 2.06]))).toMatch(/^#VALUE!: forces: run 2 goes to 103, run 1 to 100/);
  });
  test('runs with different steps in a row have no ascending mean', () => {
    expect(fault('NONLINEARITY', columns([0, 50, 100, 0], [0, 100, 50, 0]), columns([0, 1, 2, 0], [0, 2, 1, 0]))).toMatch(/^#VALUE!: forces row 2, column 2: found 100 where another run has 50/);
  });
  test('a range on its side names the column', () => {
    expect(fault('NET', [[0, 50, 100]], [[0, 1, 'x']])).toBe('#VALUE!: readings column 3: found the text "x"; expected a number');
    expect(fault('NET', [[0, 50, 100]], [[0, 1, new CellFault('#N/A', '')]])).toBe('#N/A: readings column 3: the cell holds #N/A');
  });
  test('a run whose zero reading is missing names its cell', () => {
    expect(fault('NET', column(0, 50, 100), columns([0, 1, 2], [null, 2, 3]))).toMatch(/^#VALUE!: readings row 2, column 2: found the reading at force 50 before any zero reading/);
  });
  test('0.1·3 is the force 0.3 that stands elsewhere', () => {
    expect(number('HYSTERESIS', column(0, 0.1, 0.1 * 3, 1, 0.3, 0.1, 0), column(0, 0.2, 0.6, 2, 0.7, 0.2, 0))).toBeCloseTo(0.05, 14);
  });
  test('a run laid out in a row gives its result in a row', () => {
    expect(table('NET', [[0, 50, 100]], [[0.5, 1.5, 2.5]])).toEqual([[0, 1, 2]]);
  });
  test('forces in a row and readings in a column give a column', () => {
    expect(table('NET', [[0, 50, 100]], column(0.5, 1.5, 2.5))).toEqual(column(0, 1, 2));
  });
  test('nothing to read is said', () => {
    expect(fault('FIT', column(null, null), column(null, null), 1)).toBe('#VALUE!: readings: no row holds both a force and a reading');
  });
});

describe('options and headers', () => {
  test('words are taken in any case', () => {
    expect(table('NET', forces, column(1, 2, 3, 2), 'AVERAGE')).toEqual(column(-0.5, 0.5, 1.5, 0.5));
  });
  test('an unknown word lists the ones that are known', () => {
    expect(fault('NET', forces, column(0, 1, 2, 0), 'before')).toBe('#VALUE!: zero: found the text "before"; expected "initial", "average" or "interpolated"');
    expect(fault('LOWERLIMIT', forces, column(0, 1, 2, 0), 1, 'B')).toBe('#VALUE!: loadingClass: found the text "B"; expected "AA" or "A"');
  });
  test('a degree outside 1 to 5 says so', () => {
    expect(fault('FIT', forces, column(0, 1, 2, 0), 6)).toBe('#VALUE!: degree: found 6; expected a whole number from 1 to 5');
    expect(fault('FIT', forces, column(0, 1, 2, 0), 1.5)).toBe('#VALUE!: degree: found 1.5; expected a whole number from 1 to 5');
  });
  test('headers FALSE leaves the header row out', () => {
    expect(table('FORCETABLE', column(0, 0.5), 0, 2, 1)).toEqual([['Force', 'Output'], [0, 0], [1, 0.5], [2, 1]]);
    expect(table('FORCETABLE', column(0, 0.5), 0, 2, 1, false)).toEqual([[0, 0], [1, 0.5], [2, 1]]);
  });
  test('a required argument left out is named', () => {
    expect(fault('ZEROBALANCE', 1)).toBe('#VALUE!: ratedOutput: found nothing; expected a value');
    expect(fault('NET', forces)).toBe('#VALUE!: readings: found nothing; expected a range');
  });
  test('a range where one cell is expected is refused', () => {
    expect(fault('ZEROBALANCE', column(1, 2), 2)).toBe('#VALUE!: zeroOutput: found 2 rows and 1 column; expected one cell');
  });
  test('too many arguments are refused', () => {
    expect(fault('ZEROBALANCE', 1, 2, 3)).toBe('#VALUE!: found 3 arguments; expected at most 2');
  });
  test('an unknown function is #NAME?', () => {
    expect(() => callFunction('NOSUCH', [])).toThrow(expect.objectContaining({ code: '#NAME?' }));
  });
});

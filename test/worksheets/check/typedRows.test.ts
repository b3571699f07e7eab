/** Tables typed in row by row: temperatures, and calibrations by date. */
import { checkSheet } from '../../../src/worksheets/check/checkSheet';
import { SampleSheet } from '../sampleSheet';

const column = (values: readonly (number | string | null)[]) => values.map((value) => [value]);

function thermal(cell: readonly (number | string | null)[], zero: readonly (number | null)[], needed = 3): SampleSheet {
  return new SampleSheet().range('planned_temperature', 1, 5, column([-10, 23, 50])).range('typed_temperature', 2, 5, column(cell))
    .range('typed_zero', 3, 5, column(zero)).single('needed_rows', 'A9', needed).single('value_zero_effect', 'D20', 0.1);
}

function history(dates: readonly (number | string | null)[], values: readonly (number | null)[]): SampleSheet {
  return new SampleSheet().range('typed_date', 1, 5, column(dates)).range('typed_output', 2, 5, column(values)).single('needed_rows', 'A9', 3).single('value_drift', 'D20', 0.1);
}

function told(sheet: SampleSheet): string[] {
  return checkSheet(sheet.read()).filter(({ at }) => /^[ABC][5-8]$/.test(at)).map(({ severity, at, message }) => `${severity} ${at}: ${message}`);
}

describe('rows of a table', () => {
  test('complete and in order give no finding', () => {
    expect(told(thermal([-9.8, 23, 49.9], [0.1, 0.2, 0.3]))).toEqual([]);
    expect(told(history([45_000, 45_365, 45_730, null], [2, 2.1, 2.2, null]))).toEqual([]);
  });

  test('that are all blank are told of once', () => {
    expect(told(thermal([null, null, null], [null, null, null]))).toEqual(['missing B5: No readings yet: the first belongs in B5']);
  });

  test('begun but not complete lead to the empty cell, and too few rows to the next one', () => {
    expect(told(thermal([-10, 23, null], [0.1, null, null]))).toEqual([
      'missing C6: Row 6: C6 is empty; expected the row complete, or blank', 'missing B7: 2 of 3 rows are there; the next begins in B7',
    ]);
  });

  test('may be left out where fewer are needed', () => {
    expect(told(thermal([-10, 23, null], [0.1, 0.2, null], 2))).toEqual([]);
  });

  test('that hold text instead of a number or a date are wrong', () => {
    expect(told(thermal([-10, '23,0', 50], [0.1, 0.2, 0.3]))).toEqual([expect.stringMatching(/^wrong B6: B6 holds the text “23,0”.*expected a number$/)]);
    expect(told(history([45_000, 'May', 45_730], [2, 2.1, 2.2]))).toEqual(['wrong A6: A6 holds the text “May”; expected a date, like 2026-11-25']);
  });

  test('whose temperatures do not follow the chamber look swapped', () => {
    expect(told(thermal([23, -10, 50], [0.1, 0.2, 0.3]))).toEqual([
      'wrong B6: The cell goes from 23 °C (B5) to -10 °C (B6) while the chamber goes from -10 to 23 °C; expected it to follow. Were rows swapped?',
    ]);
  });

  test('whose dates fall, or stand twice, are wrong', () => {
    expect(told(history([45_000, 44_000, 44_000], [2, 2.1, 2.2]))).toEqual([
      'wrong A6: A6 holds 2020-06-18, which is not after 2023-03-15 in A5; expected dates that rise',
      'wrong A7: A7 holds 2020-06-18, which is not after 2020-06-18 in A6; expected dates that rise',
    ]);
  });
});

describe('the date decided on for the next calibration', () => {
  const due = (date: number | string | null, met: number | string) => told(
    history([45_000, 45_365, 45_730], [2, 2.1, 2.2]).single('next_due', 'B8', date).single('value_limit_date', 'D21', met, { formula: '=PROVE.DRIFT()' }),
  );

  test('gives no finding between the last calibration and the day the band meets a limit, nor if it is open', () => {
    expect(due(46_000, 46_500)).toEqual([]);
    expect(due(46_000, 'never')).toEqual([]);
    expect(due(null, 45_900)).toEqual([]);
  });

  test('is odd after the day on which the band meets a limit', () => {
    expect(due(46_000, 45_900)).toEqual(['odd B8: The date decided on in B8, 2025-12-09, is after the day on which the prediction band meets a limit, 2025-08-31 (D21); expected it before']);
  });

  test('is wrong before the last calibration, and if it is no date', () => {
    expect(due(45_700, 'never')).toEqual(['wrong B8: The date decided on in B8, 2025-02-12, is not after the last calibration, 2025-03-14; expected a day to come']);
    expect(due('soon', 'never')).toEqual(['wrong B8: The date decided on: B8 holds the text “soon”; expected a date, like 2026-11-25']);
  });
});

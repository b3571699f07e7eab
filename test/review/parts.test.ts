/** Parts of the review that need no workbook of ours. */
import fc from 'fast-check';
import { recalculated } from '../../src/review/recalculated';
import { agrees, worst } from '../../src/review/recompute/expected';
import { reportCsv, reportSummary, reportText, needsALook, type ReviewedFile } from '../../src/review/report';
import { review } from '../../src/review/review';
import type { ReviewFinding } from '../../src/review/reviewFinding';
import { shownNumber } from '../../src/review/shownNumber';
import { sameFormula } from '../../src/worksheets/record/sameContent';

describe('what a number format shows', () => {
  test.each([
    [0.00054, '0.000%', 0.00054], [0.000544, '0.000%', 0.00054], [0.000545, '0.000%', 0.00055], [-0.0005, '0.0%', -0.001], [1234.5678, '#,##0.00', 1234.57],
    [1.005, '0.00', 1.01], [0.000123456, '0.00E+00', 0.000123], [2.5, '0', 3], [0, '0.000', 0],
  ])('%p in %p is %p', (value, format, shown) => {
    expect(shownNumber(value, format)).toBeCloseTo(shown, 12);
  });

  test('general, dates and text show what there is', () => {
    expect([undefined, 'General', 'yyyy-mm-dd', '@'].map((format) => shownNumber(1.25, format))).toEqual([undefined, undefined, undefined, undefined]);
  });

  test('is never farther off than half a step', () => {
    fc.assert(fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.integer({ min: 0, max: 6 }), (value, decimals) => {
      const shown = shownNumber(value, decimals === 0 ? '0' : `0.${'0'.repeat(decimals)}`) as number;
      expect(Math.abs(shown - value)).toBeLessThanOrEqual(0.5000001 * 10 ** -decimals + 1e-9);
    }));
  });
});

test('values agree to 1e-9 of themselves, or to what rounding leaves of their scale; words to the letter', () => {
  const cell = (value: number | string | null) => ({ at: 'D4', column: 4, row: 4, value });
  expect(agrees({ cell: cell(2.000000001), value: 2, scale: 0 })).toBe(true);
  expect(agrees({ cell: cell(2.00000001), value: 2, scale: 0 })).toBe(false);
  expect(agrees({ cell: cell(5e-13), value: 0, scale: 1 })).toBe(true);
  expect(agrees({ cell: cell('not met'), value: 'not met', scale: 1 })).toBe(true);
  expect(agrees({ cell: cell(null), value: 2, scale: 1 })).toBe(false);
  expect(agrees({ cell: cell(-0.5), value: 0.5, scale: 1, eitherSign: true })).toBe(true);
  expect(worst([0.2, -0.3, 0.1])).toEqual({ value: -0.3, eitherSign: false });
});

test('formulas are the same however a program writes their numbers and names; other numbers make others', () => {
  expect(sameFormula('=IF(ABS(D4)<=F4*(1+1E-9),"within 1E-9","")', '=IF(ABS(D4)<=F4*(1+0.000000001),"within 1E-9","")')).toBe(true);
  expect(sameFormula('=T.INV.2T(1-0.95,3)*D10', '=T.INV.2T(1 - 0.950, 3)*D10')).toBe(true);
  expect(sameFormula('=D10*2', '=D1*02')).toBe(false);
  expect(sameFormula('=D10*2', '=D10*2.01')).toBe(false);
  expect(sameFormula('="1.0"', '="1"')).toBe(false);
});

describe('stored values against what formulas give', () => {
  const sheet = {
    name: 'Sheet', names: [],
    cells: [{ at: 'A1', value: 2, formula: '=1+1' }, { at: 'B1', value: 1e-17, formula: '=0.3-0.1*3' }, { at: 'A2', value: 5, formula: '=C1:C2', spill: { rows: 2, columns: 1 } }, { at: 'A3', value: 6 }, { at: 'A9', value: 7 }],
  };
  const values: Record<string, number> = { A1: 2, B1: 0, A2: 5, A3: 6 };

  test('nothing where they are the same, and rounding is let go', () => {
    expect(recalculated([sheet], (_, at) => values[at])).toEqual([]);
  });

  test('the cell that differs, also where a formula spills', () => {
    expect(recalculated([sheet], (_, at) => (at === 'A3' ? 6.5 : values[at]))).toEqual([
      { severity: 'wrong', kind: 'result', sheet: 'Sheet', at: 'A3', message: 'A3 holds 6 in the file, and its formula gives 6.5; expected the file to hold what it computes' },
    ]);
  });
});

describe('the report', () => {
  const finding = (message: string, severity: ReviewFinding['severity'] = 'wrong'): ReviewFinding => ({ severity, kind: 'limit', sheet: 'Cell A', at: 'F9', message });
  const of = (findings: ReviewFinding[]): ReviewedFile => ({ file: 'a.xlsx', review: { findings, recomputed: 5, agreeing: 4, sheets: ['Cell A'], record: 'none' } });

  test('lists findings, the gravest first, and says what was recomputed', () => {
    expect(reportText(of([finding('first', 'odd'), finding('second\nline')]))).toBe(
      'a.xlsx: 2 findings: 1 wrong, 1 odd; 4 of 5 results agree; not signed\n  wrong   Limit       Cell A!F9: second line\n  odd     Limit       Cell A!F9: first\n',
    );
  });

  test('as comma-separated values: quotes doubled, and nothing that a spreadsheet would compute', () => {
    expect(reportCsv(of([finding('=HYPERLINK("x")')]))).toBe('"a.xlsx","wrong","Limit","Cell A","F9","\'=HYPERLINK(""x"")"\r\n');
    expect(reportCsv(of([]))).toBe('"a.xlsx","","","","","Nothing found"\r\n');
  });

  test('counts files, and tells which need a look', () => {
    const files: ReviewedFile[] = [of([]), of([finding('x')]), { file: 'b.xlsx', failure: 'found no such file' }];
    expect(reportSummary(files)).toBe('3 files: 1 without a finding, 1 with findings, 1 not reviewed\n');
    expect(files.map(needsALook)).toEqual([false, true, true]);
    expect(reportText(files[2])).toBe('b.xlsx: not reviewed: found no such file\n');
  });
});

test('a workbook without a sheet of ours has nothing to recompute, and gives no finding', () => {
  const cells = [{ at: 'A1', value: 'Shopping' }, { at: 'B1', value: 3, formula: '=1+2' }];
  expect(review([{ name: 'Sheet1', cells, names: [] }])).toEqual({ findings: [], recomputed: 0, agreeing: 0, sheets: ['Sheet1'], record: 'none' });
  expect(review([])).toMatchObject({ findings: [], sheets: [] });
});

test('without a known template a constant among like formulas is found', () => {
  const cells = [2, 3, 4, 5, 6].map((row) => ({ at: `C${row}`, value: row, ...(row === 4 ? {} : { formula: `=A${row}-$B$1` }) }));
  expect(review([{ name: 'Own', cells, names: [{ name: 'value_x', range: 'C4' }] }]).findings).toEqual(expect.arrayContaining([expect.objectContaining({ kind: 'overwritten', at: 'C4' })]));
});

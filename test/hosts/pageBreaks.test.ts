import { pageBreaks } from '../../src/hosts/pageBreaks';
import type { SheetPlan } from '../../src/worksheets/plan';

/** A plan of one column 80 characters wide, of 22 pixels a row, with headings in these rows; an upright page holds 43 rows of it. */
function planned(headings: readonly number[], last: number, landscape = false): SheetPlan {
  return {
    name: 'Sheet', columns: [80], print: { area: `A1:A${last}`, landscape },
    cells: headings.map((row) => ({ at: `A${row}`, role: 'heading', value: 'Part' })),
  };
}

test('a sheet that fits on a page has no breaks', () => {
  expect(pageBreaks(planned([1, 10, 20], 40))).toEqual([]);
});

test('a part that would be cut goes on to the next page, with its heading', () => {
  expect(pageBreaks(planned([1, 30], 50))).toEqual([29]);
  expect(pageBreaks(planned([1, 30, 50, 60], 80))).toEqual([29, 59]);
});

test('a part longer than a page begins where it is, and is cut', () => {
  expect(pageBreaks(planned([1, 10], 80))).toEqual([]);
});

test('a page laid across holds fewer rows', () => {
  expect(pageBreaks(planned([1, 20], 40, true))).toEqual([19]);
});

test('a plan without print set-up has no breaks', () => {
  expect(pageBreaks({ ...planned([1, 30], 50), print: undefined })).toEqual([]);
});

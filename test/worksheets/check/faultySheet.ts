import { checkSheet } from '../../../src/worksheets/check/checkSheet';
import { points, SampleSheet, simulatedSheet, SOUND, TEN_UP, UP_DOWN } from '../sampleSheet';

/** Three runs up and down to 20 kN: forces in A10:A20, readings in B10:D20, net readings in E10:G20. */
export const sound = () => simulatedSheet([{ ...SOUND, id: 'tension', forces: points(20, UP_DOWN) }], 5);
/** Three runs of ten points to 20 kN, degree 2: rows 10 to 21. */
export const tenPoints = (degree = 2) => simulatedSheet([{ ...SOUND, id: 'tension', forces: points(20, TEN_UP) }], 5, degree);
/** Two blocks: tension from row 10, compression from row 24. */
export const bothWays = () => simulatedSheet(
  [{ ...SOUND, id: 'tension', forces: points(20, UP_DOWN) }, { ...SOUND, id: 'compression', forces: points(-20, UP_DOWN) }], 5,
);

const NET = { B: 'E', C: 'F', D: 'G' } as Record<string, string>;

/** Types a reading, and lets its net reading follow. */
export function type(sheet: SampleSheet, at: string, reading: number): SampleSheet {
  const net = Number((reading - sheet.number(`${at[0]}10`)).toFixed(7));
  const isAnchor = at === 'B10';
  return sheet.put(at, reading).put(NET[at[0]] + at.slice(1), net, isAnchor ? { formula: '=PROVE.NET()' } : {});
}

export function findings(sheet: SampleSheet) {
  return checkSheet(sheet.read()).map(({ severity, at, message }) => `${severity} ${at} ${message}`);
}

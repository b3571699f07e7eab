/** What a class limits, each a fraction, in the order of the columns of a table of limits; r/F is the relative resolution. */
export const PROVING_PARAMETERS = ['b', 'b′', 'fc', 'f0', 'v', 'c', 'U of force', 'r/F'] as const;
export type ProvingParameter = (typeof PROVING_PARAMETERS)[number];

/** Greatest magnitudes allowed; a parameter without a limit is not judged. */
export type ProvingLimits = Readonly<Partial<Record<ProvingParameter, number>>>;

/** A class and its limits. */
export interface ProvingClass {
  readonly name: string;
  readonly limits: ProvingLimits;
}

/** Classes, best first. */
export const PROVING_CLASS_NAMES = ['00', '0.5', '1', '2'] as const;

/** Percent, a row a class; the least force of 4000, 2000, 1000, 500 resolutions stands here as r/F. Source: ISO 376:2011 (from memory). */
const PERCENT = [
  [0.05, 0.025, 0.025, 0.012, 0.07, 0.025, 0.01, 100 / 4000],
  [0.1, 0.05, 0.05, 0.025, 0.15, 0.05, 0.02, 100 / 2000],
  [0.2, 0.1, 0.1, 0.05, 0.3, 0.1, 0.05, 100 / 1000],
  [0.4, 0.2, 0.2, 0.1, 0.5, 0.2, 0.1, 100 / 500],
];

/** The classes of the standard, best first. Source: ISO 376:2011 (from memory). */
export const PROVING_CLASSES: readonly ProvingClass[] = PROVING_CLASS_NAMES.map((name, row) => ({
  name,
  limits: Object.fromEntries(PROVING_PARAMETERS.map((parameter, column) => [parameter, PERCENT[row][column] / 100])),
}));

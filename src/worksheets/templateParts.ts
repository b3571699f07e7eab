/** What the kinds of templates share: their head, the item, and a series of readings. */
import * as v from 'valibot';

/** The form of template files that this version reads. */
export const TEMPLATE_FORM = 1;

/** Directions by quantity; the first of a pair is positive. */
export const DIRECTIONS = {
  force: ['tension', 'compression'],
  torque: ['clockwise', 'counter-clockwise'],
  signal: ['positive', 'negative'],
} as const;

/** Results that a run can be judged by, in the order the sheet shows them. */
export const RESULTS = [
  'sensitivity', 'rated_output', 'zero_balance', 'nonlinearity', 'hysteresis', 'repeatability', 'zero_return', 'combined_error',
  'error_band', 'calibration',
] as const;

/** A text of one line. */
export const words = (most: number) => v.pipe(
  v.string(), v.nonEmpty('expected a text'), v.maxLength(most, `expected at most ${most} characters`),
  v.regex(/^\S(?:[^\p{Cc}]*\S)?$/u, 'expected a text of one line, without blanks around it'),
);
/** A part of a whole. */
export const fraction = (what: string) => v.pipe(v.number(), v.minValue(0, `expected ${what}, 0 or more`), v.maxValue(1, `expected ${what} as a fraction, 1 at most`));
/** A number above 0. */
export const positive = (unit: string) => v.pipe(v.number(), v.gtValue(0, `expected a number above 0, in ${unit}`), v.finite('expected a finite number'));
/** A limit: a result is within it if its magnitude is not greater. A fraction of rated output where nothing else is said. */
export const limit = v.optional(fraction('a limit'));

/** What every template says. */
export const head = {
  $schema: v.optional(v.string()),
  form: v.literal(TEMPLATE_FORM, `expected ${TEMPLATE_FORM}, the form that this version reads`),
  /** The name of its file. */
  id: v.pipe(v.string(), v.regex(/^[a-z][a-z0-9-]{1,39}$/, 'expected 2 to 40 lower-case letters, digits and hyphens, a letter first')),
  title: words(60),
  /** What it is for, in a sentence. */
  purpose: words(240),
  /** The standard or practice it follows, and what of it is written from memory. */
  source: words(240),
  /** Shown on the sheet where the work can hurt someone. */
  cautions: v.pipe(v.array(words(300)), v.maxLength(6, 'expected at most 6 cautions')),
  /** How results become a verdict that the customer is told. */
  decisionRule: words(300),
};

/** The item as the form suggests it. */
export const item = v.strictObject({
  capacity: positive('the unit of the item'),
  unit: words(12),
  outputUnit: words(12),
  /** Smallest step that the output is read to, output units. */
  resolution: positive('output units'),
  /** Output at capacity as specified, output units. */
  ratedOutput: v.optional(positive('output units')),
});

const directions = v.pipe(
  v.array(v.picklist([...DIRECTIONS.force, ...DIRECTIONS.torque, ...DIRECTIONS.signal], 'expected "tension", "compression", "clockwise", "counter-clockwise", "positive" or "negative"')),
  v.minLength(1, 'expected at least one direction'), v.maxLength(2, 'expected at most two directions'),
  v.check((list) => new Set(list).size === list.length, 'expected each direction once'),
);

/** Percent of capacity, in the order applied: a zero, loads, and a zero again if the procedure ends with one. */
const points = v.pipe(
  v.array(v.pipe(v.number(), v.minValue(0, 'expected 0 % or more'), v.maxValue(150, 'expected 150 % at most'))),
  v.minLength(2, 'expected at least a zero and one load'), v.maxLength(60, 'expected at most 60 points'),
  v.check((list) => list[0] === 0, 'expected the first point to be 0'),
  v.check((list) => list.slice(1, -1).every((point) => point > 0) && list.some((point) => point > 0), 'expected loads above 0 between the first and the last point'),
);

/** The series of readings that run and indication sheets share. */
export const series = {
  directions,
  points,
  runs: v.pipe(v.number(), v.integer('expected a whole number of runs'), v.minValue(1, 'expected at least 1 run'), v.maxValue(6, 'expected at most 6 runs')),
  /** How the transducer stands in the machine in each run, like "120°". */
  positions: v.optional(v.pipe(v.array(words(16)), v.maxLength(6, 'expected at most 6 positions'))),
  /** "planned": the points are fixed; "typed": the applied values are typed in; "weights": they are computed from dead weights. */
  applied: v.picklist(['planned', 'typed', 'weights'], 'expected "planned", "typed" or "weights"'),
  /** What is taken off the readings: the zero before the run, the mean of first and last, or between the two by row. */
  zero: v.picklist(['initial', 'average', 'interpolated'], 'expected "initial", "average" or "interpolated"'),
  results: v.pipe(v.array(v.picklist(RESULTS, `expected one of ${RESULTS.join(', ')}`)), v.minLength(1, 'expected at least one result')),
  limits: v.strictObject({
    /** Of the rated output as specified. */
    rated_output: limit,
    zero_balance: limit, nonlinearity: limit, hysteresis: limit, repeatability: limit, zero_return: limit, combined_error: limit, error_band: limit,
    /** Where the class must hold from, as a fraction of capacity. */
    class_aa_from: limit, class_a_from: limit,
  }),
};

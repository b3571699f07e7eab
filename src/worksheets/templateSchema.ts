import * as v from 'valibot';
import { DIRECTIONS, fraction, head, item, limit, positive, RESULTS, series, words } from './templateParts';

export { DIRECTIONS, RESULTS } from './templateParts';

const run = v.strictObject({
  ...head, kind: v.literal('run'), quantity: v.picklist(['force', 'torque'], 'expected "force" or "torque"'), item, ...series,
  /** True: readings are corrected to the reference temperature before anything else. */
  corrected: v.optional(v.boolean('expected true or false')),
  /** True: a block with the content of an electronic data sheet (TEDS). */
  teds: v.optional(v.boolean('expected true or false')),
  /** Degree of the calibration polynomial. */
  degree: v.optional(v.pipe(v.number(), v.integer('expected a whole number'), v.minValue(1, 'expected 1 or more'), v.maxValue(5, 'expected 5 at most'))),
});

const indication = v.strictObject({
  ...head, kind: v.literal('indication'), quantity: v.picklist(['force', 'torque', 'signal'], 'expected "force", "torque" or "signal"'), item, ...series,
  /** One block of readings a stage. */
  stages: v.pipe(v.array(v.picklist(['as found', 'as left'], 'expected "as found" or "as left"')), v.minLength(1, 'expected at least one stage'), v.maxLength(2, 'expected at most two stages')),
  /** Allowed error of a point: the greater of a fraction of the reading and a fraction of capacity. */
  tolerance: v.strictObject({ ofReading: fraction('a tolerance'), ofCapacity: fraction('a tolerance') }),
  /** Indication at capacity of the indicator per unit of the applied signal; for quantity "signal" only. */
  scale: v.optional(positive('indicated units per unit applied')),
});

/** Minutes, rising from 0. */
const minutes = v.pipe(
  v.array(v.pipe(v.number(), v.minValue(0, 'expected 0 or more, in minutes'))),
  v.minLength(2, 'expected at least two times'), v.maxLength(40, 'expected at most 40 times'),
  v.check((list) => list[0] === 0 && list.every((time, i) => i === 0 || time > list[i - 1]), 'expected times that rise from 0'),
);

const creep = v.strictObject({
  ...head, kind: v.literal('creep'), quantity: v.picklist(['force', 'torque'], 'expected "force" or "torque"'), item,
  direction: v.picklist([...DIRECTIONS.force, ...DIRECTIONS.torque], 'expected "tension", "compression", "clockwise" or "counter-clockwise"'),
  /** Load held, percent of capacity. */
  load: v.pipe(v.number(), v.gtValue(0, 'expected a load above 0 %'), v.maxValue(150, 'expected 150 % at most')),
  loadedTimes: minutes,
  unloadedTimes: minutes,
  limits: v.strictObject({ creep: limit, creep_return: limit }),
});

const thermal = v.strictObject({
  ...head, kind: v.literal('thermal'), quantity: v.picklist(['force', 'torque'], 'expected "force" or "torque"'), item,
  direction: v.picklist([...DIRECTIONS.force, ...DIRECTIONS.torque], 'expected "tension", "compression", "clockwise" or "counter-clockwise"'),
  /** Load that the span is taken at, percent of capacity. */
  load: v.pipe(v.number(), v.gtValue(0, 'expected a load above 0 %'), v.maxValue(150, 'expected 150 % at most')),
  /** Of the chamber, °C, in the order taken. */
  temperatures: v.pipe(
    v.array(v.pipe(v.number(), v.minValue(-200, 'expected -200 °C or more'), v.maxValue(500, 'expected 500 °C at most'))),
    v.maxLength(20, 'expected at most 20 temperatures'),
    v.check((list) => new Set(list).size >= 3, 'expected at least 3 different temperatures'),
  ),
  limits: v.strictObject({
    /** Of rated output, and of span, per 10 °C. */
    zero_effect: limit, span_effect: limit,
    /** Off the fitted lines: of rated output, and of span. */
    zero_deviation: limit, span_deviation: limit,
    /** Least minutes at a temperature before it is read. */
    soak: v.pipe(v.number(), v.minValue(0, 'expected 0 minutes or more'), v.maxValue(10_000, 'expected 10000 minutes at most')),
    /** Greatest difference of cell and chamber when it is read, °C. */
    settled: v.optional(positive('°C')),
  }),
});

/** A limit of a class, a fraction. */
const classLimit = v.optional(v.pipe(v.number(), v.minValue(0, 'expected a limit, 0 or more'), v.maxValue(0.02, 'expected a limit as a fraction, 0.02 at most')));
/** b with rotation, b′ in the same position, interpolation, zero, reversibility, creep, U of the applied force, resolution by lowest force. */
const classLimits = v.strictObject({ b: classLimit, b_same: classLimit, fc: classLimit, f0: classLimit, v: classLimit, c: classLimit, force: classLimit, resolution: classLimit });

const proving = v.strictObject({
  ...head, kind: v.literal('proving'), quantity: v.literal('force', 'expected "force"'), item,
  direction: v.picklist(DIRECTIONS.force, 'expected "tension" or "compression"'),
  /** True: decreasing forces follow the rotated series. */
  decreasing: v.boolean('expected true or false'),
  /** Percent of capacity, rising; the zeros before and after each series are added. */
  points: v.pipe(
    v.array(v.pipe(v.number(), v.gtValue(0, 'expected a force above 0 %'), v.maxValue(150, 'expected 150 % at most'))),
    v.minLength(3, 'expected at least 3 forces'), v.maxLength(30, 'expected at most 30 forces'),
    v.check((list) => list.every((point, i) => i === 0 || point > list[i - 1]), 'expected forces that rise'),
  ),
  /** How the instrument stands in X1, X2, X3 and X5. */
  positions: v.optional(v.pipe(v.array(words(16)), v.length(4, 'expected four positions, of X1, X2, X3 and X5'))),
  /** Degree of the interpolation polynomial. */
  degree: v.pipe(v.number(), v.integer('expected a whole number'), v.minValue(1, 'expected 1 or more'), v.maxValue(3, 'expected 3 at most')),
  /** Form of the equation for the uncertainty over force. */
  equation: v.picklist(['inverse', 'linear', 'quadratic'], 'expected "inverse", "linear" or "quadratic"'),
  classWanted: v.picklist(['00', '0.5', '1', '2'], 'expected "00", "0.5", "1" or "2"'),
  /** Where the class must hold from, percent of capacity. */
  classFrom: v.pipe(v.number(), v.gtValue(0, 'expected a force above 0 %'), v.maxValue(150, 'expected 150 % at most')),
  limits: v.strictObject({ class_00: classLimits, class_05: classLimits, class_1: classLimits, class_2: classLimits }),
});

/** A time between calibrations, months. */
const months = v.pipe(v.number(), v.gtValue(0, 'expected months above 0'), v.maxValue(600, 'expected 600 months at most'));

const history = v.strictObject({
  ...head, kind: v.literal('history'), quantity: v.picklist(['force', 'torque'], 'expected "force" or "torque"'), item,
  /** Calibrations that the sheet has room for. */
  rows: v.pipe(v.number(), v.integer('expected a whole number of rows'), v.minValue(3, 'expected at least 3 rows'), v.maxValue(60, 'expected at most 60 rows')),
  /** Class whose limit the shift between two calibrations is held against. */
  class: v.picklist(['AA', 'A'], 'expected "AA" or "A"'),
  interval: v.strictObject({
    now: months, least: months, greatest: months,
    /** Part of the calibrations that should find the item inside. */
    target: v.pipe(v.number(), v.gtValue(0, 'expected a part above 0'), v.ltValue(1, 'expected a part below 1')),
  }),
  limits: v.strictObject({
    /** Since the first calibration, of reading: the limits that the prediction band is to meet. */
    change: v.pipe(v.number(), v.gtValue(0, 'expected a change above 0'), v.maxValue(1, 'expected a change as a fraction, 1 at most')),
    /** Of reading a year; and of zero since the calibration before, of rated output. */
    drift: limit, zero_shift: limit,
  }),
});

const inspection = v.strictObject({
  ...head, kind: v.literal('inspection'), quantity: v.picklist(['force', 'torque'], 'expected "force" or "torque"'), item,
  bridge: v.strictObject({
    /** Nominal resistance of the bridge, ohms. */
    resistance: positive('ohms'),
    /** Allowed deviation of a resistance between corners, a fraction. */
    tolerance: fraction('a tolerance'),
  }),
  /** Least insulation resistance, megohms. */
  insulation: positive('megohms'),
  limits: v.strictObject({
    zero_balance: limit, zero_shift: limit,
    /** Zero read, less the zero that the arms imply. */
    zero_difference: limit,
    /** Resistance across a diagonal against that of the arms, a fraction of it. */
    diagonals: limit,
    /** Change shown with the shunt resistor against the one expected, a fraction of it. */
    shunt: limit,
  }),
  /** What is looked at, and what for. */
  looks: v.pipe(v.array(v.strictObject({ part: words(40), lookFor: words(120) })), v.minLength(1, 'expected at least one part to look at'), v.maxLength(24, 'expected at most 24 parts')),
});

const summing = v.strictObject({
  ...head, kind: v.literal('summing'), quantity: v.picklist(['force', 'torque'], 'expected "force" or "torque"'), item,
  /** Cells joined in parallel. */
  cells: v.pipe(v.number(), v.integer('expected a whole number of cells'), v.minValue(2, 'expected at least 2 cells'), v.maxValue(8, 'expected at most 8 cells')),
  limits: v.strictObject({
    /** Zero of the box less the one expected, of rated output; its change against the one expected, a fraction of it. */
    zero_difference: limit, change_difference: limit,
  }),
});

/**
 * A run template: a procedure as a lab writes it down. Plain data, so that one from somebody else can do nothing but describe:
 * no formula and no code stands in it, and its words reach a sheet only as text.
 */
export const templateSchema = v.variant('kind', [run, indication, creep, thermal, proving, history, inspection, summing], 'expected "run", "indication", "creep", "thermal", "proving", "history", "inspection" or "summing"');

export type Template = v.InferOutput<typeof templateSchema>;
export type RunTemplate = v.InferOutput<typeof run>;
export type IndicationTemplate = v.InferOutput<typeof indication>;
export type CreepTemplate = v.InferOutput<typeof creep>;
export type ThermalTemplate = v.InferOutput<typeof thermal>;
export type ProvingTemplate = v.InferOutput<typeof proving>;
export type HistoryTemplate = v.InferOutput<typeof history>;
export type InspectionTemplate = v.InferOutput<typeof inspection>;
export type SummingTemplate = v.InferOutput<typeof summing>;
export type SeriesTemplate = RunTemplate | IndicationTemplate;
export type Direction = RunTemplate['directions'][number];
export type ResultId = (typeof RESULTS)[number];

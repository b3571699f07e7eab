import type { PlanCell, SheetPlan } from '../plan';

/**
 * Invented readings for a planned sheet, for demonstration only: a made-up transducer with a slight bend, hysteresis, creep and
 * scatter. The scatter is a fixed sequence, so that a sheet looks the same every time.
 */
export function withInventedReadings(plan: SheetPlan): SheetPlan {
  const cells = new Map(plan.cells.map((cell) => [cell.at, cell]));
  const put = (at: string, value: string | number): void => {
    const cell = cells.get(at);
    if (cell) cells.set(at, { ...cell, value });
  };
  const ranges = new Map((plan.names ?? []).map(({ name, range }) => [name, range]));
  conditions(plan).forEach(([at, value]) => put(at, value));
  for (const [name, range] of ranges) {
    const block = /^readings_(.+)$/.exec(name)?.[1];
    if (block === undefined) continue;
    const timed = ranges.get(`times_${block}`);
    if (timed !== undefined) record(cells, block, timed, range).forEach(([at, value]) => put(at, value));
    else series(cells, { block, forces: ranges.get(`forces_${block}`) as string, readings: range, masses: ranges.get('masses'), scale: Number(cells.get(ranges.get('scale') ?? '')?.value ?? 0) }).forEach(([at, value]) => put(at, value));
  }
  inspection(plan, cells).forEach(([at, value]) => put(at, value));
  thermal(ranges, cells).forEach(([at, value]) => put(at, value));
  history(ranges).forEach(([at, value]) => put(at, value));
  summing(ranges).forEach(([at, value]) => put(at, value));
  return { ...plan, cells: [...cells.values()] };
}

type Put = readonly [at: string, value: string | number];

const OUTPUT_AT_CAPACITY = 2;

/** Where a series of readings stands, and what it is of. */
interface SeriesRanges {
  readonly block: string;
  readonly forces: string;
  readonly readings: string;
  readonly masses?: string;
  /** 0 if the readings are in the unit applied. */
  readonly scale: number;
}

/** Readings of a series: as many as the range has columns, each of every applied value. */
function series(cells: ReadonlyMap<string, PlanCell>, { block, forces, readings, masses, scale }: SeriesRanges): Put[] {
  const rows = column(forces);
  const weights = masses === undefined ? [] : column(masses);
  // Where the forces are computed from what is applied, that stands to the left; where from weights, as these are.
  const applied = rows.map((at, i) => (masses === undefined
    ? Number(cells.get(at)?.value ?? cells.get(beside(at, -1))?.value ?? 0)
    : Number(cells.get(weights[i])?.value ?? 0) * (/compression|counter/.test(block) ? -1 : 1)));
  const inUnits = /^as_(found|left)/.test(block);
  const greatest = Math.max(...applied.map(Math.abs));
  const top = applied.findIndex((value) => Math.abs(value) === greatest);
  const gain = block.startsWith('as_found') && scale === 0 ? 1.0014 : 1.00005;
  const [first, last] = readings.split(':').map(letters);
  return columnsBetween(first, last).flatMap((letter, run) => rows.map((at, i): Put => {
    const x = Math.abs(applied[i]) / greatest;
    const shape = x + 1.2e-3 * x * (1 - x) * (1 - 0.3 * x) + (i > top ? 4e-4 * x * (1 - x) : 0);
    const sign = applied[i] < 0 || (applied[i] === 0 && Math.min(...applied) < 0) ? -1 : 1;
    const scatter = 1.5e-5 * noise(run * 97 + i * 13 + block.length * 7);
    const rotation = 2e-5 * Math.sin(2 * run) * x;
    const full = inUnits ? greatest * (scale || 1) : OUTPUT_AT_CAPACITY;
    const zero = inUnits ? 0 : 0.0123 + 0.0001 * run;
    const read = zero + sign * full * ((inUnits ? x + 2e-4 * x * (1 - x) : shape + rotation) * gain + scatter);
    return [`${letter}${rowNumber(at)}`, roundTo(read, inUnits ? 3 : 5)];
  }));
}

/** Readings of a record against time: creep towards a limit, loaded or after the load. */
function record(cells: ReadonlyMap<string, PlanCell>, block: string, times: string, readings: string): Put[] {
  const letter = letters(readings);
  return column(times).map((at, i): Put => {
    const settled = 1 - Math.exp(-Number(cells.get(at)?.value ?? 0) / 8);
    const read = block === 'loaded' ? 2.0123 + 4.1e-4 * settled : 0.0125 - 3.6e-4 * settled;
    return [`${letter}${rowNumber(at)}`, roundTo(read + 4e-6 * noise(i), 5)];
  });
}

/** Zero and output at each temperature of the chamber: small effects, a slight curve, and scatter. */
function thermal(ranges: ReadonlyMap<string, string>, cells: ReadonlyMap<string, PlanCell>): Put[] {
  const planned = ranges.get('planned_temperature');
  if (planned === undefined) return [];
  const typed = ['temperature', 'soak', 'zero', 'loaded'].map((what) => letters(ranges.get(`typed_${what}`) ?? ''));
  return column(planned).flatMap((at, i): Put[] => {
    const cell = roundTo(Number(cells.get(at)?.value ?? 0) + 0.3 * noise(i + 5), 1);
    const off = cell - 23;
    const zero = 0.0123 + 3.1e-6 * off + 8e-6 * noise(i);
    const span = -2.0011 * (1 + 9e-6 * off + 2e-8 * off * off + 1e-5 * noise(i + 40));
    return [cell, 90 + 5 * i, roundTo(zero, 5), roundTo(zero + span, 5)].map((value, j): Put => [`${typed[j]}${rowNumber(at)}`, value]);
  });
}

const CALIBRATIONS = 7;

/** Calibrations about a year apart: a slow drift, scatter, and one found outside. */
function history(ranges: ReadonlyMap<string, string>): Put[] {
  const [dates, outputs, found] = ['date', 'output', 'found'].map((what) => ranges.get(`typed_${what}`));
  if (dates === undefined || outputs === undefined || found === undefined) return [];
  return column(dates).slice(0, CALIBRATIONS).flatMap((at, i): Put[] => {
    const output = `${letters(outputs)}${rowNumber(at)}`;
    return [
      [at, 44_150 + 366 * i + Math.round(9 * noise(i + 3))], [output, roundTo(2.0011 + 1.5e-4 * i + 1.5e-4 * noise(i + 11), 5)],
      [beside(output, 1), roundTo(0.0121 + 6e-5 * i + 2e-5 * noise(i + 21), 5)], [beside(output, 2), 0.0002],
      [`${letters(found)}${rowNumber(at)}`, i === 3 ? 'outside' : 'inside'], ...(i === 3 ? [[beside(output, 6), 'zero outside'] as const] : []),
    ];
  });
}

const CONDITIONS: Readonly<Record<string, string | number>> = {
  Customer: 'Invented: Quarry Lift Co-operative', Item: 'Invented cell of a crane scale', Identification: 'DEMO-0017', 'Condition as received': 'clean, cable rubbed near the gland',
  'Indicator and cable': 'bench indicator, 6-wire, 5 m', 'Machine and adapters': 'dead-weight frame, domed pads', 'Exercise loads': '3 to capacity', 'Standard used': 'DEMO-STD-3',
  'Simulator used': 'DEMO-SIM-1', 'Instruments used': 'DEMO ohmmeter, insulation tester', 'Its uncertainty, k = 2': 0.0002, 'Due date': 46_400, Place: 'Invented bench, bay 2', 'Room temperature, °C': 22.8,
  'Humidity, %': 46, Technician: 'A. Nother (invented)', Date: 46_351, Remarks: 'INVENTED READINGS, for demonstration only.',
};

/** Conditions by the label that stands left of their cell. */
function conditions({ cells }: SheetPlan): Put[] {
  const inputs = new Set(cells.filter(({ role, value }) => role === 'input' && value === undefined).map(({ at }) => at));
  return cells.flatMap(({ at, role, value }): Put[] => {
    if ((role !== 'label' && role !== 'aside') || typeof value !== 'string' || !(value in CONDITIONS)) return [];
    const cell = beside(at, 2);
    return inputs.has(cell) ? [[cell, CONDITIONS[value]]] : [];
  });
}

const MEASURED: Readonly<Record<string, number>> = {
  // Of arms of 350.031, 350.012, 349.998 and 349.991 Ω, whose zero is 0.0186 mV/V, as an ohmmeter shows them to about 0.01 Ω.
  'Corners 1–2, neighbours': 262.52, 'Corners 2–3, neighbours': 262.51, 'Corners 3–4, neighbours': 262.5, 'Corners 4–1, neighbours': 262.5,
  'Corners 1–3, opposite': 350.02, 'Corners 2–4, opposite': 350, 'Shunt resistor, if fitted': 100_000, 'Change shown with the shunt': 0.8731, 'Insulation, bridge to body': 5200, 'Insulation, bridge to shield': 640,
  'Maker, by the register': 16_000, Model: 1, 'Serial number': 17, 'Zero now': 0.0182, 'Zero at the last calibration': 0.0123,
};

/** What an inspection found: all good but the cable, and a low insulation against the shield. */
function inspection({ validations = [], cells: planned }: SheetPlan, cells: ReadonlyMap<string, PlanCell>): Put[] {
  const looks = validations.find(({ rule }) => rule.kind === 'list' && rule.words.includes('faulty'))?.range;
  const seen = looks === undefined ? [] : column(looks).map((at): Put => [at, cells.get(beside(at, -6))?.value === 'Cable' ? 'doubtful' : 'good']);
  const measured = planned.flatMap(({ at, value }): Put[] => (typeof value === 'string' && value in MEASURED ? [[beside(at, 3), MEASURED[value]]] : []));
  return [...seen, ...measured];
}

/** Cells of a box, a little unlike and unevenly loaded; the box is read as their parallel gives it, and a little less of the change. */
function summing(ranges: ReadonlyMap<string, string>): Put[] {
  const ohms = ranges.get('output_resistances');
  if (ohms === undefined) return [];
  const rows = column(ohms);
  const cells = rows.map((at, i) => {
    const zero = roundTo(0.008 + 0.009 * noise(i + 3), 4);
    return { at: [ranges.get('typed_zero'), ranges.get('typed_loaded'), ohms].map((range = '') => `${letters(range)}${rowNumber(at)}`), values: [zero, roundTo(zero + 0.9 + 0.04 * noise(i + 11), 4), roundTo(351 + noise(i + 23), 2)] };
  });
  const weight = cells.reduce((sum, { values }) => sum + 1 / values[2], 0);
  const joined = (which: number) => cells.reduce((sum, { values }) => sum + values[which] / values[2], 0) / weight;
  return [
    ...cells.flatMap(({ at, values }) => at.map((cell, i): Put => [cell, values[i]])),
    [ranges.get('box_read_zero') ?? '', roundTo(joined(0), 4)], [ranges.get('box_read_loaded') ?? '', roundTo(joined(1) - 0.0003, 4)],
  ];
}

/** A fixed sequence between −1 and 1. */
function noise(n: number): number {
  const wave = Math.sin(n * 12.9898 + 4.1414) * 43_758.5453;
  return 2 * (wave - Math.floor(wave)) - 1;
}

function roundTo(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}

function letters(at: string): string {
  return /^[A-Z]+/.exec(at)?.[0] ?? '';
}

function rowNumber(at: string): number {
  return Number(/\d+$/.exec(at)?.[0]);
}

/** The cells of a range of one column. */
function column(range: string): string[] {
  const [first, last = first] = range.split(':');
  return Array.from({ length: rowNumber(last) - rowNumber(first) + 1 }, (_, i) => `${letters(first)}${rowNumber(first) + i}`);
}

function columnsBetween(first: string, last: string): string[] {
  return Array.from({ length: last.charCodeAt(0) - first.charCodeAt(0) + 1 }, (_, i) => String.fromCharCode(first.charCodeAt(0) + i));
}

/** The cell so many columns to the right; sheets with invented readings have fewer than 26. */
function beside(at: string, columns: number): string {
  return `${String.fromCharCode(letters(at).charCodeAt(0) + columns)}${rowNumber(at)}`;
}

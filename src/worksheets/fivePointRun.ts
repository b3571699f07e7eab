import {
  INVENTED_COMPRESSION, INVENTED_CREEP, INVENTED_FORCES, INVENTED_TENSION, INVENTED_THERMAL, INVENTED_WARM,
} from './data/inventedRun';
import type { SheetPlan } from './plan';
import { formula, PlanBuilder } from './planBuilder';

const ROWS = INVENTED_FORCES.length;
const TENSION = 8;
const COMPRESSION = TENSION + ROWS + 4;
const WARM = COMPRESSION + ROWS + 4;
/** Column H, where the results stand. */
const RESULTS = 8;
const PERCENT = '0.000%';
const OUTPUT = '0.00000';

/** A range of the readings columns from one column to another, over the rows of a run. */
function range(first: number, from: string, to = from): string {
  return `${from}${first}:${to}${first + ROWS - 1}`;
}

const tension = `${range(TENSION, 'A')},${range(TENSION, 'B', 'C')}`;
const compression = `${range(COMPRESSION, 'A')},${range(COMPRESSION, 'B', 'C')}`;

/** An invented run in tension and compression: every static characteristic, and a warm run corrected to 23 °C. */
export function fivePointRun(): SheetPlan {
  const sheet = new PlanBuilder('Five-point run', [6, 11, 10, 10, 12, 12, 2, 27, 12, 13, 60]);
  sheet.wide(1, 1, 11, 'title', 'Five-point run, tension and compression');
  sheet.wide(1, 2, 11, 'subtitle', 'Invented readings, for demonstration only: a made-up 20 kN cell of a made-up cable test rig. Output in mV/V.');
  sheet.wide(1, 3, 11, 'caution', 'Stand clear of the load train while it is loaded. Never exceed the safe overload of cell, adapters or frame. Keep off hot parts in a warm run.');
  block(sheet, TENSION, 'Tension', INVENTED_FORCES, INVENTED_TENSION);
  block(sheet, COMPRESSION, 'Compression', INVENTED_FORCES.map((force) => (force === 0 ? 0 : -force)), INVENTED_COMPRESSION);
  warm(sheet);
  characteristics(sheet, 5);
  const creepRow = thermal(sheet, 24);
  const deviationRow = creepReturn(sheet, creepRow);
  deviationTable(sheet, deviationRow);
  return sheet.plan(2);
}

function block(sheet: PlanBuilder, first: number, direction: string, forces: readonly number[], runs: readonly (readonly number[])[]): void {
  sheet.wide(1, first - 3, 6, 'heading', `${direction}, 23 °C`);
  sheet.across(1, first - 2, 'header', ['Force', 'Run 1', 'Run 2', 'Net 1', 'Net 2', 'Fit residual 1']);
  sheet.across(1, first - 1, 'header', ['kN', 'mV/V', 'mV/V', 'mV/V', 'mV/V', 'mV/V']);
  sheet.down(1, first, 'input', forces, '0');
  runs.forEach((run, i) => sheet.down(2 + i, first, 'input', run, OUTPUT));
  sheet.spill(4, first, 2, ROWS, formula(`PROVE.NET(${range(first, 'A')},${range(first, 'B', 'C')})`), OUTPUT);
  sheet.spill(6, first, 1, ROWS, formula(`PROVE.RESIDUALS(${range(first, 'A')},${range(first, 'D')},2)`), OUTPUT);
}

function characteristics(sheet: PlanBuilder, row: number): void {
  sheet.wide(RESULTS, row, 4, 'heading', 'Static characteristics, fractions of rated output');
  sheet.across(RESULTS, row + 1, 'header', ['Quantity', 'Tension', 'Compression', 'Function']);
  const lines: [string, string, string][] = [
    ['Rated output at 20 kN, mV/V', 'PROVE.SENSITIVITY(@)', OUTPUT],
    ['Zero balance', 'PROVE.ZEROBALANCE(#,PROVE.SENSITIVITY(@))', PERCENT],
    ['Non-linearity, terminal line', 'PROVE.NONLINEARITY(@)', PERCENT],
    ['Non-linearity, best-fit line', 'PROVE.NONLINEARITY(@,"bestfit")', PERCENT],
    ['Non-linearity, best fit through zero', 'PROVE.NONLINEARITY(@,"zerofit")', PERCENT],
    ['Non-linearity, minimax line', 'PROVE.NONLINEARITY(@,"minimax")', PERCENT],
    ['Hysteresis, worst', 'PROVE.HYSTERESIS(@)', PERCENT],
    ['Hysteresis at 8 kN', 'PROVE.HYSTERESIS(@,8)', PERCENT],
    ['Repeatability', 'PROVE.REPEATABILITY(@)', PERCENT],
    ['Zero return', 'PROVE.ZERORETURN(@)', PERCENT],
    ['Combined error', 'PROVE.COMBINEDERROR(@)', PERCENT],
    ['Static error band, half-width', 'INDEX(PROVE.ERRORBAND(@,FALSE),1,1)', PERCENT],
    ['… its output at 20 kN, mV/V', 'INDEX(PROVE.ERRORBAND(@,FALSE),1,2)', OUTPUT],
  ];
  lines.forEach(([quantity, text, format], i) => {
    const at = row + 2 + i;
    const inBlock = (ranges: string, first: number) => formula(text.replace('@', ranges).replace('#', `B${first}`));
    sheet.put(RESULTS, at, 'label', quantity)
      .put(RESULTS + 1, at, 'result', inBlock(tension, TENSION), format)
      .put(RESULTS + 2, at, 'result', inBlock(compression, COMPRESSION), format)
      .put(RESULTS + 3, at, 'formula', text.replace('@', 'forces,readings').replace('#', 'zero'));
  });
  const last = row + 2 + lines.length;
  sheet.put(RESULTS, last, 'label', 'Asymmetry of the directions')
    .put(RESULTS + 1, last, 'result', formula(`PROVE.ASYMMETRY(I${row + 2},J${row + 2})`), PERCENT)
    .put(RESULTS + 3, last, 'formula', 'PROVE.ASYMMETRY(tension,compression)');
}

/** A heading and a table to type in beside the runs: a column of times or temperatures, then outputs; gives its first and last row. */
function sideTable(sheet: PlanBuilder, row: number, heading: string, columns: readonly (readonly [head: string, values: readonly number[]])[]) {
  const first = row + 2;
  sheet.wide(RESULTS, row, 4, 'heading', heading);
  sheet.across(RESULTS, row + 1, 'header', columns.map(([head]) => head));
  columns.forEach(([, values], i) => sheet.down(RESULTS + i, first, 'input', values, i === 0 ? '0.0' : OUTPUT));
  return { first, last: first + columns[0][1].length - 1 };
}

/** Temperature effects from zero and span at three temperatures; gives the next free row. */
function thermal(sheet: PlanBuilder, row: number): number {
  const { temperatures, zeros, spans } = INVENTED_THERMAL;
  const { first, last } = sideTable(sheet, row, 'Temperature effects', [['Temperature, °C', temperatures], ['Zero, mV/V', zeros], ['Span, mV/V', spans]]);
  sheet.put(RESULTS, last + 1, 'header');
  sheet.spill(RESULTS + 1, last + 1, 2, 2, formula(`PROVE.TEMPEFFECT(H${first}:H${last},I${first}:I${last},J${first}:J${last})`), '0.0000000', true);
  sheet.put(RESULTS, last + 2, 'label', 'Effect per °C').put(RESULTS + 3, last + 2, 'note', 'zero in mV/V per °C; span as a fraction per °C');
  return last + 4;
}

const THERMAL_EFFECTS = 'I30,J30';

/** The tension run taken warm, and corrected to the reference temperature. */
function warm(sheet: PlanBuilder): void {
  sheet.wide(1, WARM - 3, 6, 'heading', 'Tension run 1 again, taken warm and corrected to 23 °C');
  sheet.across(1, WARM - 2, 'header', ['Force', 'Temperature', 'Warm', 'Corrected', 'Corr. − run 1', 'Difference']);
  sheet.across(1, WARM - 1, 'header', ['kN', '°C', 'mV/V', 'mV/V', 'mV/V', 'of RO']);
  sheet.down(1, WARM, 'input', INVENTED_FORCES, '0');
  sheet.down(2, WARM, 'input', INVENTED_WARM.temperatures, '0.0');
  sheet.down(3, WARM, 'input', INVENTED_WARM.readings, OUTPUT);
  sheet.spill(4, WARM, 1, ROWS, formula(`PROVE.TEMPCORRECT(${range(WARM, 'C')},${range(WARM, 'B')},${THERMAL_EFFECTS},23,B${TENSION})`), OUTPUT);
  for (let i = 0; i < ROWS; i += 1) {
    sheet.put(5, WARM + i, 'result', formula(`D${WARM + i}-B${TENSION + i}`), OUTPUT);
    sheet.put(6, WARM + i, 'result', formula(`E${WARM + i}/$I$7`), PERCENT);
  }
  sheet.wide(1, WARM + ROWS, 6, 'note', 'The zero that the span effect leaves alone is the first zero of run 1 at 23 °C.');
}

function creepReturn(sheet: PlanBuilder, row: number): number {
  const { times, loaded, unloaded } = INVENTED_CREEP;
  const { first, last } = sideTable(sheet, row, 'Creep under 20 kN, and creep return after it', [['Time, min', times], ['Loaded, mV/V', loaded], ['Return, mV/V', unloaded]]);
  const creep = (column: string, limits: string) => formula(`PROVE.CREEP(H${first}:H${last},${column}${first}:${column}${last},I7${limits})`);
  [['Whole record', ''], ['From 0.5 to 20 min', ',0.5,20']].forEach(([label, limits], i) => {
    sheet.put(RESULTS, last + 1 + i, 'label', label)
      .put(RESULTS + 1, last + 1 + i, 'result', creep('I', limits), PERCENT)
      .put(RESULTS + 2, last + 1 + i, 'result', creep('J', limits), PERCENT)
      .put(RESULTS + 3, last + 1 + i, 'formula', `PROVE.CREEP(times,readings,ratedOutput${limits})`);
  });
  return last + 4;
}

function deviationTable(sheet: PlanBuilder, row: number): void {
  sheet.wide(RESULTS, row, 4, 'heading', 'Deviations of the ascending mean from the terminal line');
  sheet.across(RESULTS, row + 1, 'header', ['Tension: force, kN', 'of RO', 'Compression', 'Function']);
  const points = INVENTED_FORCES.indexOf(Math.max(...INVENTED_FORCES)) + 1;
  sheet.spill(RESULTS, row + 2, 2, points, formula(`PROVE.DEVIATIONS(${tension},"terminal",FALSE)`), PERCENT);
  sheet.restyle(RESULTS, row + 2, points, 'result', '0');
  sheet.spill(RESULTS + 2, row + 2, 1, points, formula(`INDEX(PROVE.DEVIATIONS(${compression},"terminal",FALSE),0,2)`), PERCENT);
  sheet.put(RESULTS + 3, row + 2, 'formula', 'PROVE.DEVIATIONS(forces,readings,"terminal",FALSE)');
}

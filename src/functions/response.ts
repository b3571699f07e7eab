import { MetrologyError } from '../metrology/errors';
import { evaluate, type Interval, invert } from '../metrology/polynomial';
import { GREATEST_DEGREE } from '../metrology/polynomialFit';
import type { Cell, Cells } from './cells';
import { CellFault } from './faults';
import { isBlank, numberAt, readList, readNumber, readPositive, readWord } from './readCell';
import { FORMS } from './readFit';
import { magnitudes } from './readRuns';
import { headed } from './table';

/** Rows a force table may have: more is a slip of the step, and would freeze a sheet. */
const MOST_ROWS = 20_000;

/**
 * Output of the transducer at given forces, by its calibration polynomial.
 * @customfunction RESPONSE
 * @group Polynomial calibration
 * @param {any[][]} coefficients Coefficients A0, A1 … of output as a polynomial of force, constant first (see FIT).
 * @param {any[][]} forces Forces of one direction; any block of cells.
 * @returns {any[][]} Outputs, shaped like forces.
 * @formula X = A0 + A1·|F| + … + Am·|F|^m
 * @source ASTM E74
 * @example =PROVE.RESPONSE({0.001;0.02;0.00001},{0;10;100}) → {0.001;0.202;2.101}
 */
export function response(coefficients: any[][], forces: any[][]): any[][] {
  const polynomial = readCoefficients(coefficients);
  return magnitudes(forces).map((row) => row.map((force) => (force === undefined ? '' : evaluate(polynomial, force))));
}

/**
 * Force that a reading stands for: the calibration polynomial inverted.
 * @customfunction FORCE
 * @group Polynomial calibration
 * @param {any[][]} coefficients Coefficients A0, A1 … constant first (see FIT).
 * @param {any[][]} readings Net readings; any block of cells.
 * @param {any} [lowest] Lowest force to look at; 0 if left out.
 * @param {any} [highest] Highest force to look at; if left out, up to where the polynomial first turns.
 * @param {any} [form] Form of the coefficients: "response" (default), inverted; "force", evaluated at each reading, lowest and highest unused.
 * @returns {any[][]} Forces (|F|), shaped like readings. A reading that no force explains gives #N/A in its place.
 * @formula the one F between lowest and highest with A0 + A1·F + … + Am·F^m = reading
 * @source ASTM E74
 * @note #N/A if the polynomial turns between lowest and highest, since a reading then has no single force.
 * @example =PROVE.FORCE({0.001;0.02;0.00001},{0.202;2.101}) → {10;100}
 */
export function force(coefficients: any[][], readings: any[][], lowest?: any, highest?: any, form?: any): any[][] {
  const polynomial = readCoefficients(coefficients);
  const shape = readWord(form, 'form', FORMS);
  const { from, to } = readInterval(lowest, highest);
  const single = readings.length === 1 && readings[0].length === 1;
  return readings.map((row, i) => row.map((_, j) => {
    const reading = numberAt(readings, i, j, 'readings');
    if (reading === undefined) return '';
    const found = shape === 'force' ? evaluate(polynomial, reading) : forceOrFault(polynomial, reading, from, to);
    if (found instanceof CellFault && single) throw found;
    return found;
  }));
}

/** One reading without a force leaves the others alone. */
function forceOrFault(polynomial: readonly number[], reading: number, from: number, to: number): number | CellFault {
  try {
    return invert(polynomial, reading, { from, to });
  } catch (error) {
    if (error instanceof MetrologyError) return new CellFault('#N/A', error.message);
    throw error;
  }
}

/**
 * Force–output table of a certificate.
 * @customfunction FORCETABLE
 * @group Polynomial calibration
 * @param {any[][]} coefficients Coefficients A0, A1 … of output as a polynomial of force, constant first (see FIT).
 * @param {any} from First force of the table.
 * @param {any} to Last force; the table ends at the last step not beyond it.
 * @param {any} step Step between forces, greater than 0.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} Table of two columns: force, output.
 * @formula F = from + i·step; X = A0 + A1·F + … + Am·F^m
 * @source ASTM E74
 * @example =PROVE.FORCETABLE({0;0.02},10,30,10,FALSE) → {10,0.2;20,0.4;30,0.6}
 */
export function forceTable(coefficients: any[][], from: any, to: any, step: any, headers?: any): any[][] {
  const polynomial = readCoefficients(coefficients);
  const [first, last] = readSpan(from, to);
  const width = readPositive(step, 'step');
  const steps = Math.floor((last - first) / width + 1e-9); // a last force on a step must not fall to rounding
  if (steps >= MOST_ROWS) throw new CellFault('#VALUE!', `step: found ${width}, which gives more than ${MOST_ROWS} rows; expected a larger step`);
  const rows = Array.from({ length: steps + 1 }, (_, i) => {
    const at = roundedStep(first + i * width, width);
    return [at, evaluate(polynomial, at)];
  });
  return headed(['Force', 'Output'], rows, headers);
}

/** Takes out what binary fractions add to a step such as 0.1, far below the step itself. */
function roundedStep(value: number, step: number): number {
  const digits = 12 - Math.floor(Math.log10(step));
  return digits >= 0 && digits <= 100 ? Number(value.toFixed(digits)) : value;
}

/** First and last force of a table as magnitudes; both of one direction. */
function readSpan(from: Cell, to: Cell): [number, number] {
  const first = readNumber(from, 'from');
  const last = readNumber(to, 'to');
  if (first * last < 0) throw new CellFault('#VALUE!', `to: found ${last}, but from is ${first}; expected one direction`);
  if (Math.abs(last) < Math.abs(first)) throw new CellFault('#VALUE!', `to: found ${last}; expected a force not below from, ${first}`);
  return [Math.abs(first), Math.abs(last)];
}

/** Where a force is looked for. Bounds that are both compression are taken as magnitudes, as forces are everywhere. */
function readInterval(lowest: Cell, highest: Cell): Interval {
  const low = readNumber(lowest, 'lowest', 0);
  const high = isBlank(highest) ? Infinity : readNumber(highest, 'highest');
  const compression = low <= 0 && high < 0;
  const [from, to] = compression ? [Math.abs(low), Math.abs(high)] : [low, high];
  if (to <= from) throw new CellFault('#VALUE!', `highest: found ${high}; expected a force beyond lowest, ${low}`);
  return { from, to };
}

/** Coefficients of a polynomial, constant first, from one row or column; blanks at its end are left out. */
export function readCoefficients(coefficients: Cells, argument = 'coefficients'): number[] {
  const entries = readList(coefficients, argument);
  const last = entries.findLastIndex(({ value }) => value !== undefined);
  const list = entries.slice(0, last + 1).map(({ place, value }) => {
    if (value === undefined) throw new CellFault('#VALUE!', `${argument} ${place}: found nothing; expected a number, 0 if the term is absent`);
    return value;
  });
  if (list.length === 0 || list.length > GREATEST_DEGREE + 1) {
    throw new CellFault('#VALUE!', `${argument}: found ${list.length || 'none'}; expected A0, A1 … in a column, constant first, ${GREATEST_DEGREE + 1} at most`);
  }
  return list;
}

import { GREATEST_PROVING_DEGREE, reduceProving, type Proving, type ProvingStep } from '../metrology/forceProving';
import type { ProvingTests } from '../metrology/forceProvingClass';
import { creepError, zeroError } from '../metrology/forceProvingZero';
import { counted } from '../metrology/wording';
import type { Cell, Cells } from './cells';
import { CellFault } from './faults';
import { isBlank, named, numberAt, placeIn, readList, readNumber, readWhole, sizeOf } from './readCell';
import { magnitudes } from './readRuns';

/** Columns of the series block, in order. */
const SERIES = ['X1', 'X2', 'X3', 'X4′', 'X5', 'X6′'] as const;
const INCREASING = [0, 1, 2, 4];
const DECREASING = [3, 5];

/** What the bench found beside the series, as the cells hold it. */
export interface TestCells {
  readonly resolution?: Cell;
  readonly zeros?: Cells | null;
  readonly creep?: Cells | null;
  readonly forceU?: Cells | null;
}

/** Reads the arguments that the functions for force-proving instruments share, and reduces the series. */
export function readProving(forces: Cells, series: Cells, degree: Cell, cells: TestCells = {}): { proving: Proving; tests: ProvingTests } {
  const order = isBlank(degree) ? GREATEST_PROVING_DEGREE : readWhole(degree, 'degree', 1, GREATEST_PROVING_DEGREE);
  const proving = reduceProving(readSteps(forces, series, cells.forceU ?? null), order);
  const { greatestDeflection } = proving;
  const zeros = readPairsOf(cells.zeros ?? null, 'zeros', 'the zero before and the zero after a series');
  const creep = readCreep(cells.creep ?? null);
  return {
    proving,
    tests: {
      resolution: readResolution(cells.resolution),
      zero: zeros.length > 0 ? zeroError(zeros.map(([before, after]) => ({ before, after })), greatestDeflection) : undefined,
      creep: creep && creepError(creep[0], creep[1], greatestDeflection),
    },
  };
}

function readResolution(cell: Cell): number | undefined {
  if (isBlank(cell)) return undefined;
  const resolution = readNumber(cell, 'resolution');
  if (resolution >= 0) return resolution;
  throw new CellFault('#VALUE!', `resolution: found ${resolution}; expected 0 or more, in force units`);
}

/** One step for each force with readings; zero rows and rows without readings are left out. */
function readSteps(forces: Cells, series: Cells, forceU: Cells | null): ProvingStep[] {
  const list = readList(forces, 'forces');
  const sizes = magnitudes(forces).flat();
  const sideways = forces.length === 1 && forces[0].length > 1;
  const [rows, width] = sideways ? [series[0].length, series.length] : [series.length, series[0].length];
  if (width !== SERIES.length || rows !== list.length) {
    const [across, along] = sideways ? ['row', 'column'] : ['column', 'row'];
    throw new CellFault('#VALUE!', `series: found ${sizeOf(series)}; expected 6 ${across}s (${SERIES.join(', ')}) and ${counted(list.length, along)}, as many as forces`);
  }
  const uncertaintyAt = readForceU(forceU, list.length);
  return list.flatMap(({ value }, row) => {
    const at = (column: number): [number, number] => (sideways ? [column, row] : [row, column]);
    const readings = SERIES.map((_, column) => numberAt(series, ...at(column), 'series'));
    if (readings.every((reading) => reading === undefined)) return [];
    const place = sideways ? `column ${row + 1}` : `row ${row + 1}`;
    if (value === undefined) throw new CellFault('#VALUE!', `series ${place}: found readings without a force; expected a force beside them`);
    return value === 0 ? [] : [stepOf(place, sizes[row] as number, readings, uncertaintyAt(row))];
  });
}

function stepOf(place: string, force: number, readings: readonly (number | undefined)[], forceUncertainty: number | undefined): ProvingStep {
  const missing = INCREASING.filter((column) => readings[column] === undefined).map((column) => SERIES[column]);
  if (missing.length > 0) {
    throw new CellFault('#VALUE!', `series ${place}: found no ${missing.join(', ')}; expected X1, X2, X3 and X5 at each force (leave the whole row blank to skip it)`);
  }
  const run = DECREASING.filter((column) => readings[column] !== undefined);
  if (run.length === 1) {
    throw new CellFault('#VALUE!', `series ${place}: found ${SERIES[run[0]]} alone; expected both X4′ and X6′, or neither`);
  }
  const [x1, x2, x3, x4, x5, x6] = readings as number[];
  return { place, force, x1, x2, x3, x5, decreasing: run.length === 0 ? undefined : { x4, x6 }, forceUncertainty };
}

/** One uncertainty for all forces, or one a force. */
function readForceU(cells: Cells | null, count: number): (row: number) => number | undefined {
  if (cells === null) return () => undefined;
  const list = readList(cells, 'forceU');
  list.forEach(({ place, value }) => {
    if (value !== undefined && value < 0) {
      throw new CellFault('#VALUE!', `${named('forceU', place)}: found ${value}; expected 0 or more, a fraction such as 0.0002 (0.02 %)`);
    }
  });
  if (list.length === 1) return () => list[0].value;
  if (list.length !== count) {
    throw new CellFault('#VALUE!', `forceU: found ${counted(list.length, 'cell')}; expected one, or one for each of the ${counted(count, 'force')}`);
  }
  return (row) => list[row].value;
}

/** Rows of two numbers; rows blank in both are left out. */
function readPairsOf(cells: Cells | null, argument: string, what: string): [number, number][] {
  if (cells === null) return [];
  if (cells.flat().every(isBlank)) return [];
  if (cells[0].length !== 2) {
    throw new CellFault('#VALUE!', `${argument}: found ${sizeOf(cells)}; expected two columns: ${what}`);
  }
  return cells.flatMap((_, row) => {
    const first = numberAt(cells, row, 0, argument);
    const second = numberAt(cells, row, 1, argument);
    if (first === undefined && second === undefined) return [];
    if (first === undefined || second === undefined) {
      const place = placeIn(cells, row, first === undefined ? 0 : 1);
      throw new CellFault('#VALUE!', `${named(argument, place)}: found nothing; expected both ${what}`);
    }
    return [[first, second]];
  });
}

/** Two cells, side by side or one below the other; undefined if both are blank. */
function readCreep(cells: Cells | null): [number, number] | undefined {
  if (cells === null) return undefined;
  const list = readList(cells, 'creep').map(({ value }) => value);
  if (list.every((value) => value === undefined)) return undefined;
  const [at30, at300] = list;
  if (list.length !== 2 || at30 === undefined || at300 === undefined) {
    throw new CellFault('#VALUE!', `creep: found ${counted(list.filter((value) => value !== undefined).length, 'number')} in ${counted(list.length, 'cell')}; expected two: the readings after 30 s and after 300 s`);
  }
  return [at30, at300];
}

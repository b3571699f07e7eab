import { address } from '../../src/worksheets/planBuilder';
import type { ReadCell, ReadSheet, ReadValue } from '../../src/worksheets/readSheet';

/** A sheet under construction: cells by address, names. */
export class SampleSheet {
  private readonly cells = new Map<string, ReadCell>();
  private readonly names: { name: string; range: string }[] = [];

  /** Writes a cell; null clears it. */
  put(at: string, value: ReadValue, more: Omit<ReadCell, 'at' | 'value'> = {}): this {
    if (value === null && more.formula === undefined) this.cells.delete(at);
    else this.cells.set(at, { at, value, ...more });
    return this;
  }

  /** Rows of values from a cell on, under a name. */
  range(name: string, column: number, row: number, rows: readonly (readonly ReadValue[])[], formula?: string): this {
    rows.forEach((values, i) => values.forEach((value, j) => this.put(address(column + j, row + i), value, i + j === 0 && formula ? { formula } : {})));
    this.names.push({ name, range: `${address(column, row)}:${address(column + rows[0].length - 1, row + rows.length - 1)}` });
    return this;
  }

  /** One cell under a name. */
  single(name: string, at: string, value: ReadValue, more: Omit<ReadCell, 'at' | 'value'> = {}): this {
    this.names.push({ name, range: at });
    return this.put(at, value, more);
  }

  unname(name: string): this {
    this.names.splice(this.names.findIndex((one) => one.name === name), 1);
    return this;
  }

  number(at: string): number {
    const value = this.cells.get(at)?.value;
    if (typeof value !== 'number') throw new Error(`${at} holds ${String(value)}; expected a number`);
    return value;
  }

  read(): ReadSheet {
    return { name: 'Sample', cells: [...this.cells.values()], names: this.names };
  }
}

/** Uniform deviates in [−1, 1] from a seed: the same in every run. */
export function deviates(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 31 - 1;
  };
}

/** A block of a simulated transducer. */
export interface Simulated {
  readonly id: string;
  /** As applied, sign included. */
  readonly forces: readonly number[];
  readonly runs: number;
  /** Output at the greatest |force|, sign of tension. */
  readonly output: number;
  readonly resolution: number;
  /** Fractions of output. */
  readonly scatter: number;
  readonly curvature: number;
  readonly hysteresis: number;
  readonly rotation: number;
  readonly zeroDrift: number;
  readonly zeroBalance: number;
}

export const SOUND: Omit<Simulated, 'id' | 'forces'> = {
  runs: 3, output: 2, resolution: 0.00001, scatter: 3e-5, curvature: 3e-4, hysteresis: 1e-4, rotation: 5e-5, zeroDrift: 1e-4, zeroBalance: 0.01,
};

/** What the simulated transducer reads, row by row; deviate() scatters within ±1. */
export function simulate(block: Simulated, deviate: () => number): number[][] {
  const { forces, runs, output, resolution } = block;
  const most = Math.max(...forces.map(Math.abs));
  const top = forces.findIndex((force) => Math.abs(force) === most);
  const turned = Array.from({ length: runs }, () => block.rotation * deviate());
  return forces.map((force, row) => Array.from({ length: runs }, (_, run) => {
    const x = force / most;
    const share = Math.abs(x);
    const fraction = x * (1 + turned[run]) + block.curvature * x * (1 - share) + (row > top ? block.hysteresis * 4 * x * (1 - share) : 0)
      + block.zeroBalance + block.zeroDrift * (row / forces.length) * Math.sign(block.output) + block.scatter * deviate();
    const steps = Math.round(output * fraction / resolution);
    return Number((steps * resolution).toPrecision(12));
  }));
}

/** Column and first row of the readings of the first block of {@link simulatedSheet}. */
export const READINGS = { column: 2, row: 10 };

/**
 * A sheet of simulated blocks, one below the other: forces in A, readings from B, net readings behind them; all that is
 * recorded beside them is in row 2.
 */
export function simulatedSheet(blocks: readonly Simulated[], seed: number, degree?: number): SampleSheet {
  const deviate = deviates(seed);
  const sheet = new SampleSheet();
  const most = Math.max(...blocks.flatMap(({ forces }) => forces.map(Math.abs)));
  sheet.single('capacity', 'A2', most).single('resolution', 'B2', blocks[0].resolution).single('unit', 'C2', 'kN').single('output_unit', 'D2', 'mV/V')
    .single('temperature', 'E2', 22.4).single('reference_temperature', 'F2', 23).single('date', 'G2', 46_000).single('standard_due', 'H2', 46_100)
    .single('standard_capacity', 'I2', most);
  if (degree !== undefined) sheet.single('degree', 'J2', degree);
  let { row } = READINGS;
  for (const block of blocks) {
    const readings = simulate(block, deviate);
    sheet.range(`forces_${block.id}`, 1, row, block.forces.map((force) => [force]));
    sheet.range(`readings_${block.id}`, READINGS.column, row, readings);
    sheet.range(`net_${block.id}`, READINGS.column + block.runs, row, readings.map((line) => line.map((reading, run) => Number((reading - readings[0][run]).toPrecision(12)))), '=PROVE.NET()');
    row += block.forces.length + 3;
  }
  return sheet;
}

/** Percent points of a capacity. */
export function points(capacity: number, percents: readonly number[]): number[] {
  return percents.map((percent) => capacity * percent / 100);
}

export const UP_DOWN = [0, 20, 40, 60, 80, 100, 80, 60, 40, 20, 0];
export const TEN_UP = [0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100, 0];

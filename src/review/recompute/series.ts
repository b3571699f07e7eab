import type { FilledCell } from '../../worksheets/filledSheet';
import { numberIn, type ReviewedSheet } from '../reviewedSheet';

/** A net reading at a force. */
export interface NetPoint {
  readonly row: number;
  readonly run: number;
  /** Magnitude, to the 15 digits that a spreadsheet compares by. */
  readonly force: number;
  readonly reading: number;
}

/** A block of readings at forces, from the typed cells alone. */
export interface Series {
  readonly id: string;
  readonly applied: readonly FilledCell[];
  /** Applied values, sign kept; undefined where there is none. */
  readonly forces: readonly (number | undefined)[];
  /** A list a run: readings, corrected to the reference temperature if the sheet does so. */
  readonly readings: readonly (readonly (number | undefined)[])[];
  /** Net of the zero that the sheet takes off; and net of the first zero, as characteristics are. */
  readonly nets: readonly (readonly (number | undefined)[])[];
  readonly points: readonly NetPoint[];
  readonly fromFirstZero: readonly NetPoint[];
  /** Mean net reading of each row. */
  readonly means: readonly (number | undefined)[];
  /** Row of the greatest force. */
  readonly top: number;
  /** True once the sheet shows net readings: at once where they are net of the first zero, else with the last of them. */
  readonly netted: boolean;
  /** True once as many readings are typed as the sheet needs. */
  readonly complete: boolean;
}

type Runs = readonly (readonly (number | undefined)[])[];

/** The blocks of readings at forces that a sheet has a count of needed readings for. */
export function seriesOf(sheet: ReviewedSheet): readonly Series[] {
  return sheet.cells.namesAfter('readings_').flatMap((id): Series[] => {
    const applied = sheet.column(`forces_${id}`);
    const typed = sheet.cells.columns(`readings_${id}`);
    const needed = sheet.number(`needed_${id}`);
    if (applied.length === 0 || !typed || typed[0].length !== applied.length || needed === undefined) return [];
    return [series(sheet, id, applied, typed, needed)];
  });
}

function series(sheet: ReviewedSheet, id: string, applied: readonly FilledCell[], typed: readonly (readonly FilledCell[])[], needed: number): Series {
  const forces = applied.map(numberIn);
  const raw = typed.map((run) => run.map(numberIn));
  const readings = sheet.has(`corrected_${id}`) ? corrected(sheet, id, raw) : raw;
  const method = zeroMethod(sheet, id);
  const nets = netOf(forces, readings, method);
  const complete = raw.flat().filter((value) => value !== undefined).length >= needed;
  const top = forces.reduce<number>((most, force, row) => (Math.abs(force ?? 0) > Math.abs(forces[most] ?? 0) ? row : most), 0);
  return {
    id, applied, forces, readings, nets, top,
    points: pointsOf(forces, nets), fromFirstZero: pointsOf(forces, netOf(forces, readings, 'initial')),
    means: forces.map((_, row) => mean(nets.flatMap((run) => (run[row] === undefined ? [] : [run[row]])))),
    complete, netted: method === 'initial' || complete,
  };
}

/** Which zero the sheet takes off: told by the formula of its net readings alone. */
function zeroMethod(sheet: ReviewedSheet, id: string): 'initial' | 'average' | 'interpolated' {
  const formula = sheet.cells.cell(`net_${id}`)?.formula ?? '';
  if (/"average"/i.test(formula)) return 'average';
  return /"interpolated"/i.test(formula) ? 'interpolated' : 'initial';
}

/** (X − zero − effect·ΔT)/(1 + effect·ΔT) + zero, with the first reading of a run as its zero; as read where no temperature stands. */
function corrected(sheet: ReviewedSheet, id: string, runs: Runs): Runs {
  const temperatures = sheet.column(`temperatures_${id}`).map(numberIn);
  const reference = sheet.number('reference_temperature') ?? 0;
  const [zeroEffect, spanEffect] = [sheet.number('zero_effect') ?? 0, sheet.number('span_effect') ?? 0];
  return runs.map((run) => run.map((reading, row) => {
    const [zero, temperature] = [run[0], temperatures[row]];
    if (reading === undefined || zero === undefined) return undefined;
    if (temperature === undefined) return reading;
    const off = temperature - reference;
    return (reading - zero - zeroEffect * off) / (1 + spanEffect * off) + zero;
  }));
}

function netOf(forces: readonly (number | undefined)[], runs: Runs, method: ReturnType<typeof zeroMethod>): Runs {
  return runs.map((run) => {
    const rows = run.flatMap((reading, row) => (reading !== undefined && forces[row] === 0 ? [row] : []));
    const [first, last] = [rows[0], rows[rows.length - 1]];
    if (first === undefined) return run.map(() => undefined);
    const [before, after] = [run[first] as number, run[last] as number];
    const zeroAt = (row: number) => {
      if (method === 'initial' || first === last) return before;
      return method === 'average' ? (before + after) / 2 : before + ((after - before) * (row - first)) / (last - first);
    };
    return run.map((reading, row) => (reading === undefined || forces[row] === undefined ? undefined : reading - zeroAt(row)));
  });
}

function pointsOf(forces: readonly (number | undefined)[], nets: Runs): NetPoint[] {
  return nets.flatMap((run, index) => run.flatMap((reading, row): NetPoint[] => {
    const force = forces[row];
    return reading === undefined || force === undefined ? [] : [{ row, run: index, force: Number(Math.abs(force).toPrecision(15)), reading }];
  }));
}

/** The mean; undefined of nothing. */
export function mean(values: readonly number[]): number | undefined {
  return values.length === 0 ? undefined : values.reduce((sum, value) => sum + value, 0) / values.length;
}

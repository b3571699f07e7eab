import type { FilledCell } from '../../worksheets/filledSheet';
import { fitByLibrary, type Polynomial } from '../independent/polynomial';
import { numberIn, type ReviewedSheet } from '../reviewedSheet';
import type { Expected } from './expected';
import { Expectations } from './expectations';
import { classResults } from './provingClass';

/** Net deflections of the series at one force. */
interface Step {
  readonly force: number;
  readonly x1: number;
  readonly x2: number;
  readonly x3: number;
  readonly x5: number;
  readonly x4?: number;
  readonly x6?: number;
}

/** Figures at one force: fractions, but for the mean. */
interface Figures extends Step {
  readonly mean: number;
  readonly b: number;
  readonly same: number;
  readonly fc: number;
  readonly v: number | undefined;
}

/** What the sheet computes of a force-proving instrument. Source of the figures: ISO 376:2011 (from memory). */
export function provingExpected(sheet: ReviewedSheet): readonly Expected[] {
  const expect = new Expectations(sheet);
  const read = readSeries(sheet);
  const degree = sheet.number('degree');
  if (!read || degree === undefined) return expect.nothingYet();
  if (read.steps.length < degree + 2) return expect.list;
  const { steps, zeros, creep } = read;
  const means = steps.map(({ x1, x3, x5 }) => (x1 + x3 + x5) / 3);
  const fit = fitByLibrary(steps.map(({ force }) => force), means, degree);
  const figures = steps.map((step, i) => figuresOf(step, means[i], fit));
  const greatest = figures[figures.length - 1];
  const output = Math.abs(greatest.mean);
  const known = {
    f0: Math.max(...zeros.map(([before, after]) => Math.abs(after - before))) / output,
    c: creep && Math.abs(creep[1] - creep[0]) / output,
    resolution: sheet.number('resolution') === undefined ? undefined : Math.abs(((sheet.number('resolution') as number) * greatest.force) / greatest.mean),
    forceU: sheet.number('standard_uncertainty'),
  };
  chosen(expect, figures, output);
  for (let k = 0; k <= 3; k += 1) expect.result(`interpolation_a${k}`, k > degree ? null : fit.coefficients[k], { scale: output / greatest.force ** k });
  nets(expect, read.nets, output);
  const uncertainties = figures.map((_, i) => combined(figures, i, fit, { ...known, temperature: sheet.number('temperature_effect') }));
  expect.result('wc_greatest', uncertainties[uncertainties.length - 1]);
  equation(expect, figures.map(({ force }) => force), uncertainties.map((wc) => 2 * wc));
  classResults(expect, figures, known);
  return expect.list;
}

function figuresOf(step: Step, mean: number, fit: Polynomial): Figures {
  const { x1, x2, x3, x4, x5, x6 } = step;
  return {
    ...step, mean,
    b: (Math.max(x1, x3, x5) - Math.min(x1, x3, x5)) / Math.abs(mean),
    same: Math.abs(x2 - x1) / Math.abs((x1 + x2) / 2),
    fc: mean / fit.at(step.force) - 1,
    v: x4 === undefined || x6 === undefined ? undefined : (Math.abs(x4 - x3) / Math.abs(x3) + Math.abs(x6 - x5) / Math.abs(x5)) / 2,
  };
}

interface ReadSeriesCells {
  readonly steps: readonly Step[];
  readonly zeros: readonly (readonly [number, number])[];
  readonly creep?: readonly [number, number];
  readonly nets: readonly { readonly cells: readonly (readonly FilledCell[])[]; readonly values: readonly (readonly number[])[] }[];
}

/** X1 and X2 stand in one block, X3 with X4′ and X5 with X6′ in the other. Undefined while readings are missing. */
function readSeries(sheet: ReviewedSheet): ReadSeriesCells | undefined {
  const blocks = ['first_position', 'rotated'].map((id) => ({
    forces: sheet.column(`forces_${id}`).map(numberIn),
    runs: (sheet.cells.columns(`readings_${id}`) ?? []).map((run) => run.map(numberIn)),
    net: sheet.cells.columns(`net_${id}`) ?? [],
  }));
  if (blocks.some(({ forces, runs }) => runs.length !== 2 || [forces, ...runs].flat().some((value) => value === undefined))) return undefined;
  const creep = sheet.column('readings_creep').map(numberIn);
  const needed = sheet.number('needed_creep') ?? 0;
  const read = creep.filter((value) => value !== undefined);
  if (read.length < needed) return undefined;
  const netRuns = blocks.map(({ runs }) => (runs as number[][]).map((run) => run.map((reading) => reading - run[0])));
  const [left, right] = blocks.map(({ forces }) => (forces as number[]).map(Math.abs));
  const sizes = left.filter((force) => force > 0);
  const steps = sizes.map((force): Step => {
    const [up, rotated, down] = [left.indexOf(force), right.indexOf(force), right.lastIndexOf(force)];
    const [[x1, x2], [x3, x5]] = [netRuns[0].map((run) => run[up]), netRuns[1].map((run) => run[rotated])];
    return { force, x1, x2, x3, x5, ...(down > rotated ? { x4: netRuns[1][0][down], x6: netRuns[1][1][down] } : {}) };
  });
  return {
    steps,
    zeros: blocks.flatMap(({ runs }) => (runs as number[][]).map((run) => [run[0], run[run.length - 1]] as const)),
    nets: blocks.map(({ net }, i) => ({ cells: net, values: netRuns[i] })),
    ...(read.length === 2 ? { creep: [read[0], read[1]] as const } : {}),
  };
}

function nets(expect: Expectations, blocks: ReadSeriesCells['nets'], scale: number): void {
  blocks.forEach(({ cells, values }) => cells.forEach((column, run) => expect.column(column, values[run], { scale })));
}

/** Figures at the lowest, the middle and the greatest force. */
function chosen(expect: Expectations, figures: readonly Figures[], output: number): void {
  const last = figures.length - 1;
  for (const [name, i] of [['lowest', 0], ['middle', Math.floor(last / 2)], ['greatest', last]] as const) {
    const { mean, b, same, v } = figures[i];
    expect.result(`xr_${name}`, mean, { scale: output }).result(`b_${name}`, b).result(`b_same_${name}`, same).result(`v_${name}`, v);
  }
}

interface Known {
  readonly f0: number;
  readonly c: number | undefined;
  readonly resolution: number | undefined;
  readonly forceU: number | undefined;
  readonly temperature: number | undefined;
}

/** wc = √Σw², with w1 to w8 of Annex C; where v is missing, that of the nearest force below stands in, else of the nearest above. */
function combined(figures: readonly Figures[], i: number, fit: Polynomial, { f0, c, resolution, forceU, temperature }: Known): number {
  const { force, x1, x3, x5, mean, same } = figures[i];
  const greatest = figures[figures.length - 1];
  const v = figures.slice(0, i + 1).findLast((one) => one.v !== undefined)?.v ?? figures.slice(i).find((one) => one.v !== undefined)?.v;
  const scatter = [x1, x3, x5].reduce((sum, x) => sum + (x - mean) ** 2, 0);
  const fifth = c !== undefined ? c / Math.sqrt(3) : (v ?? 0) / (3 * Math.sqrt(3));
  const squares = [
    ((forceU ?? 0) / 2) ** 2, scatter / 6 / mean ** 2, same ** 2 / 3, (resolution ?? 0) ** 2 / force ** 2 / 6, fifth ** 2, f0 ** 2,
    (temperature ?? 0) ** 2 / 12, ((greatest.force / force) * (fit.sd ?? 0) / greatest.mean) ** 2,
  ];
  return Math.sqrt(squares.reduce((sum, square) => sum + square, 0));
}

/** The equation for W over force by the form on the sheet, its constant raised so that it is nowhere below W. */
function equation(expect: Expectations, forces: readonly number[], expanded: readonly number[]): void {
  const form = expect.sheet.cells.text('equation_form');
  const inverse = form === 'inverse';
  if (!inverse && form !== 'linear' && form !== 'quadratic') return;
  const greatest = Math.max(...forces);
  const xs = forces.map((force) => (inverse ? greatest / force : force / greatest));
  const { coefficients: [a0, a1], residuals } = fitByLibrary(xs, expanded, form === 'quadratic' ? 2 : 1);
  const shortfall = Math.max(0, ...residuals);
  const scale = Math.max(...expanded);
  expect.result('equation_a0', a0, { scale }).result('equation_a1', inverse ? a1 * greatest : a1 / greatest, { scale: inverse ? scale * greatest : scale / greatest });
  expect.result('equation_shortfall', shortfall, { scale }).result('equation_raised', a0 + shortfall, { scale });
}


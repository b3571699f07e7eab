import { MetrologyError } from '../../metrology/errors';
import { fitPolynomial, GREATEST_DEGREE, type PolynomialFit } from '../../metrology/polynomialFit';
import { deletedResiduals, outlierThreshold } from '../../metrology/studentized';
import { netReadingsOf, type AppliedReading, type Block } from '../block';
import { capped, type Finding } from './finding';
import { readingStep } from './readingStep';
import type { RunSheet } from './runSheet';

/** Chance of a finding in a sheet of sound readings, shared among its fits. */
const PROBABILITY = 0.01;
/** Below this the others say too little of any one reading. */
const LEAST_DOF = 4;
/** Degree where the sheet states none. */
const USUAL_DEGREE = 2;
/** Differences smaller than so many steps of the reading are rounding. */
const LEAST_STEPS = 2;

/** A reading under load: its run, and what it is net. */
interface Candidate extends AppliedReading {
  readonly run: number;
}

/** A candidate far from what all others say of it. */
interface Outlier {
  readonly candidate: Candidate;
  readonly deviation: number;
  readonly t: number;
  readonly threshold: number;
}

/**
 * Readings that lie off the calibration polynomial of all the others by more than their scatter explains: deleted residuals
 * against Student's t at 1 % for the worst of the sheet (Bonferroni), the worst taken out first. Rows up and rows down are
 * judged apart where each has enough, for hysteresis is no outlier.
 * @param suspects addresses of readings that are known to be wrong, and take no part
 * Source: R. D. Cook and S. Weisberg, Residuals and Influence in Regression (1982), from memory.
 */
export function outliers(sheet: RunSheet, suspects: ReadonlySet<string>): Finding[] {
  const fits = sheet.forceBlocks().flatMap((block) => branches(sheet, candidatesOf(sheet, block, suspects)).map((points) => ({ block, points })));
  const found = fits.flatMap(({ block, points }) => outliersOf(sheet, points, LEAST_STEPS * readingStep(sheet, block), PROBABILITY / fits.length)
    .map((outlier) => finding(sheet, block, outlier)));
  return capped(found, 'readings that lie off the others');
}

function candidatesOf(sheet: RunSheet, block: Block, suspects: ReadonlySet<string>): Candidate[] {
  return block.runs.flatMap((_, run) => (netReadingsOf(sheet.cells, block, run) ?? [])
    .filter(({ applied, cell }) => applied !== 0 && !suspects.has(cell.at))
    .map((point) => ({ ...point, run })));
}

/** Rows up to the greatest force, and the rows after it; together where one of them is too short to judge. */
function branches(sheet: RunSheet, all: readonly Candidate[]): (readonly Candidate[])[] {
  if (all.length === 0) return [];
  const top = all.reduce((most, point) => (Math.abs(point.applied) > Math.abs(most.applied) ? point : most)).row;
  const parts = [all.filter(({ row }) => row <= top), all.filter(({ row }) => row > top)];
  const parted = parts.filter((part) => part.length > 0);
  return parted.every((part) => enough(sheet, part)) ? parted : [all];
}

function enough(sheet: RunSheet, points: readonly Candidate[]): boolean {
  const degree = degreeFor(sheet, points);
  return degree >= 1 && points.length - degree - 1 >= LEAST_DOF;
}

/** The sheet's degree, if the forces bear it with one to spare. */
function degreeFor(sheet: RunSheet, points: readonly Candidate[]): number {
  const distinct = new Set(points.map(({ applied }) => applied)).size;
  const wanted = Math.round(sheet.cells.number('degree') ?? USUAL_DEGREE);
  return Math.min(Math.max(wanted, 1), GREATEST_DEGREE, distinct - 2);
}

function outliersOf(sheet: RunSheet, points: readonly Candidate[], least: number, probability: number): Outlier[] {
  const found: Outlier[] = [];
  let left = points;
  while (enough(sheet, left) && found.length < points.length / 4) {
    const worst = worstOf(left, degreeFor(sheet, left), least, probability);
    if (!worst) break;
    found.push(worst);
    left = left.filter((point) => point !== worst.candidate);
  }
  return found.sort((a, b) => a.candidate.row - b.candidate.row || a.candidate.run - b.candidate.run);
}

function worstOf(points: readonly Candidate[], degree: number, least: number, probability: number): Outlier | undefined {
  const forces = points.map(({ applied }) => Math.abs(applied));
  const readings = points.map(({ reading }) => reading);
  const fit = fitIfPossible(forces, readings, degree);
  if (!fit) return undefined;
  const threshold = outlierThreshold(fit.n, fit.dof, probability);
  const judged = (deletedResiduals(forces, readings, fit) ?? []).map((residual, i) => ({ ...residual, threshold, candidate: points[i] }));
  return judged
    .filter(({ t, deviation }) => Math.abs(t) > threshold && Math.abs(deviation) > least)
    .reduce<Outlier | undefined>((most, one) => (most && Math.abs(most.t) >= Math.abs(one.t) ? most : one), undefined);
}

/** Nothing is said of numbers that no polynomial can be fitted to: too large, or forces too close together. */
function fitIfPossible(forces: readonly number[], readings: readonly number[], degree: number): PolynomialFit | undefined {
  try {
    return fitPolynomial(forces, readings, degree);
  } catch (error) {
    if (error instanceof MetrologyError) return undefined;
    throw error;
  }
}

function finding(sheet: RunSheet, block: Block, { candidate, deviation, t, threshold }: Outlier): Finding {
  const { cell, applied, run } = candidate;
  const held = cell.value as number;
  const size = Number.isFinite(t) ? `t = ${t.toFixed(1)}, expected within ±${threshold.toFixed(1)}` : 'the others leave no scatter at all';
  return {
    severity: 'odd', at: cell.at,
    message: `${sheet.runName(block, run)}: ${cell.at} holds ${sheet.output(held)} at ${sheet.force(applied)}; expected about ${sheet.output(held - deviation)} from all the other readings (${size})`,
  };
}

import { loadedPoints } from '../metrology/calibrationData';
import { fitPolynomial, GREATEST_DEGREE, type PolynomialFit } from '../metrology/polynomialFit';
import type { Point } from '../metrology/run';
import type { Cell, Cells } from './cells';
import { readFlag, readWhole, readWord } from './readCell';
import { readRuns, type RunBlock } from './readRuns';

/** "response": output as a polynomial of force; "force": force as a polynomial of output. */
export const FORMS = ['response', 'force'] as const;
export type Form = (typeof FORMS)[number];

/** A fit, the points it was made of, and the block they were read from. */
export interface BlockFit {
  readonly block: RunBlock;
  readonly form: Form;
  /** Loaded points, in the order of the fit's residuals. */
  readonly points: readonly Point[];
  readonly fit: PolynomialFit;
}

/** Reads the arguments that all fitting functions share, and fits every reading under load; zero rows take no part. */
export function readFit(forces: Cells, readings: Cells, degree: Cell, form?: Cell, constant?: Cell): BlockFit {
  const order = readWhole(degree, 'degree', 1, GREATEST_DEGREE);
  const shape = readWord(form, 'form', FORMS);
  const withConstant = readFlag(constant, 'constant', true);
  const block = readRuns(forces, readings);
  const points = loadedPoints(block.runs);
  const force = points.map((point) => point.force);
  const output = points.map((point) => point.reading);
  const fit = shape === 'response'
    ? fitPolynomial(force, output, order, { constant: withConstant })
    : fitPolynomial(output, force, order, { constant: withConstant, abscissa: 'reading' });
  return { block, form: shape, points, fit };
}

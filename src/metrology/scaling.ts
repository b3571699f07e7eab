import { add, divide, exact, multiply, negated, type DoubleDouble } from './doubleDouble';

/** The change of variable z = (x − centre)/halfWidth that brings the abscissas into [−1, 1]. */
export interface Scaling {
  readonly centre: number;
  readonly halfWidth: number;
}

/** Scaling of the given abscissas. Without a constant term the origin must stay where it is, so the centre is 0. */
export function scalingOf(x: readonly number[], constant: boolean): Scaling {
  let least = x[0];
  let greatest = x[0];
  for (const value of x) {
    least = Math.min(least, value);
    greatest = Math.max(greatest, value);
  }
  return constant
    ? { centre: (least + greatest) / 2, halfWidth: (greatest - least) / 2 }
    : { centre: 0, halfWidth: Math.max(Math.abs(least), Math.abs(greatest)) };
}

/** z of one abscissa. */
export function scaled({ centre, halfWidth }: Scaling, x: number): DoubleDouble {
  return divide(add(exact(x), exact(-centre)), halfWidth);
}

/** Value at z of a polynomial given by its coefficients in z, constant first. */
export function evaluateScaled(coefficients: readonly DoubleDouble[], z: DoubleDouble): DoubleDouble {
  return coefficients.reduceRight((sum, coefficient) => add(multiply(sum, z), coefficient), exact(0));
}

/** Coefficients in powers of x of a polynomial given in powers of z: Horner's scheme on polynomials. */
export function expanded({ centre, halfWidth }: Scaling, inZ: readonly DoubleDouble[]): DoubleDouble[] {
  return inZ.reduceRight<DoubleDouble[]>((inX, coefficient) => {
    const next: DoubleDouble[] = [...inX.map(() => exact(0)), exact(0)];
    inX.forEach((term, power) => {
      const perWidth = divide(term, halfWidth);
      next[power + 1] = add(next[power + 1], perWidth);
      next[power] = add(next[power], negated(multiply(perWidth, exact(centre))));
    });
    next[0] = add(next[0], coefficient);
    return next;
  }, []).slice(0, inZ.length);
}

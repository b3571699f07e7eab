import { add, divide, exact, multiply, negated, type DoubleDouble } from './doubleDouble';

/** The change of variable t = (x − centre)/halfWidth that brings the abscissas into [−1, 1]. */
export interface Scaling {
  readonly centre: number;
  readonly halfWidth: number;
}

/** Scaling of the given abscissas. A single abscissa is scaled by its size. */
export function scalingOf(x: readonly number[]): Scaling {
  let least = x[0];
  let greatest = x[0];
  for (const value of x) {
    least = Math.min(least, value);
    greatest = Math.max(greatest, value);
  }
  return { centre: least / 2 + greatest / 2, halfWidth: (greatest - least) / 2 || Math.abs(greatest) || 1 };
}

/** t of one abscissa. */
export function scaled({ centre, halfWidth }: Scaling, x: number): DoubleDouble {
  return divide(add(exact(x), exact(-centre)), halfWidth);
}

/** Coefficients in powers of x of a polynomial given in powers of t: Horner's scheme on polynomials. */
export function expanded({ centre, halfWidth }: Scaling, inT: readonly DoubleDouble[]): DoubleDouble[] {
  return inT.reduceRight<DoubleDouble[]>((inX, coefficient) => {
    const next: DoubleDouble[] = [...inX.map(() => exact(0)), exact(0)];
    inX.forEach((term, power) => {
      const perWidth = divide(term, halfWidth);
      next[power + 1] = add(next[power + 1], perWidth);
      next[power] = add(next[power], negated(multiply(perWidth, exact(centre))));
    });
    next[0] = add(next[0], coefficient);
    return next;
  }, []).slice(0, inT.length);
}

/** A source of pseudo-random draws. */
export interface RandomDraws {
  /** Even between 0 and 1, neither of them included. */
  uniform(): number;
  /** Normal with mean 0 and standard deviation 1. */
  normal(): number;
  /** Student's t; its variance is dof/(dof − 2), not 1. */
  t(dof: number): number;
}

/** Held here because a lookup of the global Math is slow inside the sandbox that jest runs tests in. */
const { log, sqrt } = Math;

/**
 * Draws that repeat exactly for a seed, fast enough for millions; for tests only. Uniform: the generator sfc32, two words a
 * draw. Normal and t: the polar methods of Marsaglia and of Bailey (1994).
 */
export function randomDraws(seed: number): RandomDraws {
  // Plain variables, not a typed array: several times faster.
  let [a, b, c, counter] = [seed | 0, 0x9e3779b9 | 0, 0x243f6a88 | 0, 1];
  const word = () => {
    const sum = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + sum) | 0;
    return sum >>> 0;
  };
  for (let i = 0; i < 20; i += 1) word();
  const uniform = () => (word() + (word() + 0.5) / 4294967296) / 4294967296;
  /** A point in the unit disc: its first coordinate, and its distance from the centre squared. */
  let square = 0;
  const inDisc = () => {
    for (;;) {
      const x = 2 * uniform() - 1;
      const y = 2 * uniform() - 1;
      square = x * x + y * y;
      if (square > 0 && square < 1) return x;
    }
  };
  return {
    uniform,
    normal: () => inDisc() * sqrt((-2 * log(square)) / square),
    t: (dof) => inDisc() * sqrt((dof * (square ** (-2 / dof) - 1)) / square),
  };
}

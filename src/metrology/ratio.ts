/** A ratio of whole numbers, exact: what defined factors multiply to without rounding. */
export interface Ratio {
  readonly numerator: bigint;
  readonly denominator: bigint;
}

/** The ratio that a decimal such as "0.45359237" stands for; digits and one point, no sign. */
export function decimalRatio(text: string): Ratio {
  const [whole, part = ''] = text.split('.');
  return reduced(BigInt(whole + part), 10n ** BigInt(part.length));
}

/** Product of ratios. */
export function product(...factors: readonly Ratio[]): Ratio {
  return factors.reduce((a, b) => reduced(a.numerator * b.numerator, a.denominator * b.denominator));
}

/** One ratio divided by another, which is not 0. */
export function quotient(a: Ratio, b: Ratio): Ratio {
  return reduced(a.numerator * b.denominator, a.denominator * b.numerator);
}

function reduced(numerator: bigint, denominator: bigint): Ratio {
  let [common, rest] = [numerator, denominator];
  while (rest !== 0n) [common, rest] = [rest, common % rest];
  return { numerator: numerator / common, denominator: denominator / common };
}

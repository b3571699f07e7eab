/**
 * Correct digits of a value against a certified one: −log10 of the relative error, 16 where they are equal.
 * Against a certified 0 the error is taken as it is.
 */
export function correctDigits(found: number, certified: number): number {
  const error = certified === 0 ? Math.abs(found) : Math.abs((found - certified) / certified);
  if (Number.isNaN(error)) return -Infinity;
  return error === 0 ? 16 : Math.min(16, -Math.log10(error));
}

/** Fails, saying how many digits agree, if fewer do than asked. */
export function expectDigits(found: number | undefined, certified: number, digits: number, what = 'value'): void {
  const agreeing = found === undefined ? -Infinity : correctDigits(found, certified);
  if (!(agreeing >= digits)) {
    throw new Error(`${what}: found ${found}, certified ${certified}: ${agreeing.toFixed(1)} digits agree, ${digits} asked`);
  }
}

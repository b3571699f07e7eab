/** Decimals that a certificate shows: an uncertainty to two significant digits, and what it belongs to as far as that goes. */
const MOST_DECIMALS = 12;

/** Decimals that show two significant digits of an uncertainty: 0.0123 → 3, 0.0996 → 2 since it rounds to 0.10, 47 → 0. */
export function decimalsOf(uncertainty: number): number {
  const shown = Number(Math.abs(uncertainty).toPrecision(2));
  if (!(shown > 0) || !Number.isFinite(shown)) return 0;
  return Math.max(0, Math.min(MOST_DECIMALS, 1 - Math.floor(Math.log10(shown) + 1e-9)));
}

/** A number format of so many decimals. */
export function fixedFormat(decimals: number): string {
  return decimals === 0 ? '0' : `0.${'0'.repeat(decimals)}`;
}

/** The format of an uncertainty: two significant digits. From a hundred on, which no count of decimals can shorten, as a power of ten. */
export function uncertaintyFormat(uncertainty: number): string {
  return Number(Math.abs(uncertainty).toPrecision(2)) >= 100 ? '0.0E+00' : fixedFormat(decimalsOf(uncertainty));
}

/** The format of a fraction in per cent, whose uncertainty is a fraction too. */
export function percentFormat(uncertainty: number): string {
  return `${fixedFormat(decimalsOf(100 * uncertainty))}%`;
}

/**
 * Decimals enough that a value beyond its limit does not look as if it met it: as many as asked, or more, as far as it takes. Both are
 * magnitudes in the unit shown (per cent for per cent).
 */
export function tellingDecimals(value: number, limit: number, decimals: number): number {
  let enough = decimals;
  while (value > limit && Number(value.toFixed(enough)) <= Number(limit.toFixed(enough)) && enough < MOST_DECIMALS) enough += 1;
  return enough;
}

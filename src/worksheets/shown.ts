/** A number as a message shows it: seven significant digits, without the noise of binary fractions. */
export function shown(value: number): string {
  return String(Number(value.toPrecision(7)));
}

/** A fraction in per cent, three significant digits. */
export function percent(fraction: number): string {
  return `${Number((100 * fraction).toPrecision(3))} %`;
}

/** A number with its unit, if that is known. */
export function withUnit(value: number, unit: string | undefined): string {
  return unit ? `${shown(value)} ${unit}` : shown(value);
}

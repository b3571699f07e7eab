/**
 * What a cell shows of a number in a number format, read back as a number: rounded to the decimals of the format, in per cent or
 * with an exponent where the format says so. Undefined for formats of dates and text, and for general, which shows what there is.
 */
export function shownNumber(value: number, format: string | undefined): number | undefined {
  const code = format?.split(';')[0].replace(/"[^"]*"|\\./g, '');
  if (code === undefined || !/^[#0,.?% E+-]+$/i.test(code) || !/[0#]/.test(code)) return undefined;
  const decimals = /\.([0#?]+)/.exec(code)?.[1].length ?? 0;
  const shown = code.includes('%') ? value * 100 : value;
  const rounded = /E/i.test(code) ? Number(shown.toExponential(decimals)) : Number(roundHalfUp(shown, decimals));
  return code.includes('%') ? rounded / 100 : rounded;
}

/** As spreadsheets round: halves away from zero, by the 15 digits that they keep. */
function roundHalfUp(value: number, decimals: number): number {
  const kept = Number(Math.abs(value).toPrecision(15));
  return Math.sign(value) * Number(`${Math.round(Number(`${kept}e${decimals}`) || kept * 10 ** decimals)}e-${decimals}`);
}

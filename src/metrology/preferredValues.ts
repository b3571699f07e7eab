/** Values of a decade in the E96 series. */
const PER_DECADE = 96;

/**
 * The E96 values (IEC 60063, 1 % resistors) at and below, and above, a value greater than 0. Every value of the series is
 * 10^(i/96) rounded to three digits.
 */
export function neighboursInE96(value: number): [number, number] {
  const position = Math.floor(Math.log10(value) * PER_DECADE);
  // The rounding to three digits may put a value on the other side of the one asked for.
  const around = [-1, 0, 1, 2].map((step) => valueOfE96(position + step));
  const above = around.find((candidate) => candidate > value) ?? around[around.length - 1];
  const below = around.findLast((candidate) => candidate <= value) ?? around[0];
  return [below, above];
}

/** Value at a place of the series, counted from 1: place 96 is 10, place −96 is 0.1. */
function valueOfE96(place: number): number {
  const decade = Math.floor(place / PER_DECADE);
  const digits = Math.round(100 * 10 ** ((place - decade * PER_DECADE) / PER_DECADE));
  return Number(`${digits}e${decade - 2}`); // read as decimal, so that 1.43 is 1.43
}

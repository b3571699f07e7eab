import type { Trace } from './trace';

/**
 * A trace with few enough points to draw: of each equal part of the time its first least and greatest value in their order, so that
 * no spike gets lost. All of it if it has no more points than asked for.
 * @param most points at most, two or more
 */
export function decimated({ time, values }: Trace, most: number): { readonly x: number[]; readonly y: number[] } {
  const count = time.length;
  if (count <= most) return { x: Array.from(time), y: Array.from(values) };
  const parts = Math.max(1, Math.floor(most / 2));
  const x: number[] = [];
  const y: number[] = [];
  for (let part = 0; part < parts; part += 1) {
    const [from, to] = [Math.floor((part * count) / parts), Math.floor(((part + 1) * count) / parts)];
    let [low, high] = [from, from];
    for (let i = from + 1; i < to; i += 1) {
      if (values[i] < values[low]) low = i;
      if (values[i] > values[high]) high = i;
    }
    for (const i of low === high ? [low] : [Math.min(low, high), Math.max(low, high)]) {
      x.push(time[i]);
      y.push(values[i]);
    }
  }
  return { x, y };
}

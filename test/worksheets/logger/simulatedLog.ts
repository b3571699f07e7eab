import { randomDraws } from '../../randomDraws';

/** A run as a logger would record it: held levels, changes between them, and what goes wrong. */
export interface LogPlan {
  /** Levels in their order, output units. */
  readonly levels: readonly number[];
  readonly seed: number;
  /** Seconds between samples. */
  readonly interval?: number;
  /** Seconds that each level is held, and that each change takes. */
  readonly hold?: number;
  readonly change?: number;
  /** Standard deviation of the noise, output units. */
  readonly noise?: number;
  /** Change of the output per second, everywhere. */
  readonly drift?: number;
  /** Share of samples that are spikes, and how high those are. */
  readonly spikes?: number;
  readonly spike?: number;
  /** Share of samples without a value, and of samples that are missing altogether. */
  readonly blank?: number;
  readonly dropped?: number;
}

/** A recorded run: moments, values (NaN where there is none), and what the true output was in the middle of each hold. */
export interface SimulatedLog {
  readonly time: number[];
  readonly values: number[];
  readonly truth: number[];
}

/** Records a run; the same for a seed. Values have five decimals. */
export function simulatedLog(plan: LogPlan): SimulatedLog {
  const { levels, seed, interval = 0.1, hold = 20, change = 4, noise = 2e-5, drift = 0, spikes = 0, spike = 0.5, blank = 0, dropped = 0 } = plan;
  const random = randomDraws(seed);
  const time: number[] = [];
  const values: number[] = [];
  const step = hold + change;
  const truth = levels.map((level, i) => level + drift * (i * step + hold / 2));
  const count = Math.round((levels.length * step - change) / interval);
  for (let i = 0; i < count; i += 1) {
    const at = Number((i * interval).toFixed(6));
    const place = Math.min(levels.length - 1, Math.floor(at / step));
    const into = change > 0 ? Math.max(0, at - place * step - hold) / change : 0;
    const clean = levels[place] + into * ((levels[place + 1] ?? levels[place]) - levels[place]);
    const [isDropped, isBlank, isSpike] = [random.uniform() < dropped, random.uniform() < blank, random.uniform() < spikes];
    const value = clean + drift * at + noise * random.normal() + (isSpike ? spike * Math.sign(random.uniform() - 0.5) : 0);
    if (isDropped) continue;
    time.push(at);
    values.push(isBlank ? Number.NaN : Number(value.toFixed(5)));
  }
  return { time, values, truth };
}

/** How a log is written down. */
export interface Writing {
  readonly delimiter: string;
  readonly decimal: '.' | ',';
  readonly head?: string;
  readonly time?: (seconds: number) => string;
  /** Further channels, from the values of the first. */
  readonly others?: readonly ((value: number) => number)[];
  readonly end?: string;
}

/** The text of a log. */
export function written({ time, values }: Pick<SimulatedLog, 'time' | 'values'>, { delimiter, decimal, head, time: asTime, others = [], end = '\n' }: Writing): string {
  const number = (value: number): string => (Number.isNaN(value) ? (delimiter.trim() === '' && delimiter !== '\t' ? '---' : '') : value.toFixed(5).replace('.', decimal));
  const lines = time.map((at, i) => [asTime ? asTime(at) : at.toFixed(2).replace('.', decimal), number(values[i]), ...others.map((other) => number(other(values[i])))].join(delimiter));
  return [...(head ? [head] : []), ...lines].join(end) + end;
}

/** "09:58:20.30" at so many seconds after 09:58. */
export function clock(seconds: number, mark = '.'): string {
  const at = 9 * 3600 + 58 * 60 + seconds;
  const two = (value: number): string => String(Math.floor(value)).padStart(2, '0');
  return `${two(at / 3600)}:${two((at / 60) % 60)}:${two(at % 60)}${mark}${two(Math.round((at % 1) * 100) % 100)}`;
}

export const TEN_POINT = [0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100, 80, 60, 40, 20, 0];
/** Output of a transducer of 2 mV/V with a zero of 0.01 mV/V. */
export const outputs = (percent: readonly number[]): number[] => percent.map((share) => Number((0.01 + 0.02 * share).toFixed(6)));

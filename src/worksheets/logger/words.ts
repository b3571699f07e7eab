import { shown } from '../shown';
import type { Log, TimeBasis } from './log';
import { intervalOf } from './trace';

/** "1 field", "3 fields". */
export function counted(count: number, word: string, plural = `${word}s`): string {
  return `${grouped(count)} ${count === 1 ? word : plural}`;
}

export function stretchCount(count: number): string {
  return counted(count, 'steady stretch', 'steady stretches');
}

/** A whole number with its thousands apart: 1 000 000. */
function grouped(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, '\u202f');
}

/** A moment of a log, from its start: "0:35", "1:02:05", "sample 12". */
export function momentWords(at: number, basis: TimeBasis): string {
  if (basis === 'samples') return String(Math.round(at) + 1);
  const whole = Math.floor(at + 1e-6);
  const [hours, minutes, seconds] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  const two = (value: number): string => String(value).padStart(2, '0');
  return hours > 0 ? `${hours}:${two(minutes)}:${two(seconds)}` : `${minutes}:${two(seconds)}`;
}

/** A duration: "12.5 s", "3 min 20 s", "1 h 5 min"; "120 samples" of a log without time. */
export function durationWords(duration: number, basis: TimeBasis): string {
  if (basis === 'samples') return counted(Math.round(duration), 'sample');
  if (duration < 120) return `${shown(Number(duration.toPrecision(3)))} s`;
  const seconds = Math.round(duration);
  if (seconds < 3600) return `${Math.floor(seconds / 60)} min${seconds % 60 ? ` ${seconds % 60} s` : ''}`;
  const minutes = Math.round(seconds / 60);
  return `${Math.floor(minutes / 60)} h${minutes % 60 ? ` ${minutes % 60} min` : ''}`;
}

const DELIMITER_WORDS = { ',': 'commas between the fields', ';': 'semicolons between the fields', '\t': 'tabs between the fields', blanks: 'blanks between the fields' } as const;
const TIME_WORDS: Readonly<Record<TimeBasis, string>> = { seconds: 'time as a number', clock: 'time of a clock', date: 'date and time', samples: 'no time' };

/** A step in time that is longer than so many usual ones is a gap. */
const GAP = 2.5;

/** What was understood of a log, in sentences. */
export function logWords(log: Log): string[] {
  const samples = log.time.length;
  const interval = intervalOf(log.time);
  const last = samples > 0 ? log.time[samples - 1] : 0;
  const gaps = interval > 0 ? log.time.reduce((sum, at, i) => sum + (i > 0 && at - log.time[i - 1] > GAP * interval ? 1 : 0), 0) : 0;
  const isTimed = log.basis !== 'samples';
  const form = [
    ...(log.columns.length > 1 ? [DELIMITER_WORDS[log.form.delimiter]] : []),
    log.form.decimal === '.' ? 'decimal point' : 'decimal comma',
    ...(log.timeColumn === 'none' ? ['no time'] : [isTimed ? `${TIME_WORDS[log.basis]} in “${log.columns[log.timeColumn]}”` : `samples counted in “${log.columns[log.timeColumn]}”`]),
  ];
  const missing = log.channels.filter((channel) => channel.missing > 0).map(({ name, missing: count }) => `${counted(count, 'sample')} without a value in “${name}”`);
  return [
    `${counted(log.lines, 'line')}${log.headLines > 0 ? `, ${log.headLines} above the first sample` : ''}; ${counted(samples, 'sample')} in ${counted(log.channels.length, 'channel')}: ${log.channels.map(channelWords).join(', ')}.`,
    `${sentence(form.join(', '))}.`,
    ...(isTimed && samples > 1 ? [`${interval > 0 ? `Every ${durationWords(interval, log.basis)}` : 'Several samples at the same time'}, ${durationWords(last, log.basis)} long${gaps > 0 ? `, with ${counted(gaps, 'gap')}` : ''}.`] : []),
    ...(missing.length > 0 ? [`${sentence(missing.join(', '))}: passed over.`] : []),
    ...log.notes,
  ];
}

function channelWords({ name, unit }: Log['channels'][number]): string {
  return unit ? `${name} in ${unit}` : name;
}

function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

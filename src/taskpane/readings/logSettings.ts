import type { Log } from '../../worksheets/logger/log';
import type { DecimalMark, Delimiter } from '../../worksheets/logger/logFields';
import type { LogWishes } from '../../worksheets/logger/logForm';
import type { SteadyOptions } from '../../worksheets/logger/steady';
import type { Stretch } from '../../worksheets/logger/stretch';
import type { Target } from '../../worksheets/logger/target';
import { momentWords } from '../../worksheets/logger/words';
import { withUnit } from '../../worksheets/shown';
import { element } from '../dom';
import { choiceField, numberField, tickField } from './field';

/** Who is told what changed. */
interface SettingsParts {
  /** The log is to be read another way. */
  readonly onForm: () => void;
  /** Another channel. */
  readonly onChannel: () => void;
  /** Other stretches are to be looked for. */
  readonly onStretches: () => void;
  /** The same stretches are to be matched anew: another run, another range of them, another scale. */
  readonly onMatch: () => void;
  /** Another run, which may begin at another stretch. */
  readonly onTarget: () => void;
}

/** How a log is read, where its steady stretches are, and what they are filled into: all that a person can set. */
export class LogSettings {
  readonly channel = choiceField('Channel', () => this.parts.onChannel());
  readonly target = choiceField('Fill into', () => this.parts.onTarget());
  readonly single = tickField('Each line is a reading of its own', () => this.parts.onChannel());
  readonly least = numberField('Steady for at least', () => this.parts.onStretches());
  readonly tolerance = numberField('Level within', () => this.parts.onStretches());
  readonly last = numberField('Read the last … only', () => this.parts.onStretches());
  readonly from = choiceField('From stretch', () => this.parts.onMatch());
  readonly to = choiceField('To stretch', () => this.parts.onMatch());
  readonly start = numberField('Time 0 of the record at', () => this.parts.onMatch());
  readonly factor = numberField('Times', () => this.parts.onMatch());
  readonly turned = tickField('Turn the sign', () => this.parts.onMatch());
  readonly rounded = tickField('Round to the resolution', () => this.parts.onMatch());
  private readonly delimiter = choiceField('Between fields', () => this.parts.onForm());
  private readonly decimal = choiceField('Decimal mark', () => this.parts.onForm());
  private readonly time = choiceField('Time in', () => this.parts.onForm());
  /** "Read it otherwise", and everything else. */
  readonly form: HTMLElement;
  readonly element: HTMLElement;

  constructor(private readonly parts: SettingsParts) {
    this.delimiter.offer([['', 'as found'], [',', 'comma'], [';', 'semicolon'], ['\t', 'tab'], ['blanks', 'blanks']]);
    this.decimal.offer([['', 'as found'], ['.', 'point'], [',', 'comma']]);
    this.rounded.input.checked = true;
    this.form = element('details', { class: 'rp-more', children: [element('summary', { children: ['Read it otherwise'] }), grid(this.delimiter, this.decimal, this.time)] });
    this.element = element('div', {
      children: [
        grid(this.channel, this.target, this.single, this.from, this.to, this.start),
        element('details', {
          class: 'rp-more',
          children: [
            element('summary', { children: ['What is steady, factor and sign'] }),
            grid(this.least, this.tolerance, this.last, this.factor, this.turned, this.rounded),
          ],
        }),
      ],
    });
  }

  wishes(): LogWishes {
    const [delimiter, decimal, time] = [this.delimiter.input.value, this.decimal.input.value, this.time.input.value];
    return {
      ...(delimiter ? { delimiter: delimiter as Delimiter } : {}),
      ...(decimal ? { decimal: decimal as DecimalMark } : {}),
      ...(time ? { time: time === 'none' ? 'none' as const : Number(time) } : {}),
    };
  }

  /** Everything as found again, for another log. */
  forget(): void {
    for (const choice of [this.delimiter, this.decimal, this.time]) choice.input.value = '';
  }

  offerLog({ columns, channels, timeColumn }: Log): void {
    const column = columns.map((name, i): [string, string] => [String(i), name]);
    this.time.offer([['', timeColumn === 'none' ? 'as found: none' : `as found: ${columns[timeColumn]}`], ['none', 'no column'], ...column]);
    this.channel.offer(channels.map(({ name, unit }, i) => [String(i), unit ? `${name}, ${unit}` : name]));
  }

  offerTargets(targets: readonly Target[]): void {
    this.target.offer(targets.map((target) => [keyOf(target), targetWords(target, targets)]));
  }

  offerStretches(stretches: readonly Stretch[], basis: Log['basis']): void {
    const options = stretches.map(({ number, from }): [string, string] => [String(number - 1), basis === 'samples' ? String(number) : `${number}, at ${momentWords(from, basis)}`]);
    this.from.offer(options, '0');
    this.to.offer(options, String(stretches.length - 1));
  }

  suggest({ least, tolerance }: SteadyOptions, { basis }: Log, unit: string | undefined): void {
    this.least.input.value = String(least);
    this.tolerance.input.value = String(tolerance);
    for (const { unit: place } of [this.least, this.last, this.start]) place.textContent = basis === 'samples' ? 'samples' : 's';
    this.tolerance.unit.textContent = unit ?? '';
  }
}

function grid(...fields: readonly { readonly element: HTMLElement }[]): HTMLElement {
  return element('div', { class: 'rp-fields', children: fields.map((field) => field.element) });
}

/** What tells a run of a sheet from the others. */
export function keyOf({ block, run }: Target): string {
  return `${block.id} ${run}`;
}

function targetWords({ block, label, cells }: Target, targets: readonly Target[]): string {
  const typed = cells.filter(({ value }) => value !== null).length;
  const blocks = new Set(targets.map((target) => target.block.id)).size;
  const name = block.runs.length === 1 ? block.label : [...(blocks > 1 ? [block.label] : []), label].join(', ');
  return `${name}${typed > 0 ? ` (${withUnit(typed, undefined)} of ${cells.length} typed)` : ''}`;
}

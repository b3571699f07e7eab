import type { TimeBasis } from '../../worksheets/logger/log';
import { readingOf, type Scaling } from '../../worksheets/logger/filling';
import type { Stretch } from '../../worksheets/logger/stretch';
import type { Target } from '../../worksheets/logger/target';
import { momentWords } from '../../worksheets/logger/words';
import { shown } from '../../worksheets/shown';
import { element } from '../dom';
import { typedNumber } from './field';

/** What the table shows: the points of a run, the stretches there are, and which one each point is proposed. */
export interface TableContent {
  readonly target: Target;
  readonly stretches: readonly Stretch[];
  readonly proposed: readonly (Stretch | undefined)[];
  readonly scaling: Scaling;
  readonly basis: TimeBasis;
  readonly outputUnit: string | undefined;
}

interface Row {
  readonly choice: HTMLSelectElement;
  readonly input: HTMLInputElement;
  readonly scatter: HTMLElement;
  stretch: Stretch | undefined;
}

/** The points of a run, each with its reading, which can be typed over, and the stretch it is from, which can be chosen. */
export class PointTable {
  readonly element = element('div', { class: 'rp-points' });
  private rows: Row[] = [];
  private content: TableContent | undefined;

  /** @param onChange told after every change by the user. */
  constructor(private readonly onChange: () => void) {}

  show(content: TableContent): void {
    this.content = content;
    const { target, outputUnit } = content;
    this.rows = target.cells.map((cell, row) => this.row(content, row, cell.at));
    this.element.replaceChildren(element('table', {
      children: [
        element('thead', { children: [element('tr', { children: [target.block.over === 'times' ? 'Time' : 'Applied', `Reading${outputUnit ? `, ${outputUnit}` : ''}`, 'From', 'Scatter'].map((head) => element('th', { attributes: { scope: 'col' }, children: [head] })) })] }),
        element('tbody', { children: this.rows.map(({ choice, input, scatter }, row) => element('tr', {
          children: [
            element('th', { attributes: { scope: 'row' }, children: [appliedWords(target, row)] }),
            element('td', { children: [input] }),
            element('td', { children: [choice] }),
            element('td', { class: 'rp-scatter', children: [scatter] }),
          ],
        })) }),
      ],
    }));
  }

  clear(): void {
    this.rows = [];
    this.content = undefined;
    this.element.replaceChildren();
  }

  /** A reading a point; undefined where none is to be filled in, NaN where what is typed is no number. */
  readings(): (number | undefined)[] {
    return this.rows.map(({ input }) => typedNumber(input.value));
  }

  /** The stretches that readings are taken from. */
  used(): Stretch[] {
    return this.rows.flatMap(({ stretch }) => stretch ?? []);
  }

  focus(row: number): void {
    this.rows[row]?.input.focus();
  }

  private row({ target, stretches, proposed, basis }: TableContent, index: number, at: string): Row {
    const name = `${appliedWords(target, index)}, ${at}`;
    const choice = element('select', { attributes: { 'aria-label': `Where the reading at ${name} is from` } });
    const input = element('input', { attributes: { type: 'text', inputmode: 'decimal', autocomplete: 'off', spellcheck: 'false', 'aria-label': `Reading at ${name}` } });
    const own = proposed[index];
    // A reading at a moment of a record stands for itself: there is nothing else to choose.
    const offered = own && !stretches.includes(own) ? [own, ...stretches] : stretches;
    choice.append(
      element('option', { attributes: { value: '' }, children: ['none'] }),
      ...offered.map((stretch, i) => element('option', { attributes: { value: String(i) }, children: [stretchWords(stretch, basis)] })),
      element('option', { attributes: { value: 'typed', hidden: '' }, children: ['typed'] }),
    );
    const row: Row = { choice, input, scatter: element('span'), stretch: own };
    choice.value = own ? String(offered.indexOf(own)) : '';
    this.fill(row);
    choice.addEventListener('change', () => {
      row.stretch = offered[Number(choice.value || Number.NaN)];
      this.fill(row);
      this.onChange();
    });
    input.addEventListener('input', () => {
      row.stretch = undefined;
      choice.value = input.value.trim() === '' ? '' : 'typed';
      this.describe(row);
      this.onChange();
    });
    return row;
  }

  private fill(row: Row): void {
    const { stretch } = row;
    row.input.value = stretch && this.content ? plain(readingOf(stretch.mean, this.content.scaling)) : '';
    this.describe(row);
  }

  private describe({ stretch, scatter, input }: Row): void {
    if (Number.isNaN(typedNumber(input.value))) input.setAttribute('aria-invalid', 'true');
    else input.removeAttribute('aria-invalid');
    const size = stretch && Math.abs(stretch.scatter * (this.content?.scaling.factor ?? 1));
    scatter.textContent = stretch ? [...(Number.isFinite(size) ? [`±${shown(Number(size!.toPrecision(2)))}`] : []), `n ${stretch.n}`, ...(stretch.spikes > 0 ? [`${stretch.spikes} left out`] : [])].join(' ') : '';
  }
}

function appliedWords({ applied, appliedUnit }: Target, row: number): string {
  const value = applied[row];
  return value === undefined ? `Point ${row + 1}` : `${shown(value)} ${appliedUnit}`.trim();
}

function stretchWords({ number, from, to, n }: Stretch, basis: TimeBasis): string {
  if (n === 1 && from === to) return `line ${number}`;
  return `${number}: ${momentWords(from, basis)}–${momentWords(to, basis)}`;
}

/** A number to type on with: without exponent. */
function plain(value: number): string {
  const text = String(value);
  return /e/i.test(text) ? value.toFixed(12).replace(/\.?0+$/, '') : text;
}

import './readings.css';
import type { SheetContent, SheetHost } from '../../hosts/sheetHost';
import { fillingOf } from '../../worksheets/logger/filling';
import type { Log } from '../../worksheets/logger/log';
import { proposeReadings, runRanges } from '../../worksheets/logger/proposals';
import { readingsAt } from '../../worksheets/logger/readingsAt';
import { suggestedOptions } from '../../worksheets/logger/steady';
import { singleReadings, type Stretch, steadyStretches } from '../../worksheets/logger/stretch';
import { type Target, type TargetSheet, targetsOf } from '../../worksheets/logger/target';
import { type Trace, traceOf } from '../../worksheets/logger/trace';
import { unitFactor } from '../../worksheets/logger/unitFactor';
import { counted, logWords, stretchCount } from '../../worksheets/logger/words';
import { button, element } from '../dom';
import type { PaneMemory } from '../memory';
import { PlotView } from '../plot/plotView';
import { reasonOf } from '../reason';
import type { SheetView } from '../sheetWatch';
import { LogSettings, keyOf } from './logSettings';
import { LogSource } from './logSource';
import { PointTable } from './pointTable';
import { GREATEST_LOG, readInPieces, textOf } from './readText';
import { askAboutReadings } from './replaceDialog';
import { tracePlot } from './tracePlot';

/** What the tab needs of the pane around it. */
export interface ReadingsParts {
  readonly host: Pick<SheetHost, 'fill'>;
  /** True if the sheet is one for readings at all. */
  readonly isRun: (content: SheetContent) => boolean;
  readonly goTo: (sheet: string, address: string) => void;
  readonly memory?: PaneMemory;
}

/** A log with no time and no more lines than this is a column of readings, unless the user says otherwise. */
const NOTED = 60;
/** A log with more samples than this is never a column of readings. */
const MOST_SINGLE = 500;
const ROUNDED = 'readings.rounded';

/** Readings of a logger, or a pasted column, into a run of the open sheet: read, looked at, then filled in one step. */
export class ReadingsTab implements SheetView {
  readonly element: HTMLElement;
  private readonly sheet = element('h2');
  private readonly state = element('p', { class: 'rp-count', attributes: { role: 'status' } });
  private readonly source: LogSource;
  private readonly about = element('div', { attributes: { role: 'status' } });
  private readonly settings: LogSettings;
  private readonly view = new PlotView();
  private readonly found = element('p', { class: 'rp-quiet', attributes: { role: 'status' } });
  private readonly notes = element('ul', { class: 'rp-notes' });
  private readonly table = new PointTable(() => this.changed());
  private readonly work: HTMLElement;
  private readonly said = element('p', { attributes: { role: 'status' } });
  private readonly fillButton = button('Fill the readings', () => void this.fill(), { class: 'rp-main' });
  private readonly bar: HTMLElement;

  private content: SheetContent | undefined;
  private targets: TargetSheet = { targets: [], outputUnit: undefined, resolution: undefined };
  private shape = '';
  private text = '';
  private name = '';
  private reading = 0;
  private log: Log | undefined;
  private trace: Trace | undefined;
  private stretches: readonly Stretch[] = [];
  private busy = false;
  /** Runs of this sheet that were filled, which it may not tell yet. */
  private readonly filled = new Set<string>();

  constructor(private readonly parts: ReadingsParts) {
    this.state.textContent = 'Reading the sheet …';
    this.source = new LogSource((file) => void this.openFile(file), (text) => void this.open(text, 'Pasted text'));
    this.settings = new LogSettings({
      onForm: () => void this.read(), onChannel: () => this.useChannel(), onStretches: () => this.findStretches(), onMatch: () => this.propose(), onTarget: () => this.useTarget(),
    });
    this.settings.rounded.input.checked = parts.memory?.get(ROUNDED) !== 'no';
    this.settings.rounded.input.addEventListener('change', () => parts.memory?.set(ROUNDED, this.settings.rounded.input.checked ? 'yes' : 'no'));
    this.work = element('div', {
      attributes: { hidden: '' },
      children: [this.settings.form, this.settings.element, this.found, this.view.element, element('h3', { class: 'rp-section', children: ['Readings by point'] }), this.table.element, this.notes],
    });
    this.bar = element('div', { class: 'rp-bar', attributes: { hidden: '' }, children: [this.said, this.fillButton] });
    this.element = element('div', {
      class: 'rp-view rp-part',
      children: [element('div', { class: 'rp-scroll', children: [this.sheet, this.state, this.source.element, this.about, this.work] }), this.bar],
    });
  }

  show(content: SheetContent): void {
    this.content = content;
    this.targets = this.parts.isRun(content) ? targetsOf(content) : { targets: [], outputUnit: undefined, resolution: undefined };
    const { targets } = this.targets;
    this.sheet.textContent = content.name;
    say(this.state, targets.length > 0 ? '' : 'This sheet has no run readings to fill in. Open a sheet that was built here; the log stays.');
    // What is typed in the sheet changes the counts; what the points are, the table.
    const shape = JSON.stringify([content.name, this.targets.outputUnit, this.targets.resolution, targets.map((target) => [keyOf(target), target.label, target.applied, target.cells.map(({ at }) => at)])]);
    const before = this.settings.target.input.value;
    this.settings.offerTargets(targets);
    if (shape === this.shape) return;
    this.shape = shape;
    this.filled.clear();
    this.said.textContent = '';
    if (!targets.some((target) => keyOf(target) === before)) this.goToEmpty();
    if (this.log) this.useChannel();
  }

  /** Chooses the first run without readings, if there is one. */
  private goToEmpty(): void {
    const empty = this.targets.targets.find((target) => !this.filled.has(keyOf(target)) && target.cells.every(({ value }) => value === null));
    if (empty) this.settings.target.input.value = keyOf(empty);
  }

  fail(words: string): void {
    this.content = undefined;
    this.shape = '';
    this.sheet.textContent = '';
    say(this.state, words);
    this.bar.hidden = true;
  }

  private async openFile(file: File): Promise<void> {
    if (file.size > GREATEST_LOG) {
      this.refuse(`“${file.name}” has ${Math.round(file.size / 1e6)} MB; a log may have 300 MB. Cut it into parts.`);
      return;
    }
    try {
      await this.open(await textOf(file), file.name);
    } catch (error) {
      this.refuse(`“${file.name}” could not be read: ${reasonOf(error)}`);
    }
  }

  private async open(text: string, name: string): Promise<void> {
    this.text = text;
    this.name = name;
    this.settings.forget();
    const { targets } = this.targets;
    const chosen = targets.find((target) => keyOf(target) === this.settings.target.input.value);
    // The next log is of the next run.
    if (chosen && (this.filled.has(keyOf(chosen)) || chosen.cells.every(({ value }) => value !== null))) this.goToEmpty();
    await this.read();
  }

  /** Reads the log as the settings say. A log that cannot be read is refused with its line, and nothing in the sheet has changed. */
  private async read(): Promise<void> {
    this.reading += 1;
    const mine = this.reading;
    const bar = element('progress', { attributes: { max: '1', 'aria-label': `Reading ${this.name}` } });
    let shown = false;
    try {
      const log = await readInPieces(this.text, this.settings.wishes(), (share) => {
        bar.value = share;
        if (!shown) this.about.replaceChildren(element('div', { class: 'rp-reading-log', children: [element('p', { children: [`Reading “${this.name}” …`] }), bar] }));
        shown = true;
      }, () => mine !== this.reading);
      if (!log) return;
      this.log = log;
      this.about.replaceChildren(element('div', { class: 'rp-log-words', children: [element('p', { children: [element('strong', { children: [this.name] })] }), ...logWords(log).map((words) => element('p', { children: [words] }))] }));
      this.settings.offerLog(log);
      this.settings.single.input.checked = log.basis === 'samples' && log.time.length <= NOTED;
      this.useChannel();
    } catch (error) {
      if (mine === this.reading) this.refuse(`“${this.name}” is not taken. ${reasonOf(error)}`, true);
    }
  }

  /** @param keepForm leaves the choices of how to read it in sight, to try another. */
  private refuse(words: string, keepForm = false): void {
    this.log = undefined;
    this.about.replaceChildren(element('p', { class: 'rp-log-refused', children: [`${words} Nothing in the sheet is changed.`] }));
    this.work.hidden = true;
    this.bar.hidden = true;
    if (keepForm) this.about.append(this.settings.form);
  }

  private useChannel(): void {
    const { log, settings } = this;
    if (!log) return;
    this.work.prepend(settings.form);
    const channel = log.channels[Number(settings.channel.input.value)] ?? log.channels[0];
    this.trace = traceOf(log, channel);
    const isShort = this.trace.values.length <= MOST_SINGLE;
    settings.single.element.hidden = !isShort;
    if (!isShort) settings.single.input.checked = false;
    settings.suggest(suggestedOptions(this.trace), log, channel.unit);
    const factor = unitFactor(channel.unit, this.targets.outputUnit);
    settings.factor.input.value = String(factor ?? 1);
    settings.factor.unit.textContent = channel.unit && this.targets.outputUnit && factor === undefined ? `${channel.unit} to ${this.targets.outputUnit}?` : '';
    settings.rounded.element.hidden = this.targets.resolution === undefined;
    this.work.hidden = false;
    this.findStretches();
  }

  private findStretches(): void {
    const { log, trace, settings } = this;
    if (!log || !trace) return;
    const [least, tolerance, last] = [settings.least.value(), settings.tolerance.value(), settings.last.value()];
    const wrong = [[settings.least, !(least !== undefined && least > 0)], [settings.tolerance, !(tolerance !== undefined && tolerance >= 0)], [settings.last, last !== undefined && !(last > 0)]] as const;
    for (const [{ input }, isWrong] of wrong) input.setAttribute('aria-invalid', String(isWrong));
    if (wrong.some(([, isWrong]) => isWrong)) {
      this.tell(['What counts as steady: expected a duration above 0 and a level of 0 or more, as numbers.']);
      return;
    }
    this.stretches = settings.single.input.checked ? singleReadings(trace) : steadyStretches(trace, { least: least!, tolerance: tolerance!, ...(last === undefined ? {} : { last }) });
    settings.offerStretches(this.stretches, log.basis);
    this.useTarget();
  }

  /** Another run: of several in the log, the one in its place is proposed. */
  private useTarget(): void {
    const { settings, stretches } = this;
    const target = this.target();
    const ranges = target && target.block.over === 'forces' ? runRanges(stretches, target.applied, target.block.runs.length) : [];
    const range = target && ranges.length > 1 ? ranges[target.run] : undefined;
    settings.from.input.value = String(range?.from ?? 0);
    settings.to.input.value = String(range?.to ?? stretches.length - 1);
    const isRecord = target?.block.over === 'times';
    settings.start.element.hidden = !isRecord;
    for (const { element: field } of [settings.from, settings.to]) field.hidden = isRecord || stretches.length < 2;
    const longest = stretches.reduce<Stretch | undefined>((long, one) => (!long || one.to - one.from > long.to - long.from ? one : long), undefined);
    if (isRecord) settings.start.input.value = String(Number((longest?.from ?? 0).toFixed(3)));
    this.propose();
  }

  private propose(): void {
    const target = this.target();
    const { log, settings } = this;
    if (!log) return;
    this.bar.hidden = target === undefined;
    const factor = settings.factor.value();
    const isWrong = factor === undefined || !Number.isFinite(factor) || factor === 0;
    settings.factor.input.setAttribute('aria-invalid', String(isWrong));
    if (!target || isWrong) {
      this.table.clear();
      this.tell(target ? ['The factor: expected a number other than 0.'] : []);
      this.draw();
      return;
    }
    const within = this.stretches.slice(Number(settings.from.input.value), Number(settings.to.input.value) + 1);
    const { proposed, notes } = target.block.over === 'times' ? this.record(target) : this.points(target, within);
    this.table.show({
      target, proposed, stretches: this.stretches, basis: log.basis, outputUnit: this.targets.outputUnit,
      scaling: { factor: factor * (settings.turned.input.checked ? -1 : 1), step: settings.rounded.input.checked ? this.targets.resolution : undefined },
    });
    this.tell(notes);
    this.changed();
  }

  private points(target: Target, within: readonly Stretch[]): { proposed: (Stretch | undefined)[]; notes: readonly string[] } {
    const { points, notes } = proposeReadings(within, target.applied);
    return { proposed: points.map(({ stretch }) => stretch), notes };
  }

  private record({ applied }: Target): { proposed: (Stretch | undefined)[]; notes: readonly string[] } {
    const start = this.settings.start.value();
    if (!this.trace || start === undefined || Number.isNaN(start)) return { proposed: applied.map(() => undefined), notes: ['Time 0 of the record: expected a number.'] };
    const proposed = readingsAt(this.trace, start, applied);
    const missing = proposed.filter((one) => one === undefined).length;
    return { proposed, notes: missing > 0 ? [`${counted(missing, 'moment')} of ${applied.length} ${missing === 1 ? 'lies' : 'lie'} beyond the log or in a gap of it.`] : [] };
  }

  private changed(): void {
    const readings = this.table.readings();
    const count = readings.filter((reading) => reading !== undefined).length;
    say(this.said, `${counted(count, 'reading')} for ${counted(readings.length, 'point')}${count < readings.length ? `; ${readings.length - count} stay as they are in the sheet` : ''}.`);
    this.draw();
  }

  private draw(): void {
    const { log, trace } = this;
    if (!log || !trace) return;
    const channel = log.channels[Number(this.settings.channel.input.value)] ?? log.channels[0];
    if (trace.values.length > 0) this.view.show(tracePlot(log, channel, trace, this.stretches, this.table.used()));
  }

  private tell(notes: readonly string[]): void {
    say(this.found, this.settings.single.input.checked ? '' : `${stretchCount(this.stretches.length)} found, shaded in the plot.`);
    this.notes.replaceChildren(...notes.map((words) => element('li', { children: [words] })));
  }

  private target(): Target | undefined {
    return this.targets.targets.find((target) => keyOf(target) === this.settings.target.input.value);
  }

  private async fill(): Promise<void> {
    const [target, sheet] = [this.target(), this.content?.name];
    if (!target || !sheet || this.busy) return;
    const readings = this.table.readings();
    const wrong = readings.findIndex((reading) => Number.isNaN(reading));
    if (wrong >= 0) {
      say(this.said, `The reading at ${target.cells[wrong].at} is no number; expected one like 1.2345, or nothing. Nothing is filled in.`);
      this.table.focus(wrong);
      return;
    }
    const filling = fillingOf(target, readings);
    if (filling.entries.length === 0) {
      say(this.said, 'There is no reading to fill in yet. Choose stretches, or type.');
      return;
    }
    const choice = filling.overwritten.length === 0 ? 'replace' : await askAboutReadings(this.element, filling.overwritten, filling.entries.length);
    const kept = new Set(choice === 'empty' ? filling.overwritten.map(({ at }) => at) : []);
    if (choice === 'leave') say(this.said, 'Nothing is filled in. The readings are as they were.');
    else await this.write(sheet, target, filling.entries.filter(({ at }) => !kept.has(at)));
    this.fillButton.focus();
  }

  private async write(sheet: string, target: Target, entries: ReturnType<typeof fillingOf>['entries']): Promise<void> {
    this.busy = true;
    this.fillButton.setAttribute('aria-disabled', 'true');
    try {
      await this.parts.host.fill(sheet, entries);
      this.filled.add(keyOf(target));
      this.said.replaceChildren(`${counted(entries.length, 'reading')} filled into ${entries[0].at} to ${entries[entries.length - 1].at}. Undo takes them back in one step. `, button('Show them', () => this.parts.goTo(sheet, entries[0].at)));
    } catch (error) {
      say(this.said, `The readings are not filled in: ${reasonOf(error)}`);
    } finally {
      this.busy = false;
      this.fillButton.removeAttribute('aria-disabled');
    }
  }
}

function say(place: HTMLElement, words: string): void {
  if (place.textContent !== words) place.textContent = words;
}

import type { SheetContent } from '../../hosts/sheetHost';
import { FilledSheet } from '../../worksheets/filledSheet';
import { type Job, type JobItem, STEPS } from '../../worksheets/job/job';
import { button, element } from '../dom';
import type { JobDesk } from './jobDesk';
import { nameOf } from './stepAt';
import { StepRow } from './stepRow';
import { currentStep, progressWords } from './stepWords';

/** A job: which one, its items, and the way of the item that is chosen. */
export class JobView {
  readonly element: HTMLElement;
  private readonly heading = element('h2', { attributes: { tabindex: '-1' } });
  private readonly customer = element('p', { class: 'rp-quiet' });
  private readonly items = element('div', { class: 'rp-items', attributes: { role: 'group', 'aria-label': 'Item' } });
  private readonly title = element('h3');
  private readonly way = element('ol', { class: 'rp-way', attributes: { 'aria-label': 'The way of the item' } });
  private readonly none = element('div', { class: 'rp-empty' });
  private rows: readonly StepRow[] = [];
  private rowsOf = '';
  /** The item and the step to do now, as shown last. */
  private now = '';
  private job: Job | undefined;
  private sheets: readonly SheetContent[] = [];

  /** @param below what stands under the way. */
  constructor(private readonly desk: JobDesk, below: HTMLElement) {
    const toSheet = button('Job sheet', () => this.job && desk.goTo(this.job.sheet, this.job.fields.number.at), { class: 'rp-to-job' });
    this.element = element('div', { class: 'rp-scroll rp-job', children: [
      element('div', { class: 'rp-job-head', children: [element('div', { children: [this.heading, this.customer] }), toSheet] }),
      this.items, this.title, this.way, this.none, below,
    ] });
  }

  /** Shows the job; true if the way of the item in sight went on since. */
  show(job: Job, sheets: readonly SheetContent[]): boolean {
    const before = this.now;
    this.job = job;
    this.sheets = sheets;
    const { number, customer } = job.fields;
    this.heading.textContent = number.value === undefined ? 'Job without a number' : `Job ${number.value}`;
    this.customer.textContent = customer.value ?? `No customer yet: ${customer.at} of “${job.sheet}”`;
    const item = this.chosen();
    this.showItems(job, item);
    this.showNone(job, item);
    if (item) this.showWay(job, item);
    return this.now !== before;
  }

  /** Puts the focus on the step to do now, or on the heading if all are done. */
  focus(): void {
    const step = this.current();
    const row = step === undefined ? undefined : this.rows[STEPS.indexOf(step)];
    (row ?? this.heading).focus();
    // The words on what was done have taken room at the foot meanwhile.
    row?.element.scrollIntoView({ block: 'nearest' });
  }

  private current() {
    const item = this.chosen();
    return item && this.job ? currentStep(this.desk.functions.wayOf(this.job, item, this.sheets)) : undefined;
  }

  private chosen(): JobItem | undefined {
    const items = this.job?.items ?? [];
    const last = Number(this.desk.drafts.words('job.item'));
    return items.find(({ index }) => index === last) ?? items[0];
  }

  private choose(item: JobItem): void {
    this.desk.drafts.keep('job.item', String(item.index));
    if (!this.job) return;
    this.show(this.job, this.sheets);
    this.items.querySelector<HTMLElement>('[aria-pressed="true"]')?.focus();
  }

  private showItems(job: Job, chosen: JobItem | undefined): void {
    const hadFocus = this.items.contains(document.activeElement);
    this.items.hidden = job.items.length < 2;
    this.title.hidden = chosen === undefined;
    this.title.textContent = chosen ? `${nameOf(chosen)}${chosen.identification.value === undefined ? '' : `, ${chosen.identification.value}`}` : '';
    this.items.replaceChildren(...job.items.map((item) => button('', () => this.choose(item), {
      attributes: { 'aria-pressed': String(item === chosen) },
      children: [element('strong', { children: [nameOf(item)] }), ' ', element('span', { children: [progressWords(this.desk.functions.wayOf(job, item, this.sheets))] })],
    })));
    if (hadFocus) this.items.querySelector<HTMLElement>('[aria-pressed="true"]')?.focus();
  }

  private showNone(job: Job, chosen: JobItem | undefined): void {
    this.none.hidden = chosen !== undefined;
    this.way.hidden = chosen === undefined;
    this.none.replaceChildren();
    if (chosen) return;
    const sheet = this.sheets.find(({ name }) => name === job.sheet);
    const at = (sheet && new FilledSheet(sheet).cell('item_name')?.at) ?? 'A1';
    this.none.replaceChildren(
      element('p', { children: ['No item has a name yet, and the way is that of an item. Name the first one on the Job sheet.'] }),
      button(`Name an item in ${at}`, () => this.desk.goTo(job.sheet, at), { class: 'rp-main' }),
    );
  }

  private showWay(job: Job, item: JobItem): void {
    const key = `${job.sheet} ${item.index}`;
    if (key !== this.rowsOf) {
      this.rowsOf = key;
      this.rows = STEPS.map((step, i) => new StepRow(step, i + 1, this.desk));
      this.way.replaceChildren(...this.rows.map((row) => row.element));
    }
    const states = this.desk.functions.wayOf(job, item, this.sheets);
    const now = currentStep(states);
    const before = this.now;
    this.now = now === undefined ? '' : `${key} ${now}`;
    states.forEach((state) => this.rows[STEPS.indexOf(state.step)].show({ job, item, sheets: this.sheets, state, isCurrent: state.step === now }));
    // The way went on, perhaps out of sight.
    if (now !== undefined && this.now !== before) this.rows[STEPS.indexOf(now)].element.scrollIntoView({ block: 'nearest' });
  }
}

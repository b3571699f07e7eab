import './job.css';
import type { SheetContent, SheetHost } from '../../hosts/sheetHost';
import type { Entry, SheetPlan } from '../../worksheets/plan';
import type { ReadSheet } from '../../worksheets/readSheet';
import type { Building } from '../build/building';
import type { Planning } from '../build/planning';
import { withProgress } from '../build/progress';
import { askAboutTaken } from '../build/takenDialog';
import { TemplateShelf } from '../build/templateShelf';
import { writeSheet } from '../build/writeSheet';
import { element } from '../dom';
import { Drafts } from '../drafts';
import type { PaneMemory } from '../memory';
import { reasonOf } from '../reason';
import type { WorkbookView } from '../sheetWatch';
import type { JobDesk } from './jobDesk';
import type { JobFunctions } from './jobFunctions';
import { jobStart } from './jobStart';
import { JobView } from './jobView';
import { type IssueParts, SignIssue } from './signIssue';

/** What the tab needs of the pane around it. */
export interface JobParts extends Omit<IssueParts, 'host'> {
  readonly host: SheetHost;
  readonly functions: JobFunctions;
  readonly planning: Planning;
  readonly memory: PaneMemory;
  readonly readWorkbook: (bytes: Uint8Array) => Promise<readonly ReadSheet[]>;
  /** Shows a cell and gives it the keyboard. */
  readonly goTo: (sheet: string, address: string) => void;
  /** Opens the form of a sheet in Build. */
  readonly build: (building: Building) => void;
  readonly makeRoom?: () => Promise<readonly string[]>;
  readonly openJob: () => void;
  readonly openReview: () => void;
  /** Reads the workbook again and shows it here. */
  readonly again: () => Promise<void>;
}

/** The job of the workbook: the way of each item and what to do next, or the form that starts one. */
export class JobTab implements WorkbookView, JobDesk {
  readonly element = element('div', { class: 'rp-view rp-part rp-job-tab' });
  readonly functions: JobFunctions;
  readonly drafts: Drafts;
  private readonly work = element('div', { class: 'rp-work' });
  private readonly said = element('p', { class: 'rp-outcome', attributes: { role: 'status' } });
  private readonly shelf: TemplateShelf;
  private readonly view: JobView;
  private readonly signing: SignIssue;
  private start: { readonly element: HTMLElement; focus(): void } | undefined;
  private busy = false;
  /** True while the words in sight say that the workbook could not be read. */
  private unread = false;

  constructor(private readonly parts: JobParts) {
    this.functions = parts.functions;
    this.drafts = new Drafts(parts.memory);
    this.shelf = new TemplateShelf(parts.planning, parts.memory);
    this.signing = new SignIssue(this, parts);
    this.view = new JobView(this, this.signing.element);
    this.put(element('div', { class: 'rp-scroll', children: [element('p', { children: ['Reading the workbook …'] })] }));
  }

  show(sheets: readonly SheetContent[]): void {
    if (this.unread) this.say('');
    this.unread = false;
    const job = this.functions.jobOf(sheets);
    if (job) {
      this.start = undefined;
      this.signing.show(job, sheets);
      const wentOn = this.view.show(job, sheets);
      this.put(this.view.element);
      // What was done last is of the past once the user goes on in the sheets.
      if (wentOn && !this.busy) this.say('');
    } else {
      // Made once, so that a change of the workbook leaves alone what is being typed.
      this.start ??= jobStart(this);
      this.put(this.start.element);
    }
  }

  fail(words: string): void {
    this.unread = true;
    this.say(words, true);
  }

  templates() {
    const own = this.shelf.own().flatMap(({ template }) => (template ? [template] : []));
    return [...own, ...this.shelf.builtIn];
  }

  goTo(sheet: string, address: string): void {
    this.say('');
    this.parts.goTo(sheet, address);
  }

  build(building: Building): void {
    this.say('');
    this.parts.build(building);
  }

  openJob(): void {
    this.parts.openJob();
  }

  refresh(): Promise<void> {
    return this.parts.again();
  }

  openReview(): void {
    this.say('');
    this.parts.openReview();
  }

  readWorkbook(bytes: Uint8Array): Promise<readonly ReadSheet[]> {
    return this.parts.readWorkbook(bytes);
  }

  fill(sheet: string, entries: readonly Entry[]): Promise<void> {
    return this.parts.host.fill(sheet, entries);
  }

  async makeRoom(): Promise<readonly string[]> {
    return (await this.parts.makeRoom?.()) ?? [];
  }

  write(plan: SheetPlan): Promise<SheetPlan | undefined> {
    return writeSheet(this.parts.host, plan, {
      ask: (sheet, taken) => this.ask((place) => askAboutTaken(place, sheet, taken)),
      show: (writing) => writing,
    });
  }

  /** Without the moving bar, since nothing moves until the user has answered. */
  async ask<T>(question: (place: HTMLElement) => Promise<T>): Promise<T> {
    this.work.hidden = true;
    try {
      return await question(this.element);
    } finally {
      this.work.hidden = false;
    }
  }

  async do(busy: string, work: () => Promise<string | undefined>): Promise<void> {
    if (this.busy) return;
    this.busy = true;
    const pressed = document.activeElement;
    this.say('');
    try {
      const words = await withProgress(this.work, busy, work());
      await this.parts.again();
      this.say(words ?? 'Nothing is changed.');
    } catch (error) {
      this.say(`It could not be done: ${reasonOf(error)}`, true);
    } finally {
      this.busy = false;
    }
    // What was pressed may be gone, since the way went on; the keyboard goes on with it.
    if (pressed && pressed !== document.body && !pressed.isConnected) (this.start ?? this.view).focus();
  }

  private say(words: string, isProblem = false): void {
    this.said.className = `rp-outcome${isProblem ? ' rp-refuse' : ''}`;
    if (this.said.textContent !== words) this.said.textContent = words;
  }

  private put(view: HTMLElement): void {
    if (this.element.firstElementChild !== view) this.element.replaceChildren(view, this.said, this.work);
  }
}

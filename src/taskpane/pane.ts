import './pane.css';
import './runPane.css';
import type { SheetContent, SheetHost } from '../hosts/sheetHost';
import type { Review } from '../review/reviewFinding';
import type { Reviewer } from '../review/reviewSheet';
import type { Finding } from '../worksheets/check/checkSheet';
import type { SheetPlan } from '../worksheets/plan';
import type { PlotData } from '../worksheets/plots/sheetPlots';
import type { ReadSheet } from '../worksheets/readSheet';
import { BuildTab } from './build/buildTab';
import type { Planning } from './build/planning';
import { CheckTab } from './check/checkTab';
import { element } from './dom';
import { createFunctionHelp, type FunctionHelp } from './functionHelp';
import type { JobFunctions } from './job/jobFunctions';
import { JobTab } from './job/jobTab';
import { reviewWritten } from './job/reviewWritten';
import { browserMemory, type PaneMemory, tellingMemory } from './memory';
import { PlotTab } from './plot/plotTab';
import { ReadingsTab } from './readings/readingsTab';
import { ReviewTab } from './review/reviewTab';
import { Tabs } from './tabs';
import { reasonOf } from './reason';
import { readAll, type SheetView, SheetWatch, type WorkbookView, WorkbookWatch } from './sheetWatch';

/** What the pane is made of: a host, pure functions of the worksheets and of the review, and what files are made and read with. */
export interface PaneParts {
  readonly host: SheetHost;
  readonly planning: Planning;
  readonly job: JobFunctions;
  readonly isRun: (content: SheetContent) => boolean;
  readonly check: (content: SheetContent) => readonly Finding[];
  readonly plots: (content: SheetContent) => readonly PlotData[];
  readonly review: (sheets: readonly ReadSheet[]) => Review;
  readonly planReviewSheet: (review: Review, reviewer: Reviewer) => SheetPlan;
  /** The sheets of a workbook file; throws, with words, if it is none. */
  readonly readWorkbook: (bytes: Uint8Array) => Promise<readonly ReadSheet[]>;
  /** A copy of a workbook file that needs no cell functions. */
  readonly issueCopy: (bytes: Uint8Array) => Promise<Uint8Array>;
  /** Hands a workbook file to the user. */
  readonly deliver: (name: string, bytes: Uint8Array) => Promise<void>;
  /** Takes out of the workbook what it held for show, when a job is started in it; gives the names of those sheets. */
  readonly makeRoom?: () => Promise<readonly string[]>;
  /** Gives the sheet room and the keyboard, after a cell was selected in it. */
  readonly toSheet?: () => void;
  readonly memory?: PaneMemory;
}

/** The pane in an element of a page. */
export interface RunPane {
  readonly help: FunctionHelp;
}

const UNKEPT = 'What is typed here is lost when the page is closed before it is written to a sheet: the browser’s storage is full or blocked.';
const TABS = ['job', 'build', 'readings', 'check', 'plot', 'review', 'help'];

/** Puts the pane into `root`. It opens with Job if the workbook has one, else with the tab that was used last, or Build. */
export function createPane(root: HTMLElement, parts: PaneParts): RunPane {
  const { host, job: functions } = parts;
  const unkept = element('p', { class: 'rp-problem', attributes: { role: 'status' } });
  const memory = tellingMemory(parts.memory ?? browserMemory(), (isKept) => { unkept.textContent = isKept ? '' : UNKEPT; });
  const sheetWatch = new SheetWatch(host);
  const workbookWatch = new WorkbookWatch(host);
  const problem = element('p', { class: 'rp-problem', attributes: { role: 'status' } });
  const helpRoot = element('div', { attributes: { id: 'function-help' } });
  const help = createFunctionHelp(helpRoot);

  const goTo = (sheet: string, address: string): void => {
    problem.textContent = '';
    parts.toSheet?.();
    host.select(sheet, address).catch((error: unknown) => { problem.textContent = `${address} could not be selected: ${reasonOf(error)}`; });
  };
  const open = (id: string) => (): void => {
    tabs.show(id);
    tabs.focus();
  };
  const build = new BuildTab({ host, planning: parts.planning, memory, goTo, check: open('check') });
  const job = new JobTab({
    ...parts, functions, memory, goTo,
    build: (building) => {
      tabs.show('build');
      build.open(building);
    },
    openJob: open('job'), openReview: open('review'), again: () => workbookWatch.again(),
  });
  const readings = new ReadingsTab({ host, isRun: parts.isRun, goTo, memory });
  const check = new CheckTab({ check: parts.check, isRun: parts.isRun, goTo, build: open('build') });
  const plot = new PlotTab({ plots: parts.plots, isRun: parts.isRun });
  const review = new ReviewTab({
    ...parts, memory, goTo, version: functions.version,
    written: async (sheet) => {
      const told = reviewWritten(sheet, await readAll(host), functions);
      if (told && told.entries.length > 0) await host.fill(told.job, told.entries);
    },
  });
  const ofSheet = new Map<string, SheetView>([['readings', readings], ['check', check], ['plot', plot]]);
  const ofWorkbook = new Map<string, WorkbookView>([['job', job], ['review', review]]);
  const tabs = new Tabs('Job, run worksheets and help', [
    { id: 'job', label: 'Job', content: job.element },
    { id: 'build', label: 'Build', content: build.element },
    { id: 'readings', label: 'Readings', content: readings.element },
    { id: 'check', label: 'Check', content: check.element },
    { id: 'plot', label: 'Plot', content: plot.element },
    { id: 'review', label: 'Review', content: review.element },
    { id: 'help', label: 'Help', content: element('div', { class: 'rp-help-scroll', children: [helpRoot] }) },
  ], (id) => {
    memory.set('pane.tab', id);
    sheetWatch.follow(ofSheet.get(id));
    workbookWatch.follow(ofWorkbook.get(id));
  });

  root.classList.add('run-pane');
  root.replaceChildren(tabs.list, problem, unkept, ...tabs.panels);
  const last = memory.get('pane.tab') ?? '';
  const first = TABS.includes(last) ? last : 'build';
  tabs.show(first);
  void hasJob(host, functions).then((found) => {
    // Whoever is at work in the pane already is left there.
    if (found && tabs.shown === first && !root.contains(document.activeElement)) tabs.show('job');
  });
  return { help };
}

/** True if a sheet of the workbook is that of a job; a workbook that cannot be read has none. */
async function hasJob(host: SheetHost, functions: JobFunctions): Promise<boolean> {
  try {
    for (const { name } of await host.sheets()) if (functions.jobOf([await host.read(name)])) return true;
  } catch {
    // Nobody asked for it; whatever is opened next tells of the failure.
  }
  return false;
}

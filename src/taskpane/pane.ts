import './pane.css';
import './runPane.css';
import type { SheetContent, SheetHost } from '../hosts/sheetHost';
import type { Finding } from '../worksheets/check/checkSheet';
import type { PlotData } from '../worksheets/plots/sheetPlots';
import { BuildTab } from './build/buildTab';
import type { Planning } from './build/planning';
import { CheckTab } from './check/checkTab';
import { element } from './dom';
import { createFunctionHelp, type FunctionHelp } from './functionHelp';
import { browserMemory, type PaneMemory } from './memory';
import { PlotTab } from './plot/plotTab';
import { Tabs } from './tabs';
import { reasonOf } from './reason';
import { type SheetView, SheetWatch } from './sheetWatch';

/** What the pane is made of: a host, and pure functions of the worksheets. */
export interface PaneParts {
  readonly host: SheetHost;
  readonly planning: Planning;
  readonly isRun: (content: SheetContent) => boolean;
  readonly check: (content: SheetContent) => readonly Finding[];
  readonly plots: (content: SheetContent) => readonly PlotData[];
  /** Gives the sheet room and the keyboard, after a cell was selected in it. */
  readonly toSheet?: () => void;
  readonly memory?: PaneMemory;
}

/** The pane in an element of a page. */
export interface RunPane {
  readonly help: FunctionHelp;
}

/** Puts the pane into `root`: the tabs Build, Check, Plot and Help. It opens the tab that was used last, or Build. */
export function createPane(root: HTMLElement, parts: PaneParts): RunPane {
  const memory = parts.memory ?? browserMemory();
  const watch = new SheetWatch(parts.host);
  const problem = element('p', { class: 'rp-problem', attributes: { role: 'status' } });
  const helpRoot = element('div', { attributes: { id: 'function-help' } });
  const help = createFunctionHelp(helpRoot);

  const goTo = (sheet: string, address: string): void => {
    problem.textContent = '';
    parts.toSheet?.();
    parts.host.select(sheet, address).catch((error: unknown) => { problem.textContent = `${address} could not be selected: ${reasonOf(error)}`; });
  };
  const open = (id: string) => (): void => {
    tabs.show(id);
    tabs.focus();
  };
  const check = new CheckTab({ check: parts.check, isRun: parts.isRun, goTo, build: open('build') });
  const plot = new PlotTab({ plots: parts.plots, isRun: parts.isRun });
  const views = new Map<string, SheetView>([['check', check], ['plot', plot]]);
  const build = new BuildTab({ host: parts.host, planning: parts.planning, memory, goTo, check: open('check') });
  const tabs = new Tabs('Run worksheets and help', [
    { id: 'build', label: 'Build', content: build.element },
    { id: 'check', label: 'Check', content: check.element },
    { id: 'plot', label: 'Plot', content: plot.element },
    { id: 'help', label: 'Help', content: element('div', { class: 'rp-help-scroll', children: [helpRoot] }) },
  ], (id) => {
    memory.set('pane.tab', id);
    watch.follow(views.get(id));
  });

  root.classList.add('run-pane');
  root.replaceChildren(tabs.list, problem, ...tabs.panels);
  const last = memory.get('pane.tab') ?? '';
  tabs.show(['build', 'check', 'plot', 'help'].includes(last) ? last : 'build');
  return { help };
}


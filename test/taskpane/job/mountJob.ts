import type { Building } from '../../../src/taskpane/build/building';
import type { JobFunctions } from '../../../src/taskpane/job/jobFunctions';
import { JobTab } from '../../../src/taskpane/job/jobTab';
import { WorkbookWatch } from '../../../src/taskpane/sheetWatch';
import { worksheetParts } from '../../../src/taskpane/worksheetParts';
import type { ReadSheet } from '../../../src/worksheets/readSheet';
import { inventedJobSheet } from '../../../src/worksheets/data/inventedJob';
import { readJob } from '../../../src/worksheets/job/readJob';
import type { JobItem } from '../../../src/worksheets/job/job';
import { fakeMemory, passed } from '../fakes';
import { PlanHost } from './jobHost';

/** The Job tab over a workbook in memory, with the functions of the worksheets; `changed` ones take their place. */
export async function mountJob({ host = new PlanHost(), memory = fakeMemory(), changed = {} as Partial<JobFunctions>, files = [] as readonly ReadSheet[] } = {}) {
  const watch = new WorkbookWatch(host);
  const built: Building[] = [];
  const opened: string[] = [];
  const gone: string[] = [];
  const delivered: { readonly name: string; readonly bytes: Uint8Array }[] = [];
  let found: readonly { severity: 'wrong'; kind: 'result'; sheet: string; at: string; message: string }[] = [];
  const tab: JobTab = new JobTab({
    host, memory, planning: worksheetParts.planning, functions: { ...worksheetParts.job, ...changed },
    review: () => ({ findings: found, recomputed: 0, agreeing: 0, sheets: [], record: 'none' }),
    issueCopy: async (bytes) => Uint8Array.from([...bytes, 1]),
    deliver: async (name, bytes) => void delivered.push({ name, bytes }),
    readWorkbook: async () => files,
    goTo: (sheet, at) => void gone.push(`${sheet}!${at}`),
    build: (building) => void built.push(building),
    openJob: () => void opened.push('job'),
    openReview: () => void opened.push('review'),
    again: () => watch.again(),
  });
  document.body.replaceChildren(tab.element);
  watch.follow(tab);
  await passed();
  const texts = (selector: string): string[] => [...tab.element.querySelectorAll(selector)].map(({ textContent }) => textContent ?? '');
  const step = (title: string): HTMLElement => {
    const row = [...tab.element.querySelectorAll<HTMLElement>('.rp-step')].find((one) => one.querySelector('.rp-step-name')?.textContent === title);
    if (!row) throw new Error(`no step “${title}” among ${texts('.rp-step-name').join(', ')}`);
    return row;
  };
  const press = async (label: string, within: HTMLElement = tab.element): Promise<void> => {
    const button = [...within.querySelectorAll('button')].find(({ textContent }) => textContent === label);
    if (!button) throw new Error(`no button “${label}” among ${[...within.querySelectorAll('button')].map(({ textContent }) => textContent).join(', ')}`);
    button.focus();
    button.click();
    await passed(5);
  };
  const field = (label: string, within: HTMLElement = tab.element): HTMLInputElement => {
    const found = [...within.querySelectorAll('label')].find(({ textContent }) => textContent?.startsWith(label));
    const input = found && document.getElementById(found.htmlFor);
    if (!input) throw new Error(`no field “${label}” among ${[...within.querySelectorAll('label')].map(({ textContent }) => textContent).join(', ')}`);
    return input as HTMLInputElement;
  };
  const type = (label: string, text: string, within?: HTMLElement): void => {
    field(label, within).value = text;
    field(label, within).dispatchEvent(new Event('input', { bubbles: true }));
  };
  return {
    tab, host, memory, watch, built, opened, gone, delivered, texts, step, press, field, type,
    find: (findings: typeof found) => { found = findings; },
    state: (title: string) => step(title).querySelector('.rp-state')!.textContent,
    said: () => tab.element.querySelector('.rp-outcome')!.textContent,
    again: async () => { await watch.again(); },
    /** The item of the invented job at a place, with the addresses of its cells. */
    item: (index: number): JobItem => readJob(host.content.get('Job')!)!.items[index],
    /** Puts words at a step of an item, as typed on the sheet. */
    put: async (index: number, words: Partial<Record<keyof JobItem['way'], string>>) => {
      const { way } = readJob(host.content.get('Job')!)!.items[index];
      await host.fill('Job', Object.entries(words).map(([one, value]) => ({ at: way[one as keyof JobItem['way']].at, value: value ?? null })));
      await watch.again();
    },
  };
}

/** The same with the invented job begun: everything of the Job sheet is typed, nothing is done yet. */
export async function mountInventedJob(options: Parameters<typeof mountJob>[0] = {}) {
  const host = options.host ?? new PlanHost();
  if (!host.content.has('Job')) await host.write(inventedJobSheet());
  return mountJob({ ...options, host });
}

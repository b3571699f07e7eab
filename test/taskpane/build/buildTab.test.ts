/** @jest-environment jsdom */
import { BuildTab } from '../../../src/taskpane/build/buildTab';
import type { SheetPlan } from '../../../src/worksheets/plan';
import { fakeMemory, FakeHost, fakePlanning, giveDialogs, passed } from '../fakes';

Element.prototype.scrollIntoView = jest.fn();
giveDialogs();

function mounted(memory = fakeMemory(), planning = fakePlanning) {
  const host = new FakeHost();
  const goTo = jest.fn();
  const check = jest.fn();
  const tab = new BuildTab({ host, planning, memory, goTo, check });
  document.body.replaceChildren(tab.element);
  const press = async (label: string): Promise<void> => {
    const found = [...tab.element.querySelectorAll('button')].find(({ textContent }) => textContent === label);
    if (!found) throw new Error(`no button “${label}” among ${[...tab.element.querySelectorAll('button')].map(({ textContent }) => textContent).join(', ')}`);
    found.click();
    await passed();
  };
  const openTen = (): void => tab.element.querySelector<HTMLElement>('[data-template=ten]')!.click();
  const heading = (): string | null | undefined => tab.element.querySelector('h2')?.textContent;
  const said = (): string | null | undefined => tab.element.querySelector('.rp-said')?.textContent;
  const dialog = (): HTMLDialogElement | null => tab.element.querySelector('dialog');
  return { host, tab, press, openTen, heading, said, dialog, goTo, check };
}

/** A workbook with a filled sheet of the name that the plan has. */
async function withTaken() {
  const all = mounted();
  all.host.content.set('Run', { name: 'Run', cells: [{ at: 'A1', value: 'mine' }], merges: [], names: [] });
  all.openTen();
  await all.press('Build the sheet');
  return all;
}

test('choosing a template opens its form with the focus on its title, and going back gives the focus to the template', async () => {
  const { openTen, heading, press } = mounted();
  openTen();
  expect(heading()).toBe('Ten points');
  expect(document.activeElement?.textContent).toBe('Ten points');
  await press('‹ All templates');
  expect((document.activeElement as HTMLElement).dataset.template).toBe('ten');
});

test('answers are still there when a form is opened again', async () => {
  const { openTen, press, tab } = mounted();
  openTen();
  const field = tab.element.querySelector<HTMLInputElement>('[data-question=capacity] input')!;
  field.value = '77';
  field.dispatchEvent(new Event('input'));
  await press('‹ All templates');
  openTen();
  expect(tab.element.querySelector<HTMLInputElement>('[data-question=capacity] input')!.value).toBe('77');
});

test('a built sheet is told of, with ways on to the readings and to the check', async () => {
  const { host, openTen, press, heading, goTo, check } = mounted();
  openTen();
  await press('Build the sheet');
  expect(host.written.map(({ name }) => name)).toEqual(['Run']);
  expect(heading()).toBe('“Run” is built');
  expect(document.activeElement?.textContent).toBe('“Run” is built');
  await press('Fill in from B5');
  expect(goTo).toHaveBeenCalledWith('Run', 'B5');
  await press('Check readings');
  expect(check).toHaveBeenCalledTimes(1);
  await press('Back to the questions');
  expect(heading()).toBe('Ten points');
});

describe('where a sheet of the name holds something', () => {
  test('nothing is written before the user was asked', async () => {
    const { host, dialog } = await withTaken();
    expect(host.written).toEqual([]);
    expect(dialog()?.open).toBe(true);
    expect(document.getElementById(dialog()!.getAttribute('aria-labelledby')!)!.textContent).toBe('“Run” already holds something');
    expect((document.activeElement as HTMLInputElement).value).toBe('Run 2');
  });

  test('another name leaves both', async () => {
    const { host, press, heading, dialog } = await withTaken();
    await press('Build under this name');
    expect(host.written.map(({ name }) => name)).toEqual(['Run 2']);
    expect(host.content.get('Run')!.cells[0].value).toBe('mine');
    expect(heading()).toBe('“Run 2” is built');
    expect(dialog()).toBeNull();
  });

  test('a name that cannot be is told of, and the question stays', async () => {
    const { host, press, dialog } = await withTaken();
    const name = dialog()!.querySelector('input')!;
    name.value = 'Sheet1';
    await press('Build under this name');
    expect(dialog()!.textContent).toContain('There is a sheet “Sheet1” already.');
    expect(name.getAttribute('aria-invalid')).toBe('true');
    expect(host.written).toEqual([]);
  });

  test('replacing is done only when it is said', async () => {
    const { host, press } = await withTaken();
    await press('Replace the sheet');
    expect(host.written.map(({ name }) => name)).toEqual(['Run']);
  });

  test.each([['the button', 'button'], ['Escape', 'escape']])('with %s everything stays, and the focus is back on Build', async (_, way) => {
    const { host, press, dialog, said } = await withTaken();
    if (way === 'button') await press('Leave it as it is');
    else dialog()!.close();
    await passed();
    expect(host.written).toEqual([]);
    expect(host.content.get('Run')!.cells[0].value).toBe('mine');
    expect(said()).toBe('Nothing is built. The sheet is as it was.');
    expect(document.activeElement?.textContent).toBe('Build the sheet');
  });
});

test('a failure is told with its reason, and the answers stay', async () => {
  const { host, openTen, press, said, heading } = mounted();
  host.failure = new Error('the workbook is protected');
  openTen();
  await press('Build the sheet');
  expect(said()).toBe('The sheet is not built: the workbook is protected');
  expect(heading()).toBe('Ten points');
});

test('building that takes over a second shows progress, and a second press starts nothing', async () => {
  const { host, openTen, press, tab } = mounted();
  let finish = (): void => undefined;
  const write = jest.spyOn(host, 'write').mockImplementation(() => new Promise((resolve) => { finish = resolve; }));
  openTen();
  await press('Build the sheet');
  expect(tab.element.querySelector('progress')).toBeNull();
  await passed(1100);
  expect(tab.element.querySelector('progress')!.getAttribute('aria-label')).toBe('Building “Run” …');
  await press('Build the sheet');
  expect(write).toHaveBeenCalledTimes(1);
  finish();
  await passed();
  expect(tab.element.querySelector('progress')).toBeNull();
});

describe('answers that were begun', () => {
  const capacity = (tab: BuildTab): HTMLInputElement => tab.element.querySelector<HTMLInputElement>('[data-question=capacity] input')!;
  const type = (tab: BuildTab, text: string): void => {
    capacity(tab).value = text;
    capacity(tab).dispatchEvent(new Event('input'));
  };

  test('outlast a reload, are said to be there, and can be given up', async () => {
    const memory = fakeMemory();
    const first = mounted(memory);
    first.openTen();
    expect(first.tab.element.textContent).not.toContain('Your answers from before');
    type(first.tab, '77');
    const second = mounted(memory);
    second.openTen();
    expect(capacity(second.tab).value).toBe('77');
    expect(second.tab.element.textContent).toContain('Your answers from before are filled in.');
    await second.press('Start again');
    expect(capacity(second.tab).value).toBe('20');
    const third = mounted(memory);
    third.openTen();
    expect(capacity(third.tab).value).toBe('20');
  });

  test('are forgotten once the sheet is built, but not on this page', async () => {
    const memory = fakeMemory();
    const first = mounted(memory);
    first.openTen();
    type(first.tab, '77');
    await first.press('Build the sheet');
    await first.press('Back to the questions');
    expect(capacity(first.tab).value).toBe('77');
    const second = mounted(memory);
    second.openTen();
    expect(capacity(second.tab).value).toBe('20');
  });

  test('of a template that was changed under its id are its own', () => {
    const memory = fakeMemory();
    const first = mounted(memory);
    first.openTen();
    type(first.tab, '77');
    const changed = fakePlanning.builtInTemplates().map((one) => ({ ...one, purpose: 'changed' }));
    const second = mounted(memory, { ...fakePlanning, builtInTemplates: () => changed });
    second.openTen();
    expect(capacity(second.tab).value).toBe('20');
  });
});

describe('a sheet that is built for a step of a job', () => {
  const template = fakePlanning.builtInTemplates()[1];
  const answers = { item: 'Cell A', capacity: '50', unit: 'kN', directions: 'tension' };

  function forStep(written = jest.fn(async () => undefined)) {
    const all = mounted();
    const back = jest.fn();
    const link = jest.fn((plan: SheetPlan) => ({ ...plan, cells: [...plan.cells, { at: 'D1', role: 'reference' as const, formula: "='Job'!$C$9" }] }));
    all.tab.open({ template, answers, draft: 'job.7.0.as_found', step: { title: 'Cell A: as found', link, written, back } });
    return { ...all, back, written };
  }

  test('has its form filled in, says what it is for, and leads back to the job', async () => {
    const { tab, press, back } = forStep();
    expect(tab.element.querySelector('.rp-for')!.textContent).toBe('Cell A: as found');
    expect(tab.element.querySelector<HTMLInputElement>('[data-question=capacity] input')!.value).toBe('50');
    await press('‹ The job');
    expect(back).toHaveBeenCalledTimes(1);
  });

  test('is linked before it is written, and the job is told of it', async () => {
    const { host, press, written, back } = forStep();
    await press('Build the sheet');
    expect(host.written[0].cells).toContainEqual({ at: 'D1', role: 'reference', formula: "='Job'!$C$9" });
    expect(written).toHaveBeenCalledWith(host.written[0]);
    await press('Back to the job');
    expect(back).toHaveBeenCalledTimes(1);
  });

  test('stands although the job could not be told, and this is said', async () => {
    const { press, heading, tab } = forStep(jest.fn(async () => { throw new Error('C31 is locked.'); }));
    await press('Build the sheet');
    expect(heading()).toBe('“Run” is built');
    expect(tab.element.querySelector('.rp-refuse')!.textContent).toBe('The Job sheet was not told of it: C31 is locked. In the Job tab, choose this sheet for the step.');
  });
});

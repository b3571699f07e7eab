/** @jest-environment jsdom */
import { inventedJob } from '../../../src/worksheets/data/inventedJob';
import { fakeMemory, giveDialogs, passed } from '../fakes';
import { PlanHost } from './jobHost';
import { mountJob } from './mountJob';

Element.prototype.scrollIntoView = jest.fn();
giveDialogs();

/** Answers the form of a new job as the invented job does. */
function answer(root: HTMLElement): void {
  for (const [id, text] of Object.entries(inventedJob())) {
    const field = root.querySelector<HTMLInputElement>(`[data-question="${id}"] input, [data-question="${id}"] select`)!;
    field.value = text;
    field.dispatchEvent(new Event(field.matches('select') ? 'change' : 'input', { bubbles: true }));
  }
}

test('a workbook without a job says what a job is, and asks what begins one', async () => {
  const { texts, tab } = await mountJob();
  expect(texts('h2')).toEqual(['Start a job']);
  expect(texts('p').join(' ')).toContain('from receipt to the signed certificate');
  expect(tab.element.querySelectorAll('[data-question]').length).toBeGreaterThan(10);
});

test('starting writes the Job sheet and shows the way', async () => {
  const { tab, press, host, texts, said } = await mountJob();
  answer(tab.element);
  await press('Start the job');
  expect(host.written.map(({ name }) => name)).toEqual(['Job']);
  expect(texts('h2')).toEqual(['Job DEMO-2026-041']);
  expect(said()).toBe('“Job” is written.');
  expect((document.activeElement as HTMLElement).dataset.step).toBe('received');
});

test('nothing is called wrong before anybody has answered; a press tells all that is to mend', async () => {
  const { texts, press, host, type } = await mountJob();
  expect(texts('.rp-problems li')).toEqual([]);
  type('Capacity', 'x');
  await passed(250);
  expect(texts('.rp-question .rp-problems li')).toHaveLength(1);
  await press('Start the job');
  expect(texts('.rp-question .rp-problems li').length).toBeGreaterThan(2);
  expect(host.written).toEqual([]);
});

test('what is to mend keeps the sheet from being written', async () => {
  const { tab, press, host } = await mountJob();
  answer(tab.element);
  const items = tab.element.querySelector<HTMLInputElement>('[data-question="items"] input')!;
  items.value = '';
  items.dispatchEvent(new Event('input'));
  await press('Start the job');
  expect(host.written).toEqual([]);
  expect(document.activeElement).toBe(items);
});

test('answers outlast a reload until the job is started, and no longer', async () => {
  const memory = fakeMemory();
  const first = await mountJob({ memory });
  answer(first.tab.element);
  const second = await mountJob({ memory });
  const number = (): string => second.tab.element.querySelector<HTMLInputElement>('[data-question="number"] input')!.value;
  expect(number()).toBe('DEMO-2026-041');
  await second.press('Start the job');
  const third = await mountJob({ memory, host: new PlanHost() });
  expect(third.tab.element.querySelector<HTMLInputElement>('[data-question="number"] input')!.value).toBe('');
});

test('a sheet “Job” that holds something is not written over without asking', async () => {
  const host = new PlanHost();
  host.content.set('Job', { name: 'Job', cells: [{ at: 'A1', value: 'mine' }], merges: [], names: [] });
  const { tab, press, said } = await mountJob({ host });
  answer(tab.element);
  await press('Start the job');
  expect(tab.element.querySelector('dialog')!.open).toBe(true);
  await press('Leave it as it is');
  await passed();
  expect(host.valueAt('Job', 'A1')).toBe('mine');
  expect(said()).toBe('Nothing is written. The sheet is as it was.');
});

test('a workbook that cannot be read is told of', async () => {
  const host = new PlanHost();
  host.failure = new Error('busy');
  const { said, again, texts } = await mountJob({ host });
  expect(said()).toBe('The workbook could not be read: busy');
  host.failure = undefined;
  await again();
  expect([said(), texts('h2')]).toEqual(['', ['Start a job']]);
});

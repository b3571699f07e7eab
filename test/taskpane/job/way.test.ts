/** @jest-environment jsdom */
import { fakeMemory, giveDialogs } from '../fakes';
import { mountInventedJob } from './mountJob';

Element.prototype.scrollIntoView = jest.fn();
giveDialogs();

describe('the way of an item', () => {
  test('is eight steps in order, each with its state in words; the one to do now is marked and open', async () => {
    const { texts, tab } = await mountInventedJob();
    expect(texts('.rp-step-name')).toEqual(['Received', 'Inspected', 'As found', 'Adjusted or repaired', 'As left', 'Decided', 'Certificate', 'Reviewed']);
    expect(texts('.rp-state')).toEqual(['Done: clean, cable rubbed near the gland', 'Next', ...Array.from({ length: 6 }, () => 'Waits for an earlier step')]);
    expect([...tab.element.querySelectorAll('.rp-step > details')].map((one) => (one as HTMLDetailsElement).open)).toEqual([false, true, false, false, false, false, false, false]);
    expect(tab.element.querySelectorAll('[aria-current=step]')).toHaveLength(1);
  });

  test('has one main action, at the step to do now', async () => {
    const { texts } = await mountInventedJob();
    expect(texts('.rp-way .rp-main')).toEqual(['Build the receiving inspection']);
  });

  test('tells which job and whose, and goes to its sheet', async () => {
    const { texts, press, gone, item } = await mountInventedJob();
    expect(texts('h2')).toEqual(['Job DEMO-2026-041']);
    expect(texts('.rp-job-head .rp-quiet')).toEqual(['Tidewater Crane Hire (invented)']);
    await press('Job sheet');
    expect(gone).toHaveLength(1);
    expect(gone[0]).toMatch(/^Job!/);
    expect(item(0).name.value).toBe('Cell A');
  });

  test('of each item is chosen by its name, and the choice outlasts the page', async () => {
    const memory = fakeMemory();
    const { texts, press, host, put } = await mountInventedJob({ memory });
    await put(1, { inspected: 'nothing to be seen' });
    expect(texts('.rp-items button')).toEqual(['Cell A 1 of 8', 'Cell B 2 of 8']);
    await press('Cell B 2 of 8');
    expect(texts('h3')[0]).toBe('Cell B, Invented cell, DEMO-0018');
    expect(texts('.rp-state')[1]).toBe('Done: nothing to be seen');
    expect(document.activeElement?.textContent).toBe('Cell B 2 of 8');
    expect((await mountInventedJob({ host, memory })).texts('h3')[0]).toContain('Cell B');
  });

  test('goes on by itself when the sheet says more, and opens the next step', async () => {
    const { put, state, tab } = await mountInventedJob();
    await put(0, { inspected: 'connector sound' });
    expect(state('Inspected')).toBe('Done: connector sound');
    expect(state('As found')).toBe('Next');
    expect(tab.element.querySelector('.rp-step-now .rp-step-name')!.textContent).toBe('As found');
    expect((tab.element.querySelector('.rp-step-now > details') as HTMLDetailsElement).open).toBe(true);
  });

  test('keeps open what the user opened', async () => {
    const { step, again, host, tab } = await mountInventedJob();
    step('Decided').querySelector('details')!.open = true;
    await host.fill('Job', [{ at: 'Z99', value: 'a note' }]);
    await again();
    expect(tab.element.querySelectorAll('.rp-step > details[open]')).toHaveLength(2);
  });
});

describe('received', () => {
  test('lists what the Job sheet misses, each a way to its cell', async () => {
    const { host, item, again, state, step, press, gone } = await mountInventedJob();
    await host.fill('Job', [{ at: item(0).received.at, value: null }, { at: item(0).condition.at, value: null }]);
    await again();
    expect(state('Received')).toBe('Next: 2 missing');
    const ways = [...step('Received').querySelectorAll<HTMLElement>('.rp-finding')];
    expect(ways).toHaveLength(2);
    expect(ways[1].textContent).toContain(item(0).condition.at);
    ways[1].click();
    await press('Fill in the Job sheet');
    expect(gone).toEqual([`Job!${item(0).condition.at}`, `Job!${item(0).received.at}`]);
  });
});

describe('skipping', () => {
  test('asks for a reason, writes it on the Job sheet, and the keyboard goes on to the next step', async () => {
    const { press, step, type, state, host, item, said } = await mountInventedJob();
    await press('Skip with this reason', step('Inspected'));
    expect(step('Inspected').querySelector('.rp-words .rp-refuse')!.textContent).toBe('Type the reason first.');
    expect(host.filled).toEqual([]);
    type('Reason', 'inspected by the customer', step('Inspected'));
    await press('Skip with this reason', step('Inspected'));
    expect(host.valueAt('Job', item(0).way.inspected.at)).toBe('skipped: inspected by the customer');
    expect(state('Inspected')).toBe('Skipped: inspected by the customer');
    expect(said()).toBe('Inspected is skipped: inspected by the customer.');
    expect((document.activeElement as HTMLElement).dataset.step).toBe('as_found');
  });

  test('is taken back, and the step is open again', async () => {
    const { put, press, step, state, host, item } = await mountInventedJob();
    await put(0, { inspected: 'skipped: no time' });
    await press('Take it back', step('Inspected'));
    expect(host.valueAt('Job', item(0).way.inspected.at)).toBeNull();
    expect(state('Inspected')).toBe('Next');
  });

  test('a reason that is being typed outlasts a reload, and is gone once it is written', async () => {
    const memory = fakeMemory();
    const first = await mountInventedJob({ memory });
    first.type('Reason', 'half a rea', first.step('Inspected'));
    const second = await mountInventedJob({ memory, host: first.host });
    expect(second.field('Reason', second.step('Inspected')).value).toBe('half a rea');
    await second.press('Skip with this reason', second.step('Inspected'));
    expect([...memory.held.values()]).not.toContain('half a rea');
  });

  test('what is being typed stays, with the focus, while the workbook changes', async () => {
    const { field, step, put } = await mountInventedJob();
    const input = field('Reason', step('Inspected'));
    step('Inspected').querySelector<HTMLDetailsElement>('.rp-other')!.open = true;
    input.focus();
    input.value = 'hal';
    input.dispatchEvent(new Event('input'));
    await put(1, { inspected: 'seen' });
    expect((document.activeElement as HTMLInputElement).value).toBe('hal');
  });
});

test('what the last thing came to is cleared when the way goes on by what is typed on a sheet, and not before', async () => {
  const { press, step, type, said, put, again } = await mountInventedJob();
  type('Reason', 'no time', step('Inspected'));
  await press('Skip with this reason', step('Inspected'));
  await again();
  expect(said()).toBe('Inspected is skipped: no time.');
  await put(0, { as_found: 'skipped: broken' });
  expect(said()).toBe('');
});

test('what the last thing came to is cleared when the user goes on to a sheet', async () => {
  const { press, step, type, said } = await mountInventedJob();
  type('Reason', 'no time', step('Inspected'));
  await press('Skip with this reason', step('Inspected'));
  expect(said()).not.toBe('');
  await press('Job sheet');
  expect(said()).toBe('');
});

test('a failure is told with its reason, and nothing is lost', async () => {
  const { host, type, press, step, said, field } = await mountInventedJob();
  type('Reason', 'no time', step('Inspected'));
  jest.spyOn(host, 'fill').mockRejectedValueOnce(new Error('C31 is locked'));
  await press('Skip with this reason', step('Inspected'));
  expect(said()).toBe('It could not be done: C31 is locked');
  expect(field('Reason', step('Inspected')).value).toBe('no time');
});

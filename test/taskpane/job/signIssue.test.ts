/** @jest-environment jsdom */
import { TextEncoder } from 'node:util';
import { readRecord } from '../../../src/worksheets/record/readRecord';
import { fakeMemory, giveDialogs, passed } from '../fakes';
import { PlanHost } from './jobHost';
import { mountInventedJob } from './mountJob';

Element.prototype.scrollIntoView = jest.fn();
giveDialogs();
// jsdom has none.
Object.assign(globalThis, { TextEncoder });

const OVER = { inspected: 'sound', as_found: 'skipped: x', adjusted: 'repaired', as_left: 'skipped: x', decided: 'scrapped', certificate: 'skipped: scrapped', reviewed: 'by M. Example' };

async function finished(options: Parameters<typeof mountInventedJob>[0] = {}) {
  const mounted = await mountInventedJob(options);
  await mounted.put(0, OVER);
  await mounted.put(1, OVER);
  return mounted;
}

test('signing and issuing are folded away until the work is done, with the state in words', async () => {
  const { tab, texts, put } = await mountInventedJob();
  const part = tab.element.querySelector<HTMLDetailsElement>('.rp-issue')!;
  expect([part.open, texts('.rp-issue > summary')]).toEqual([false, ['Sign and issue Not signed yet.']]);
  const before = { ...OVER, reviewed: undefined };
  await put(0, before);
  await put(1, before);
  expect(part.open).toBe(true);
  expect(texts('.rp-main')).toEqual(['Sign the record']);
  expect(texts('.rp-step-now')[0]).toContain('Sign the record first, below');
});

describe('signing', () => {
  test('needs a name, and says so beside it', async () => {
    const { press, host, texts, field } = await finished();
    await press('Sign the record');
    expect(texts('#job-sign-problem')).toEqual(['Type the name of the person who signs.']);
    expect(document.activeElement).toBe(field('Signed by'));
    expect(host.written.map(({ name }) => name)).toEqual(['Job']);
  });

  test('writes the record of every cell, and the state says who and when', async () => {
    const { press, type, host, texts, said } = await finished();
    type('Signed by', 'T. Example');
    type('Date', '2026-11-30');
    await press('Sign the record');
    expect(said()).toBe('The record is signed.');
    expect(readRecord(host.all())).toMatchObject({ signedBy: 'T. Example', signedOn: 46_356 });
    expect(texts('#job-signature-state')).toEqual(['Signed by T. Example on 2026-11-30. Everything is as signed.']);
  });

  test('what differs since is listed, each a way to its cell; signing again takes a reason', async () => {
    const { press, type, host, texts, item, again, gone, tab, field } = await finished();
    type('Signed by', 'T. Example');
    await press('Sign the record');
    await host.fill('Job', [{ at: item(0).condition.at, value: 'dented' }]);
    await again();
    expect(texts('#job-signature-state')[0]).toMatch(/Since then one cell differs\.$/);
    tab.element.querySelector<HTMLElement>('.rp-issue .rp-finding')!.click();
    expect(gone).toEqual([`Job!${item(0).condition.at}`]);
    expect(field('Why it is signed again').closest<HTMLElement>('.rp-words')!.hidden).toBe(false);
    type('Why it is signed again', 'condition was mistyped');
    await press('Sign the record again');
    expect(texts('#job-signature-state')[0]).toMatch(/Everything is as signed\.$/);
    expect(JSON.stringify(host.content.get('Record'))).toContain('condition was mistyped');
  });

  test('the name outlasts a reload', async () => {
    const memory = fakeMemory();
    const first = await finished({ memory });
    first.type('Signed by', 'T. Example');
    expect((await mountInventedJob({ memory })).field('Signed by').value).toBe('T. Example');
  });
});

describe('the issue copy', () => {
  test('of a finished job that is signed is handed over under the number of the job', async () => {
    const { press, type, delivered, said, tab } = await finished();
    type('Signed by', 'T. Example');
    await press('Sign the record');
    await press('Make the issue copy');
    expect(tab.element.querySelector('dialog')).toBeNull();
    expect(delivered).toEqual([{ name: 'Job DEMO-2026-041, issue copy.xlsx', bytes: Uint8Array.from([80, 75, 1]) }]);
    expect(said()).toBe('The issue copy “Job DEMO-2026-041, issue copy.xlsx” is made.');
  });

  test('is signed with it where it is not, or no longer', async () => {
    const { press, type, delivered, host } = await finished();
    type('Signed by', 'T. Example');
    await press('Make the issue copy');
    expect(delivered).toHaveLength(1);
    expect(readRecord(host.all())?.signedBy).toBe('T. Example');
  });

  test('without a name is not made', async () => {
    const { press, delivered } = await finished();
    await press('Make the issue copy');
    expect(delivered).toEqual([]);
  });

  test('is asked about first, with what speaks against it, and not made on Escape', async () => {
    const { press, type, delivered, tab, find, said, host } = await mountInventedJob();
    find([{ severity: 'wrong', kind: 'result', sheet: 'Run', at: 'C9', message: 'found 2, expected 3' }]);
    type('Signed by', 'T. Example');
    await press('Make the issue copy');
    const dialog = tab.element.querySelector('dialog')!;
    const against = [...dialog.querySelectorAll('li')].map(({ textContent }) => textContent);
    expect(against).toEqual([
      'Cell A: not done yet: inspected, as found, adjusted or repaired, as left, decided, certificate, reviewed.',
      'Cell B: not done yet: inspected, as found, adjusted or repaired, as left, decided, certificate, reviewed.',
      'The review finds 1 wrong, first Run C9: found 2, expected 3.',
    ]);
    dialog.close();
    await passed(5);
    expect(delivered).toEqual([]);
    expect(host.content.has('Record')).toBe(false);
    expect(said()).toBe('No copy is made.');
    expect(document.activeElement?.textContent).toBe('Make the issue copy');
  });

  test('is made all the same if that is said', async () => {
    const { press, type, delivered } = await mountInventedJob();
    type('Signed by', 'T. Example');
    await press('Make the issue copy');
    await press('Make the copy all the same');
    await passed(5);
    expect(delivered).toHaveLength(1);
  });

  test('that fails is told of', async () => {
    const host = new PlanHost();
    const { press, type, said, delivered } = await finished({ host });
    type('Signed by', 'T. Example');
    jest.spyOn(host, 'save').mockRejectedValueOnce(new Error('the workbook is too large'));
    await press('Make the issue copy');
    expect(said()).toBe('It could not be done: the workbook is too large');
    expect(delivered).toEqual([]);
  });
});

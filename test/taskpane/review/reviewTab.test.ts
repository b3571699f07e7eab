/** @jest-environment jsdom */
import type { SheetContent } from '../../../src/hosts/sheetHost';
import type { Review, ReviewFinding } from '../../../src/review/reviewFinding';
import { planReviewSheet } from '../../../src/review/reviewSheet';
import { ReviewTab } from '../../../src/taskpane/review/reviewTab';
import type { ReadSheet } from '../../../src/worksheets/readSheet';
import { fakeMemory, FakeHost, giveDialogs, passed } from '../fakes';

giveDialogs();

const RUN: SheetContent = { name: 'As found', cells: [{ at: 'B5', value: 2 }], merges: [], names: [{ name: 'readings_tension', range: 'B5:B6' }] };
const FOUND: readonly ReviewFinding[] = [
  { severity: 'odd', kind: 'standard', sheet: 'Job', at: 'C30', message: 'overdue' },
  { severity: 'wrong', kind: 'reading', sheet: 'As found', at: 'B5', message: 'was 2, is 3' },
];

function reviewWith(findings: readonly ReviewFinding[], sheets: readonly ReadSheet[] = [RUN]): Review {
  return { findings, recomputed: 12, agreeing: 12 - findings.length, sheets: sheets.map(({ name }) => name), record: findings.length === 0 ? 'as signed' : 'differs', fingerprint: 'ab12' };
}

function mounted(found: readonly ReviewFinding[] = []) {
  const host = new FakeHost();
  host.content.clear();
  host.content.set(RUN.name, RUN);
  const memory = fakeMemory();
  const goTo = jest.fn();
  const written = jest.fn(async () => undefined);
  const review = jest.fn((sheets: readonly ReadSheet[]) => reviewWith(found, sheets));
  const readWorkbook = jest.fn(async (bytes: Uint8Array): Promise<readonly ReadSheet[]> => {
    if (bytes[0] !== 80) throw new Error('found a file that is no zip archive; expected a workbook (.xlsx)');
    return [RUN];
  });
  const tab = new ReviewTab({ host, review, readWorkbook, planReviewSheet, version: '1.0.0', memory, goTo, written });
  document.body.replaceChildren(tab.element);
  const texts = (selector: string): (string | null)[] => [...tab.element.querySelectorAll(selector)].map(({ textContent }) => textContent);
  const buttons = (): HTMLButtonElement[] => [...tab.element.querySelectorAll('button')];
  const press = async (label: string): Promise<void> => {
    buttons().find(({ textContent }) => textContent === label)!.click();
    await passed();
    await passed();
  };
  const type = (id: string, words: string): void => {
    const input = tab.element.querySelector<HTMLInputElement>(`#${id}`)!;
    input.value = words;
    input.dispatchEvent(new Event('input'));
  };
  const outcome = (): string | null => tab.element.querySelector('.rp-count')!.textContent;
  return { tab, host, memory, goTo, written, review, readWorkbook, texts, press, type, outcome, buttons };
}

async function shown(found: readonly ReviewFinding[] = []) {
  const all = mounted(found);
  all.tab.show([RUN]);
  await passed();
  return all;
}

/** A file as the page gives it; jsdom has no arrayBuffer(). */
function file(name: string, bytes: readonly number[]): File {
  return { name, size: bytes.length, arrayBuffer: async () => new Uint8Array(bytes).buffer } as unknown as File;
}

function choose(tab: ReviewTab, files: readonly File[]): void {
  const input = tab.element.querySelector<HTMLInputElement>('input[type=file]')!;
  Object.defineProperty(input, 'files', { value: files, configurable: true });
  input.dispatchEvent(new Event('change'));
}

describe('the open workbook', () => {
  test('is told of as being read, until it is', () => {
    const { outcome, buttons } = mounted();
    expect(outcome()).toBe('Reading the workbook …');
    expect(buttons().filter((one) => one.closest('[hidden]') === null).map(({ textContent }) => textContent)).toEqual(['Review files…']);
  });

  test('without findings says so, with what was looked at', async () => {
    const { outcome, texts } = await shown();
    expect(outcome()).toBe('Nothing found.');
    expect(texts('.rp-facts dd')).toEqual(['As found', '12 of 12 results agree', 'everything is as signed', 'ab12']);
  });

  test('with findings shows them in groups, and each goes to its cell', async () => {
    const { outcome, texts, tab, goTo } = await shown(FOUND);
    expect(outcome()).toBe('2 findings: 1 wrong, 1 odd.');
    expect(texts('.rp-findings h3')).toEqual(['Wrong (1)', 'Odd, look again (1)']);
    expect(texts('.rp-finding')[0]).toBe('As found B5 Readingwas 2, is 3');
    tab.element.querySelectorAll<HTMLElement>('.rp-finding')[1].click();
    expect(goTo).toHaveBeenCalledWith('Job', 'C30');
  });

  test('that did not change is not reviewed again', async () => {
    const { tab, review } = await shown(FOUND);
    const before = tab.element.querySelector('.rp-finding');
    tab.show([{ ...RUN }]);
    await passed();
    expect(review).toHaveBeenCalledTimes(1);
    expect(tab.element.querySelector('.rp-finding')).toBe(before);
  });

  test('that changed is reviewed again, and the finding that had the focus keeps it', async () => {
    const { tab, review } = await shown(FOUND);
    tab.element.querySelectorAll<HTMLElement>('.rp-finding')[1].focus();
    tab.show([RUN, { ...RUN, name: 'As left' }]);
    await passed();
    expect(review).toHaveBeenCalledTimes(2);
    expect(document.activeElement?.textContent).toContain('Job C30');
  });

  test('whose review takes long waits for a press after a change', async () => {
    const { tab, review, outcome, press } = mounted(FOUND);
    const times = [0, 1000];
    const clock = jest.spyOn(performance, 'now').mockImplementation(() => times.shift() ?? 1000);
    try {
      tab.show([RUN]);
      await passed();
      tab.show([RUN, { ...RUN, name: 'As left' }]);
      await passed();
      expect(review).toHaveBeenCalledTimes(1);
      expect(outcome()).toBe('The workbook has changed since this review.');
      await press('Review again');
      expect(review).toHaveBeenCalledTimes(2);
      expect(review.mock.calls[1][0]).toHaveLength(2);
      expect(outcome()).toBe('2 findings: 1 wrong, 1 odd.');
    } finally {
      clock.mockRestore();
    }
  });

  test('of other sheets is not reviewed, and there is nothing to sign', async () => {
    const { tab, review, outcome, buttons } = mounted(FOUND);
    tab.show([{ ...RUN, names: [] }]);
    await passed();
    expect(review).not.toHaveBeenCalled();
    expect(outcome()).toBe('No sheet of this workbook was built here, so there is nothing to review.');
    expect(buttons().find(({ textContent }) => textContent === 'Write the Review sheet')!.closest('[hidden]')).not.toBeNull();
  });

  test('that cannot be read, or whose review fails, is told of', async () => {
    const { tab, review, outcome } = await shown(FOUND);
    tab.fail('The workbook could not be read: busy');
    expect(outcome()).toBe('The workbook could not be read: busy');
    expect(tab.element.querySelector('.rp-finding')).toBeNull();
    review.mockImplementationOnce(() => { throw new Error('out of order'); });
    tab.show([RUN]);
    await passed();
    expect(outcome()).toBe('The workbook could not be reviewed: out of order');
  });

  test('with very many findings shows a hundred of a group, and the others at a press', async () => {
    const many = Array.from({ length: 130 }, (_, i): ReviewFinding => ({ ...FOUND[1], at: `B${i + 1}` }));
    const { tab, press } = await shown(many);
    expect(tab.element.querySelectorAll('.rp-finding')).toHaveLength(100);
    await press('Show 30 more');
    expect(tab.element.querySelectorAll('.rp-finding')).toHaveLength(130);
    expect(document.activeElement?.textContent).toContain('B101');
  });
});

describe('the Review sheet', () => {
  test('asks for the name of the reviewer, which is remembered', async () => {
    const { press, type, memory, host, texts } = await shown(FOUND);
    await press('Write the Review sheet');
    expect(texts('#review-problem')).toEqual(['Type the name of the reviewer.']);
    expect(document.activeElement?.id).toBe('review-by');
    expect(host.written).toEqual([]);
    type('review-by', 'B. Second (invented)');
    expect(texts('#review-problem')).toEqual(['']);
    expect(memory.get('review.by')).toBe('B. Second (invented)');
  });

  test('asks for the date', async () => {
    const { press, type, host, texts } = await shown(FOUND);
    type('review-by', 'B. Second (invented)');
    type('review-on', '');
    await press('Write the Review sheet');
    expect(texts('#review-problem')).toEqual(['Type the date of the review, like 2026-11-25.']);
    expect(host.written).toEqual([]);
  });

  test('is written with what the workbook holds at that moment, and the job is told', async () => {
    const { press, type, host, written, texts, review } = await shown(FOUND);
    host.content.set('As left', { ...RUN, name: 'As left' });
    type('review-by', ' B. Second (invented) ');
    type('review-on', '2026-11-25');
    await press('Write the Review sheet');
    expect(review.mock.calls.at(-1)![0].map(({ name }) => name)).toEqual(['As found', 'As left']);
    const [plan] = host.written;
    const at = (name: string) => plan.cells.find((cell) => cell.at === plan.names!.find((one) => one.name === name)!.range)!.value;
    expect([at('review_by'), at('review_on'), at('review_count'), at('review_outcome')]).toEqual(['B. Second (invented)', 46_351, 2, '2 findings: 1 wrong, 1 odd']);
    expect(written).toHaveBeenCalledWith('Review');
    expect(texts('[role=status]')).toContain('The sheet “Review” is written.');
  });

  test('takes the place of another only if told to', async () => {
    const { tab, press, type, host, written, texts } = await shown();
    host.content.set('Review', { ...RUN, name: 'Review', names: [] });
    type('review-by', 'B. Second (invented)');
    await press('Write the Review sheet');
    await press('Leave it as it is');
    expect(texts('[role=status]')).toContain('No Review sheet is written. Everything is as it was.');
    expect(written).not.toHaveBeenCalled();
    await press('Write the Review sheet');
    await press('Replace the sheet');
    expect(host.written).toHaveLength(1);
    expect(tab.element.querySelector('dialog')).toBeNull();
  });

  test('that cannot be written is told of, and so is a job that could not be told', async () => {
    const { press, type, host, written, texts } = await shown();
    type('review-by', 'B. Second (invented)');
    host.failure = new Error('the workbook is busy');
    await press('Write the Review sheet');
    expect(texts('.rp-refuse[role=status]')).toContain('The Review sheet is not written: the workbook is busy');
    host.failure = undefined;
    written.mockRejectedValueOnce(new Error('C30 is locked'));
    await press('Write the Review sheet');
    expect(texts('[role=status]')).toContain('The sheet “Review” is written, but the job does not name it: C30 is locked');
  });
});

describe('other workbooks', () => {
  const settled = async (): Promise<void> => { for (let i = 0; i < 12; i += 1) await passed(); };

  test('are reviewed one after the other, and one that is broken does not stop the others', async () => {
    const { tab, texts } = mounted();
    choose(tab, [file('a.xlsx', [80, 75]), file('cut.xlsx', [1]), file('notes.txt', [80]), file('empty.xlsx', []), file('b.xlsx', [80, 75])]);
    expect(texts('.rp-files [role=status]')).toEqual(['Reviewing 1 of 5: a.xlsx']);
    expect(tab.element.querySelector<HTMLProgressElement>('.rp-files progress')).toMatchObject({ max: 5, value: 0 });
    await settled();
    expect(texts('.rp-files [role=status]')).toEqual(['5 workbooks: 2 without findings, 0 with findings, 3 could not be reviewed.']);
    expect(texts('.rp-file-list > p')).toEqual([
      'cut.xlsx could not be reviewed: found a file that is no zip archive; expected a workbook (.xlsx)',
      'notes.txt could not be reviewed: found another kind of file; expected a workbook (.xlsx)',
      'empty.xlsx could not be reviewed: found an empty file; expected a workbook (.xlsx)',
    ]);
    expect(texts('.rp-file-list summary')).toEqual(['a.xlsx Nothing found', 'b.xlsx Nothing found']);
    expect(tab.element.querySelector('.rp-files progress')).toBeNull();
  });

  test('tell their findings, which lead nowhere since the workbook is not open', async () => {
    const { tab, texts } = mounted(FOUND);
    choose(tab, [file('a.xlsx', [80])]);
    await settled();
    expect(texts('.rp-files [role=status]')).toEqual(['1 workbook: 0 without findings, 1 with findings.']);
    expect(texts('.rp-file-list summary')).toEqual(['a.xlsx 2 findings: 1 wrong, 1 odd']);
    expect(texts('.rp-file-list li')[0]).toBe('As found B5 Readingwas 2, is 3');
    expect(tab.element.querySelector('.rp-file-list li button')).toBeNull();
  });

  test('can be stopped after the one under way', async () => {
    const { tab, texts, buttons } = mounted();
    choose(tab, [file('a.xlsx', [80]), file('b.xlsx', [80]), file('c.xlsx', [80])]);
    const stop = buttons().find(({ textContent }) => textContent === 'Stop')!;
    stop.focus();
    stop.click();
    await settled();
    expect(texts('.rp-files [role=status]')).toEqual(['1 workbook: 1 without findings, 0 with findings, 2 left out.']);
    expect(document.activeElement?.textContent).toBe('Review files…');
  });

  test('can be dropped, also while others are under way', async () => {
    const { tab, texts } = mounted();
    const drop = (files: readonly File[]): void => {
      const event = new Event('drop', { bubbles: true, cancelable: true });
      Object.defineProperty(event, 'dataTransfer', { value: { files } });
      tab.element.querySelector('.rp-files')!.dispatchEvent(event);
      expect(event.defaultPrevented).toBe(true);
    };
    drop([file('a.xlsx', [80])]);
    drop([file('b.xlsx', [80])]);
    await settled();
    expect(texts('.rp-file-list summary')).toEqual(['a.xlsx Nothing found', 'b.xlsx Nothing found']);
  });
});

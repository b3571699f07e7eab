import { SheetWatch } from '../../src/taskpane/sheetWatch';
import { FakeHost } from './fakes';

function watching() {
  const host = new FakeHost();
  const shown: string[] = [];
  const view = { show: ({ name }: { name: string }) => void shown.push(name), fail: (words: string) => void shown.push(words) };
  return { host, shown, view, watch: new SheetWatch(host) };
}

beforeEach(() => jest.useFakeTimers());
afterEach(() => jest.useRealTimers());
const heard = (): Promise<void> => jest.advanceTimersByTimeAsync(0);

test('a view that comes in sight gets the open sheet at once', async () => {
  const { watch, view, shown } = watching();
  watch.follow(view);
  await heard();
  expect(shown).toEqual(['Sheet1']);
});

test('a burst of changes is read once, when it is over', async () => {
  const { host, watch, view } = watching();
  watch.follow(view);
  await heard();
  for (let i = 0; i < 20; i += 1) {
    host.change();
    await jest.advanceTimersByTimeAsync(50);
  }
  expect(host.reads).toBe(1);
  await jest.advanceTimersByTimeAsync(400);
  expect(host.reads).toBe(2);
});

test('without a view nothing is read', async () => {
  const { host, watch, view } = watching();
  watch.follow(view);
  watch.follow(undefined);
  await heard();
  host.change();
  await jest.advanceTimersByTimeAsync(1000);
  expect(host.reads).toBe(1);
});

test('a slow reading that a later one overtook is not shown', async () => {
  const { host, watch, view, shown } = watching();
  const late = { name: 'late', cells: [], merges: [], names: [] };
  jest.spyOn(host, 'read').mockImplementationOnce(() => new Promise((resolve) => { setTimeout(() => resolve(late), 5000); }));
  watch.follow(view);
  await heard();
  host.change();
  await jest.advanceTimersByTimeAsync(6000);
  expect(shown).toEqual(['Sheet1']);
});

test('a sheet that cannot be read is told with the reason', async () => {
  const { host, watch, view, shown } = watching();
  host.failure = new Error('a cell is being edited');
  watch.follow(view);
  await heard();
  expect(shown).toEqual(['The sheet could not be read: a cell is being edited']);
});

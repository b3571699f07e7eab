/** @jest-environment jsdom */
import { loadOffice } from '../../src/taskpane/loadOffice';

/** Loads with all events recorded; the script of Office is added to the page but never fetched by jsdom. */
function loading() {
  document.head.innerHTML = '';
  const events: string[] = [];
  loadOffice({ onScript: () => events.push('script'), onExcel: () => events.push('excel'), onNoExcel: () => events.push('no excel') }, 1000);
  const script = document.head.querySelector('script') as HTMLScriptElement;
  return { events, script };
}

/** Office as its script leaves it, answering with a host or never. */
function office(answer?: { host: string | null }): void {
  const onReady = (callback: (info: object) => void): void => { if (answer) callback(answer); };
  (globalThis as unknown as { Office: object }).Office = { HostType: { Excel: 'Excel' }, onReady };
}

beforeEach(() => jest.useFakeTimers());
afterEach(() => jest.useRealTimers());

test('Office.js comes from its usual address', () => {
  expect(loading().script.src).toBe('https://appsforoffice.microsoft.com/lib/1/hosted/office.js');
});

test('inside Excel the script is told before Excel, so that functions are there when Excel asks', () => {
  const { events, script } = loading();
  office({ host: 'Excel' });
  script.dispatchEvent(new Event('load'));
  jest.advanceTimersByTime(5000);
  expect(events).toEqual(['script', 'excel']);
});

test.each([null, 'Word'])('a host of %s is no Excel', (host) => {
  const { events, script } = loading();
  office({ host });
  script.dispatchEvent(new Event('load'));
  jest.advanceTimersByTime(5000);
  expect(events).toEqual(['script', 'no excel']);
});

test('a script that cannot be fetched is no Excel, told at once', () => {
  const { events, script } = loading();
  script.dispatchEvent(new Event('error'));
  expect(events).toEqual(['no excel']);
});

test('a script that never comes is no Excel, told when patience ends', () => {
  const { events } = loading();
  jest.advanceTimersByTime(999);
  expect(events).toEqual([]);
  jest.advanceTimersByTime(1);
  expect(events).toEqual(['no excel']);
});

test('a host that never answers is no Excel', () => {
  const { events, script } = loading();
  office();
  script.dispatchEvent(new Event('load'));
  jest.advanceTimersByTime(1000);
  expect(events).toEqual(['script', 'no excel']);
});

test('an Excel that answers late is still taken', () => {
  const { events, script } = loading();
  jest.advanceTimersByTime(1000);
  office({ host: 'Excel' });
  script.dispatchEvent(new Event('load'));
  expect(events).toEqual(['no excel', 'script', 'excel']);
});

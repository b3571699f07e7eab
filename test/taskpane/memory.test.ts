/** @jest-environment jsdom */
import { browserMemory } from '../../src/taskpane/memory';

afterEach(() => {
  jest.restoreAllMocks();
  localStorage.clear();
});

test('what was remembered is there for the next page', () => {
  expect(browserMemory().set('tab', 'plot')).toBe(true);
  expect(browserMemory().get('tab')).toBe('plot');
  expect(browserMemory().get('other')).toBeUndefined();
});

test('a browser that stores nothing remembers as long as the page, and says so', () => {
  jest.spyOn(Storage.prototype, 'setItem').mockImplementation(() => { throw new DOMException('full', 'QuotaExceededError'); });
  const memory = browserMemory();
  expect(memory.set('tab', 'plot')).toBe(false);
  expect(memory.get('tab')).toBe('plot');
  expect(browserMemory().get('tab')).toBeUndefined();
});

test('a frame without storage remembers nothing and does not fail', () => {
  jest.spyOn(Storage.prototype, 'getItem').mockImplementation(() => { throw new DOMException('denied', 'SecurityError'); });
  expect(browserMemory().get('tab')).toBeUndefined();
});

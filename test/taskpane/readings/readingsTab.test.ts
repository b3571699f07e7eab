/** @jest-environment jsdom */
import type { SheetContent } from '../../../src/hosts/sheetHost';
import { isRun } from '../../../src/taskpane/check/isRun';
import { ReadingsTab } from '../../../src/taskpane/readings/readingsTab';
import { SampleSheet } from '../../worksheets/sampleSheet';
import { outputs, simulatedLog, written } from '../../worksheets/logger/simulatedLog';
import { FakeHost, fakeMemory, giveDialogs, passed } from '../fakes';

// jsdom has no canvas; the drawing itself is seen in the browser suite.
jest.mock('../../../src/taskpane/plot/chart', () => ({ createChart: jest.fn(() => ({ mark: jest.fn(), redraw: jest.fn(), resize: jest.fn(), destroy: jest.fn() })) }));
HTMLCanvasElement.prototype.getContext = () => null;
Object.assign(globalThis, { ResizeObserver: class { observe(): void {} }, matchMedia: () => ({ addEventListener: jest.fn() }) });
giveDialogs();

const FORCES = [0, 5, 10, 15, 20, 10, 0];
const LEVELS = outputs(FORCES.map((force) => force * 5));
const LOG = written(simulatedLog({ levels: LEVELS, seed: 4, noise: 1e-4, hold: 10 }), { delimiter: ';', decimal: ',', head: 'Time [s];Signal [mV/V]' });

function run(typed: (number | null)[] = FORCES.map(() => null)): SheetContent {
  const sheet = new SampleSheet().single('resolution', 'A1', 0.00001).single('unit', 'B1', 'kN').single('output_unit', 'C1', 'mV/V')
    .put('B4', 'Run 1').put('C4', 'Run 2').put('B5', 'mV/V').put('C5', 'mV/V')
    .range('forces_tension', 1, 6, FORCES.map((force) => [force])).range('readings_tension', 2, 6, typed.map((value) => [value, null]));
  return { ...sheet.read(), name: 'Run', merges: [] };
}

function mounted(content = run()) {
  const host = new FakeHost();
  host.content.set('Run', content);
  const goTo = jest.fn();
  const tab = new ReadingsTab({ host, isRun, goTo, memory: fakeMemory() });
  document.body.replaceChildren(tab.element);
  tab.show(content);
  const one = <T extends HTMLElement>(selector: string): T => tab.element.querySelector<T>(selector)!;
  const press = (label: string): void => [...tab.element.querySelectorAll('button')].find(({ textContent }) => textContent === label)!.click();
  const paste = async (text: string): Promise<void> => {
    one<HTMLTextAreaElement>('textarea').value = text;
    press('Read this text');
    await passed(5);
  };
  const readings = (): string[] => [...tab.element.querySelectorAll<HTMLInputElement>('.rp-points input')].map(({ value }) => value);
  const field = <T extends HTMLElement>(label: string): T => [...tab.element.querySelectorAll('label')].find(({ textContent }) => textContent === label)!.parentElement!.querySelector<T>('input, select')!;
  return { host, goTo, tab, one, press, paste, readings, field, said: () => one('.rp-bar [role=status]').textContent };
}

test('a log that is pasted is told in words, and its readings go into the run in one step', async () => {
  const { paste, readings, press, host, one, said } = mounted();
  await paste(LOG);
  expect(one('.rp-log-words').textContent).toContain('decimal comma, time as a number in “Time”');
  readings().forEach((value, i) => expect(Math.abs(Number(value) - LEVELS[i])).toBeLessThan(5e-5));
  press('Fill the readings');
  await passed(5);
  expect(host.filled).toHaveLength(1);
  expect(host.filled[0].sheet).toBe('Run');
  expect(host.filled[0].entries.map(({ at }) => at)).toEqual(['B6', 'B7', 'B8', 'B9', 'B10', 'B11', 'B12']);
  expect(said()).toMatch(/^7 readings filled into B6 to B12\./);
});

test('a file that is dropped is read', async () => {
  const { one, readings } = mounted();
  const drop = Object.assign(new Event('drop', { cancelable: true }), { dataTransfer: { files: [{ name: 'run.csv', size: LOG.length, text: async () => LOG }] } });
  one('.rp-drop').dispatchEvent(drop);
  await passed(10);
  expect(drop.defaultPrevented).toBe(true);
  expect(readings()).toHaveLength(7);
});

test('a pasted column gives a reading a point', async () => {
  const { paste, readings } = mounted();
  await paste(LEVELS.map((level) => level.toFixed(5).replace('.', ',')).join('\n'));
  expect(readings().map(Number)).toEqual(LEVELS);
});

test('the next log goes into the next run', async () => {
  const { paste, press, host, field } = mounted();
  await paste(LOG);
  press('Fill the readings');
  await passed(5);
  await paste(LOG);
  expect(field<HTMLSelectElement>('Fill into').selectedIndex).toBe(1);
  press('Fill the readings');
  await passed(5);
  expect(host.filled[1].entries.map(({ at }) => at)).toEqual(['C6', 'C7', 'C8', 'C9', 'C10', 'C11', 'C12']);
});

test('a log that cannot be read is refused with its line, and nothing is filled', async () => {
  const { paste, one, host } = mounted();
  await paste('1.5\nabc\n2.5\n');
  expect(one('.rp-log-refused').textContent).toContain('Line 2: found “abc” in column 1');
  expect(one('.rp-bar').hidden).toBe(true);
  expect(host.filled).toEqual([]);
});

test('readings that stand there are replaced only if that is said; else only the empty cells are filled', async () => {
  const { paste, press, host, one, said } = mounted(run([9, null, null, null, null, null, 9]));
  await paste(LOG);
  one<HTMLSelectElement>('select').focus();
  const target = [...document.querySelectorAll<HTMLSelectElement>('select')].find(({ options }) => [...options].some(({ value }) => value === 'tension 0'))!;
  target.value = 'tension 0';
  target.dispatchEvent(new Event('change'));
  press('Fill the readings');
  expect(one('dialog').textContent).toContain('B6: 9, B12: 9');
  press('Leave them all');
  await passed(5);
  expect(host.filled).toEqual([]);
  expect(said()).toBe('Nothing is filled in. The readings are as they were.');
  press('Fill the readings');
  press('Fill the empty cells only');
  await passed(5);
  expect(host.filled[0].entries.map(({ at }) => at)).toEqual(['B7', 'B8', 'B9', 'B10', 'B11']);
});

test('a reading can be typed over, taken from another stretch, or left out', async () => {
  const { paste, press, host, tab } = mounted();
  await paste(LOG);
  const inputs = [...tab.element.querySelectorAll<HTMLInputElement>('.rp-points input')];
  const choices = [...tab.element.querySelectorAll<HTMLSelectElement>('.rp-points select')];
  inputs[1].value = '0,5';
  inputs[1].dispatchEvent(new Event('input'));
  choices[2].value = '';
  choices[2].dispatchEvent(new Event('change'));
  choices[6].value = '0';
  choices[6].dispatchEvent(new Event('change'));
  press('Fill the readings');
  await passed(5);
  const filled = new Map(host.filled[0].entries.map(({ at, value }) => [at, value]));
  expect(filled.get('B7')).toBe(0.5);
  expect(filled.has('B8')).toBe(false);
  expect(filled.get('B12')).toBe(filled.get('B6'));
});

test('what is typed and is no number stops the filling, and names the cell', async () => {
  const { paste, press, host, tab, said } = mounted();
  await paste(LOG);
  const [input] = tab.element.querySelectorAll<HTMLInputElement>('.rp-points input');
  input.value = '1.2.3';
  input.dispatchEvent(new Event('input'));
  press('Fill the readings');
  await passed(5);
  expect(host.filled).toEqual([]);
  expect(said()).toContain('The reading at B6 is no number');
});

test('what the host refuses is said, and the table stays', async () => {
  const { paste, press, host, readings, said } = mounted();
  await paste(LOG);
  host.failure = new Error('B6 is locked');
  press('Fill the readings');
  await passed(5);
  expect(said()).toBe('The readings are not filled in: B6 is locked');
  expect(readings()).toHaveLength(7);
});

test('a factor and a turned sign change every reading', async () => {
  const { paste, readings, field, tab } = mounted();
  await paste(LOG);
  const before = readings().map(Number);
  const factor = field<HTMLInputElement>('Times');
  factor.value = '2';
  factor.dispatchEvent(new Event('change'));
  const turned = [...tab.element.querySelectorAll('label')].find(({ textContent }) => textContent === 'Turn the sign')!.querySelector('input')!;
  turned.checked = true;
  turned.dispatchEvent(new Event('change'));
  readings().forEach((value, i) => expect(Number(value)).toBeCloseTo(-2 * before[i], 4));
});

test('a change elsewhere in the sheet keeps what was typed; a sheet without runs says so', async () => {
  const { paste, tab, readings, one } = mounted();
  await paste(LOG);
  const [input] = tab.element.querySelectorAll<HTMLInputElement>('.rp-points input');
  input.value = '7';
  input.dispatchEvent(new Event('input'));
  tab.show(run([1, null, null, null, null, null, null]));
  expect(readings()[0]).toBe('7');
  tab.show({ name: 'Notes', cells: [], names: [], merges: [] });
  expect(one('.rp-count').textContent).toContain('no run readings');
});

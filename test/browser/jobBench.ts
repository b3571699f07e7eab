/** A person at the bench, in the real page: the pane's tabs, cells by the names of a sheet, and logs of a logger. */
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import type { Locator, Page } from 'playwright-core';
import type { SheetContent } from '../../src/hosts/sheetHost';
import { randomDraws } from '../randomDraws';
import { goTo } from './workbenchPage';

const pictures = path.resolve(__dirname, '../../build/whole-job');

/** The page as the person at the bench works in it. */
export class JobBench {
  private shots = 0;

  constructor(readonly page: Page) {
    mkdirSync(pictures, { recursive: true });
  }

  /** The same work in another page. */
  on(page: Page): JobBench {
    const next = new JobBench(page);
    next.shots = this.shots;
    return next;
  }

  /** A tab of the pane, opened. */
  async tab(name: string): Promise<Locator> {
    await this.page.locator('#pane').getByRole('tab', { name, exact: true }).click();
    return this.page.locator('#pane').getByRole('tabpanel', { name, exact: true });
  }

  /** What a sheet holds. */
  read(sheet: string): Promise<SheetContent> {
    return this.page.evaluate((name) => window.provingsheet!.host.read(name), sheet);
  }

  sheets(): Promise<string[]> {
    return this.page.evaluate(() => window.provingsheet!.sheets());
  }

  /** The first cell of a name of a sheet. */
  async place(sheet: string, name: string): Promise<string> {
    const { names } = await this.read(sheet);
    const found = names.find((entry) => entry.name.toLowerCase() === name.toLowerCase());
    if (!found) throw new Error(`“${sheet}” has no name ${name}`);
    return found.range.split(':')[0];
  }

  async value(sheet: string, name: string): Promise<unknown> {
    const at = await this.place(sheet, name);
    return this.page.evaluate(([one, cell]) => window.provingsheet!.valueAt(one, cell), [sheet, at] as const);
  }

  /** Types into cells of a sheet, found by their names, by the keyboard. */
  async type(sheet: string, told: Readonly<Record<string, string>>): Promise<void> {
    await this.show(sheet);
    for (const [name, text] of Object.entries(told)) await this.typeAt(await this.place(sheet, name), text);
  }

  /** Types into a cell of the sheet in sight. */
  async typeAt(at: string, text: string): Promise<void> {
    await goTo(this.page, at);
    await this.page.keyboard.type(text, { delay: 15 });
    await this.page.keyboard.press('Enter');
  }

  async show(sheet: string): Promise<void> {
    await this.page.evaluate((name) => window.provingsheet!.host.select(name, 'A1'), sheet);
  }

  /** Waits until the step of the chosen item says so. */
  async stepSays(step: string, words: RegExp): Promise<void> {
    const state = this.page.locator(`#pane [data-step="${step}"] .rp-state`);
    await this.page.waitForFunction(
      ([id, pattern]) => new RegExp(pattern).test(document.querySelector(`#pane [data-step="${id}"] .rp-state`)?.textContent ?? ''),
      [step, words.source] as const,
    ).catch(async () => { throw new Error(`step ${step} says “${await state.textContent()}”; expected ${words}`); });
  }

  /** A picture for a person to look at, in build/whole-job. */
  async picture(name: string): Promise<void> {
    this.shots += 1;
    await this.page.waitForTimeout(500);
    await this.page.screenshot({ path: path.join(pictures, `${String(this.shots).padStart(2, '0')} ${name}.png`), caret: 'hide' });
  }
}

/** What a logger is told: loads in the order applied, and the cell's response to a load. */
export interface Logged {
  readonly loads: readonly number[];
  readonly response: (load: number) => number;
  readonly seed: number;
  readonly noise: number;
  readonly comma?: boolean;
}

const HOLD = 20;
const RISE = 4;

/** A log of two readings a second: each load held 20 s, 4 s to the next, with noise. */
export function logOf({ loads, response, seed, noise, comma = false }: Logged): string {
  const draws = randomDraws(seed);
  const written = (value: number, digits: number): string => value.toFixed(digits).replace('.', comma ? ',' : '.');
  const lines: string[] = [comma ? 'Zeit;Kraftaufnehmer' : 'Time s,Cell mV/V'];
  let second = 0;
  const put = (value: number): void => {
    lines.push([written(second, 1), written(value + noise * draws.normal(), 7)].join(comma ? ';' : ','));
    second += 0.5;
  };
  loads.forEach((load, i) => {
    const before = loads[i - 1] ?? load;
    for (let step = 1; step < 2 * RISE && i > 0; step += 1) put(response(before + ((load - before) * step) / (2 * RISE)));
    for (let step = 0; step < 2 * HOLD; step += 1) put(response(load));
  });
  return lines.join('\n');
}

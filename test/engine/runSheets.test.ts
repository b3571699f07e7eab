/** The sheet of every template, computed by the engine of the page: empty, and with invented readings. */
import { engineSheets } from '../../src/hosts/file/engineSheets';
import { addressOf, rangeOf } from '../../src/hosts/address';
import type { SheetPlan } from '../../src/worksheets/plan';
import { readySheets } from '../../src/worksheets/readySheets';
import { CellError, Engine } from './bundle';

type EngineValue = ReturnType<Engine['value']>;

const sheets = readySheets();

async function computed(plan: SheetPlan): Promise<(at: string) => EngineValue> {
  const engine = new Engine(engineSheets([plan]));
  await engine.calculate();
  const cells = new Map(plan.cells.map(({ at }) => [at, engine.value(plan.name, at)]));
  engine.dispose();
  return (at) => cells.get(at) ?? null;
}

function named(plan: SheetPlan, pattern: RegExp): { name: string; at: string }[] {
  return (plan.names ?? []).flatMap(({ name, range }) => (pattern.test(name) ? [{ name, at: range }] : []));
}

function errors(plan: SheetPlan, value: (at: string) => EngineValue): string[] {
  return plan.cells.flatMap(({ at, formula }) => {
    const found = value(at);
    return found instanceof CellError ? [`${at} ${formula ?? ''}: ${found.error} ${found.message}`] : [];
  });
}

describe.each(sheets.map((sheet) => [sheet.id, sheet] as const))('%s', (_, { empty, filled }) => {
  test('empty: no error in any cell, and no result', async () => {
    const value = await computed(empty);
    expect(errors(empty, value)).toEqual([]);
    expect(named(empty, /^(value|plain)_/).map(({ name, at }) => [name, value(at)]).filter(([, found]) => found !== '')).toEqual([]);
  });

  test('with readings: no error in any cell, every result and verdict is there', async () => {
    const value = await computed(filled);
    expect(errors(filled, value)).toEqual([]);
    const missing = named(filled, /^(value|verdict|plain)_/).filter(({ name, at }) => !/_a[3-5](_|$)/.test(name) && (value(at) === '' || value(at) === null));
    expect(missing).toEqual([]);
  });

  test('with readings: plain formulas and add-in agree', async () => {
    const value = await computed(filled);
    const verdicts = named(filled, /^plain_/).filter(({ name }) => !/_a[3-5](_|$)/.test(name)).map(({ name, at }) => {
      const { startRow, startColumn } = rangeOf(at);
      const beside = (columns: number) => value(addressOf({ row: startRow, column: startColumn + columns }));
      return [name, beside(-1), value(at), beside(1), beside(2)];
    });
    expect(verdicts.length).toBeGreaterThan(0);
    expect(verdicts.filter(([, , , , verdict]) => verdict !== 'agrees')).toEqual([]);
  });
});

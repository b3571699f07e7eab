/** Check and Plot on the sheets of the templates, computed by the engine of the page and read back through its host. */
import { engineSheets } from '../../src/hosts/file/engineSheets';
import { checkSheet } from '../../src/worksheets/check/checkSheet';
import type { SheetPlan } from '../../src/worksheets/plan';
import { sheetPlots } from '../../src/worksheets/plots/sheetPlots';
import { readySheets } from '../../src/worksheets/readySheets';
import { computed, type Engine } from './bundle';

const sheets = readySheets().map((sheet) => [sheet.id, sheet] as const);

const PLOTS: Readonly<Record<string, readonly string[]>> = {
  'two-point': ['curve'],
  'five-point': ['deviations', 'curve'],
  'ten-point-force': ['deviations', 'residuals_compression', 'curve'],
  'ten-point-torque': ['deviations', 'residuals_clockwise', 'curve'],
  'custom-points': ['deviations', 'residuals_tension', 'curve'],
  'iso-376': ['proving_b', 'proving_fc', 'proving_v', 'proving_w', 'curve'],
  creep: ['creep'],
  thermal: ['thermal_zero', 'thermal_span'],
  history: ['history'],
  system: ['errors', 'curve'],
  'indicator-simulator': ['errors', 'curve'],
  'receiving-inspection': [],
  'summing-box': [],
};

async function readBack(plan: SheetPlan): Promise<{ engine: Engine; read: () => ReturnType<ReturnType<Engine['sheetsHost']>['read']> }> {
  const engine = await computed(...engineSheets([plan]));
  return { engine, read: () => engine.sheetsHost().read(plan.name) };
}

describe.each(sheets)('%s', (id, { empty, filled }) => {
  test('empty: something is missing, and nothing is wrong or odd, and nothing is drawn', async () => {
    const sheet = await (await readBack(empty)).read();
    const findings = checkSheet(sheet);
    expect(findings.length).toBeGreaterThan(0);
    expect(findings.filter(({ severity }) => severity !== 'missing')).toEqual([]);
    expect(sheetPlots(sheet)).toEqual([]);
  });

  test('with readings: no finding but errors beyond tolerance as found, and the plots of its kind', async () => {
    const sheet = await (await readBack(filled)).read();
    const findings = checkSheet(sheet).map(({ severity, message }) => `${severity}: ${message}`);
    expect(findings.filter((finding) => !/^odd: .*as found/i.test(finding))).toEqual([]);
    expect(sheetPlots(sheet).map((plot) => plot.id)).toEqual(PLOTS[id]);
  });
});

test('a mistyped reading, and one left out, are found in the computed sheet and lead to their cells', async () => {
  const { filled } = readySheets().find(({ id }) => id === 'five-point') as { filled: SheetPlan };
  const { engine, read } = await readBack(filled);
  const [first] = (filled.names?.find(({ name }) => name === 'readings_tension')?.range ?? '').split(':');
  const below = (rows: number) => first.replace(/\d+/, (row) => String(Number(row) + rows));
  await engine.set(filled.name, below(3), Number(engine.value(filled.name, below(3))) / 10);
  await engine.set(filled.name, below(6), null);
  const findings = checkSheet(await read());
  expect(findings).toEqual(expect.arrayContaining([
    expect.objectContaining({ severity: 'wrong', at: below(3), message: expect.stringContaining('mistyped digit') }),
    expect.objectContaining({ severity: 'missing', at: below(6) }),
  ]));
  expect(findings.every(({ at }) => at === below(3) || at === below(6))).toBe(true);
});

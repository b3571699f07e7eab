/** A record made of what one host reads must hold for what another reads: the same lines, and no difference. */
import { ExcelSheets } from '../../src/hosts/excel/excelSheets';
import { engineSheets } from '../../src/hosts/file/engineSheets';
import { FileSheets } from '../../src/hosts/file/fileSheets';
import type { CellValue, SheetContent, SheetHost } from '../../src/hosts/sheetHost';
import type { SheetPlan } from '../../src/worksheets/plan';
import { readySheets } from '../../src/worksheets/readySheets';
import { differences } from '../../src/worksheets/record/differences';
import { recordFits } from '../../src/worksheets/record/fingerprint';
import { planRecord } from '../../src/worksheets/record/planRecord';
import { readRecord } from '../../src/worksheets/record/readRecord';
import { recordLines } from '../../src/worksheets/record/recordLines';
import { FakeExcel } from '../hosts/excel/fakeExcel';
import { resultsOf } from '../hosts/excel/plans';
import { CellError, computed, Engine } from './bundle';

const SIGNED = { by: 'A. Nother (invented)', on: 46_351, version: '1.0.0' };

async function valuesOf(plan: SheetPlan): Promise<(at: string) => CellValue> {
  const engine = new Engine(engineSheets([plan]));
  await engine.calculate();
  const values = new Map(plan.cells.map(({ at }) => {
    const value = engine.value(plan.name, at);
    return [at, value instanceof CellError ? { error: value.error } : value];
  }));
  engine.dispose();
  return (at) => values.get(at) ?? null;
}

async function readBack(host: SheetHost, plan: SheetPlan): Promise<SheetContent> {
  await host.write(plan);
  return host.read(plan.name);
}

const plans = readySheets().filter(({ id }) => ['five-point', 'iso-376', 'thermal', 'receiving-inspection', 'history'].includes(id)).map(({ id, filled }) => [id, filled] as const);

test.each(plans)('%s: grid, file and Excel give the same record, and it is read back from the Record sheet of each', async (_, plan) => {
  const valueOf = await valuesOf(plan);
  const grid = (await computed({ name: 'Start', cells: [['before']] })).sheetsHost();
  const file = new FileSheets(async () => (sheet, at) => (sheet === plan.name ? valueOf(at) : null));
  const excel = new FakeExcel();
  excel.results = resultsOf({ plan, valueOf });
  const ofFile = await readBack(file, plan);
  const lines = recordLines([ofFile]);
  expect(lines.some(({ value }) => value.startsWith('{'))).toBe(lines.some(({ content }) => /PROVE\.(NET|RESIDUALS)/.test(content)));
  for (const host of [file, grid, new ExcelSheets(excel.run, () => true)]) {
    const read = host === file ? ofFile : await readBack(host, plan);
    expect(recordLines([read])).toEqual(lines);
    const record = readRecord([await readBack(host, planRecord([read], SIGNED))])!;
    expect(record.lines).toEqual(lines);
    expect(recordFits(record)).toBe(true);
    expect(differences(record, [ofFile])).toEqual([]);
  }
}, 120_000);

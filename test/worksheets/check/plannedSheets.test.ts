import { blocksOf } from '../../../src/worksheets/block';
import { checkSheet } from '../../../src/worksheets/check/checkSheet';
import { FilledSheet } from '../../../src/worksheets/filledSheet';
import { builtInTemplates } from '../../../src/worksheets/library';
import type { SheetPlan } from '../../../src/worksheets/plan';
import { planSheet, suggestedAnswers } from '../../../src/worksheets/planner';
import { sheetPlots } from '../../../src/worksheets/plots/sheetPlots';
import type { ReadCell, ReadSheet, ReadValue } from '../../../src/worksheets/readSheet';
import { deviates, simulate, SOUND } from '../sampleSheet';

const templates = builtInTemplates().map((template) => [template.id, template] as const);
const withReadings = templates.filter(([id]) => id !== 'receiving-inspection');
/** Kinds whose readings are in blocks: runs at forces, or against time. */
const withBlocks = withReadings.filter(([, { kind }]) => kind === 'run' || kind === 'indication' || kind === 'creep');

/** The sheet as it is read back after it was built, formulas not computed. */
function built(plan: SheetPlan): { read: () => ReadSheet; put: (at: string, value: ReadValue) => void; cells: () => FilledSheet } {
  const cells = new Map<string, ReadCell>(plan.cells.map(({ at, value, formula }) => [at, { at, value: value ?? null, ...(formula === undefined ? {} : { formula }) }]));
  const read = () => ({ name: plan.name, cells: [...cells.values()], names: plan.names ?? [] });
  return { read, put: (at, value) => cells.set(at, { ...cells.get(at), at, value }), cells: () => new FilledSheet(read()) };
}

function planned(template: (typeof templates)[number][1]) {
  const { plan } = planSheet(template, suggestedAnswers(template));
  if (!plan) throw new Error(`no plan of ${template.id}`);
  return built(plan);
}

/** Types sound readings and what is recorded beside them; computes what should be indicated beside a simulator. */
function fill(sheet: ReturnType<typeof built>): void {
  const scale = sheet.cells().number('scale');
  if (scale !== undefined) {
    for (const { at } of blocksOf(sheet.cells()).flatMap(({ applied }) => applied)) sheet.put(at, signalLeftOf(sheet, at) * scale);
  }
  const deviate = deviates(3);
  for (const block of blocksOf(sheet.cells())) {
    const resolution = sheet.cells().number('resolution') as number;
    const forces = block.applied.map(({ value }) => value as number);
    const isSystem = sheet.cells().cell(`errors_${block.id}`) !== undefined;
    const output = isSystem ? Math.max(...forces.map(Math.abs)) : 2;
    const readings = block.over === 'times'
      ? forces.map((time) => [Number((2 + 1e-4 * Math.log1p(time)).toFixed(5))])
      : simulate({ ...SOUND, id: block.id, forces, runs: block.runs.length, output, resolution }, deviate);
    block.runs.forEach((run, i) => run.forEach(({ at }, row) => sheet.put(at, readings[row][i])));
  }
  for (const [name, value] of [['date', 46_000], ['standard_due', 46_100], ['temperature', 23]] as const) {
    const cell = sheet.cells().cell(name);
    if (cell) sheet.put(cell.at, value);
  }
}

function signalLeftOf(sheet: ReturnType<typeof built>, at: string): number {
  const left = String.fromCharCode(at.charCodeAt(0) - 1) + at.slice(1);
  return sheet.read().cells.find((cell) => cell.at === left)?.value as number;
}

describe('a sheet as it is planned', () => {
  test.each(withReadings)('from the template %s has readings to type in, and nothing else is wrong with it', (_, template) => {
    const sheet = planned(template);
    expect(checkSheet(sheet.read())).toEqual([expect.objectContaining({ severity: 'missing', message: expect.stringMatching(/^No readings yet/) })]);
    expect(sheetPlots(sheet.read())).toEqual([]);
  });

  test.each(withBlocks)('from the template %s and filled with sound readings gives no finding, and plots', (_, template) => {
    const sheet = planned(template);
    fill(sheet);
    expect(checkSheet(sheet.read())).toEqual([]);
    expect(sheetPlots(sheet.read()).map(({ id }) => id)).toEqual([template.kind === 'creep' ? 'creep' : 'curve']);
  });

  test('for a receiving inspection is in order but for what was not recorded', () => {
    const inspection = templates.find(([id]) => id === 'receiving-inspection')?.[1];
    expect(inspection && checkSheet(planned(inspection).read()).every(({ severity }) => severity === 'missing')).toBe(true);
  });
});

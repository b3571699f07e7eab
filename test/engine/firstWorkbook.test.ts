/** The first workbook, computed by the engine of the page: no cell in error, and the figures it is there to show. */
import { engineSheets } from '../../src/hosts/file/engineSheets';
import { firstWorkbook } from '../../src/worksheets/firstWorkbook';
import type { SheetPlan } from '../../src/worksheets/plan';
import { expectDigits } from '../digits';
import { loadCellStudy, strdSet } from '../published';
import { CellError, Engine } from './bundle';

const plans = firstWorkbook();
let engine: Engine;

beforeAll(async () => {
  engine = new Engine(engineSheets(plans));
  await engine.calculate();
});
afterAll(() => engine.dispose());

const STUDY = 'Load cell study';
const RUN = 'Five-point run';

/** The row of a label in a column of a sheet. */
function rowOf(plan: SheetPlan, label: string): number {
  const cell = plan.cells.find((candidate) => candidate.value === label);
  if (!cell) throw new Error(`no cell "${label}" on ${plan.name}`);
  return Number(/\d+$/.exec(cell.at)?.[0]);
}

function result(sheet: string, label: string, column: string): number {
  const plan = plans.find(({ name }) => name === sheet) as SheetPlan;
  const value = engine.value(sheet, `${column}${rowOf(plan, label)}`);
  if (typeof value !== 'number') throw new Error(`${sheet}, ${label}: ${JSON.stringify(value)}`);
  return value;
}

describe('first workbook', () => {
  test('no formula gives an error', () => {
    const faults = plans.flatMap((plan) => plan.cells.flatMap(({ at }) => {
      const value = engine.value(plan.name, at);
      return value instanceof CellError ? [`${plan.name} ${at}: ${value.error} ${value.message}`] : [];
    }));
    expect(faults).toEqual([]);
  });

  test('every formula names functions that exist, and every function stands on the Five-point run or the study', () => {
    const formulas = plans.flatMap((plan) => plan.cells.map((cell) => cell.formula ?? '')).join(' ');
    const used = new Set([...formulas.matchAll(/PROVE\.([A-Z]+)/g)].map(([, id]) => id));
    for (const id of ['NET', 'TEMPEFFECT', 'TEMPCORRECT', 'FIT', 'FITREPORT', 'RESIDUALS', 'FITDEGREE', 'DEGREETABLE', 'FORCELIMITS',
      'LIMITFACTOR', 'LOADRANGE', 'SENSITIVITY', 'NONLINEARITY', 'DEVIATIONS', 'HYSTERESIS', 'REPEATABILITY', 'ZERORETURN', 'ZEROBALANCE',
      'ERRORBAND', 'COMBINEDERROR', 'CREEP', 'ASYMMETRY']) expect(used).toContain(id);
  });

  test('the example on the Start sheet computes the rated output of the Five-point run', async () => {
    const text = plans[0].cells.map(({ value }) => String(value ?? '')).find((value) => value.includes('Example: ')) as string;
    expect(await engine.evaluate('Start', text.split('Example: ')[1])).toBe(engine.value(RUN, 'I7'));
  });

  test('the study holds the readings of NIST StRD Pontius', () => {
    const { x, y } = strdSet('Pontius');
    expect(engine.values(STUDY, 'A6:B45')).toEqual(x.map((load, i) => [load, y[i]]));
  });

  test('the study: A0, A1, A2, their standard errors, s and R² as NIST certifies them, to 13 digits', () => {
    const { coefficients, standardErrors, residualSd, rSquared } = strdSet('Pontius');
    coefficients.forEach((certified, i) => expectDigits(result(STUDY, `A${i}`, 'F'), certified, 13, `A${i}`));
    standardErrors.forEach((certified, i) => expectDigits(result(STUDY, `Standard error of A${i}`, 'F'), certified, 13, `standard error of A${i}`));
    expectDigits(result(STUDY, 'Residual standard deviation', 'F'), residualSd, 13, 's');
    expectDigits(result(STUDY, 'R²', 'F'), rSquared, 13, 'R²');
  });

  test('the study counts its digits honestly: the cell agrees with the count made here, within half a digit', () => {
    const shown = engine.values(STUDY, 'F6:H12').map(([found, certified, digits]) => {
      const exact = -Math.log10(Math.abs(((found as number) - (certified as number)) / (certified as number)));
      return [digits, Math.min(15, exact)];
    });
    for (const [digits, exact] of shown) expect(Math.abs((digits as number) - (exact as number))).toBeLessThan(0.5);
  });

  test('the study chooses degree 2, with LLF 676.548996714', () => {
    expect(result(STUDY, 'Degree chosen', 'F')).toBe(2);
    expectDigits(result(STUDY, 'Lower limit factor (LLF)', 'F'), 676.548996714, 11);
  });

  test('the study finds the load of a new deflection with its limits', () => {
    const { load, lower, upper } = loadCellStudy.inverse_prediction_quadratic;
    const row = rowOf(plans[1], 'This calibration');
    const found = engine.values(STUDY, `F${row}:H${row}`)[0] as number[];
    [load, lower, upper].forEach((expected, i) => expectDigits(found[i], Number(expected), 11));
  });

  test('the warm run, corrected, comes back to the run at 23 °C within 0.002 % of rated output', () => {
    const differences = engine.values(RUN, 'F38:F48').map(([value]) => Math.abs(value as number));
    expect(differences).toHaveLength(11);
    expect(Math.max(...differences)).toBeLessThan(2e-5);
  });
});

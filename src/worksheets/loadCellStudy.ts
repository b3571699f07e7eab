import { PONTIUS_CERTIFIED, PONTIUS_HANDBOOK, PONTIUS_LIMIT_FACTOR, PONTIUS_READINGS } from './data/pontius';
import type { SheetPlan } from './plan';
import { formula, PlanBuilder, type Formula } from './planBuilder';

const FIRST = 6;
const LAST = FIRST + PONTIUS_READINGS.length - 1;
const DATA = `A${FIRST}:A${LAST},B${FIRST}:B${LAST}`;
/** Column E, where the results stand. */
const RESULTS = 5;
const DEGREE_CELL = 'F49';

const FIFTEEN_DIGITS = '0.00000000000000E+00';
const DIGITS = '0.0';

/** NIST's load cell readings, and everything of a polynomial calibration computed live beside the certified values. */
export function loadCellStudy(): SheetPlan {
  const sheet = new PlanBuilder('Load cell study', [10, 10, 10, 2, 24, 20, 20, 13, 13]);
  sheet.wide(1, 1, 9, 'title', 'Load cell study');
  sheet.wide(1, 2, 9, 'subtitle', 'Public readings: NIST Statistical Reference Datasets, “Pontius”: a load cell, 2 runs of 20 loads. Change one: everything follows.');
  readings(sheet);
  certified(sheet, 4);
  straightOrQuadratic(sheet, 16);
  degree(sheet, 22);
  lowerLimit(sheet, 32);
  newReading(sheet, 41);
  anyDegree(sheet, 47);
  return sheet.plan(2);
}

function readings(sheet: PlanBuilder): void {
  sheet.wide(1, 4, 3, 'heading', 'Readings');
  sheet.across(1, 5, 'header', ['Load', 'Deflection', 'Residual']);
  sheet.down(1, FIRST, 'input', PONTIUS_READINGS.map(([load]) => load), '#,##0');
  sheet.down(2, FIRST, 'input', PONTIUS_READINGS.map(([, deflection]) => deflection), '0.00000');
  sheet.spill(3, FIRST, 1, PONTIUS_READINGS.length, formula(`PROVE.RESIDUALS(${DATA},${DEGREE_CELL})`), '0.000000');
  sheet.wide(1, LAST + 1, 3, 'note', `Residuals are of the degree in ${DEGREE_CELL}.`);
}

/** Correct digits of one cell against another: −log10 of the relative error, 15 (all that is certified) where they are equal. */
function agreeing(found: string, certified: string): Formula {
  return formula(`IF(${found}=${certified},15,MIN(15,-LOG10(ABS((${found}-${certified})/${certified}))))`);
}

function certified(sheet: PlanBuilder, row: number): void {
  const fit = `PROVE.FITREPORT(${DATA},2,,,FALSE)`;
  const lines: [string, string, number][] = [
    ...PONTIUS_CERTIFIED.coefficients.map((value, i): [string, string, number] => [`A${i}`, `INDEX(PROVE.FIT(${DATA},2),${i + 1})`, value]),
    ...PONTIUS_CERTIFIED.standardErrors.map((value, i): [string, string, number] => [`Standard error of A${i}`, `VLOOKUP("A${i}",${fit},3,FALSE)`, value]),
    ['Residual standard deviation', `VLOOKUP("Residual standard deviation",${fit},2,FALSE)`, PONTIUS_CERTIFIED.residualSd],
    ['R²', `VLOOKUP("R²",${fit},2,FALSE)`, PONTIUS_CERTIFIED.rSquared],
  ];
  sheet.wide(RESULTS, row, 5, 'heading', 'Quadratic fit against the certified values');
  sheet.across(RESULTS, row + 1, 'header', ['Quantity', 'Computed', 'Certified by NIST', 'Digits']);
  lines.forEach(([quantity, text, value], i) => {
    const at = row + 2 + i;
    sheet.put(RESULTS, at, 'label', quantity)
      .put(RESULTS + 1, at, 'result', formula(text), FIFTEEN_DIGITS)
      .put(RESULTS + 2, at, 'reference', value, FIFTEEN_DIGITS)
      .put(RESULTS + 3, at, 'result', agreeing(`F${at}`, `G${at}`), DIGITS);
  });
  sheet.wide(RESULTS, row + 10, 5, 'note', 'Digits that agree: −log10 of the relative error. The certified values have 15.');
}

function straightOrQuadratic(sheet: PlanBuilder, row: number): void {
  sheet.wide(RESULTS, row, 5, 'heading', 'Straight line or quadratic?');
  sheet.across(RESULTS, row + 1, 'header', ['Degree', 's', 's, handbook', 'Lack-of-fit F', 'F, handbook']);
  [1, 2].forEach((order, i) => {
    const at = row + 2 + i;
    const report = `PROVE.FITREPORT(${DATA},E${at},,,FALSE)`;
    sheet.put(RESULTS, at, 'reference', order, '0')
      .put(RESULTS + 1, at, 'result', formula(`VLOOKUP("Residual standard deviation",${report},2,FALSE)`), '0.0000000000')
      .put(RESULTS + 2, at, 'reference', PONTIUS_HANDBOOK.residualSd[i], '0.0000000000')
      .put(RESULTS + 3, at, 'result', formula(`VLOOKUP("Lack-of-fit F",${report},2,FALSE)`), '0.0000')
      .put(RESULTS + 4, at, 'reference', PONTIUS_HANDBOOK.lackOfFitF[i], '0.0000');
  });
  sheet.wide(RESULTS, row + 4, 5, 'note', 'NIST/SEMATECH e-Handbook 4.6.1, about six digits; the quadratic’s F from memory.');
}

function degree(sheet: PlanBuilder, row: number): void {
  sheet.wide(RESULTS, row, 5, 'heading', 'Degree of best fit');
  sheet.spill(RESULTS, row + 1, 5, 6, formula(`PROVE.DEGREETABLE(${DATA})`), '0.0000000', true);
  sheet.restyle(RESULTS, row + 2, 5, 'result', '0');
  sheet.put(RESULTS, row + 7, 'label', 'Degree chosen').put(RESULTS + 1, row + 7, 'result', formula(`PROVE.FITDEGREE(${DATA})`), '0');
  sheet.wide(RESULTS, row + 8, 5, 'note', 'ASTM E74: from the highest down, the first whose ratio s(m−1)/s(m) exceeds C.');
}

function lowerLimit(sheet: PlanBuilder, row: number): void {
  sheet.wide(RESULTS, row, 5, 'heading', 'Lower load limit of the quadratic, in load units');
  sheet.across(RESULTS, row + 1, 'header', ['Quantity', 'Computed', 'Reference', 'Digits']);
  sheet.put(RESULTS, row + 2, 'label', 'Lower limit factor (LLF)')
    .put(RESULTS + 1, row + 2, 'result', formula(`PROVE.LIMITFACTOR(${DATA},2)`), '0.000000000')
    .put(RESULTS + 2, row + 2, 'reference', PONTIUS_LIMIT_FACTOR, '0.000000000')
    .put(RESULTS + 3, row + 2, 'result', agreeing(`F${row + 2}`, `G${row + 2}`), DIGITS);
  sheet.across(RESULTS, row + 4, 'header', ['Class', 'From', 'To', 'Limited by']);
  ['AA', 'A'].forEach((name, i) => {
    const at = row + 5 + i;
    sheet.put(RESULTS, at, 'reference', name);
    sheet.spill(RESULTS + 1, at, 3, 1, formula(`PROVE.LOADRANGE(${DATA},2,E${at},,FALSE)`), '#,##0');
  });
  sheet.wide(RESULTS, row + 7, 5, 'note', 'ASTM E74 (from memory) asks for three runs of ten forces; here are two of twenty.');
}

function newReading(sheet: PlanBuilder, row: number): void {
  sheet.wide(RESULTS, row, 5, 'heading', 'Load for a new reading, with 95 % limits');
  sheet.put(RESULTS, row + 1, 'label', 'New deflection').put(RESULTS + 1, row + 1, 'input', PONTIUS_HANDBOOK.newDeflection, '0.000000');
  sheet.put(RESULTS, row + 2, 'header').spill(RESULTS + 1, row + 2, 3, 2, formula(`PROVE.FORCELIMITS(${DATA},2,F${row + 1})`), '#,##0.00', true);
  sheet.put(RESULTS, row + 3, 'label', 'This calibration');
  sheet.put(RESULTS, row + 4, 'label', 'Handbook (from memory)').across(RESULTS + 1, row + 4, 'reference', PONTIUS_HANDBOOK.loadLimits, '#,##0');
}

function anyDegree(sheet: PlanBuilder, row: number): void {
  sheet.wide(RESULTS, row, 5, 'heading', 'Fit report of any degree');
  sheet.put(RESULTS, row + 2, 'label', 'Degree, 1 to 5').put(RESULTS + 1, row + 2, 'input', 2, '0');
  sheet.across(RESULTS, row + 3, 'header', ['Quantity', 'Value', 'Standard error', 't']);
  sheet.spill(RESULTS, row + 4, 4, 16, formula(`PROVE.FITREPORT(${DATA},${DEGREE_CELL},,,FALSE)`));
  sheet.restyle(RESULTS, row + 4, 16, 'label').restyle(RESULTS + 3, row + 4, 16, 'result', '#,##0.00');
}

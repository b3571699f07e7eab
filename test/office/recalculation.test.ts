/** LibreOffice computes the plain formulas of workbook files anew. Needs soffice; without it these tests are skipped. */
import type { CellValue } from '../../src/hosts/sheetHost';
import { engineSheets } from '../../src/hosts/file/engineSheets';
import type { ReadSheet } from '../../src/hosts/file/readWorkbook';
import { readyWorkbooks } from '../../src/hosts/file/readyWorkbooks';
import { writeWorkbook } from '../../src/hosts/file/writeWorkbook';
import type { PlanCell, SheetPlan } from '../../src/worksheets/plan';
import { computed } from '../engine/bundle';
import { office, recalculated } from './libreOffice';
import { plainFormulas } from './plainFormulas';

const withOffice = office ? describe : describe.skip;
const TIME = 120_000;
/** A count of digits that agree: LibreOffice takes nearly equal numbers for equal when it subtracts, so it cannot count the last ones. */
const DIGIT_COUNT = '-LOG10(ABS(';

function valueAt(sheet: ReadSheet, at: string): CellValue {
  return sheet.cells.find((cell) => cell.at === at)?.value ?? null;
}

withOffice('LibreOffice', () => {
  test('computes anew what is stored wrongly, and reads names, arrays and text as meant', async () => {
    const cells: PlanCell[] = [
      ...[1, 2, 3, 4].flatMap((x, i): PlanCell[] => [{ at: `A${i + 1}`, role: 'input', value: x }, { at: `B${i + 1}`, role: 'input', value: 3 + 2 * x + (i % 2) }]),
      { at: 'D1', role: 'result', formula: '=LINEST(B1:B4,A1:A4)', spill: { rows: 1, columns: 2 } },
      { at: 'D2', role: 'result', formula: '=SUMSQ(readings-A1:A4)' },
      { at: 'D3', role: 'result', formula: '=T.INV.2T(0.05,10)' },
      { at: 'D4', role: 'result', formula: '=IF(A1>0,"","negative")' },
      { at: 'D5', role: 'label', value: '=A1' },
    ];
    const plan: SheetPlan = { name: 'Run 1', columns: [10], cells, names: [{ name: 'readings', range: 'B1:B4' }] };
    const [sheet] = recalculated(await writeWorkbook([{ plan, values: () => -1 }]));
    // Readings 5, 8, 9, 12 at 1 to 4: slope 2.2 and intercept 3 by hand; differences 4, 6, 6, 8; t from a printed table.
    expect(valueAt(sheet, 'D1')).toBeCloseTo(2.2, 12);
    expect(valueAt(sheet, 'E1')).toBeCloseTo(3, 12);
    expect(valueAt(sheet, 'D2')).toBe(152);
    expect(valueAt(sheet, 'D3')).toBeCloseTo(2.228, 3);
    expect(valueAt(sheet, 'D4') ?? '').toBe('');
    expect(valueAt(sheet, 'D5')).toBe('=A1');
    expect(sheet.names).toEqual([{ name: 'readings', range: 'B1:B4' }]);
  }, TIME);

  test.each(readyWorkbooks())('agrees with the engine on every plain formula of $file', async ({ plans }) => {
    const engine = await computed(...engineSheets(plans));
    const valuesOf = (plan: SheetPlan) => (at: string): CellValue => engine.value(plan.name, at);
    const file = await writeWorkbook(plans.map((plan) => ({ plan: plainFormulas(plan, valuesOf(plan)), values: () => -1 })));
    const sheets = recalculated(file);
    let formulas = 0;
    plans.forEach((plan, i) => {
      for (const { at, formula } of plan.cells) {
        if (formula === undefined || formula.includes('PROVE.') || formula.includes(DIGIT_COUNT)) continue;
        formulas += 1;
        const [found, expected] = [valueAt(sheets[i], at), engine.value(plan.name, at)];
        const place = `${plan.name}!${at} ${formula}`;
        if (typeof expected === 'number') {
          // Where two nearly equal numbers are subtracted, only the digits of the larger ones agree.
          expect([place, typeof found]).toEqual([place, 'number']);
          expect([place, Math.abs((found as number) - expected) <= 1e-9 * Math.max(1, Math.abs(expected))]).toEqual([place, true]);
        } else expect([place, found ?? '']).toEqual([place, expected ?? '']);
      }
    });
    expect(formulas).toBeGreaterThan(0);
  }, TIME);
});

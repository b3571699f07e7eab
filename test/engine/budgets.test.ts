/** The expanded uncertainty that three run sheets state, against a million draws of their own components (the approach of JCGM 101). */
import { rangeOf } from '../../src/hosts/address';
import { engineSheets } from '../../src/hosts/file/engineSheets';
import type { Distribution } from '../../src/metrology/standardUncertainty';
import { readySheets } from '../../src/worksheets/readySheets';
import { type BudgetLine, simulate } from '../monteCarlo';
import { Engine } from './bundle';

/** Columns of the budget, from 0: distribution, value, degrees of freedom, sensitivity. */
const [DISTRIBUTION, VALUE, DOF, SENSITIVITY] = [3, 4, 6, 7];

test.each([
  ['ten-point-force', 'components_compression', 'value_expanded'],
  ['five-point', 'components_tension', 'value_expanded_tension'],
  ['system', 'components_as_left', 'value_expanded_as_left'],
])('%s: U is half the 95.45 %% interval of 10⁶ draws, to 5 %%', async (id, components, expanded) => {
  const { filled } = readySheets().find((sheet) => sheet.id === id)!;
  const rangeNamed = (name: string) => filled.names!.find((entry) => entry.name === name)!.range;
  const engine = new Engine(engineSheets([filled]));
  await engine.calculate();
  const { startRow, endRow } = rangeOf(rangeNamed(components));
  const lines = engine.values(filled.name, `A${startRow + 1}:J${endRow + 1}`).flatMap((row): BudgetLine[] => {
    if (typeof row[VALUE] !== 'number') return [];
    const dof = row[DOF];
    return [{
      name: String(row[0]), distribution: row[DISTRIBUTION] as Distribution, halfWidth: row[VALUE], sensitivity: row[SENSITIVITY] as number,
      ...(typeof dof === 'number' ? { dof } : {}),
    }];
  });
  const stated = engine.value(filled.name, rangeNamed(expanded)) as number;
  engine.dispose();
  expect(lines.length).toBeGreaterThan(2);
  const drawn = simulate(lines, { seed: 20 });
  console.log(`${id}: U ${stated.toPrecision(4)}, half the interval of the draws ${drawn.halfWidth.toPrecision(4)}, from ${lines.length} components`);
  expect(Math.abs(stated / drawn.halfWidth - 1)).toBeLessThan(0.05);
});

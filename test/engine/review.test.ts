import { engineSheets } from '../../src/hosts/file/engineSheets';
import { expectedValues } from '../../src/review/recompute/recompute';
import { agrees } from '../../src/review/recompute/expected';
import { ReviewedSheet } from '../../src/review/reviewedSheet';
import { readySheets } from '../../src/worksheets/readySheets';
import { computed } from './bundle';

test.each(readySheets().map((one) => [one.id, one] as const))('%s', async (id, { filled, empty }) => {
  for (const plan of [filled, empty]) {
    const engine = await computed(...engineSheets([plan]));
    const sheet = new ReviewedSheet(await engine.sheetsHost().read(plan.name));
    const expected = expectedValues(sheet);
    const names = new Map(sheet.read.names.filter(({ name }) => name.startsWith('value_')).map(({ name, range }) => [range, name]));
    const bad = expected.filter((one) => !agrees(one)).map(({ cell, value }) => `${names.get(cell.at) ?? ''} ${cell.at} found ${String(cell.value)} expected ${String(value)}`);
    const covered = new Set(expected.map(({ cell }) => cell.at));
    const not = [...names].filter(([at]) => !covered.has(at)).map(([, name]) => name);
    console.log(id, plan === filled, expected.length, 'not covered', not.join(' '));
    expect(bad).toEqual([]);
  }
});

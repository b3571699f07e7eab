import { engineSheets } from '../../src/hosts/file/engineSheets';
import { readWorkbook } from '../../src/hosts/file/readWorkbook';
import { writeWorkbook } from '../../src/hosts/file/writeWorkbook';
import { review } from '../../src/review/review';
import { expectedPlan } from '../../src/review/expectedPlan';
import { ReviewedSheet } from '../../src/review/reviewedSheet';
import { readySheets } from '../../src/worksheets/readySheets';
import { computed } from './bundle';

test.each(readySheets().map((one) => [one.id, one] as const))('%s', async (id, { filled, empty }) => {
  for (const plan of [filled, empty]) {
    const engine = await computed(...engineSheets([plan]));
    const sheet = await engine.sheetsHost().read(plan.name);
    expect(expectedPlan(new ReviewedSheet(sheet))).toBeDefined();
    expect(review([sheet]).findings).toEqual([]);
    const file = await writeWorkbook([{ plan, values: (at) => engine.value(plan.name, at) as any }]);
    expect(review(readWorkbook(file)).findings).toEqual([]);
  }
});

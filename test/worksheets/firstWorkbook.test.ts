import { placeOf } from '../../src/hosts/address';
import { firstWorkbook } from '../../src/worksheets/firstWorkbook';

/** Column and row of an address. */
function place(at: string): [number, number] {
  const { column, row } = placeOf(at);
  return [column, row];
}

describe.each(firstWorkbook().map((plan) => [plan.name, plan] as const))('plan of "%s"', (_, plan) => {
  test('a formula that spills has its room free: no value and no formula in it', () => {
    const filled = plan.cells.filter((cell) => cell.value !== undefined || cell.formula !== undefined);
    for (const source of plan.cells) {
      if (!source.spill) continue;
      const [column, row] = place(source.at);
      const inTheWay = filled.filter(({ at }) => {
        const [c, r] = place(at);
        return at !== source.at && c >= column && c < column + (source.spill?.columns ?? 1) && r >= row && r < row + (source.spill?.rows ?? 1);
      });
      expect(inTheWay.map(({ at }) => at)).toEqual([]);
    }
  });
  test('no cell is written twice', () => {
    const addresses = plan.cells.map(({ at }) => at);
    expect(new Set(addresses).size).toBe(addresses.length);
  });
  test('merged blocks do not overlap', () => {
    const rows = (plan.merges ?? []).map((range) => range.split(':').map(place));
    rows.forEach(([[c1, r1], [c2, r2]], i) => rows.slice(i + 1).forEach(([[d1, s1], [d2, s2]]) => {
      expect(c1 <= d2 && d1 <= c2 && r1 <= s2 && s1 <= r2).toBe(false);
    }));
  });
});

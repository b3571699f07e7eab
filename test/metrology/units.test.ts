import { quotient } from '../../src/metrology/ratio';
import { UNITS } from '../../src/metrology/units';

const unit = (symbol: string) => UNITS.find((candidate) => candidate.symbol === symbol)!;

test('every ratio of two units is made of numbers that a cell holds exactly, so that nothing is lost before the value', () => {
  for (const from of UNITS) {
    for (const to of UNITS.filter(({ kind }) => kind === from.kind)) {
      const { numerator, denominator } = quotient(from.size, to.size);
      expect([from.symbol, to.symbol, BigInt(Number(numerator)), BigInt(Number(denominator))])
        .toEqual([from.symbol, to.symbol, numerator, denominator]);
    }
  }
});

test.each([
  ['lbf', 44482216152605n, 10n ** 13n, '0.45359237·9.80665, multiplied out by hand'],
  ['lbf·in', 1129848290276167n, 10n ** 16n, 'times 0.0254'],
  ['lbf·ft', 13558179483314004n, 10n ** 16n, 'times 0.3048'],
  ['ozf', 27801385095378125n, 10n ** 17n, 'a sixteenth of a pound'],
  ['kgf·cm', 980665n, 10n ** 7n, '9.80665·0.01'],
])('%s is %d / %d of its SI unit: %s', (symbol, numerator, denominator) => {
  const { size } = unit(symbol);
  expect(size.numerator * denominator).toBe(numerator * size.denominator);
});

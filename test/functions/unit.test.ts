import fc from 'fast-check';
import help from '@generated/help.json';
import { UNITS } from '../../src/metrology/units';
import { column, columns, fault, table } from './call';

const one = (value: number, from: string, to: string): number => table('UNIT', [[value]], from, to)[0][0];

describe('UNIT', () => {
  test.each([
    ['lbf', 'N', '4.448222'], ['kip', 'N', '4448.222'], ['kip', 'kN', '4.448222'], ['ozf', 'N', '0.2780139'],
    ['kgf', 'N', '9.806650'], ['kp', 'N', '9.806650'],
    ['lbf·ft', 'N·m', '1.355818'], ['lbf·in', 'N·m', '0.1129848'], ['ozf·in', 'N·m', '0.007061552'], ['ozf·in', 'mN·m', '7.061552'],
    ['kgf·m', 'N·m', '9.806650'],
    ['lb', 'kg', '0.4535924'], ['oz', 'kg', '0.02834952'], ['oz', 'g', '28.34952'], ['t', 'kg', '1000.000'],
  ])('NIST SP 811, appendix B.8: 1 %s is %s × %s', (from, to, published) => {
    expect(one(1, from, to).toPrecision(7)).toBe(published);
  });
  test.each([
    [1, 'lbf', 'N', 4.4482216152605], [1, 'lbf·in', 'N·m', 0.1129848290276167], [1, 'lbf·ft', 'N·m', 1.3558179483314004],
    [1, 'ozf·in', 'N·m', 0.00706155181422604375], [1, 'lbf', 'kgf', 0.45359237], [1, 'kgf·m', 'kgf·cm', 100],
    [1, 'lbf·ft', 'lbf·in', 12], [1, 'lbf', 'ozf', 16], [1, 'klbf·ft', 'lbf·ft', 1000], [1, 'tf', 'kgf', 1000], [1, 'N·m', 'N·mm', 1000],
    [2.5, 'MN', 'N', 2.5e6], [5, 'mN', 'N', 0.005], [3, 'kN', 'daN', 300], [10, 'lb', 'kg', 4.5359237], [1, 't', 'mg', 1e9],
  ])('exact definitions: %d %s in %s is %d to the last digit', (value, from, to, expected) => {
    expect(one(value, from, to)).toBe(expected);
  });
  test('there and back is the value to 1e-15, for every two units of a kind (property)', () => {
    const pairs = UNITS.flatMap((from) => UNITS.filter(({ kind }) => kind === from.kind).map((to) => [from.symbol, to.symbol] as const));
    const value = fc.double({ min: 1e-9, max: 1e9, noNaN: true });
    fc.assert(fc.property(fc.constantFrom(...pairs), value, fc.boolean(), ([from, to], size, isNegative) => {
      const start = isNegative ? -size : size;
      expect(Math.abs(one(one(start, from, to), to, from) / start - 1)).toBeLessThanOrEqual(1e-15);
    }), { numRuns: 2000 });
  });
  test('a range keeps its shape, blanks and signs', () => {
    expect(table('UNIT', columns([1, null, -2], [0, '', 4]), 'kN', 'N')).toEqual([[1000, 0], ['', ''], [-2000, 4000]]);
  });
  test('text among the values names its row', () => {
    expect(fault('UNIT', column(1, '2,5'), 'kN', 'N')).toBe('#VALUE!: value row 2: found the text "2,5"; expected a number');
  });
});

describe('spelling of units', () => {
  test.each(['N·m', 'Nm', 'N.m', 'N*m', 'N m', 'N-m', 'N⋅m', ' N·m ', 'NM', 'nm'])('"%s" is N·m', (spelling) => {
    expect(one(1, 'kN·m', spelling)).toBe(1000);
  });
  test.each(['lbf·in', 'lbf in', 'lbf-in', 'lbf.in', 'lbfin', 'LBF-IN', 'in·lbf', 'in-lbf', 'in lbf'])('"%s" is lbf·in', (spelling) => {
    expect(one(1, 'lbf·ft', spelling)).toBe(12);
  });
  test.each([['KN', 3000], ['kn', 3000], ['kN', 3000], ['MN', 3e6], ['mN', 0.003]])('3 "%s" is %d N', (spelling, newtons) => {
    expect(one(3, spelling, 'N')).toBe(newtons);
  });
  test.each([['KG', 'lb'], ['Kg', 'LBS'], ['kg', 'lbm']])('"%s" and "%s" are kilograms and pounds', (kilograms, pounds) => {
    expect(one(0.45359237, kilograms, pounds)).toBe(1);
  });
  test.each([
    ['mn', '"MN" or "mN"'], ['Mn', '"MN" or "mN"'], ['mnm', '"MN·m" or "mN·m"'], ['MG', '"mg"'], ['Mg', '"mg"'], ['T', '"t"'], ['G', '"g"'], ['n', '"N"'],
  ])('"%s" is refused, since capitals would change what it says', (spelling, meant) => {
    expect(fault('UNIT', 1, spelling, 'N')).toBe(`#VALUE!: from: found the text "${spelling}"; expected ${meant}: capitals count here`);
  });
  test.each(['m·N', 'm N', 'k N', 'lb-f'])('"%s" is no unit: only a torque has two parts', (spelling) => {
    expect(fault('UNIT', 1, spelling, 'N')).toMatch(/^#VALUE!: from: found the text ".*"; expected a unit of force \(/);
  });
  test('no two units share a spelling when separators are left out', () => {
    const bare = UNITS.map(({ symbol }) => symbol.replace('·', ''));
    expect(new Set(bare).size).toBe(bare.length);
  });
});

describe('units that do not fit', () => {
  test('an unknown unit lists all that are known', () => {
    const message = fault('UNIT', 1, 'N', 'stone');
    expect(message).toMatch(/^#VALUE!: to: found the text "stone"; expected a unit of force \(N, daN/);
    for (const { symbol } of UNITS) expect(message).toContain(symbol);
  });
  test('a number in place of a unit is named', () => {
    expect(fault('UNIT', 1, 5, 'N')).toMatch(/^#VALUE!: from: found 5; expected a unit of force/);
  });
  test('a mass is no force: the message says how one becomes the other', () => {
    expect(fault('UNIT', 1, 'lbs', 'N')).toBe(
      '#VALUE!: to: found N, a force, for lb, a mass; expected a unit of mass (kg, g, mg, t, lb, oz). '
      + 'WEIGHTFORCE turns a mass into a force; a pound of force is lbf',
    );
  });
  test('a torque is no force: the message lists the torques', () => {
    expect(fault('UNIT', 1, 'lbf·in', 'lbf')).toMatch(/^#VALUE!: to: found lbf, a force, for lbf·in, a torque; expected a unit of torque \(N·m, .*gf·cm\)$/);
  });
  test('the help lists every unit that is known, and no other', () => {
    const notes = help.find(({ id }) => id === 'UNIT')?.notes ?? [];
    const listed = notes[0].split('. ').flatMap((part) => part.replace(/^\w+: /, '').replace(/\.$/, '').split(', '));
    expect(listed).toEqual(UNITS.map(({ symbol }) => symbol));
  });
});

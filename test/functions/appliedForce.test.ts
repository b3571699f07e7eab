/** Force of dead weights, gravity, air density. The formulas of ASTM E74 and OIML R 111 were written from memory. */
import fc from 'fast-check';
import { expectDigits } from '../digits';
import { massForceAir } from '../published';
import { column, columns, fault, number, table } from './call';

const force = (...args: any[]): number => (table as any)('WEIGHTFORCE', ...args)[0][0];
/** Gravity and air in which two weights are compared, m/s² and kg/m³. */
const inAir = [9.8, 1.18] as const;

describe('WEIGHTFORCE', () => {
  test.each(massForceAir.astm_force.computed as Record<string, number>[])(
    'ASTM E74 (from memory), F = M·g/9.80665·(1 − d/D): %o', ({ M_lb: pounds, g, d, D, F_lbf: expected }) => {
      const kilograms = table('UNIT', [[pounds]], 'lb', 'kg');
      const newtons = table('WEIGHTFORCE', kilograms, g, d * 1000, [[D * 1000]]);
      expectDigits(table('UNIT', newtons, 'N', 'lbf')[0][0], expected, 14);
    },
  );
  test.each(massForceAir.conventional_mass.checks as Record<string, number>[])(
    'OIML R 111 conventional mass (from memory): %o press alike', ({ m, rho, m_c: conventional }) => {
      expectDigits(force([[conventional]], ...inAir, [[rho]], true), force([[m]], ...inAir, [[rho]]), 14);
    },
  );
  test('in air of 1.2 kg/m³ equal conventional masses press alike, whatever their density (definition of conventional mass)', () => {
    const [[steel], [aluminium], [gold]] = table('WEIGHTFORCE', column(20, 20, 20), 9.81, 1.2, column(7840, 2700, 19300), true);
    expect(aluminium).toBeCloseTo(steel, 12);
    expect(gold).toBeCloseTo(steel, 12);
  });
  test('JCGM 101:2008 9.3, mass calibration: 1.2341 mg and u = 0.0754 mg come out of balanced forces', () => {
    const { MCM } = massForceAir.jcgm101_9_3_mass_calibration.published;
    const middles = (from: number, to: number, n: number) => Array.from({ length: n }, (_, i) => from + ((to - from) * (i + 0.5)) / n);
    const weights = middles(7000, 9000, 40);
    const references = middles(7950, 8050, 4);
    const found = middles(1.1, 1.3, 40).flatMap((air) => {
      const unitForces = (densities: number[]) => table('WEIGHTFORCE', densities.map(() => [1]), 9.8, air, column(...densities), true).map(([f]) => f as number);
      const ofReferences = unitForces(references);
      return unitForces(weights).flatMap((w) => ofReferences.map((r) => (100001.234 * r) / w - 100000));
    });
    const mean = found.reduce((sum, value) => sum + value) / found.length;
    const variance = found.reduce((sum, value) => sum + (value - mean) ** 2, 0) / found.length;
    expect(Math.abs(mean - Number(MCM[0]))).toBeLessThan(0.0002);
    expect(Math.abs(Math.sqrt(0.05 ** 2 + 0.02 ** 2 + variance) - Number(MCM[1]))).toBeLessThan(0.0002);
  });
  test('forces are in proportion to mass, and add up (property)', () => {
    const mass = fc.double({ min: 1e-6, max: 5000, noNaN: true });
    const density = fc.double({ min: 2000, max: 20_000, noNaN: true });
    fc.assert(fc.property(mass, mass, fc.double({ min: 0.01, max: 50, noNaN: true }), density, fc.boolean(), (a, b, k, solid, conventional) => {
      const of = (m: number) => force([[m]], 9.8, 1.2, [[solid]], conventional);
      expect(Math.abs(of(a) + of(b) - of(a + b))).toBeLessThanOrEqual(1e-14 * of(a + b));
      expect(Math.abs(of(k * a) - k * of(a))).toBeLessThanOrEqual(1e-14 * of(k * a));
    }));
  });
  test('a range of masses gives a range of its shape; blanks stay blank', () => {
    const found = table('WEIGHTFORCE', columns([0, 10], [null, 20]), 9.75, 0);
    expect(found).toEqual([[0, ''], [97.5, 195]]);
  });
  test('densities beside the masses serve each its own; left out or an empty cell, all are 8000', () => {
    const [[steel], [brass]] = table('WEIGHTFORCE', column(1, 1), 9.8, 1.2, column(8000, 8400));
    expect(brass).toBeGreaterThan(steel);
    expect(steel).toBe(force([[1]], 9.8, 1.2));
    expect(steel).toBe(force([[1]], 9.8, 1.2, [[null]]));
  });
  test.each([
    ['gravity in ft/s²', [[1]], 32.174, 1.2, [[8000]], 'gravity: found 32.174; expected local gravity in m/s², 9.7 to 9.9'],
    ['air in g/cm³', [[1]], 9.8, 0.0012, [[8000]], 'airDensity: found 0.0012; expected a density of air in kg/m³, such as 1.2, or 0 for none'],
    ['a density in g/cm³', column(1, 1), 9.8, 1.2, column(8000, 8), 'density row 2: found 8; expected a density in kg/m³, such as 8000'],
    ['a missing density', column(1, 1), 9.8, 1.2, column(8000, null), 'density row 2: found nothing beside a mass; expected a density'],
    ['a negative mass', column(1, -1), 9.8, 1.2, [[8000]], 'mass row 2: found -1; expected a mass in kg, 0 or more'],
    ['densities of another length', column(1, 1, 1), 9.8, 1.2, column(8000, 8000), 'density: found 2 rows and 1 column for 3 rows and 1 column of mass; expected one cell, one column or row beside them, or the same shape'],
  ] as const)('%s is refused', (_, mass, gravity, air, density, message) => {
    expect(fault('WEIGHTFORCE', mass as number[][], gravity, air, density as number[][])).toBe(`#VALUE!: ${message}`);
  });
});

describe('GRAVITY', () => {
  // Constants of the Geodetic Reference System 1980: gravity at equator and pole, half axes.
  const [equator, pole, a, b] = [9.7803267715, 9.8321863685, 6378137, 6356752.3141];
  const somigliana = (degrees: number) => {
    const [s, c] = [Math.sin((degrees * Math.PI) / 180) ** 2, Math.cos((degrees * Math.PI) / 180) ** 2];
    return (a * equator * c + b * pole * s) / Math.sqrt(a * a * c + b * b * s);
  };

  test('Geodetic Reference System 1980: within 1 µm/s² of the closed formula of Somigliana, pole to pole', () => {
    for (let latitude = -90; latitude <= 90; latitude += 1) {
      expect(Math.abs(number('GRAVITY', latitude) - somigliana(latitude))).toBeLessThan(1e-6);
    }
  });
  test('it falls by 3.086 µm/s² a metre of height', () => {
    expect(number('GRAVITY', 40, 1000)).toBeCloseTo(number('GRAVITY', 40) - 0.003086, 12);
  });
  test('a latitude or a height off the Earth is refused', () => {
    expect(fault('GRAVITY', 120)).toBe('#VALUE!: latitude: found 120; expected degrees, −90 to 90');
    expect(fault('GRAVITY', 40, 20000)).toBe('#VALUE!: height: found 20000; expected metres above sea level, −500 to 9000');
  });
});

describe('AIRDENSITY', () => {
  const values = massForceAir.air_density.values as { t_C: number; p_hPa: number; RH: number; cipm2007: number; r111_approx: number }[];

  test.each(values)('OIML R 111-1 E.3 (from memory): $t_C °C, $p_hPa hPa, $RH % → $r111_approx kg/m³', ({ t_C: t, p_hPa: p, RH: rh, r111_approx: expected }) => {
    expectDigits(number('AIRDENSITY', t, p, rh), expected, 15);
  });
  test.each(values)('CIPM-2007 (from memory): $t_C °C, $p_hPa hPa, $RH % → $cipm2007 kg/m³ to 2 parts in 10⁴', ({ t_C: t, p_hPa: p, RH: rh, cipm2007: expected }) => {
    expect(Math.abs(number('AIRDENSITY', t, p, rh) / expected - 1)).toBeLessThan(2e-4);
  });
  test('warm, wet or thin air is lighter (property)', () => {
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(fc.property(between(-20, 59), between(500, 1099), between(1, 99), between(0.001, 1), (t, p, rh, more) => {
      const here = number('AIRDENSITY', t, p, rh);
      expect(number('AIRDENSITY', t + more, p, rh)).toBeLessThan(here);
      expect(number('AIRDENSITY', t, p, rh + more)).toBeLessThan(here);
      expect(number('AIRDENSITY', t, p + more, rh)).toBeGreaterThan(here);
    }));
  });
  test.each([
    ['°F', 68, 1013, 50, 't: found 68; expected the temperature of the air in °C, −20 to 60'],
    ['kPa', 20, 101.3, 50, 'p: found 101.3; expected the pressure of the air in hPa, 500 to 1100'],
    ['a fraction', 20, 1013, 0.5, 'rh: found 0.5; expected relative humidity in percent, such as 45; 0 for dry air'],
  ] as const)('%s is told from the unit expected', (_, t, p, rh, message) => {
    expect(fault('AIRDENSITY', t, p, rh)).toBe(`#VALUE!: ${message}`);
  });
});

/** Calibration polynomial in cells: FIT and its relatives on data whose answer is known exactly, and on NIST StRD sets. */
import fc from 'fast-check';
import { expectDigits } from '../digits';
import { strdSet } from '../published';
import { column, columns, fault, number, table } from './call';

describe('FIT', () => {
  test.each([['Pontius', 2, 13], ['Norris', 1, 13]] as const)('NIST StRD %s through the cell function, degree %i, to %i digits', (name, degree, digits) => {
    const set = strdSet(name);
    const found = table('FIT', column(...set.x), column(...set.y), degree);
    set.coefficients.forEach((certified, i) => expectDigits(found[i][0], certified, digits, `A${i}`));
  });
  test('NIST StRD NoInt1 with constant FALSE: A0 is 0, A1 certified to 13 digits', () => {
    const set = strdSet('NoInt1');
    const found = table('FIT', column(...set.x), column(...set.y), 1, 'response', false);
    expect(found[0][0]).toBe(0);
    expectDigits(found[1][0], set.coefficients[0], 13);
  });
  test('zero rows take no part: a zero that does not return changes nothing', () => {
    const found = table('FIT', column(0, 1, 2, 3, 0), column(0, 1, 2, 3, 0.5), 1);
    expect(found[0][0]).toBeCloseTo(0, 14);
    expect(found[1][0]).toBeCloseTo(1, 14);
  });
  test('form "force" fits force as a polynomial of output', () => {
    const found = table('FIT', column(10, 20, 30), column(1, 2, 3), 1, 'force');
    expect(found[1][0]).toBeCloseTo(10, 12);
  });
  test('too few different forces say how many are needed', () => {
    expect(fault('FIT', column(1, 2, 2), column(1, 2, 2.1), 2)).toBe('#VALUE!: found 2 different forces; a polynomial of degree 2 needs at least 3');
  });
});

describe('FITREPORT', () => {
  const set = strdSet('Pontius');
  const report = new Map(table('FITREPORT', column(...set.x), column(...set.y), 2).slice(1).map((row) => [row[0], row]));

  test('NIST StRD Pontius: certified standard errors, s and R² to 13 digits', () => {
    set.standardErrors.forEach((certified, i) => expectDigits(report.get(`A${i}`)?.[2], certified, 13, `standard error of A${i}`));
    expectDigits(report.get('Residual standard deviation')?.[1], set.residualSd, 13);
    expectDigits(report.get('R²')?.[1], set.rSquared, 13);
  });
  test('t is coefficient over standard error', () => {
    const [, value, error, t] = report.get('A2') ?? [];
    expect(t).toBeCloseTo(value / error, 10);
  });
  test('n and dof count the readings under load', () => {
    expect([report.get('Readings')?.[1], report.get('Degrees of freedom')?.[1]]).toEqual([40, 37]);
  });
  test('the largest residual is one of RESIDUALS, with its force and row', () => {
    const residuals = table('RESIDUALS', column(...set.x), column(...set.y), 2).map(([value]) => value);
    const largest = residuals.reduce((most, value) => (Math.abs(value) > Math.abs(most) ? value : most));
    expect(report.get('Largest residual')?.[1]).toBe(largest);
    const row = report.get('… in row')?.[1] as number;
    expect(residuals[row - 1]).toBe(largest);
    expect(report.get('… at force')?.[1]).toBe(set.x[row - 1]);
  });
  test('the largest residual names its run', () => {
    const found = new Map(table('FITREPORT', column(1, 2, 3), columns([1, 2, 3], [1, 2.5, 3]), 1).map(([name, value]) => [name, value]));
    expect([found.get('… in row'), found.get('… of run')]).toEqual([2, 2]);
  });
  test('repeats without scatter bear no lack-of-fit test', () => {
    const found = new Map(table('FITREPORT', column(1, 2, 3, 4), columns([0.1, 0.2, 0.31, 0.4], [0.1, 0.2, 0.31, 0.4]), 1).map(([name, value]) => [name, value]));
    expect(found.get('Lack-of-fit F')).toBe('');
  });
  test('readings that do not vary have no R²', () => {
    const found = new Map(table('FITREPORT', column(1, 2, 3), column(0.7, 0.7, 0.7), 1).map(([name, value]) => [name, value]));
    expect(found.get('R²')).toBe('');
  });
  test('a fit without degrees of freedom leaves its statistics blank', () => {
    const found = table('FITREPORT', column(1, 2), column(1, 2), 1, null, null, false);
    expect(found[0].slice(2)).toEqual(['', '']);
    expect(found[4].slice(0, 2)).toEqual(['Residual standard deviation', '']);
  });
});

describe('RESPONSE, FORCE, FORCETABLE', () => {
  test('FORCE undoes RESPONSE for any rising cubic (property)', () => {
    fc.assert(fc.property(
      fc.double({ min: -0.1, max: 0.1, noNaN: true }), fc.double({ min: -0.004, max: 0.004, noNaN: true }),
      fc.double({ min: -0.00001, max: 0.00001, noNaN: true }), fc.double({ min: 0, max: 100, noNaN: true }),
      (a0, a2, a3, applied) => {
        const coefficients = column(a0, 2, a2, a3);
        const outputs = table('RESPONSE', coefficients, column(applied));
        expect(table('FORCE', coefficients, outputs, 0, 100)[0][0]).toBeCloseTo(applied, 9);
      },
    ));
  });
  test('FORCE undoes RESPONSE within the range for monotone polynomials of degree 1 to 5, rising or falling (property)', () => {
    const any = fc.double({ min: -2, max: 2, noNaN: true });
    // X′ = ±(least + p(z)²) never turns; z = F/capacity. Its integral is the response.
    const slopes = fc.tuple(fc.double({ min: 0.2, max: 2, noNaN: true }), fc.array(any, { maxLength: 3 }), fc.constantFrom(1, -1));
    fc.assert(fc.property(any, slopes, fc.constantFrom(1, 250, 2e6), fc.double({ min: 0, max: 1, noNaN: true }), (a0, [least, p, sign], capacity, z) => {
      const slope = [least, 0, 0, 0, 0];
      p.forEach((a, i) => p.forEach((b, j) => { slope[i + j] += a * b; }));
      const inZ = [a0, ...slope.map((value, power) => (sign * value) / (power + 1))];
      const coefficients = column(...inZ.map((value, power) => value / capacity ** power));
      const outputs = table('RESPONSE', coefficients, column(z * capacity));
      expect(table('FORCE', coefficients, outputs, 0, capacity)[0][0] / capacity).toBeCloseTo(z, 12);
    }));
  });
  test('a reading at either end of the interval has its force there', () => {
    expect(table('FORCE', column(0.1, 0.3), column(0.1, 0.4), 0, 1)).toEqual(column(0, 1));
  });
  test('an inflection that only touches is no turn: (F − 1)³', () => {
    expect(table('FORCE', column(-1, 3, -3, 1), column(1), 0, 5)[0][0]).toBeCloseTo(2, 12);
  });
  test('a polynomial that turns between lowest and highest is #N/A and says where', () => {
    expect(fault('FORCE', column(0, 2, -0.01), column(50), 0, 150)).toBe('#N/A: the polynomial turns at 100, between 0 and 150; expected an interval on one side of it');
  });
  test('without highest, the force is looked for up to the first turn', () => {
    expect(table('FORCE', column(0, 2, -0.01), column(75))[0][0]).toBeCloseTo(50, 10);
    expect(fault('FORCE', column(0, 2, -0.01), column(101))).toMatch(/^#N\/A: no force gives 101: the polynomial runs from 0 at 0 to 100 at 100, where it turns/);
  });
  test('a straight line without highest is looked at without end', () => {
    expect(table('FORCE', column(0, 2e-9), column(4e6))[0][0]).toBeCloseTo(2e15, -2);
  });
  test('one reading without a force leaves the others alone', () => {
    const found = table('FORCE', column(0, 2), column(4, -4, null, 6), 0, 10);
    expect(found[0][0]).toBeCloseTo(2, 14);
    expect(found[1][0]).toMatchObject({ code: '#N/A' });
    expect(found[2][0]).toBe('');
    expect(found[3][0]).toBeCloseTo(3, 14);
  });
  test('form "force" evaluates: coefficients of force as a polynomial of output', () => {
    expect(table('FORCE', column(0, 50, 1), column(2), null, null, 'force')).toEqual([[104]]);
  });
  test('a blank coefficient is refused, since it would shift the higher ones; blanks at the end are not', () => {
    expect(fault('FORCE', column(1, '', 2), column(9))).toBe('#VALUE!: coefficients row 2: found nothing; expected a number, 0 if the term is absent');
    expect(table('RESPONSE', column(1, 2, null, null), column(4))).toEqual([[9]]);
  });
  test('bounds in compression are taken as |force|', () => {
    expect(table('FORCE', column(0, -0.02), column(-1), 0, -100)[0][0]).toBeCloseTo(50, 12);
  });
  test('a table from compression to tension is refused by its own arguments', () => {
    expect(fault('FORCETABLE', column(0, 0.02), -30, 10, 10)).toBe('#VALUE!: to: found 10, but from is -30; expected one direction');
  });
  test('compression is taken as |force|', () => {
    expect(table('RESPONSE', column(0, -0.02), column(-10, -20))).toEqual(column(-0.2, -0.4));
  });
  test('a force table keeps decimal steps decimal and reaches its last force', () => {
    const found = table('FORCETABLE', column(0, 1), 0, 1, 0.1, false);
    expect(found.map(([force]) => force)).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1]);
  });
  test('a step that floods the sheet is refused', () => {
    expect(fault('FORCETABLE', column(0, 1), 0, 1e6, 1)).toMatch(/gives more than 20000 rows; expected a larger step/);
  });
});

describe('FORCELIMITS', () => {
  const forces = column(1, 2, 3, 4, 5);
  const readings = column(2.01, 3.98, 6.02, 8.01, 9.99);

  test('a straight line: the limits satisfy f(F) ∓ t·s·√(1 + 1/n + (F − mean)²/Sxx) = reading', () => {
    const { value: s } = { value: table('FITREPORT', forces, readings, 1, null, null, false)[4][1] };
    const [[a0], [a1]] = table('FIT', forces, readings, 1);
    const t = 3.182446305284263; // Student t, 3 dof, two-sided 95 % (tables print 3.182)
    const band = (force: number) => t * s * Math.sqrt(1 + 1 / 5 + (force - 3) ** 2 / 10);
    const [, [force, lower, upper]] = table('FORCELIMITS', forces, readings, 1, 7);
    expect(a0 + a1 * force).toBeCloseTo(7, 12);
    expect(a0 + a1 * lower + band(lower)).toBeCloseTo(7, 9);
    expect(a0 + a1 * upper - band(upper)).toBeCloseTo(7, 9);
  });
  test('several readings give a row each, and one that is out of reach spoils no other', () => {
    const found = table('FORCELIMITS', forces, readings, 1, column(4, 40), 0.95, false);
    expect(found[0][0]).toBeCloseTo(2, 1);
    expect(found[1][0]).toMatchObject({ code: '#N/A' });
  });
  test('a falling response keeps lower below upper', () => {
    const [[force, lower, upper]] = table('FORCELIMITS', forces, readings.map(([value]) => [-Number(value)]), 1, -7, 0.95, false);
    expect(lower).toBeLessThan(force);
    expect(force).toBeLessThan(upper);
  });
  test('a blank reading keeps its row', () => {
    const found = table('FORCELIMITS', forces, readings, 1, column(4, '', 6), 0.95, false);
    expect(found[1]).toEqual(['', '', '']);
    expect(found[2][0]).toBeCloseTo(3, 1);
  });
  test('without scatter the limits close on the force', () => {
    const steps = [1, 2, 3, 4, 5, 6, 7].map((i) => i / 7 * 3e6);
    for (const load of [0.9e6, 1.7e6, 2.2e6]) {
      const [[force, lower, upper]] = table('FORCELIMITS', column(...steps), column(...steps.map((f) => 7e-7 * f + 1e-4)), 1, 7e-7 * load + 1e-4, 0.95, false);
      expect(force).toBeCloseTo(load, 6);
      expect(upper - lower).toBeLessThan(1e-6);
    }
  });
  test('a polynomial that turns near zero force is no hindrance above: the force is looked for over the calibration', () => {
    const [[force]] = table('FORCELIMITS', column(1, 2, 3, 4, 5, 6), column(1.01, 4, 9, 16, 25.01, 36), 2, 9, 0.95, false);
    expect(force).toBeCloseTo(3, 2);
  });
  test('a reading of the calibration at its greatest force has its limits', () => {
    const found = table('FORCELIMITS', column(1, 2, 3, 4, 5), column(2, 4, 6, 8, 10.1), 1, 10.1, 0.95, false);
    expect(found[0][0]).toBeGreaterThan(5);
  });
  test('… also where the limits asked for are narrower than its own residual', () => {
    const found = table('FORCELIMITS', column(1, 2, 3, 4, 5), column(2, 4, 6, 8, 10.5), 1, 10.5, 0.1, false);
    expect(found[0][0]).toBeGreaterThan(5);
  });
  test('a probability outside 0 to 1 is refused', () => {
    expect(fault('FORCELIMITS', forces, readings, 1, 7, 95)).toBe('#VALUE!: probability: found 95; expected a number between 0 and 1, such as 0.95');
  });
});

describe('LIMITFACTOR, LOWERLIMIT, LOADRANGE', () => {
  const forces = column(0, 10, 20, 30, 40, 50, 0);
  const run1 = [0, 1, 2.0001, 3, 3.9999, 5, 0];
  const run2 = [0, 1.0001, 2, 2.9999, 4, 5.0001, 0];
  const readings = columns(run1, run2);

  test('LLF is 2.4·s times the mean of force/deflection', () => {
    const s = table('FITREPORT', forces, readings, 1, null, null, false)[4][1] as number;
    const ratios = [run1, run2].flatMap((run) => run.slice(1, -1).map((value, i) => (10 * (i + 1)) / value));
    const mean = ratios.reduce((sum, ratio) => sum + ratio) / ratios.length;
    expectDigits(number('LIMITFACTOR', forces, readings, 1), 2.4 * s * mean, 13);
  });
  test('LLF does not fall below the resolution', () => {
    expect(number('LIMITFACTOR', forces, readings, 1, 0.02)).toBe(0.02);
  });
  test('the range runs from the lower limit to the greatest force and names the rule', () => {
    const llf = number('LIMITFACTOR', forces, readings, 1);
    expect(400 * llf).toBeLessThan(10);
    expect(table('LOADRANGE', forces, readings, 1, 'a')).toEqual([['From', 'To', 'Limited by'], [10, 50, 'lowest force applied']]);
    expect(table('LOADRANGE', forces, readings, 1, 'A', 0.05, false)).toEqual([[20, 50, 'resolution']]);
    expect(number('LOWERLIMIT', forces, readings, 1, 'A', 0.05)).toBe(20);
  });
  test('a class that is not met is #N/A with the reason', () => {
    expect(fault('LOWERLIMIT', forces, readings, 1, 'AA', 0.05)).toBe('#N/A: class AA is not met: its lower load limit, set by the resolution, is 100, above the greatest force applied, 50');
  });
  test('a deflection of zero under load is named', () => {
    expect(fault('LIMITFACTOR', column(1, 2, 3), column(0, 2, 3), 1)).toBe('#VALUE!: readings row 1: found a net reading of 0 at force 1; expected a deflection');
  });
});

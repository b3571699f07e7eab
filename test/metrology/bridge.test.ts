/**
 * Bridges: published outputs with a shunt (test/published/bridge.json), networks solved node by node, and properties over
 * random bridges.
 */
import fc from 'fast-check';
import { type Arms, bridgeArms, diagonals } from '../../src/metrology/bridgeArms';
import { bridgeOutput } from '../../src/metrology/bridgeOutput';
import { neighboursInE96 } from '../../src/metrology/preferredValues';
import { seriesOutput, seriesResistor, shuntOutput, shuntResistor } from '../../src/metrology/shunt';
import { zeroTrims } from '../../src/metrology/zeroTrim';
import { expectDigits } from '../digits';
import { bridge } from '../published';

/** Resistance between two corners (0 to 3) of a bridge by solving the nodes, with 1 A sent through. */
function betweenCorners(arms: Arms, from: number, to: number): number {
  const conductance = [0, 1, 2, 3].map(() => [0, 0, 0, 0]);
  arms.forEach((arm, i) => {
    const [a, b] = [i, (i + 1) % 4];
    conductance[a][a] += 1 / arm;
    conductance[b][b] += 1 / arm;
    conductance[a][b] -= 1 / arm;
    conductance[b][a] -= 1 / arm;
  });
  const nodes = [0, 1, 2, 3].filter((node) => node !== to);
  const system = nodes.map((i) => [...nodes.map((j) => conductance[i][j]), i === from ? 1 : 0]);
  for (let p = 0; p < 3; p += 1) {
    for (let row = 0; row < 3; row += 1) {
      if (row === p) continue;
      const factor = system[row][p] / system[p][p];
      system[row] = system[row].map((value, k) => value - factor * system[p][k]);
    }
  }
  const at = nodes.indexOf(from);
  return system[at][3] / system[at][at];
}

const cornersOf = (arms: Arms) => [0, 1, 2, 3].map((i) => betweenCorners(arms, i, (i + 1) % 4)) as unknown as Arms;
const arm = fc.double({ min: 200, max: 500, noNaN: true });
const anyArms = fc.tuple(arm, arm, arm, arm);
const likeNew = fc.double({ min: 349.5, max: 350.5, noNaN: true });

describe('arms from corner resistances', () => {
  test('an equal 350 Ω bridge reads 3R/4 = 262.5 Ω between neighbours, and 350 Ω across its diagonals', () => {
    expect(bridge.balanced_equal_arm).toContain('(350 -> 262.5)');
    bridgeArms([262.5, 262.5, 262.5, 262.5]).forEach((r) => expectDigits(r, 350, 14));
    expect(diagonals([350, 350, 350, 350])).toEqual({ input: 350, output: 350 });
  });
  test('the arms of random bridges are found to 1e-9 from corner resistances solved node by node', () => {
    fc.assert(fc.property(anyArms, (arms) => {
      bridgeArms(cornersOf(arms)).forEach((found, i) => expectDigits(found, arms[i], 9, `arm ${i + 1}`));
    }));
  });
  test('an arm greater than the three others together is found too', () => {
    fc.assert(fc.property(fc.double({ min: 1500, max: 20_000, noNaN: true }), fc.integer({ min: 0, max: 3 }), (far, place) => {
      const arms = [350, 351, 349, 350.5].map((r, i) => (i === place ? far : r)) as unknown as Arms;
      bridgeArms(cornersOf(arms)).forEach((found, i) => expectDigits(found, arms[i], 8, `arm ${i + 1}`));
    }));
  });
  test('diagonals are those solved node by node', () => {
    fc.assert(fc.property(anyArms, (arms) => {
      expectDigits(diagonals(arms).input, betweenCorners(arms, 0, 2), 11);
      expectDigits(diagonals(arms).output, betweenCorners(arms, 1, 3), 11);
    }));
  });
  test.each([[[1, 1, 1, 3]], [[10, 2, 3, 4]]])('%p are no corner resistances of a bridge', (corners) => {
    expect(() => bridgeArms(corners as unknown as Arms)).toThrow(/not less than the sum of the other three/);
  });
});

describe('output of a bridge', () => {
  const changed = (by: readonly number[]) => by.map((x) => 350 * (1 + x)) as unknown as Arms;
  test.each([0.001, -0.002, 0.05])('dR/R = %p in arm 1 alone, or arm 3, gives x/(4 + 2x)', (x) => {
    expectDigits(bridgeOutput(changed([x, 0, 0, 0])), 1000 * x / (4 + 2 * x), 12);
    expectDigits(bridgeOutput(changed([0, 0, x, 0])), 1000 * x / (4 + 2 * x), 12);
  });
  test.each([0.001, -0.002, 0.05])('dR/R = ±%p: half bridge x/2, full bridge x, the sign that of arms 1 and 3', (x) => {
    expectDigits(bridgeOutput(changed([x, -x, 0, 0])), 1000 * x / 2, 12);
    expectDigits(bridgeOutput(changed([x, -x, x, -x])), 1000 * x, 12);
    expectDigits(bridgeOutput(changed([-x, x, -x, x])), -1000 * x, 12);
  });
  test('it is 1000·(R1·R3 − R2·R4)/((R1 + R2)·(R3 + R4)) of random arms', () => {
    fc.assert(fc.property(anyArms, ([a, b, c, d]) => {
      expect(bridgeOutput([a, b, c, d])).toBeCloseTo((1000 * (a * c - b * d)) / ((a + b) * (c + d)), 10);
    }));
  });
});

describe('shunt calibration', () => {
  test.each(bridge.checks as { R: number; Rs: number; mVV: number; microstrain_GF2: number }[])(
    '$R Ω with $Rs Ω across an arm: $mVV mV/V, and back (Wheatstone algebra, derived)',
    ({ R, Rs, mVV, microstrain_GF2 }) => {
      expectDigits(shuntOutput(R, Rs), mVV, 14);
      expectDigits(shuntResistor(R, mVV), Rs, 13);
      const strain = R / (2 * (R + Rs)); // of a gauge of factor 2, as a change of the arm: dR/R = GF·ε
      expectDigits(strain * 1e6, microstrain_GF2, 13);
      expectDigits(bridgeOutput([R, R * (1 - 2 * strain), R, R]), mVV, 10);
    },
  );
  test.each(bridge.checks as { R: number; Rs: number; mVV_linear_approx: number }[])(
    '$R Ω with $Rs Ω: the linear approximation $mVV_linear_approx lies above by half the relative change',
    ({ R, Rs, mVV_linear_approx }) => expectDigits(shuntOutput(R, Rs) * (1 + R / (2 * Rs)), mVV_linear_approx, 13),
  );
  test('output and resistor are inverse to each other, across and in series', () => {
    fc.assert(fc.property(arm, fc.double({ min: 1e-3, max: 400, noNaN: true }), (r, output) => {
      expectDigits(shuntOutput(r, shuntResistor(r, output)), output, 12);
      expectDigits(seriesOutput(r, seriesResistor(r, output)), output, 12);
    }));
  });
});

describe('trim of the zero', () => {
  const across = (r: number, shunt: number) => 1 / (1 / r + 1 / shunt);
  const trimmed = ([a, b, c, d]: Arms, place: number, change: (r: number) => number) =>
    [a, b, c, d].map((r, i) => (i + 1 === place ? change(r) : r)) as unknown as Arms;

  test('the resistor, put into a bridge whose other half makes the zero, brings the output to the target', () => {
    fc.assert(fc.property(likeNew, likeNew, likeNew, fc.double({ min: -2, max: 2, noNaN: true }), fc.boolean(), (a, b, r, target, first) => {
      const arms: Arms = first ? [r, r, a, b] : [a, b, r, r];
      const zero = bridgeOutput(arms);
      fc.pre(Math.abs(target - zero) > 1e-4);
      for (const trim of zeroTrims(zero, r, target)) {
        const place = trim.arms.find((one) => (one <= 2) === first) as number;
        const put = (resistor: number) => bridgeOutput(trimmed(arms, place, (one) => (trim.method === 'across' ? across(one, resistor) : one + resistor)));
        expect(put(trim.resistor)).toBeCloseTo(target, 10);
        expect(trim.zero).toBeCloseTo(target, 12);
        expect(put(trim.standard)).toBeCloseTo(trim.standardZero, 10);
      }
    }));
  });
  test('no other E96 value comes nearer to the target, and its zero is off by at most 1.5 % of the change, half the widest step (102 to 105)', () => {
    fc.assert(fc.property(fc.double({ min: -2, max: 2, noNaN: true }), (zero) => {
      fc.pre(Math.abs(zero) > 1e-4);
      const [shunt, series] = zeroTrims(zero, 350);
      for (const { standard, standardZero } of [shunt, series]) {
        const [below] = neighboursInE96(standard * 0.999);
        const [, above] = neighboursInE96(standard);
        const outputOf = standard === shunt.standard ? shuntOutput : seriesOutput;
        for (const other of [below, above]) {
          expect(Math.abs(zero - Math.sign(zero) * outputOf(350, other))).toBeGreaterThanOrEqual(Math.abs(standardZero) - 1e-15);
        }
        expect(Math.abs(standardZero)).toBeLessThan(0.015 * Math.abs(zero));
      }
    }));
  });
  test('a zero at the target needs no resistor', () => {
    expect(() => zeroTrims(0.1, 350, 0.1)).toThrow(/no resistor is needed/);
  });
});

describe('E96 series', () => {
  const SERIES = `100 102 105 107 110 113 115 118 121 124 127 130 133 137 140 143 147 150 154 158 162 165 169 174
    178 182 187 191 196 200 205 210 215 221 226 232 237 243 249 255 261 267 274 280 287 294 301 309
    316 324 332 340 348 357 365 374 383 392 402 412 422 432 442 453 464 475 487 499 511 523 536 549
    562 576 590 604 619 634 649 665 681 698 715 732 750 768 787 806 825 845 866 887 909 931 953 976`.split(/\s+/).map(Number);

  test('all 96 values of a decade, and the next one, from IEC 60063 (from memory)', () => {
    expect(SERIES).toHaveLength(96);
    [...SERIES, 1000].slice(1).forEach((value, i) => {
      expect(neighboursInE96(value - 0.25)).toEqual([SERIES[i], value]);
      expect(neighboursInE96(SERIES[i])).toEqual([SERIES[i], value]);
    });
  });
  test.each([-9, -1, 0, 3, 7])('the same values in decade %i', (decade) => {
    expect(neighboursInE96(Number(`1.44e${decade}`))).toEqual([Number(`1.43e${decade}`), Number(`1.47e${decade}`)]);
    expect(neighboursInE96(Number(`9.9e${decade}`))).toEqual([Number(`9.76e${decade}`), Number(`1e${decade + 1}`)]);
  });
});

/** Cell functions of the bridge: how they read cells, what their tables hold, and the wording of the evidence. */
import fc from 'fast-check';
import { column, fault, number, table } from './call';

describe('BRIDGEARMS', () => {
  test('an equal bridge with its diagonals: arms, diagonals of the arms, and how far the measured ones are', () => {
    const found = table('BRIDGEARMS', 262.5, 262.5, 262.5, 262.5, 385, 350);
    expect(found[0]).toEqual(['Between', 'Resistance', 'Disagreement']);
    expect(found.slice(1).map(([name]) => name)).toEqual(['Arm 1', 'Arm 2', 'Arm 3', 'Arm 4', 'Corners 1 and 3', 'Corners 2 and 4']);
    found.slice(1).forEach(([, value]) => expect(value).toBeCloseTo(350, 10));
    expect(found[5][2]).toBeCloseTo(0.1, 12);
    expect(found[6][2]).toBeCloseTo(0, 12);
  });
  test('one diagonal may be left out; without either the third column is', () => {
    expect(table('BRIDGEARMS', 262.5, 262.5, 262.5, 262.5, null, 350, false)).toHaveLength(5);
    expect(table('BRIDGEARMS', 262.5, 262.5, 262.5, 262.5)[0]).toEqual(['Between', 'Resistance']);
  });
  test('its arms go into BRIDGEOUTPUT as they stand', () => {
    const arms = table('BRIDGEARMS', 262.6, 262.5, 262.5, 262.5, null, null, false).map(([, arm]) => arm);
    expect(number('BRIDGEOUTPUT', column(...arms))).toBe(number('BRIDGEOUTPUT', [arms]));
    expect(number('BRIDGEOUTPUT', column(...arms))).toBeGreaterThan(0);
  });
  test('errors name the argument', () => {
    expect(fault('BRIDGEARMS', 262, -1, 262, 262)).toBe('#VALUE!: r23: found -1; expected a number greater than 0');
    expect(fault('BRIDGEARMS', 100, 100, 300, 100)).toMatch(/^#VALUE!: corner resistances: found 300 between corners 3 and 4, not less/);
    expect(fault('BRIDGEOUTPUT', column(350, 350, 350))).toBe('#VALUE!: arms: found 3 cells; expected 4, arms 1 to 4 in order around the bridge');
    expect(fault('BRIDGEOUTPUT', column(350, 350, null, 350))).toBe('#VALUE!: arms row 3: found nothing; expected a resistance greater than 0, ohms');
  });
});

describe('shunt and trim', () => {
  test('350 Ω with 174 650 Ω: 0.5005005 mV/V', () => {
    expect(number('SHUNTOUTPUT', 350, 174650)).toBeCloseTo(0.5005005, 7);
    expect(number('SHUNTRESISTOR', 350, 0.5005005005005005)).toBeCloseTo(174650, 6);
  });
  test('an output that a short does not reach is #N/A', () => {
    expect(fault('SHUNTRESISTOR', 350, 500)).toMatch(/^#N\/A: no resistor makes 500 mV\/V/);
    expect(fault('ZEROTRIM', 600, 350)).toMatch(/^#N\/A: no resistor makes 600 mV\/V/);
  });
  test('a positive zero is lowered across 1 or 3, or in series with 2 or 4; a negative one the other way round', () => {
    expect(table('ZEROTRIM', 0.1, 350, null, false).map((row) => row.slice(0, 2))).toEqual([['across', '1 or 3'], ['in series', '2 or 4']]);
    expect(table('ZEROTRIM', -0.1, 350, null, false).map((row) => row.slice(0, 2))).toEqual([['across', '2 or 4'], ['in series', '1 or 3']]);
    expect(table('ZEROTRIM', 0.1, 350)[0]).toEqual(['Resistor', 'Arm', 'Ohms', 'Zero', 'E96 ohms', 'Zero with E96']);
  });
  test('a zero at the target is #N/A', () => {
    expect(fault('ZEROTRIM', 0.1, 350, 0.1)).toBe('#N/A: the zero is at the target, 0.1 mV/V: no resistor is needed');
  });
});

describe('ZEROSHIFT and SUMMINGOUTPUT', () => {
  test('the shift is signed by the direction of the output', () => {
    expect(number('ZEROSHIFT', 0.01, -0.03, 2)).toBeCloseTo(-0.02, 14);
    expect(number('ZEROSHIFT', 0.01, -0.03, -2)).toBeCloseTo(0.02, 14);
  });
  test('equal resistances give the mean; unequal ones the voltage of sources in parallel, by hand 4/2.5', () => {
    expect(number('SUMMINGOUTPUT', column(1, 2, 3))).toBeCloseTo(2, 14);
    // 1/350 and 2/350 and 2/700 sum to 4/350; conductances to 2.5/350.
    expect(number('SUMMINGOUTPUT', column(1, 2, 2), column(350, 350, 700))).toBeCloseTo(4 / 2.5, 14);
  });
  test('a box lies between its least and greatest cell, and a common factor of the resistances does not matter', () => {
    const cells = fc.array(fc.tuple(fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: 100, max: 2000, noNaN: true })), { minLength: 1, maxLength: 8 });
    fc.assert(fc.property(cells, (list) => {
      const outputs = list.map(([output]) => output);
      const found = number('SUMMINGOUTPUT', column(...outputs), column(...list.map(([, r]) => r)));
      expect(found).toBeGreaterThanOrEqual(Math.min(...outputs) - 1e-12);
      expect(found).toBeLessThanOrEqual(Math.max(...outputs) + 1e-12);
      expect(number('SUMMINGOUTPUT', column(...outputs), column(...list.map(([, r]) => 3 * r)))).toBeCloseTo(found, 12);
    }));
  });
  test('an output without a resistance, or with none above 0, is named', () => {
    expect(fault('SUMMINGOUTPUT', column(1, 2), column(350, null))).toBe('#VALUE!: outputs row 2: found 2 without a resistance; expected one beside it');
    expect(fault('SUMMINGOUTPUT', column(1, 2), column(350, 0))).toBe('#VALUE!: outputResistances row 2: found 0; expected a number greater than 0');
    expect(fault('SUMMINGOUTPUT', column(null, null))).toBe('#VALUE!: outputs: found nothing; expected an output for each cell');
  });
});

describe('BRIDGEEVIDENCE', () => {
  const set = column(350.056, 349.944, 350.056, 349.944); // a full bridge, x = 0.00016: 0.16 mV/V
  const evidence = (arms: number[][], zero: number, ratedOutput = 2, ...limits: (number | null)[]) =>
    table('BRIDGEEVIDENCE', arms, 350, zero, ratedOutput, ...[0, 1, 2, 3, 4].map((i) => limits[i] ?? null), false);

  test('a zero of +8 % with arms 1 and 3 high fits an overload in tension', () => {
    expect(evidence(set as number[][], 0.16)).toEqual([
      ['zero +8 % of RO, beyond ±2 %', 'fits a set, a lost trim, moisture or a bad joint'],
      ['arms 1 and 3 high, 2 and 4 low', 'fits an overload in tension that left a set'],
      ['cannot tell', expect.stringContaining('only a run tells')],
    ]);
  });
  test('with arms 2 and 4 high it fits compression; with a rated output of negative sign the two change places', () => {
    const mirrored = column(349.944, 350.056, 349.944, 350.056) as number[][];
    expect(evidence(mirrored, -0.16)[1]).toEqual(['arms 2 and 4 high, 1 and 3 low', 'fits an overload in compression that left a set']);
    expect(evidence(mirrored, -0.16, -2)[1][1]).toBe('fits an overload in tension that left a set');
  });
  test('a zero against its arms fits leads or corners the other way round, and the disagreement is told', () => {
    const found = evidence(set as number[][], -0.16);
    expect(found[1][1]).toMatch(/^fits corners numbered, or signal leads joined, the other way/);
    expect(found[2][0]).toBe('arms imply a zero of +0.16 mV/V, −16 % of RO from the one read');
  });
  test.each([
    ['alike', [350, 350.01, 349.99, 350], 0.001, /^arms alike within ±0.01 %/, /an ohmmeter shows/],
    ['one arm torn', [350, 350, 9000, 350], 400, /^arm 3 far above/, /torn gauge/],
    ['one arm shunted', [350, 330, 350, 350], 14, /^arm 2 far below/, /moisture, a leak or a short/],
    ['one arm high', [350.2, 350, 350, 350], 0.1428, /^arm 1 high alone/, /series/],
    ['one arm low', [350, 350, 350, 349.8], 0.1428, /^arm 4 low alone/, /across it/],
    ['neighbours', [350.2, 350.2, 350, 350], 0, /^arms 1 and 2 high, 3 and 4 low/, /fits no load/],
    ['no pattern', [350.2, 350.16, 350.1, 350], 0, /^arms differ by more than 0.01 %/, /scatter/],
  ])('%s', (_, arms, zero, found, fits) => {
    const line = evidence(column(...arms) as number[][], zero)[1];
    expect(line[0]).toMatch(found);
    expect(line[1]).toMatch(fits);
  });
  test('a mean away from nominal is told with its sign', () => {
    expect(evidence(column(360, 360, 360, 360) as number[][], 0)[2]).toEqual(['mean of the arms +2.86 % from nominal', expect.stringContaining('leads')]);
    expect(evidence(column(340, 340, 340, 340) as number[][], 0)[2][1]).toMatch(/moisture/);
  });
  test('each limit can be moved', () => {
    const arms = set as number[][];
    expect(evidence(arms, 0.16, 2, 0.1)[0][1]).toMatch(/a zero as made, or a small set \(within ±10 %\)/);
    expect(evidence(arms, 0.16, 2, null, 0.001)[1][0]).toMatch(/^arms alike within ±0.1 %/);
    expect(evidence(column(360, 360, 360, 360) as number[][], 0, 2, null, null, 0.05)).toHaveLength(3);
    expect(evidence(column(350, 330, 350, 350) as number[][], 14, 2, null, null, null, 0.1)[1][0]).toBe('arm 2 low alone');
    expect(evidence(arms, 0.1, 2, null, null, null, null, 0.01)).toHaveLength(4);
  });
  test('every line says "fits" and the last what cannot be told, whatever the bridge', () => {
    const arm = fc.oneof(fc.double({ min: 349.8, max: 350.2, noNaN: true }), fc.double({ min: 1, max: 1e5, noNaN: true }));
    fc.assert(fc.property(fc.array(arm, { minLength: 4, maxLength: 4 }), fc.double({ min: -5, max: 5, noNaN: true }), (arms, zero) => {
      const lines = evidence(column(...arms) as number[][], zero);
      for (const [, fits] of lines.slice(0, -1)) expect(fits).toMatch(/^fits /);
      expect(lines[lines.length - 1][0]).toBe('cannot tell');
    }));
  });
});

/** Global risks against JCGM 106, against closed forms, and against the same probabilities got two other ways. */
import fc from 'fast-check';
import { coverageFactor } from '../../src/metrology/coverage';
import { falseAcceptance } from '../../src/metrology/falseAcceptance';
import { globalRisk } from '../../src/metrology/globalRisk';
import type { Limits } from '../../src/metrology/limits';
import { expectDigits } from '../digits';
import { conformity } from '../published';
import { randomDraws } from '../randomDraws';

const { y0, u0, um, TL, TU, AL, AU, published, exact } = conformity.ex_resistors;
const resistors = globalRisk({ lower: TL, upper: TU }, { lower: AL, upper: AU }, { mean: y0, sd: u0, u: um });
const symmetric = (half: number): Limits => ({ lower: -half, upper: half });

describe('JCGM 106, 9.5.3, precision resistors', () => {
  const conforming = 1 - falseAcceptance(y0, { lower: TL, upper: TU }, u0);
  test('consumer’s risk 0.01, producer’s risk 0.07, conforming beforehand 0.90, as printed', () => {
    expect(resistors.consumer.toFixed(2)).toBe(published.RC.toFixed(2));
    expect(resistors.producer.toFixed(2)).toBe(published.RP.toFixed(2));
    expect(conforming.toFixed(2)).toBe(published.pc_prior.toFixed(2));
  });
  test('of a hundred, 84 are accepted and 16 rejected, counted in whole items as the text does', () => {
    const [conform, wronglyAccepted, wronglyRejected] = [conforming, resistors.consumer, resistors.producer].map((share) => Math.round(100 * share));
    expect(conform - wronglyRejected + wronglyAccepted).toBe(published.accepted);
    expect(100 - conform + wronglyRejected - wronglyAccepted).toBe(published.rejected);
  });
  test('0.0099 and 0.0690 recomputed, within 1e-13', () => {
    expect(Math.abs(resistors.consumer - exact.RC)).toBeLessThan(1e-13);
    expect(Math.abs(resistors.producer - exact.RP)).toBeLessThan(1e-13);
    expectDigits(conforming, exact.pc_prior, 12);
  });
});

test('JCGM 106, 9.5.6, process a sixth of the tolerance, no guard band: at Cm = 2 about 0.1 % and 1.5 %; at Cm = 10 about 0.04 % and 0.07 %', () => {
  const percent = (index: number) => {
    const { consumer, producer } = globalRisk(symmetric(0.5), symmetric(0.5), { mean: 0, sd: 1 / 6, u: 1 / (4 * index) });
    return [consumer, producer].map((risk) => (100 * risk).toPrecision(index === 2 ? 2 : 1));
  };
  expect(percent(2)).toEqual(['0.098', '1.5']); // printed as about 0.1 % and 1.5 %
  expect(percent(10)).toEqual(['0.04', '0.07']);
});

describe('limits ± 1 without guard band', () => {
  const sdOf = (inTolerance: number) => 1 / coverageFactor(inTolerance, Infinity);

  test.each(Object.entries<any>(conformity.global_PFA_vs_itp_sigma_ratio4.values))(
    'share in tolerance %s, measurement a quarter of the process: false acceptance and rejection (recomputed), within 1e-12', (share, risk) => {
      const sd = sdOf(Number(share));
      const { consumer, producer } = globalRisk(symmetric(1), symmetric(1), { mean: 0, sd, u: sd / 4 });
      const accepted = 1 - falseAcceptance(0, symmetric(1), Math.hypot(sd, sd / 4));
      expect(Math.abs(100 * consumer - risk.PFA_percent)).toBeLessThan(1e-10);
      expect(Math.abs(100 * producer - risk.PFR_percent)).toBeLessThan(1e-10);
      expect(Math.abs((100 * consumer) / accepted - risk.conditional_PFA_percent)).toBeLessThan(1e-10);
    });

  test.each(Object.entries<[number, number]>(conformity.global_risk_vs_TUR.values))('%s (recomputed), within 1e-12', (label, [accept, reject]) => {
    const [, share, ratio] = /itp=([\d.]+),TUR=([\d.]+)/.exec(label) as RegExpExecArray;
    const { consumer, producer } = globalRisk(symmetric(1), symmetric(1), { mean: 0, sd: sdOf(Number(share)), u: 1 / (2 * Number(ratio)) });
    expect(Math.abs(consumer - accept)).toBeLessThan(1e-12);
    expect(Math.abs(producer - reject)).toBeLessThan(1e-12);
  });

  test.each(Object.entries<[number, number]>(conformity.deaver.exact))('%s: limits at SL process deviations, acceptance at K of them (recomputed), within 1e-12', (label, [accept, reject]) => {
    const [, limit, ratio, , guard = '1'] = /SL=([\d.]+),TUR=([\d.]+)(,K=([\d.]+))?/.exec(label) as RegExpExecArray;
    const sd = 1 / Number(limit);
    const { consumer, producer } = globalRisk(symmetric(1), symmetric(Number(guard)), { mean: 0, sd, u: sd / Number(ratio) });
    expect(Math.abs(consumer - accept)).toBeLessThan(1e-12);
    expect(Math.abs(producer - reject)).toBeLessThan(1e-12);
  });

  test('printed by Deaver (1994), as quoted elsewhere: 0.008 and 0.015; 0.0025 within its last digit; 0.008 and 0.066', () => {
    const risk = (limit: number, ratio: number, guard: number) => globalRisk(symmetric(1), symmetric(guard), { mean: 0, sd: 1 / limit, u: 1 / limit / ratio });
    expect(risk(2, 4, 1).consumer.toFixed(3)).toBe('0.008');
    expect(risk(2, 4, 1).producer.toFixed(3)).toBe('0.015');
    expect(Math.abs(risk(2.5, 4, 1).consumer - 0.0025)).toBeLessThan(1e-4);
    expect(risk(2, 2, 0.91).consumer.toFixed(3)).toBe('0.008');
    expect(risk(2, 2, 0.91).producer.toFixed(3)).toBe('0.066');
  });
});

test('one limit at the mean: both risks are atan(u/sd)/2π (quadrant of a bivariate normal), to 12 digits from u/sd = 1e-6 to 1e6', () => {
  for (let power = -6; power <= 6; power += 0.5) {
    const u = 10 ** power;
    for (const limits of [{ upper: 5 }, { lower: 5 }]) {
      const { consumer, producer } = globalRisk(limits, limits, { mean: 5, sd: 1, u });
      expectDigits(consumer, Math.atan(u) / (2 * Math.PI), 12);
      expectDigits(producer, Math.atan(u) / (2 * Math.PI), 12);
    }
  }
});

/** Φ by its series about 0, φ(z)·(z + z³/3 + z⁵/15 + …) + ½: no library. */
function phi(z: number): number {
  if (z < -8) return 0;
  if (z > 8) return 1;
  let [term, sum] = [z, z];
  for (let n = 3; Math.abs(term) > 1e-18; n += 2) {
    term *= (z * z) / n;
    sum += term;
  }
  return 0.5 + (sum * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI);
}

/** Simpson's rule in steps of at most the given width. */
function simpson(f: (x: number) => number, from: number, to: number, width: number): number {
  if (!(to > from)) return 0;
  const steps = 2 * Math.ceil((to - from) / width / 2);
  const h = (to - from) / steps;
  let sum = f(from) + f(to);
  for (let i = 1; i < steps; i += 1) sum += (i % 2 === 1 ? 4 : 2) * f(from + i * h);
  return (sum * h) / 3;
}

/** The risks the other way round: over the measured value, with what is then known of the item (JCGM 106, A.4.3 and A.4.4). */
function byMeasuredValue(tolerance: [number, number], acceptance: [number, number], mean: number, sd: number, u: number) {
  const spread = Math.hypot(sd, u);
  const posterior = (sd * u) / spread;
  const density = (m: number) => Math.exp(-(((m - mean) / spread) ** 2) / 2) / (spread * Math.sqrt(2 * Math.PI));
  const inTolerance = (m: number) => {
    const best = mean + ((m - mean) * sd * sd) / (spread * spread);
    return phi((tolerance[1] - best) / posterior) - phi((tolerance[0] - best) / posterior);
  };
  const [first, last] = [mean - 9 * spread, mean + 9 * spread];
  const [low, high] = acceptance.map((limit) => Math.min(Math.max(limit, first), last));
  const width = posterior / 120;
  const wrong = (m: number) => density(m) * inTolerance(m);
  return {
    consumer: simpson((m) => density(m) * (1 - inTolerance(m)), low, high, width),
    producer: simpson(wrong, first, low, width) + simpson(wrong, high, last, width),
  };
}

test('integrated over the measured value instead, by Simpson’s rule with a series for Φ: the same within 1e-10', () => {
  const centre = fc.double({ min: -3, max: 3, noNaN: true });
  const halfWidth = fc.double({ min: 0.2, max: 4, noNaN: true });
  const ratio = fc.double({ min: -1.5, max: 1, noNaN: true }).map((power) => 10 ** power);
  fc.assert(fc.property(centre, halfWidth, fc.double({ min: -0.1, max: 0.3, noNaN: true }), ratio, (middle, half, guard, u) => {
    const tolerance: [number, number] = [middle - half, middle + half];
    const acceptance: [number, number] = [middle - half * (1 - guard), middle + half * (1 - guard)];
    const found = globalRisk({ lower: tolerance[0], upper: tolerance[1] }, { lower: acceptance[0], upper: acceptance[1] }, { mean: 0, sd: 1, u });
    const other = byMeasuredValue(tolerance, acceptance, 0, 1, u);
    expect(Math.abs(found.consumer - other.consumer)).toBeLessThan(1e-10);
    expect(Math.abs(found.producer - other.producer)).toBeLessThan(1e-10);
  }), { numRuns: 40 });
});

test('a million drawn items, measured and judged: both risks within four standard errors', () => {
  const random = randomDraws(7);
  const items = 1_000_000;
  let [consumer, producer] = [0, 0];
  for (let i = 0; i < items; i += 1) {
    const item = y0 + u0 * random.normal();
    const measured = item + um * random.normal();
    const conforms = item >= TL && item <= TU;
    const accepted = measured >= AL && measured <= AU;
    if (accepted && !conforms) consumer += 1;
    if (!accepted && conforms) producer += 1;
  }
  for (const [count, risk] of [[consumer, resistors.consumer], [producer, resistors.producer]]) {
    expect(Math.abs(count / items - risk)).toBeLessThan(4 * Math.sqrt((risk * (1 - risk)) / items));
  }
});

test('false acceptance and true acceptance add up to all that is accepted, false rejection and true rejection to the rest', () => {
  const number = fc.double({ min: -4, max: 4, noNaN: true });
  const width = fc.double({ min: 0.01, max: 6, noNaN: true });
  const scale = fc.double({ min: -4, max: 3, noNaN: true }).map((power) => 10 ** power);
  fc.assert(fc.property(number, width, number, width, scale, number, (lower, wide, acceptLower, acceptWide, u, mean) => {
    const tolerance = { lower, upper: lower + wide };
    const acceptance = { lower: acceptLower, upper: acceptLower + acceptWide };
    const { consumer, producer } = globalRisk(tolerance, acceptance, { mean, sd: 1, u });
    const outOfTolerance = falseAcceptance(mean, tolerance, 1);
    const rejected = falseAcceptance(mean, acceptance, Math.hypot(1, u));
    const trueAccept = 1 - outOfTolerance - producer;
    const trueReject = outOfTolerance - consumer;
    expect(Math.abs(consumer + trueAccept - (1 - rejected))).toBeLessThan(1e-12);
    expect(Math.abs(producer + trueReject - rejected)).toBeLessThan(1e-12);
    for (const probability of [consumer, producer, trueAccept, trueReject]) {
      expect(probability).toBeGreaterThan(-1e-14);
      expect(probability).toBeLessThan(1);
    }
  }));
});

test('a guard band lowers the consumer’s risk and raises the producer’s', () => {
  const at = (limit: number) => globalRisk(symmetric(1), symmetric(limit), { mean: 0.1, sd: 0.6, u: 0.1 });
  for (let limit = 0.5; limit < 1.4; limit += 0.1) {
    expect(at(limit).consumer).toBeLessThan(at(limit + 0.1).consumer);
    expect(at(limit).producer).toBeGreaterThan(at(limit + 0.1).producer);
  }
});

test('bad limits, spreads and uncertainties are refused by name', () => {
  const items = { mean: 0, sd: 1, u: 0.1 };
  expect(() => globalRisk({}, symmetric(1), items)).toThrow('lower, upper: found nothing in both');
  expect(() => globalRisk(symmetric(1), { lower: 1, upper: 0 }, items)).toThrow('acceptLower: found 1, with acceptUpper 0');
  expect(() => globalRisk(symmetric(1), symmetric(1), { ...items, sd: 0 })).toThrow('priorSd: found 0; expected a standard deviation above 0');
  expect(() => globalRisk(symmetric(1), symmetric(1), { ...items, u: -1 })).toThrow('u: found -1; expected a standard uncertainty above 0');
  expect(() => globalRisk(symmetric(1), symmetric(1), { ...items, u: 1e-300 })).toThrow('u: found 1e-300, with priorSd 1; expected two numbers of comparable size');
});

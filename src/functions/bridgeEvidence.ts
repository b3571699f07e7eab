import { type BridgeEvidence, bridgeEvidence as evidenceOf, EVIDENCE_LIMITS, type EvidenceLimits } from '../metrology/bridgeEvidence';
import type { Cell } from './cells';
import { isBlank, readNonZero, readNumber, readPositive } from './readCell';
import { readArms } from './readArms';
import { headed } from './table';

/**
 * What the numbers of a bridge at receipt fit, and what they cannot tell: a hint for the inspection, never a verdict.
 * @customfunction BRIDGEEVIDENCE
 * @group Condition of the bridge
 * @param {any[][]} arms Arms 1 to 4 in order around the bridge, ohms (see BRIDGEARMS); one column or row.
 * @param {any} nominal Arm resistance as specified, ohms.
 * @param {any} zero Output without load as received, mV/V.
 * @param {any} ratedOutput Rated output in tension, mV/V, with its sign. For a cell used in compression only, give its rated output with the sign turned.
 * @param {any} [zeroLimit] Zero up to which it is ordinary, fraction of rated output; 0.02 (common practice) if left out.
 * @param {any} [armLimit] Difference of arms that counts, fraction of their mean; 0.0001 (common practice) if left out. Not less than the ohmmeter resolves.
 * @param {any} [meanLimit] Difference of their mean from nominal that counts, fraction; 0.02 (common practice) if left out.
 * @param {any} [faultLimit] Difference of one arm from the others that no set explains, fraction; 0.02 (common practice) if left out.
 * @param {any} [disagreementLimit] Difference of the zero read from the zero of the arms that counts, fraction of rated output; 0.02 (common practice) if left out.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} Two columns of short lines: what was found, and what it fits. The last line says what it cannot tell.
 * @formula zero/RO; each arm and the mean of the arms; zero less the zero that the arms imply (BRIDGEOUTPUT)
 * @source common practice, no source
 * @note Arms and signs as for BRIDGEARMS and BRIDGEOUTPUT: arms 1 and 3 rise with tension. The lines are evidence. Insulation, connector, cable and a run under load decide.
 * @example =INDEX(PROVE.BRIDGEEVIDENCE({350.056;349.944;350.056;349.944},350,0.16,2,,,,,,FALSE),2,2) → "fits an overload in tension that left a set"
 */
export function bridgeEvidence(
  arms: any[][], nominal: any, zero: any, ratedOutput: any,
  zeroLimit?: any, armLimit?: any, meanLimit?: any, faultLimit?: any, disagreementLimit?: any, headers?: any,
): any[][] {
  const limit = (cell: Cell, argument: string, fallback: number) => (isBlank(cell) ? fallback : readPositive(cell, argument));
  const limits: EvidenceLimits = {
    zero: limit(zeroLimit, 'zeroLimit', EVIDENCE_LIMITS.zero),
    arm: limit(armLimit, 'armLimit', EVIDENCE_LIMITS.arm),
    mean: limit(meanLimit, 'meanLimit', EVIDENCE_LIMITS.mean),
    fault: limit(faultLimit, 'faultLimit', EVIDENCE_LIMITS.fault),
    disagreement: limit(disagreementLimit, 'disagreementLimit', EVIDENCE_LIMITS.disagreement),
  };
  const evidence = evidenceOf(
    readArms(arms), readPositive(nominal, 'nominal'), readNumber(zero, 'zero'), readNonZero(ratedOutput, 'ratedOutput'), limits,
  );
  const lines = [zeroLine(evidence, limits), armsLine(evidence, limits), ...meanLine(evidence, limits), ...disagreementLine(evidence, limits), UNTOLD];
  return headed(['Found', 'Fits'], lines, headers);
}

type Line = readonly [found: string, fits: string];

const UNTOLD: Line = [
  'cannot tell',
  'whether it was so from new; when or how it happened; whether a trim or repair was made before; moisture or a bent body behind the same numbers; span, linearity, fatigue: only a run tells',
];

function zeroLine({ zero }: BridgeEvidence, limits: EvidenceLimits): Line {
  const found = `zero ${percent(zero)} of RO`;
  if (Math.abs(zero) <= limits.zero) return [found, `fits a zero as made, or a small set (within ${percent(limits.zero, '±')})`];
  return [`${found}, beyond ${percent(limits.zero, '±')}`, 'fits a set, a lost trim, moisture or a bad joint'];
}

function armsLine(evidence: BridgeEvidence, limits: EvidenceLimits): Line {
  const { pattern, high, low } = evidence;
  switch (pattern) {
    case 'alike':
      return [`arms alike within ${percent(limits.arm, '±')} of their mean`, 'fits gauges without a set that an ohmmeter shows'];
    case 'one far off':
      return high.length > 0
        ? [`arm ${high[0]} far above the others`, `fits a torn gauge, a broken lead or a bad joint in arm ${high[0]}`]
        : [`arm ${low[0]} far below the others`, `fits moisture, a leak or a short across arm ${low[0]}`];
    case 'one off':
      return high.length > 0
        ? [`arm ${high[0]} high alone`, 'fits a resistor in series with it (a trim), a lead or a joint, or one gauge that is failing']
        : [`arm ${low[0]} low alone`, 'fits a resistor across it (a trim), or moisture or a leak there'];
    case 'as under load':
      return [`arms ${high.join(' and ')} high, ${low.join(' and ')} low`, loadLine(evidence, limits)];
    case 'neighbours':
      return [`arms ${high.join(' and ')} high, ${low.join(' and ')} low`, 'fits no load: two neighbours move together with temperature, leads or a lost bond'];
    case 'none':
      return [`arms differ by more than ${percent(limits.arm, '')} of their mean, in no pattern`, 'fits manufacturing scatter, trims, or several causes together'];
  }
}

/** Arms 1 and 3 against 2 and 4: which load leaves them so, if the zero goes with it. */
function loadLine({ zero, implied, disagreement }: BridgeEvidence, limits: EvidenceLimits): string {
  const expected = zero - disagreement; // of the arms, as a fraction of rated output
  if (Math.abs(zero) <= limits.zero) return 'fits scatter of the gauges, or a set that a trim took out of the zero';
  if (Math.sign(expected) !== Math.sign(zero)) {
    return `fits corners numbered, or signal leads joined, the other way: the arms imply a zero of ${signed(implied)} mV/V`;
  }
  return `fits an overload in ${zero > 0 ? 'tension' : 'compression'} that left a set`;
}

function meanLine({ mean }: BridgeEvidence, limits: EvidenceLimits): Line[] {
  if (Math.abs(mean) <= limits.mean) return [];
  const fits = mean > 0
    ? 'fits leads measured with the arms, other gauges than specified, or gauges strained all alike'
    : 'fits moisture or a leak across the whole bridge, something left connected, or other gauges than specified';
  return [[`mean of the arms ${percent(mean)} from nominal`, fits]];
}

function disagreementLine({ implied, disagreement }: BridgeEvidence, limits: EvidenceLimits): Line[] {
  if (Math.abs(disagreement) <= limits.disagreement) return [];
  return [[
    `arms imply a zero of ${signed(implied)} mV/V, ${percent(disagreement)} of RO from the one read`,
    'fits an ohmmeter too coarse for it, a leak to the body, corners numbered another way, or a load on the cell',
  ]];
}

/** A fraction as percent in three digits, with its sign or another mark. */
function percent(fraction: number, mark?: string): string {
  const size = `${short(Math.abs(fraction) * 100)} %`;
  return mark === undefined ? `${fraction < 0 ? '−' : '+'}${size}` : `${mark}${size}`;
}

function signed(value: number): string {
  return `${value < 0 ? '−' : '+'}${short(Math.abs(value))}`;
}

function short(value: number): string {
  return String(Number(value.toPrecision(3)));
}

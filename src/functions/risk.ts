import { falseAcceptance } from '../metrology/falseAcceptance';
import { globalRisk as globalRiskOf } from '../metrology/globalRisk';
import { readNumber } from './readCell';
import { readLimit, readTolerance } from './readLimits';
import { headed } from './table';

/**
 * Probability that an item is out of tolerance, given its measured value: the risk of accepting it.
 * @customfunction FALSEACCEPT
 * @group Uncertainty and decision
 * @param {any} value Measured value.
 * @param {any} [lower] Lower limit of the tolerance, units of the value; blank if there is none.
 * @param {any} [upper] Upper limit; blank if there is none. One of the two is needed.
 * @param {any} [u] Standard uncertainty of the value (U/k), same units, above 0; needed.
 * @returns {any} Probability, 0 to 1; 1 less this is the probability of conformity.
 * @formula Φ((lower − value)/u) + Φ((value − upper)/u)
 * @source JCGM 106, clause 7
 * @note For a normal distribution about the measured value; what was known of the item beforehand is left out (see GLOBALRISK).
 * @example =PROVE.FALSEACCEPT(-5.47,"",-5.4,0.05) → 0.0807566592337712
 */
export function falseAccept(value: any, lower?: any, upper?: any, u?: any): any {
  return falseAcceptance(readNumber(value, 'value'), readTolerance(lower, upper), readNumber(u, 'u'));
}

/**
 * Global risks of an inspection: the shares of all items that it accepts, or rejects, wrongly.
 * @customfunction GLOBALRISK
 * @group Uncertainty and decision
 * @param {any} [lower] Lower limit of the tolerance; blank if there is none.
 * @param {any} [upper] Upper limit; blank if there is none. One of the two is needed.
 * @param {any} [acceptLower] Lower acceptance limit for measured values; the limit of the tolerance if blank.
 * @param {any} [acceptUpper] Upper acceptance limit; the limit of the tolerance if blank.
 * @param {any} [priorMean] Mean of the items as they come; needed.
 * @param {any} [priorSd] Standard deviation of the items as they come, above 0; needed.
 * @param {any} [u] Standard uncertainty of the measurement, above 0; needed.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} Consumer's risk (out of tolerance and accepted) and producer's risk (in tolerance and rejected) side by side; probabilities among all items.
 * @formula consumer = ∫ out of tolerance of g(y)·P(accepted | y) dy; producer = ∫ in tolerance of g(y)·P(rejected | y) dy
 * @source JCGM 106, 9.5; the example is that of 9.5.3
 * @note Items and measurement are taken as normal. Integrated by Gauss–Legendre rules on panels that meet at the limits, to better than 1e-10.
 * @example =PROVE.GLOBALRISK(1499.8,1500.2,1499.82,1500.18,1500,0.12,0.04,FALSE) → {0.009878291521772138,0.06902651046145071}
 */
export function globalRisk(
  lower?: any, upper?: any, acceptLower?: any, acceptUpper?: any, priorMean?: any, priorSd?: any, u?: any, headers?: any,
): any[][] {
  const tolerance = readTolerance(lower, upper);
  const acceptance = {
    lower: readLimit(acceptLower, 'acceptLower') ?? tolerance.lower,
    upper: readLimit(acceptUpper, 'acceptUpper') ?? tolerance.upper,
  };
  const items = { mean: readNumber(priorMean, 'priorMean'), sd: readNumber(priorSd, 'priorSd') };
  const { consumer, producer } = globalRiskOf(tolerance, acceptance, { ...items, u: readNumber(u, 'u') });
  return headed(["Consumer's risk", "Producer's risk"], [[consumer, producer]], headers);
}

/**
 * Load cell calibration of the National Institute of Standards and Technology: 40 readings, 2 runs of 20 loads.
 * Source: NIST/ITL Statistical Reference Datasets, "Pontius", https://www.itl.nist.gov/div898/strd/lls/data/Pontius.shtml
 * [load, deflection], as published: the first 20 are run 1.
 */
export const PONTIUS_READINGS: readonly (readonly [load: number, deflection: number])[] = [
  [150000, 0.11019], [300000, 0.21956], [450000, 0.32949], [600000, 0.43899], [750000, 0.54803],
  [900000, 0.65694], [1050000, 0.76562], [1200000, 0.87487], [1350000, 0.98292], [1500000, 1.09146],
  [1650000, 1.20001], [1800000, 1.30822], [1950000, 1.41599], [2100000, 1.52399], [2250000, 1.63194],
  [2400000, 1.73947], [2550000, 1.84646], [2700000, 1.95392], [2850000, 2.06128], [3000000, 2.16844],
  [150000, 0.11052], [300000, 0.22018], [450000, 0.32939], [600000, 0.43886], [750000, 0.54798],
  [900000, 0.65739], [1050000, 0.76596], [1200000, 0.87474], [1350000, 0.98300], [1500000, 1.09150],
  [1650000, 1.20004], [1800000, 1.30818], [1950000, 1.41613], [2100000, 1.52408], [2250000, 1.63159],
  [2400000, 1.73965], [2550000, 1.84696], [2700000, 1.95445], [2850000, 2.06177], [3000000, 2.16829],
];

/** Certified values of the quadratic fit, to the 15 digits that NIST publishes. */
export const PONTIUS_CERTIFIED = {
  coefficients: [0.673565789473684e-3, 0.732059160401003e-6, -0.316081871345029e-14],
  standardErrors: [0.107938612033077e-3, 0.157817399981659e-9, 0.486652849992036e-16],
  residualSd: 0.205177424076185e-3,
  rSquared: 0.999999900178537,
};

/**
 * Figures of NIST/SEMATECH e-Handbook 4.6.1 for the same readings, printed to about six digits.
 * The F of the quadratic and the limits of the load are quoted from memory and agree with exact recomputation.
 */
export const PONTIUS_HANDBOOK = {
  residualSd: [0.0021712694, 0.0002051768],
  lackOfFitF: [214.7464, 0.8107],
  newDeflection: 1.239722,
  loadLimits: [1_705_106, 1_704_513, 1_705_698],
};

/** 2.4·s with the certified s, times the mean of load/deflection: exact recomputation, load units. */
export const PONTIUS_LIMIT_FACTOR = 676.548996714;

import * as appliedForce from './appliedForce';
import * as bridge from './bridge';
import * as bridgeEvidence from './bridgeEvidence';
import * as creep from './creep';
import * as decision from './decision';
import * as degree from './degree';
import * as drift from './drift';
import * as fit from './fit';
import * as forceClass from './forceClass';
import * as forceLimits from './forceLimits';
import * as forceProving from './forceProving';
import * as growth from './growth';
import * as interval from './interval';
import * as linearity from './linearity';
import * as loading from './loading';
import * as net from './net';
import * as response from './response';
import * as risk from './risk';
import * as stability from './stability';
import * as statics from './statics';
import * as teds from './teds';
import * as temperature from './temperature';
import * as trim from './trim';
import * as uncertainty from './uncertainty';
import * as unit from './unit';

/** A cell function as written: arguments as a host hands them over, a result or a thrown fault. */
export type CellFunction = (...args: any[]) => unknown;

/** Every cell function by its id, the name after `PROVE.`. */
export const catalogue: Readonly<Record<string, CellFunction>> = {
  NET: net.net,
  TEMPEFFECT: temperature.tempEffect,
  TEMPREPORT: temperature.tempReport,
  TEMPCORRECT: temperature.tempCorrect,
  ELASTICTEMP: temperature.elasticTemp,
  WEIGHTFORCE: appliedForce.weightForce,
  GRAVITY: appliedForce.gravity,
  AIRDENSITY: appliedForce.airDensity,
  UNIT: unit.unit,
  FIT: fit.fit,
  FITREPORT: fit.fitReport,
  RESIDUALS: fit.residuals,
  FITDEGREE: degree.fitDegree,
  DEGREETABLE: degree.degreeTable,
  RESPONSE: response.response,
  FORCE: response.force,
  FORCETABLE: response.forceTable,
  FORCELIMITS: forceLimits.forceLimits,
  LIMITFACTOR: loading.limitFactor,
  LOWERLIMIT: loading.lowerLimit,
  LOADRANGE: loading.loadRange,
  SENSITIVITY: statics.sensitivity,
  NONLINEARITY: linearity.nonlinearity,
  DEVIATIONS: linearity.deviations,
  HYSTERESIS: statics.hysteresis,
  REPEATABILITY: statics.repeatability,
  ZERORETURN: statics.zeroReturn,
  ZEROBALANCE: statics.zeroBalance,
  ERRORBAND: linearity.errorBand,
  COMBINEDERROR: linearity.combinedError,
  CREEP: creep.creep,
  ASYMMETRY: statics.asymmetry,
  FORCEPROVING: forceProving.forceProving,
  FORCECLASS: forceClass.forceClass,
  FORCECLASSRANGE: forceClass.forceClassRange,
  FORCEUNCERTAINTY: forceProving.forceUncertainty,
  FORCEUNCERTAINTYFIT: forceProving.forceUncertaintyFit,
  STANDARDU: uncertainty.standardU,
  UNCERTAINTY: uncertainty.uncertainty,
  DECISION: decision.decision,
  FALSEACCEPT: risk.falseAccept,
  GLOBALRISK: risk.globalRisk,
  TESTRATIO: decision.testRatio,
  ENRATIO: decision.enRatio,
  BRIDGEARMS: bridge.bridgeArms,
  BRIDGEOUTPUT: bridge.bridgeOutput,
  BRIDGEEVIDENCE: bridgeEvidence.bridgeEvidence,
  SHUNTOUTPUT: trim.shuntOutput,
  SHUNTRESISTOR: trim.shuntResistor,
  ZEROTRIM: trim.zeroTrim,
  ZEROSHIFT: bridge.zeroShift,
  SUMMINGOUTPUT: bridge.summingOutput,
  SHIFT: stability.shift,
  STABILITY: stability.stability,
  DRIFT: drift.drift,
  DRIFTINTERVAL: growth.driftInterval,
  INTERVAL: interval.interval,
  INTERVALTEST: interval.intervalTest,
  TEDSENCODE: teds.tedsEncode,
  TEDSDECODE: teds.tedsDecode,
  TEDSPAGES: teds.tedsPages,
  TEDSDATA: teds.tedsData,
};

import { calendarDate } from './calendarDate';
import { choice } from './choice';
import { type Field, steering } from './field';
import { letters } from './letters';
import { MEASURANDS } from './measurands';
import { constantRatio, constantStep } from './quantised';
import { single } from './single';
import { wholeNumber } from './wholeNumber';

/**
 * Tolerance of the response time, which makes its step a factor 1.292 and its end 7.9 s. From memory of IEEE 1451.4 (1E-6 s
 * to 7.9 s, ±15 %): no published dump has a code other than 0 here.
 */
const RESPONSE_TOLERANCE = 0.146;

const CHECKSUMS = 'these are pages of memory with a checksum in front of each: take them through TEDSDATA first';

const excitation = constantStep(9, 0.1, 0.1);

/**
 * Template 33, bridge sensor, from the selector behind the basic TEDS to the end. Electrical values in full precision
 * (case 2) only; the shorter codings of cases 0 and 1 could not be checked against anything published.
 * Source: IEEE 1451.4; offsets and lengths as a published memory dump has them.
 */
export const BRIDGE_SENSOR_FIELDS: readonly Field[] = [
  steering('Selector', 2, 0, `no IEEE template follows, or ${CHECKSUMS}`),
  steering('TemplateID', 8, 33, `other templates are not read; or ${CHECKSUMS}`),
  { name: 'PhysicalMeasurand', type: choice(6, MEASURANDS) },
  { name: 'MinPhysVal', type: single, unit: 'measurand' },
  { name: 'MaxPhysVal', type: single, unit: 'measurand' },
  steering('FullScaleElecPrecision', 2, 2, 'electrical values of another precision are not read'),
  { name: 'MinElecVal', type: single, unit: 'V/V' },
  { name: 'MaxElecVal', type: single, unit: 'V/V' },
  { name: 'BridgeType', type: choice(2, ['quarter', 'half', 'full']) },
  { name: 'SensorImped', type: constantStep(18, 1, 0.1), unit: 'ohm' },
  { name: 'RespTime', type: constantRatio(6, 1e-6, RESPONSE_TOLERANCE), unit: 's' },
  { name: 'ExciteAmplNom', type: excitation, unit: 'V' },
  { name: 'ExciteAmplMin', type: excitation, unit: 'V' },
  { name: 'ExciteAmplMax', type: excitation, unit: 'V' },
  { name: 'CalDate', type: calendarDate },
  { name: 'CalInitials', type: letters(3, '_') },
  { name: 'CalPeriod', type: wholeNumber(12, 0, 4_095), unit: 'days' },
  { name: 'MeasID', type: wholeNumber(11, 0, 2_047) },
  steering('Selector_end', 2, 3, 'a further template follows, which is not read'),
  steering('ExtendedEndSelector', 1, 1, 'free text follows, which is not read'),
];

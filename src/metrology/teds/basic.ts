import type { Field } from './field';
import { letters } from './letters';
import { wholeNumber } from './wholeNumber';

/** Basic TEDS, 64 bits: what the transducer is. Source: IEEE 1451.4; lengths and ranges as in public tutorials on it. */
export const BASIC_FIELDS: readonly Field[] = [
  { name: 'ManufacturerID', type: wholeNumber(14, 17, 16_381) },
  { name: 'ModelNumber', type: wholeNumber(15, 0, 32_767) },
  { name: 'VersionLetter', type: letters(1, 'Z') },
  { name: 'VersionNumber', type: wholeNumber(6, 0, 63) },
  { name: 'SerialNumber', type: wholeNumber(24, 0, 16_777_215) },
];

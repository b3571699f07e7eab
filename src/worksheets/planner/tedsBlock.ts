import { address, type Formula, formula } from '../planBuilder';
import type { Desk } from './desk';

/** Columns: words, field, value, unit. The functions read field, value and unit. */
const [WORDS, FIELD, VALUE, UNIT] = [1, 3, 4, 5];
const HEX_ROWS = 2;

/** Cells of the sheet that fields are taken from. */
export interface TedsCells {
  readonly quantity: 'force' | 'torque';
  readonly capacity: string;
  /** Output at capacity, mV/V. */
  readonly output: string;
  readonly date: string;
}

interface Field {
  readonly field: string;
  readonly words: string;
  readonly value?: string | number | Formula;
  readonly unit?: string;
  readonly format?: string;
}

/**
 * The content of an electronic data sheet from the results of the run: basic TEDS and template 33, what the sheet knows filled
 * in, the rest to be typed; and the bytes for the memory. Gives the next free row.
 */
export function tedsBlock({ sheet, width, item }: Desk, row: number, cells: TedsCells): number {
  const fields = fieldsOf(cells, item.unit);
  const first = row + 3;
  const last = first + fields.length - 1;
  const range = (from: number, to = from) => `${address(from, first)}:${address(to, last)}`;
  sheet.wide(1, row, width, 'heading', 'TEDS content');
  sheet.wide(1, row + 1, width, 'note', 'Basic TEDS and template 33 of IEEE 1451.4. Fill in the yellow cells; then the bytes stand below. Electrical values are in V/V. Read the memory back and compare before the transducer leaves.');
  sheet.acrossTo(width, 1, row + 2, 'header', ['What', undefined, 'Field', 'Value', 'Unit']);
  fields.forEach(({ field, words, value, unit = '', format }, i) => {
    const at = first + i;
    sheet.put(WORDS, at, 'label', words).put(FIELD, at, 'reference', field).put(VALUE, at, typeof value === 'object' ? 'result' : 'input', value, format).put(UNIT, at, 'aside', unit);
  });
  const needed = fields.filter(({ field }) => field !== 'VersionLetter' && field !== 'CalInitials').length;
  const hex = address(VALUE, last + 1);
  const missing = `COUNTA(${range(VALUE)})-COUNTIF(${range(VALUE)},"")<${needed}`;
  sheet.put(WORDS, last + 1, 'label', 'Bytes, hexadecimal').put(VALUE, last + 1, 'result', formula(`IF(${missing},"",PROVE.TEDSENCODE(${range(FIELD, UNIT)}))`));
  sheet.put(WORDS, last + 2, 'label', 'Pages with checksum').spill(VALUE, last + 2, 1, HEX_ROWS, formula(`IF(${hex}="","",PROVE.TEDSPAGES(${hex}))`));
  sheet.called('teds_fields', range(FIELD, UNIT)).called('teds_bytes', hex).called('teds_pages', `${address(VALUE, last + 2)}:${address(VALUE, last + 1 + HEX_ROWS)}`);
  return last + 2 + HEX_ROWS + 1;
}

function fieldsOf({ quantity, capacity, output, date }: TedsCells, unit: string): readonly Field[] {
  const [measurand, si] = quantity === 'force' ? ['N', 'N'] : ['Nm', 'N·m'];
  return [
    { field: 'ManufacturerID', words: 'Maker, by the register' }, { field: 'ModelNumber', words: 'Model' }, { field: 'VersionLetter', words: 'Version, letter' },
    { field: 'VersionNumber', words: 'Version, number', value: 0 }, { field: 'SerialNumber', words: 'Serial number' },
    { field: 'PhysicalMeasurand', words: 'Measurand', value: measurand }, { field: 'MinPhysVal', words: 'Least load', value: 0, unit: measurand },
    { field: 'MaxPhysVal', words: 'Capacity', value: formula(`PROVE.UNIT(${capacity},"${unit}","${si}")`), unit: measurand, format: '0.###' },
    { field: 'MinElecVal', words: 'Output at the least load', value: 0, unit: 'V/V' },
    { field: 'MaxElecVal', words: 'Output at capacity', value: formula(`IF(${output}="","",ABS(${output})/1000)`), unit: 'V/V', format: '0.000000000' },
    { field: 'BridgeType', words: 'Bridge', value: 'full' }, { field: 'SensorImped', words: 'Impedance', value: 350, unit: 'ohm' },
    { field: 'RespTime', words: 'Response time', value: 0.000001, unit: 's', format: '0.0E+00' },
    { field: 'ExciteAmplNom', words: 'Excitation, nominal', value: 10, unit: 'V' }, { field: 'ExciteAmplMin', words: 'Excitation, least', value: 1, unit: 'V' },
    { field: 'ExciteAmplMax', words: 'Excitation, greatest', value: 15, unit: 'V' },
    { field: 'CalDate', words: 'Date of calibration', value: formula(`IF(${date}="","",${date})`), format: 'yyyy-mm-dd' },
    { field: 'CalInitials', words: 'Initials, three letters' }, { field: 'CalPeriod', words: 'Next calibration after', value: 365, unit: 'days' }, { field: 'MeasID', words: 'Measuring location', value: 0 },
  ];
}

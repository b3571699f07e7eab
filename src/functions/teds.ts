import { decodeTeds } from '../metrology/teds/decode';
import { encodeTeds, type TedsEntry } from '../metrology/teds/encode';
import { fromPages, pagesFor, toPages } from '../metrology/teds/pages';
import type { Cell, Cells } from './cells';
import { CellFault } from './faults';
import { describe, isBlank, readWhole, sizeOf } from './readCell';
import { hexText, readHex } from './readHex';
import { headed } from './table';

const HEADER = ['Field', 'Value', 'Unit'] as const;
const MOST_PAGES = 128;

/**
 * Content of a transducer's electronic data sheet (basic TEDS and template 33, bridge sensor) as hex text.
 * @customfunction TEDSENCODE
 * @group Electronic data sheet
 * @param {any[][]} fields Two columns: the name of the field as TEDSDECODE shows it, and its value, in any order of rows; a third column with units, if there, is checked. A first row that begins with "Field" is a heading.
 * @returns {any} Hex text of 40 bytes, without page checksums.
 * @formula 64 bits of basic TEDS, then template 33 with electrical values in full precision (case 2); lowest bit first
 * @formula code = (value − start)/step to the nearest whole: SensorImped from 1 ohm in steps of 0.1 ohm; ExciteAmplNom, ExciteAmplMin, ExciteAmplMax from 0.1 V in steps of 0.1 V
 * @formula RespTime: code = ln(value/1E-6)/ln 1.292 to the nearest whole, up to 7.9 s: steps of a factor 1.292
 * @formula MinPhysVal, MaxPhysVal, MinElecVal, MaxElecVal: IEEE single precision, within 6E-8 of the value
 * @source IEEE 1451.4, as far as a published memory dump bears it out; the step of RespTime from memory
 * @note Electrical values are in V/V: mV/V divided by 1000. A value outside its field's range is an error, never cut. CalDate is a date of the 1900 system or text like 2026-11-25. "not stated" is allowed where the standard keeps all ones for it (from memory). VersionLetter and CalInitials may be blank, but their rows must stand there.
 * @example =LEFT(PROVE.TEDSENCODE({"ManufacturerID",31;"ModelNumber",393;"VersionLetter","";"VersionNumber",0;"SerialNumber",0;"PhysicalMeasurand","m/s2";"MinPhysVal",0;"MaxPhysVal",0;"MinElecVal",0;"MaxElecVal",0;"BridgeType","half";"SensorImped",40;"RespTime",0.000001;"ExciteAmplNom",2.5;"ExciteAmplMin",1;"ExciteAmplMax",6;"CalDate","2099-12-31";"CalInitials","";"CalPeriod",0;"MeasID",0}),20) → "1F40620000000000841C"
 */
export function tedsEncode(fields: any[][]): any {
  return hexText(encodeTeds(readEntries(fields)));
}

/**
 * Fields of a transducer's electronic data sheet (basic TEDS and template 33, bridge sensor) read from hex text.
 * @customfunction TEDSDECODE
 * @group Electronic data sheet
 * @param {any[][]} hex The data as hex text without page checksums, in one cell or several; blanks, line breaks, small letters and "0x" are allowed. Behind the 40 bytes only 00 and FF may stand.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} Field, value and unit, a row for each of the 20 fields; TEDSENCODE takes this table as it is.
 * @formula SensorImped = 1 + 0.1·code ohm; excitation = 0.1 + 0.1·code V; RespTime = 1E-6·1.292^code s; CalDate = 1998-01-01 + code days
 * @source IEEE 1451.4, as far as a published memory dump bears it out; the step of RespTime from memory
 * @note Data with other templates behind, with electrical values in another precision, or with free text are an error that says so. The units of PhysicalMeasurand are those of a public list, not compared with the standard.
 * @example =INDEX(PROVE.TEDSDECODE("1F40620000000000841C000000000000000002000000000000006418008021C10EC34800000000E0",FALSE),12,2) → 40
 */
export function tedsDecode(hex: any[][], headers?: any): any[][] {
  return headed(HEADER, decodeTeds(readHex(hex, 'hex')).map(({ name, value, unit }) => [name, value, unit]), headers);
}

/**
 * Pages of memory for the data of an electronic data sheet: 31 bytes each behind their checksum.
 * @customfunction TEDSPAGES
 * @group Electronic data sheet
 * @param {any[][]} hex The data as hex text, such as TEDSENCODE gives.
 * @param {any} [pages] Pages to fill, those behind the data with zeros; as many as the data need if left out.
 * @returns {any[][]} Hex text of one page of 32 bytes a row, from the first.
 * @formula checksum = −(sum of the 31 bytes behind it) mod 256, so that the 32 bytes of a page add up to a multiple of 256
 * @source Rule found in a published memory dump, met by both of its pages
 * @note The rule holds for the memory of that dump; look into the data sheet of the memory at hand before writing it.
 * @example =PROVE.TEDSPAGES("0102 FE") → {"FF0102FE00000000000000000000000000000000000000000000000000000000"}
 */
export function tedsPages(hex: any[][], pages?: any): any[][] {
  const data = readHex(hex, 'hex');
  const needed = pagesFor(data.length);
  if (needed > MOST_PAGES) throw new CellFault('#VALUE!', `hex: found ${data.length} bytes, which need ${needed} pages; expected at most ${MOST_PAGES}`);
  const count = isBlank(pages) ? needed : readWhole(pages, 'pages', needed, MOST_PAGES);
  return toPages(data, count).map((page) => [hexText(page)]);
}

/**
 * Data of an electronic data sheet from pages of memory, each page's checksum verified and taken off.
 * @customfunction TEDSDATA
 * @group Electronic data sheet
 * @param {any[][]} pages Pages of 32 bytes as hex text, the checksum first, in one cell or several.
 * @returns {any} Hex text of the data, 31 bytes a page, for TEDSDECODE.
 * @formula verified: the 32 bytes of each page add up to a multiple of 256
 * @source Rule found in a published memory dump, met by both of its pages
 * @note A wrong checksum is an error that names the page.
 * @example =LEFT(PROVE.TEDSDATA("FF0102FE00000000000000000000000000000000000000000000000000000000"),8) → "0102FE00"
 */
export function tedsData(pages: any[][]): any {
  return hexText(fromPages(readHex(pages, 'pages')));
}

function readEntries(fields: Cells): TedsEntry[] {
  const width = fields[0].length;
  if (width !== 2 && width !== 3) {
    throw new CellFault('#VALUE!', `fields: found ${sizeOf(fields)}; expected two columns, field and value, or three with the unit`);
  }
  return fields.flatMap((line, row) => {
    const place = `fields row ${row + 1}`;
    const [name, value, unit] = line;
    if (row === 0 && typeof name === 'string' && name.trim().toLowerCase() === 'field') return [];
    if (isBlank(name) && isBlank(value)) return [];
    return [{ name: textOf(name, place, 'the name of a field'), value: valueOf(value), unit: textOf(unit ?? '', place, 'a unit').trim(), place, found: describe(value) }];
  });
}

function textOf(cell: Cell, place: string, what: string): string {
  if (typeof cell === 'string' && (cell !== '' || what === 'a unit')) return cell;
  throw new CellFault('#VALUE!', `${place}: found ${describe(cell)}; expected ${what}`);
}

/** What a field may be asked to take; nothing else in a cell is a value of any field. */
function valueOf(cell: Cell): number | string | undefined {
  if (isBlank(cell)) return '';
  if (typeof cell === 'number') return Number.isFinite(cell) ? cell : undefined;
  return typeof cell === 'string' ? cell : undefined;
}

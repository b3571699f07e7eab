import { columnNumber } from '../planBuilder';
import type { ReadCell, ReadSheet } from '../readSheet';
import { type Area, areaOf, holds } from '../area';
import type { RecordLine } from './record';

/** Names of cells that readings, and what they are read at, are typed into. */
const READINGS = /^(readings|typed|forces|times|temperatures)_|^(resistances|zero_now|zero_then|shunt_resistor|shunt_change|output_resistances|masses|box_read_zero|box_read_loaded|programmed_load|programmed_reading)$/i;

/** Names of cells that results are judged by. */
const LIMITS = /^limits?_|^tolerances?_|^decision_rule|^(allowed_change|lower_limit|upper_limit|probability|target|least_interval|greatest_interval|class_wanted)$|^job_(tolerance|class|decision_rule|least_interval|greatest_interval|temperature_least|temperature_greatest)$/i;

/** Names of cells with a verdict: the constants that their formulas refer to judge, unless a name says that they are something else. */
const VERDICTS = /^verdicts?_|^decision(_(?!rule)|$)|^programmed_verdict$/i;

const REFERENCE = /(?<![\w.!'])\$?[A-Z]{1,3}\$?\d{1,7}(?::\$?[A-Z]{1,3}\$?\d{1,7})?(?![\w.(!])/gi;

/** Tells which part a constant of a sheet plays, by the names of the sheet and what its verdicts refer to. */
export function partsOf(sheet: ReadSheet): (cell: ReadCell) => Exclude<RecordLine['part'], 'formula'> {
  const named = (pattern: RegExp): Area[] => sheet.names.filter(({ name }) => pattern.test(name)).flatMap(({ range }) => areaOf(range) ?? []);
  const readings = named(READINGS);
  const verdicts = named(VERDICTS);
  const judged = sheet.cells.filter((cell) => cell.formula !== undefined && isIn(verdicts, cell)).flatMap(({ formula }) => referencesOf(formula as string));
  const limits = named(LIMITS);
  const others = new Set(sheet.names.filter(({ name }) => !LIMITS.test(name)).map(({ range }) => range.replaceAll('$', '')));
  return (cell) => {
    if (isIn(readings, cell)) return 'reading';
    const judges = typeof cell.value === 'number' && !others.has(cell.at) && isIn(judged, cell);
    return judges || isIn(limits, cell) ? 'limit' : 'entry';
  };
}

function isIn(areas: readonly Area[], { at }: ReadCell): boolean {
  const [, letters, digits] = /^([A-Z]+)(\d+)$/.exec(at) ?? [];
  const place = { column: columnNumber(letters ?? ''), row: Number(digits) };
  return areas.some((area) => holds(area, place));
}

/** The areas of its own sheet that a formula refers to. */
function referencesOf(formula: string): Area[] {
  const code = formula.replace(/"(?:[^"]|"")*"/g, '""');
  return [...code.matchAll(REFERENCE)].flatMap(([range]) => areaOf(range) ?? []);
}

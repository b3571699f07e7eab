import { address, formula } from '../planBuilder';
import type { InspectionTemplate } from '../templateSchema';
import { type Desk, PERCENT, RESULT } from './desk';
import { highlightVerdicts, verdictText } from './resultTable';

/** Corners of the bridge: neighbours, where three arms lie beside one, and opposite ones, where two lie beside two. */
const CORNERS = [['1–2', 'neighbours', 0.75], ['2–3', 'neighbours', 0.75], ['3–4', 'neighbours', 0.75], ['4–1', 'neighbours', 0.75], ['1–3', 'opposite', 1], ['2–4', 'opposite', 1]] as const;
const NEIGHBOURS = 4;
const INSULATIONS = ['bridge to body', 'bridge to shield'];
/** Resistances between corners, and of the insulation, that are to be measured. */
export const RESISTANCES = CORNERS.length + INSULATIONS.length;

/** Columns of the table of resistances. */
const MEASURED = 4;
const EXPECTED = 6;
const DEVIATION = 7;
const LIMIT = 8;
const VERDICT = 9;
const ARM = 10;

export const OHMS = '0.000';

/** Where the resistances stand. */
export interface Resistances {
  readonly nextRow: number;
  readonly measured: string;
  readonly verdicts: string;
  /** Between corners 1 and 2, 2 and 3, 3 and 4, 4 and 1, as one range. */
  readonly neighbours: string;
  /** The same one by one. */
  readonly each: readonly string[];
  /** Between corners 1 and 3. */
  readonly input: string;
  /** Between corners 2 and 4. */
  readonly output: string;
  /** The arms between neighbours, as one range, and each by its name. */
  readonly arms: string;
  readonly armsById: ReadonlyMap<string, string>;
}

/** True while an arm cannot be told. */
export function withoutArms({ neighbours }: Pick<Resistances, 'neighbours'>): string {
  return `COUNT(${neighbours})<${NEIGHBOURS}`;
}

/** Resistances between corners, against an ideal bridge, with the arms that they give, and of the insulation, against the least allowed. */
export function resistanceTable({ sheet, width }: Desk, row: number, { bridge }: InspectionTemplate, insulation: number, resistance: string): Resistances {
  sheet.wide(1, row, width, 'heading', 'Resistances');
  sheet.wide(1, row + 1, width, 'note', 'Excitation on corners 1 (+) and 3 (−), signal on 4 (+) and 2 (−). Nothing else connected; leads, and resistors in them, taken off.');
  sheet.acrossTo(width, 1, row + 2, 'header', ['Between', undefined, undefined, 'Measured', 'Unit', 'Expected', 'Deviation', 'Limit', 'Verdict', 'Arm, Ω']);
  const first = row + 3;
  CORNERS.forEach(([corners, kind, share], i) => {
    const at = first + i;
    const [measured, deviation] = [address(MEASURED, at), address(DEVIATION, at)];
    sheet.put(1, at, 'label', `Corners ${corners}, ${kind}`).put(MEASURED, at, 'input', undefined, '0.00').put(5, at, 'aside', 'Ω');
    sheet.put(EXPECTED, at, 'reference', formula(`${resistance}*${share}`), '0.00');
    sheet.put(DEVIATION, at, 'result', formula(`IF(${measured}="","",${measured}/${address(EXPECTED, at)}-1)`), PERCENT);
    sheet.put(LIMIT, at, 'input', bridge.tolerance, PERCENT).put(VERDICT, at, 'verdict', formula(verdictText(deviation, address(LIMIT, at), 'magnitude')));
  });
  INSULATIONS.forEach((between, i) => {
    const at = first + CORNERS.length + i;
    sheet.put(1, at, 'label', `Insulation, ${between}`).put(MEASURED, at, 'input', undefined, '0').put(5, at, 'aside', 'MΩ');
    sheet.put(LIMIT, at, 'input', insulation, '0').put(VERDICT, at, 'verdict', formula(verdictText(address(MEASURED, at), address(LIMIT, at), 'least')));
  });
  const last = first + RESISTANCES - 1;
  const range = (column: number) => `${address(column, first)}:${address(column, last)}`;
  sheet.validate({ range: range(MEASURED), rule: { kind: 'number', least: 0 }, message: 'Expected a resistance of 0 or more, or nothing.' });
  sheet.validate({ range: range(LIMIT), rule: { kind: 'number', least: 0 }, message: 'Expected a limit of 0 or more, or nothing if the value is not judged.' });
  highlightVerdicts(sheet, range(VERDICT));
  const [input, output] = [address(MEASURED, first + NEIGHBOURS), address(MEASURED, first + NEIGHBOURS + 1)];
  const arms = armCells(sheet, first);
  sheet.called('corners', arms.neighbours).called('corners_opposite', `${input}:${output}`).called('resistances', range(MEASURED)).called('limits_resistance', range(LIMIT));
  return { nextRow: last + 2, measured: range(MEASURED), verdicts: range(VERDICT), input, output, ...arms };
}

/** The arms beside the corners that they lie between. */
function armCells(sheet: Desk['sheet'], first: number): Pick<Resistances, 'neighbours' | 'each' | 'arms' | 'armsById'> {
  const down = (column: number) => Array.from({ length: NEIGHBOURS }, (_, i) => address(column, first + i));
  const [each, arms] = [down(MEASURED), down(ARM)];
  const range = ([top, ...others]: readonly string[]) => `${top}:${others[others.length - 1]}`;
  const neighbours = range(each);
  arms.forEach((at, i) => {
    sheet.put(ARM, first + i, 'result', formula(`IF(${withoutArms({ neighbours })},"",INDEX(PROVE.BRIDGEARMS(${each.join(',')},,,FALSE),${i + 1},2))`), OHMS);
    sheet.called(`value_arm_${i + 1}`, at);
  });
  return { neighbours, each, arms: range(arms), armsById: new Map(arms.map((at, i) => [`arm_${i + 1}`, at])) };
}

/** Columns of what the shunt made of the zero, beside the zeros. */
const SHUNT = { label: 6, value: 9, unit: 10 } as const;

/** Where outputs without load stand. */
export interface ZeroCells {
  readonly nextRow: number;
  readonly now: string;
  readonly then: string;
  readonly unit: string;
  /** Shunt resistor, and the change it made; not there if readings are not in mV/V. */
  readonly shunt?: { readonly resistor: string; readonly change: string };
}

/** The zero output now and at the last calibration, and what a shunt resistor made of it. */
export function zeroCells({ sheet, item, formats, width }: Desk, row: number, withShunt: boolean): ZeroCells {
  const { outputUnit } = item;
  const input = (at: number, label: string, unit: string, format: string) => sheet.put(1, at, 'label', label).put(RESULT.value, at, 'input', undefined, format).put(RESULT.unit, at, 'aside', unit);
  const beside = (at: number, label: string, unit: string, format: string) => sheet.put(SHUNT.label, at, 'label', label).put(SHUNT.value, at, 'input', undefined, format).put(SHUNT.unit, at, 'aside', unit);
  sheet.wide(1, row, width, 'heading', 'Output without load');
  input(row + 1, 'Zero now', outputUnit, formats.output);
  input(row + 2, 'Zero at the last calibration', outputUnit, formats.output);
  const [now, then] = [address(RESULT.value, row + 1), address(RESULT.value, row + 2)];
  sheet.validate({ range: `${now}:${then}`, rule: { kind: 'number' }, message: `Expected an output in ${outputUnit}, as a number, or nothing.` });
  sheet.called('zero_now', now).called('zero_then', then);
  const cells = { now, then, unit: address(RESULT.unit, row + 1), nextRow: row + 4 };
  if (!withShunt) return cells;
  beside(row + 1, 'Shunt resistor, if fitted', 'Ω', '0');
  beside(row + 2, 'Change shown with the shunt', outputUnit, formats.output);
  const [resistor, change] = [address(SHUNT.value, row + 1), address(SHUNT.value, row + 2)];
  sheet.validate({ range: resistor, rule: { kind: 'number', least: 1 }, message: 'Expected a resistance of 1 Ω or more, or nothing.' });
  sheet.validate({ range: change, rule: { kind: 'number' }, message: `Expected a change of output in ${outputUnit}, as a number, or nothing.` });
  sheet.called('shunt_resistor', resistor).called('shunt_change', change);
  return { ...cells, shunt: { resistor, change } };
}

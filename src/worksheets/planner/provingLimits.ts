import { PROVING_CLASS_NAMES } from '../../metrology/forceProvingLimits';
import { address, formula } from '../planBuilder';
import type { ProvingTemplate } from '../templateSchema';
import { type Desk, PERCENT, RESULT } from './desk';
import { CLASS_KEYS } from './provingForm';

/** What a class limits, in the order of the columns that the functions read. */
export const LIMITED = ['b', 'b_same', 'fc', 'f0', 'v', 'c', 'force', 'resolution'] as const;
export type Limited = (typeof LIMITED)[number];
const HEADS = ['b', 'b′', 'fc ±', 'f0 ±', 'v', 'c', 'U of force', 'r/F'];
/** Past this a limit was meant as a figure in percent; the functions refuse it. */
const GREATEST_LIMIT = 0.02;

/** Classes as the sheet names them: "00" alone would become the number 0 when it is chosen from a list. */
export const CLASS_WORDS = PROVING_CLASS_NAMES.map((name) => `class ${name}`);

/** The table of limits. */
export interface ClassLimits {
  readonly nextRow: number;
  /** Range of the limits, as the functions read it. */
  readonly range: string;
  /** The cell of the resolution in force units. */
  readonly resolution: string;
  /** The place of the class wanted, from 1, as an expression. */
  readonly wanted: string;
  /** The limit of the class wanted, as an expression: "" if it has none. */
  readonly limit: (of: Limited) => string;
}

/** Cells that the table reads. */
export interface LimitCells {
  readonly wanted: string;
  /** Output units. */
  readonly resolution: string;
  /** The greatest force, and the mean deflection there as an expression that is "" while it is not read. */
  readonly force: string;
  readonly deflection: string;
}

/** Writes the limits of the classes, to be edited. */
export function classLimits({ sheet, width, item }: Desk, row: number, { limits }: ProvingTemplate, cells: LimitCells): ClassLimits {
  sheet.wide(1, row, width, 'heading', 'Limits of the classes');
  sheet.wide(1, row + 1, width, 'note', 'As remembered from ISO 376:2011: put in those of the edition in your scope. A blank limit is not judged. r/F: resolution by force.');
  sheet.across(1, row + 2, 'header', ['Class', ...HEADS, 'least F/r']);
  const first = row + 3;
  const last = first + CLASS_WORDS.length - 1;
  PROVING_CLASS_NAMES.forEach((name, i) => {
    const share = address(1 + LIMITED.length, first + i);
    sheet.put(1, first + i, 'label', CLASS_WORDS[i]).across(2, first + i, 'input', LIMITED.map((of) => limits[CLASS_KEYS[name]][of]), PERCENT);
    sheet.put(2 + LIMITED.length, first + i, 'result', formula(`IF(N(${share})=0,"",1/${share})`), '0');
  });
  const range = `${address(2, first)}:${address(1 + LIMITED.length, last)}`;
  sheet.called('limits_classes', range);
  sheet.validate({ range, rule: { kind: 'number', least: 0, greatest: GREATEST_LIMIT }, message: `Expected a limit from 0 % to ${100 * GREATEST_LIMIT} %, or nothing if it is not judged.` });
  const { resolution, deflection } = cells;
  sheet.put(1, last + 1, 'label', 'Resolution r as a force').put(RESULT.value, last + 1, 'result', formula(`IF(OR(${resolution}="",${deflection}=""),"",ABS(${resolution}*${cells.force}/${deflection}))`), '0.00E+00');
  sheet.put(RESULT.unit, last + 1, 'aside', item.unit).acrossTo(width, RESULT.limit, last + 1, 'formula', ['resolution·F_N/X_N']);
  const wanted = `MATCH(${cells.wanted},${address(1, first)}:${address(1, last)},0)`;
  return {
    nextRow: last + 3, range, wanted, resolution: address(RESULT.value, last + 1),
    limit: (of) => {
      const cell = `INDEX(${range},${wanted},${LIMITED.indexOf(of) + 1})`;
      return `IF(${cell}="","",${cell})`;
    },
  };
}

import type { SheetPlan } from '../plan';
import { address, formula } from '../planBuilder';
import type { Question } from '../question';
import type { InspectionTemplate } from '../templateSchema';
import type { AnswerReader } from './answerReader';
import { checkHeading, checkLines } from './checkLines';
import { type Desk, newDesk, PERCENT, RESULT } from './desk';
import { closeSheet, openSheet } from './frame';
import { changedItem, type ItemAnswers, itemQuestions, readItem, split, suggestedItem } from './itemForm';
import type { Procedure } from './procedure';
import { highlightVerdicts, outcomeLine, resultTable, verdictText } from './resultTable';

/** What an inspection sheet is planned from. */
export interface InspectionSetup {
  readonly item: ItemAnswers;
  /** Nominal resistance of the bridge, ohms. */
  readonly resistance: number;
  /** Least insulation resistance, megohms. */
  readonly insulation: number;
}

/** What came in, before anything is loaded. */
export const inspectionProcedure: Procedure<InspectionTemplate, InspectionSetup> = {
  questions: (template, answers) => {
    const [item, rest] = split(itemQuestions(template, answers));
    return [...item, ...OWN, ...rest];
  },
  suggested: (template) => ({ ...suggestedItem(template), resistance: String(template.bridge.resistance), insulation: String(template.insulation) }),
  read,
  plan: planInspection,
  changed: (template, { item, resistance, insulation }) => ({ ...template, item: changedItem(item), bridge: { ...template.bridge, resistance }, insulation }),
};

const OWN: readonly Question[] = [
  { id: 'resistance', label: 'Bridge resistance', unit: 'Ω', group: 'Bridge', kind: 'number', optional: false, help: 'Nominal resistance of each arm; an ideal bridge reads three quarters of it between neighbouring corners.' },
  { id: 'insulation', label: 'Least insulation', unit: 'MΩ', group: 'Bridge', kind: 'number', optional: false, help: 'Usual expectation: 5000 MΩ when new, doubtful under 1000 MΩ (common practice, no source).' },
];

function read(reader: AnswerReader, template: InspectionTemplate): InspectionSetup | undefined {
  const item = readItem(reader, template);
  const resistance = reader.number('resistance', { above: 0 });
  const insulation = reader.number('insulation', { above: 0 });
  if (item === undefined || resistance === undefined || insulation === undefined) return undefined;
  if (item.ratedOutput === undefined) reader.warn('rated_output', 'Without a rated output the zero cannot be told as a part of it until one is typed on the sheet.');
  return { item, resistance, insulation };
}

/** Corners of the bridge: neighbours, where three arms lie beside one, and opposite ones, where two lie beside two. */
const CORNERS = [['1–2', 'neighbours', 0.75], ['2–3', 'neighbours', 0.75], ['3–4', 'neighbours', 0.75], ['4–1', 'neighbours', 0.75], ['1–3', 'opposite', 1], ['2–4', 'opposite', 1]] as const;
const INSULATIONS = ['bridge to body', 'bridge to shield'];
const FOUND = ['good', 'doubtful', 'faulty', 'not fitted'];

/** Columns of the table of resistances. */
const MEASURED = 4;
const EXPECTED = 6;
const DEVIATION = 7;
const LIMIT = 8;
const VERDICT = 9;
/** Columns of the table of looks. */
const LOOK = 3;
const SEEN = 7;
const LOOK_VERDICT = 8;
const REMARK = 9;

function planInspection(template: InspectionTemplate, setup: InspectionSetup): SheetPlan {
  const { item } = setup;
  const desk = newDesk(item, 0, []);
  const { sheet } = desk;
  const { nextRow, cell } = openSheet(desk, template, [
    { label: 'Bridge resistance, Ω', name: 'resistance', value: setup.resistance, rule: { kind: 'number', least: 0 } },
  ]);
  const looks = lookTable(desk, nextRow, template);
  const bridge = bridgeTable(desk, looks.nextRow, template, setup, cell('resistance'));
  const zero = zeroCells(desk, bridge.nextRow);
  const ratedOutput = cell('rated_output');
  const table = resultTable(desk, zero.nextRow, 'Zero', [
    {
      id: 'zero_balance', label: 'Zero balance', format: PERCENT, unit: 'of RO', function: 'PROVE.ZEROBALANCE(zero,output)',
      value: formula(`IF(OR(${zero.now}="",${ratedOutput}=""),"",PROVE.ZEROBALANCE(${zero.now},${ratedOutput}))`),
      judged: { limit: template.limits.zero_balance, limitFormat: PERCENT, rule: 'magnitude', name: 'zero_balance' },
    },
    {
      id: 'zero_shift', label: 'Shift of zero since then', format: PERCENT, unit: 'of RO', function: 'PROVE.ZEROBALANCE(shift,output)',
      value: formula(`IF(OR(${zero.now}="",${zero.then}="",${ratedOutput}=""),"",PROVE.ZEROBALANCE(${zero.now}-${zero.then},${ratedOutput}))`),
      judged: { limit: template.limits.zero_shift, limitFormat: PERCENT, rule: 'magnitude', name: 'zero_shift' },
    },
  ]);
  const row = 1 + outcomeLine(desk, table.nextRow + 1, {
    label: 'Outcome of the inspection', name: 'verdict_overall', verdicts: [looks.verdicts, bridge.verdicts, table.verdicts],
    waiting: [`COUNTA(${looks.seen})<${template.looks.length}`, `COUNT(${bridge.measured})<${CORNERS.length + INSULATIONS.length}`, `${zero.now}=""`],
  });
  const check = checkLines(desk, checkHeading(desk, row), [
    { id: 'zero_balance', label: 'Zero balance', own: ownOf(table.values.get('zero_balance')), plain: formula(`IF(OR(${zero.now}="",${ratedOutput}=""),"",${zero.now}/${ratedOutput})`), format: PERCENT, scale: '1', words: 'zero/rated output' },
    { id: 'zero_shift', label: 'Shift of zero', own: ownOf(table.values.get('zero_shift')), plain: formula(`IF(OR(${zero.now}="",${zero.then}="",${ratedOutput}=""),"",(${zero.now}-${zero.then})/${ratedOutput})`), format: PERCENT, scale: '1', words: '(zero − zero then)/rated output' },
  ]);
  sheet.called('output_unit', zero.unit);
  return closeSheet(desk, check, template);
}

function ownOf(cell = ''): string {
  return `IF(${cell}="","",${cell})`;
}

/** What is looked at, and what was seen. */
function lookTable({ sheet, width }: Desk, row: number, { looks }: InspectionTemplate) {
  sheet.wide(1, row, width, 'heading', 'Looked at');
  sheet.across(1, row + 1, 'header', ['Part', undefined, 'Look for', undefined, undefined, undefined, 'Seen', 'Verdict', 'Remark', ...Array.from({ length: width - REMARK }, () => undefined)]);
  const first = row + 2;
  looks.forEach(({ part, lookFor }, i) => {
    const at = first + i;
    const seen = address(SEEN, at);
    sheet.wide(1, at, 2, 'text', part).wide(LOOK, at, SEEN - LOOK, 'text', lookFor).put(SEEN, at, 'input').wide(REMARK, at, width - REMARK + 1, 'input');
    sheet.put(LOOK_VERDICT, at, 'verdict', formula(`IF(${seen}="","",IF(${seen}="faulty","outside",IF(${seen}="doubtful","doubtful","within")))`));
  });
  const last = first + looks.length - 1;
  const seen = `${address(SEEN, first)}:${address(SEEN, last)}`;
  const verdicts = `${address(LOOK_VERDICT, first)}:${address(LOOK_VERDICT, last)}`;
  sheet.validate({ range: seen, rule: { kind: 'list', words: FOUND }, message: `Expected ${FOUND.join(', ')}.` });
  highlightVerdicts(sheet, verdicts);
  return { nextRow: last + 2, seen, verdicts };
}

/** Resistances between corners, against an ideal bridge, and of the insulation, against the least allowed. */
function bridgeTable({ sheet, width }: Desk, row: number, { bridge }: InspectionTemplate, { insulation }: InspectionSetup, resistance: string) {
  sheet.wide(1, row, width, 'heading', 'Resistances');
  sheet.across(1, row + 1, 'header', ['Between', undefined, undefined, 'Measured', 'Unit', 'Expected', 'Deviation', 'Limit', 'Verdict', ...Array.from({ length: width - VERDICT }, () => undefined)]);
  const first = row + 2;
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
  const last = first + CORNERS.length + INSULATIONS.length - 1;
  const range = (column: number) => `${address(column, first)}:${address(column, last)}`;
  sheet.validate({ range: range(MEASURED), rule: { kind: 'number', least: 0 }, message: 'Expected a resistance of 0 or more, or nothing.' });
  sheet.validate({ range: range(LIMIT), rule: { kind: 'number', least: 0 }, message: 'Expected a limit of 0 or more, or nothing if the value is not judged.' });
  highlightVerdicts(sheet, range(VERDICT));
  return { nextRow: last + 2, measured: range(MEASURED), verdicts: range(VERDICT) };
}

/** The zero output now and at the last calibration. */
function zeroCells({ sheet, item, formats, width }: Desk, row: number) {
  sheet.wide(1, row, width, 'heading', 'Zero output, without load');
  ['Zero now', 'Zero at the last calibration'].forEach((label, i) => {
    sheet.put(1, row + 1 + i, 'label', label).put(MEASURED, row + 1 + i, 'input', undefined, formats.output).put(5, row + 1 + i, 'aside', item.outputUnit);
  });
  const [now, then] = [address(RESULT.value, row + 1), address(RESULT.value, row + 2)];
  sheet.validate({ range: `${now}:${then}`, rule: { kind: 'number' }, message: `Expected an output in ${item.outputUnit}, as a number, or nothing.` });
  sheet.called('zero_now', now).called('zero_then', then);
  return { nextRow: row + 4, now, then, unit: address(5, row + 1) };
}

import type { SheetPlan } from '../plan';
import { address, formula } from '../planBuilder';
import type { Answers, Question } from '../question';
import { type CreepTemplate, DIRECTIONS } from '../templateSchema';
import type { AnswerReader } from './answerReader';
import { checkHeading, checkLines } from './checkLines';
import { type Desk, formatFor, newDesk, PERCENT, rounded } from './desk';
import { closeSheet, type ConditionLine, openSheet } from './frame';
import { changedItem, checkStandard, type ItemAnswers, itemQuestions, readItem, split, suggestedItem } from './itemForm';
import { plotArea } from './plots';
import type { Procedure } from './procedure';
import { outcomeLine, resultTable } from './resultTable';

/** What a creep sheet is planned from. */
export interface CreepSetup {
  readonly item: ItemAnswers;
  readonly direction: CreepTemplate['direction'];
  /** Percent of capacity. */
  readonly load: number;
  /** Minutes, rising from 0. */
  readonly loadedTimes: readonly number[];
  readonly unloadedTimes: readonly number[];
}

/** A load held, and the zero after it: output against time. */
export const creepProcedure: Procedure<CreepTemplate, CreepSetup> = {
  questions: (template, answers) => {
    const [item, rest] = split(itemQuestions(template, answers));
    return [...item, ...ownQuestions(template), ...rest];
  },
  suggested: (template): Answers => ({
    ...suggestedItem(template), direction: template.direction, load: String(template.load),
    loaded_times: template.loadedTimes.join(', '), unloaded_times: template.unloadedTimes.join(', '),
  }),
  read,
  plan: planCreep,
  changed: (template, { item, direction, load, loadedTimes, unloadedTimes }) => ({
    ...template, item: changedItem(item), direction, load, loadedTimes: [...loadedTimes], unloadedTimes: [...unloadedTimes],
  }),
};

function ownQuestions({ quantity }: CreepTemplate): Question[] {
  const own = { group: 'Procedure', optional: false } as const;
  return [
    { ...own, id: 'direction', label: 'Direction', kind: 'choice', choices: DIRECTIONS[quantity].map((value) => ({ value, label: value })), help: 'Direction of the load that is held.' },
    { ...own, id: 'load', label: 'Load held', unit: '% of capacity', kind: 'number', help: 'Usually the capacity; stay within the safe overload of everything in the load train.' },
    { ...own, id: 'loaded_times', label: 'Readings under load at', unit: 'min', kind: 'numbers', help: 'Minutes since the load was on, rising from 0.' },
    { ...own, id: 'unloaded_times', label: 'Readings after it at', unit: 'min', kind: 'numbers', help: 'Minutes since the load was off, rising from 0.' },
  ];
}

function read(reader: AnswerReader, template: CreepTemplate): CreepSetup | undefined {
  const item = readItem(reader, template);
  const direction = reader.choice<CreepTemplate['direction']>('direction', DIRECTIONS[template.quantity]);
  const load = reader.number('load', { above: 0, greatest: 150 });
  const loadedTimes = readTimes(reader, 'loaded_times');
  const unloadedTimes = readTimes(reader, 'unloaded_times');
  if (item === undefined || direction === undefined || load === undefined || !loadedTimes || !unloadedTimes) return undefined;
  const force = rounded((item.capacity * load) / 100);
  checkStandard(reader, item, force, 'the load is');
  if (load > 100) reader.warn('load', `The load is ${load} % of capacity: check the safe overload of cell, adapters and frame.`);
  if (item.ratedOutput === undefined) reader.warn('rated_output', 'Without a rated output there is no creep as a part of it until one is typed on the sheet.');
  if (loadedTimes[loadedTimes.length - 1] < 20) reader.warn('loaded_times', 'The record is shorter than 20 minutes; common practice holds the load for 20 or 30.');
  return { item, direction, load, loadedTimes, unloadedTimes };
}

function readTimes(reader: AnswerReader, question: string): readonly number[] | undefined {
  const times = reader.numbers(question, { least: 0 });
  if (times === undefined) return undefined;
  if (times.length < 2 || times.length > 40) return reader.refuse(question, `Found ${times.length} times; expected 2 to 40.`);
  const wrong = times.findIndex((time, i) => (i === 0 ? time !== 0 : time <= times[i - 1]));
  return wrong < 0 ? times : reader.refuse(question, `Found ${times[wrong]} at place ${wrong + 1}; expected times that rise from 0.`);
}

/** One record: its columns start at `column`. */
interface Record {
  readonly id: 'loaded' | 'unloaded';
  readonly title: string;
  readonly column: number;
  readonly times: readonly number[];
  readonly firstRow: number;
}

function planCreep(template: CreepTemplate, setup: CreepSetup): SheetPlan {
  const { item } = setup;
  const desk = newDesk(item, 0, [rounded((item.capacity * setup.load) / 100)]);
  const last = Math.min(setup.loadedTimes[setup.loadedTimes.length - 1], setup.unloadedTimes[setup.unloadedTimes.length - 1]);
  const minute = { kind: 'number', least: 0 } as const;
  const more: ConditionLine[] = [
    { label: `Load held, ${item.unit}`, name: 'load', value: rounded((item.capacity * setup.load) / 100), rule: minute },
    { label: 'Judged from, min', name: 'creep_from', value: 0, rule: minute }, { label: 'Judged to, min', name: 'creep_to', value: last, rule: minute },
  ];
  const { nextRow, cell } = openSheet(desk, template, more);
  const records: readonly Record[] = [
    { id: 'loaded', title: `Under load, ${setup.direction}`, column: 1, times: setup.loadedTimes, firstRow: nextRow + 3 },
    { id: 'unloaded', title: 'After the load', column: 6, times: setup.unloadedTimes, firstRow: nextRow + 3 },
  ];
  desk.sheet.wide(1, nextRow, desk.width, 'heading', 'Readings: output against time');
  for (const record of records) writeRecord(desk, record, cell('rated_output'));
  desk.sheet.called('output_unit', address(2, nextRow + 2));
  let row = nextRow + 3 + Math.max(...records.map(({ times }) => times.length)) + 2;
  const limits = { from: cell('creep_from'), to: cell('creep_to'), ratedOutput: cell('rated_output') };
  const table = resultTable(desk, row, 'Results', records.map((record) => {
    const id = record.id === 'loaded' ? 'creep' : 'creep_return';
    return {
      id, label: record.id === 'loaded' ? 'Creep' : 'Creep return', format: PERCENT, unit: 'of RO', function: 'PROVE.CREEP(times,X,output,from,to)',
      value: formula(`IF(OR(${waiting(record)},${limits.ratedOutput}=""),"",PROVE.CREEP(${ranges(record)},${limits.ratedOutput},${limits.from},${limits.to}))`),
      judged: { limit: template.limits[id], limitFormat: PERCENT, rule: 'magnitude' as const, name: id },
    };
  }));
  row = 1 + outcomeLine(desk, table.nextRow + 1, {
    label: 'Outcome, for the customer', name: 'verdict_overall', verdicts: [table.verdicts], waiting: [...records.map(waiting), `${limits.ratedOutput}=""`],
  });
  row = plotArea(desk, row, [{
    title: 'Change since the first reading', x: 'Time, min', y: 'of rated output',
    series: records.map((record) => ({ name: record.title, x: span(record, 0), y: span(record, 3), drawn: 'both' as const })),
  }]);
  row = plainCreep(desk, row, records, limits, table.values);
  return closeSheet(desk, row, template);
}

function span({ column, firstRow, times }: Record, offset: number): string {
  return `${address(column + offset, firstRow)}:${address(column + offset, firstRow + times.length - 1)}`;
}

function ranges(record: Record): string {
  return `${span(record, 0)},${span(record, 1)}`;
}

/** True while readings are missing. */
function waiting(record: Record): string {
  const row = record.firstRow + record.times.length;
  return `${address(record.column + 1, row)}<${address(record.column + 3, row)}`;
}

/** Time, reading, and its change since the first, in output units and of the rated output. */
function writeRecord({ sheet, item, formats }: Desk, record: Record, ratedOutput: string): void {
  const { id, title, column, times, firstRow } = record;
  const { outputUnit } = item;
  sheet.across(column, firstRow - 2, 'header', [title, 'Reading', 'Change', 'Change']);
  sheet.across(column, firstRow - 1, 'header', ['min', outputUnit, outputUnit, 'of RO']);
  sheet.down(column, firstRow, 'reference', times, formatFor(times));
  sheet.down(column + 1, firstRow, 'input', times.map(() => undefined), formats.output);
  times.forEach((_, i) => {
    const [reading, first, change] = [address(column + 1, firstRow + i), address(column + 1, firstRow), address(column + 2, firstRow + i)];
    sheet.put(column + 2, firstRow + i, 'result', formula(`IF(OR(${reading}="",${first}=""),"",${reading}-${first})`), formats.output);
    sheet.put(column + 3, firstRow + i, 'result', formula(`IF(OR(${change}="",${ratedOutput}=""),"",${change}/${ratedOutput})`), PERCENT);
  });
  const row = firstRow + times.length;
  sheet.put(column, row, 'label', 'typed').put(column + 1, row, 'result', formula(`COUNT(${span(record, 1)})`), '0');
  sheet.put(column + 2, row, 'aside', 'needed').put(column + 3, row, 'input', times.length, '0');
  sheet.called(`needed_${id}`, address(column + 3, row));
  sheet.validate({ range: address(column + 3, row), rule: { kind: 'whole', least: 2, greatest: times.length }, message: `Expected a whole number from 2 to ${times.length}: lower it if a reading was left out on purpose.` });
  sheet.validate({ range: span(record, 1), rule: { kind: 'number' }, message: `Expected a reading in ${outputUnit}, as a number, or nothing.` });
  sheet.called(`times_${id}`, span(record, 0)).called(`readings_${id}`, span(record, 1));
}

/** Creep again by built-in functions, where the minutes stand in the record. */
function plainCreep(desk: Desk, row: number, records: readonly Record[], { from, to, ratedOutput }: { from: string; to: string; ratedOutput: string }, values: ReadonlyMap<string, string>): number {
  return checkLines(desk, checkHeading(desk, row), records.map((record) => {
    const [id, label] = record.id === 'loaded' ? ['creep', 'Creep'] : ['creep_return', 'Creep return'];
    const [times, outputs, own] = [span(record, 0), span(record, 1), values.get(id) ?? ''];
    const at = (minute: string) => `SUMIF(${times},${minute},${outputs})`;
    const missing = `OR(COUNT(${outputs})<${record.times.length},COUNTIF(${times},${from})*COUNTIF(${times},${to})=0,${ratedOutput}="")`;
    return {
      id, label, own: `IF(${own}="","",${own})`, plain: formula(`IF(${missing},"",(${at(to)}-${at(from)})/${ratedOutput})`),
      format: PERCENT, scale: '1', words: '(reading at the end − at the start)/rated output',
    };
  }));
}

import { suggestedAnswers } from '../worksheets/planner';
import { rounded } from '../worksheets/planner/desk';
import type { Answers } from '../worksheets/question';
import type { Template } from '../worksheets/template';
import { DIRECTIONS } from '../worksheets/templateSchema';
import { numberIn, type ReviewedSheet } from './reviewedSheet';

/** Part of the points that must stand as the template has them for it to be taken that they were meant so. */
const MOST = 0.8;

/**
 * The answers that a sheet was built with, as far as they shape it, from its names, its heads and what it holds. What is typed
 * on the sheet anyway stays as the template suggests it. Undefined if the sheet does not have what its template makes.
 */
export function answersOf(sheet: ReviewedSheet, template: Template): Answers | undefined {
  const suggested = { ...suggestedAnswers(template), sheet: 'Sheet', standard: '', standard_capacity: '', rated_output: '' };
  const output = sheet.cells.text('output_unit');
  const common = { ...suggested, ...(output === undefined ? {} : { output_unit: output }), resolution: plain(sheet.number('resolution') ?? template.item.resolution) };
  switch (template.kind) {
    case 'run': return withSeries(sheet, template, { ...common, ...ofRun(sheet) });
    case 'indication': return withSeries(sheet, template, { ...common, ...(template.scale === undefined ? {} : { scale: plain(sheet.number('scale') ?? template.scale) }) });
    case 'proving': return ofProving(sheet, { ...common, unit: sheet.cells.text('unit') ?? '' });
    case 'creep': return ofCreep(sheet, { ...common, ...unitAndCapacity(sheet) });
    case 'thermal': return ofThermal(sheet, { ...common, ...unitAndCapacity(sheet) });
    case 'history': return ofHistory(sheet, { ...common, ...unitAndCapacity(sheet) });
    case 'inspection': return { ...common, ...unitAndCapacity(sheet) };
    case 'summing': return { ...common, ...unitAndCapacity(sheet), cells: String(sheet.column('typed_zero').length) };
  }
}

/** A number without an exponent, as it is typed. */
function plain(value: number): string {
  return Math.abs(value) < 1e-6 && value !== 0 ? value.toFixed(15).replace(/0+$/, '') : String(value);
}

/** Capacity, and its unit as its label says it: "Capacity, kN". */
function unitAndCapacity(sheet: ReviewedSheet): Answers {
  const cell = sheet.cells.cell('capacity');
  const unit = /, (.+)$/.exec((cell && sheet.cells.labelOf(cell)) ?? '')?.[1];
  const capacity = numberIn(cell);
  return { ...(unit === undefined ? {} : { unit }), ...(capacity === undefined ? {} : { capacity: plain(capacity) }) };
}

function ofRun(sheet: ReviewedSheet): Answers {
  const values = sheet.cells.namesAfter('value_');
  const coefficients = [0, 1, 2, 3, 4, 5].filter((k) => values.some((id) => id === `a${k}` || id.startsWith(`a${k}_`))).length;
  const typed = Math.round(sheet.number('degree') ?? 2);
  return {
    ...(values.some((id) => id.startsWith('rated_output')) ? { rated_output: plain(sheet.number('rated_output') || 1) } : {}),
    ...(sheet.has('degree') ? { degree: String(coefficients > 4 ? coefficients - 1 : Math.min(3, Math.max(1, typed))) } : {}),
    corrected: sheet.cells.namesAfter('corrected_').length > 0 ? 'yes' : 'no', teds: sheet.has('teds_bytes') ? 'yes' : 'no',
  };
}

/** Directions, points, runs, positions, zero and what is applied, of a sheet with blocks of readings at forces. */
function withSeries(sheet: ReviewedSheet, template: Extract<Template, { kind: 'run' | 'indication' }>, answers: Answers): Answers | undefined {
  const ids = sheet.cells.namesAfter('readings_');
  const [first] = ids;
  const applied = first === undefined ? [] : appliedOf(sheet, first);
  const runs = first === undefined ? undefined : sheet.cells.columns(`readings_${first}`);
  if (!runs || applied.length === 0 || applied.some((force) => force === undefined)) return undefined;
  const pair: readonly string[] = DIRECTIONS[template.quantity];
  const directions = pair.filter((word) => ids.some((id) => id === word.replace('-', '_') || id.endsWith(`_${word.replace('-', '_')}`)));
  const sizes = (applied as number[]).map(Math.abs);
  const net = sheet.cells.cell(`net_${first}`)?.formula ?? '';
  return {
    ...answers, ...loads(sheet, sizes, template.points, plainUnit(sheet, template)),
    directions: directions.length > 0 ? directions.join(', ') : pair[(applied as number[]).some((force) => force < 0) ? 1 : 0],
    runs: String(runs.length), positions: positions(sheet, runs.map(([cell]) => cell)).join(', '),
    zero: /"average"/.test(net) ? 'average' : /"interpolated"/.test(net) ? 'interpolated' : 'initial',
    applied: sheet.has('masses') ? 'weights' : 'planned',
  };
}

/** What is applied, in its own unit: where an indicator is fed by a simulator the signal stands left of what should be shown. */
function appliedOf(sheet: ReviewedSheet, block: string): readonly (number | undefined)[] {
  const cells = sheet.column(`forces_${block}`);
  return cells.map((cell) => numberIn(sheet.has('scale') ? sheet.beside(cell, -1) : cell));
}

function plainUnit(sheet: ReviewedSheet, { item }: Template): string {
  return sheet.cells.text('unit') ?? item.unit;
}

/** Capacity and points that give the forces: the template's points, if most of the forces fit them, so that a changed one shows. */
function loads(sheet: ReviewedSheet, sizes: readonly number[], points: readonly number[], unit: string): Answers {
  const greatest = Math.max(...sizes);
  // Forces of dead weights are computed; the points stand beside the masses.
  const masses = sheet.column('masses');
  if (masses.length > 0) {
    return { unit, capacity: plain(sheet.number('capacity') ?? greatest), points: masses.map((cell) => String(numberIn(sheet.beside(cell, -1)))).join(', ') };
  }
  const candidates = [(greatest / Math.max(...points)) * 100, sheet.number('capacity') ?? 0].map(rounded);
  for (const capacity of candidates) {
    const fitting = points.length === sizes.length ? sizes.filter((size, i) => rounded((capacity * points[i]) / 100) === size).length : 0;
    if (capacity > 0 && fitting >= MOST * sizes.length) return { unit, capacity: plain(capacity), points: points.join(', ') };
  }
  const capacity = sheet.number('capacity') ?? greatest;
  return { unit, capacity: plain(capacity), points: sizes.map((size) => plain(rounded((size / capacity) * 100))).join(', ') };
}

/** How the item stands in each run: what follows "Run 1, " in the head. */
function positions(sheet: ReviewedSheet, cells: readonly { readonly column: number; readonly row: number }[]): string[] {
  const words = cells.map(({ column, row }) => /^Run \d+, (.+)$/.exec(textAt(sheet, column, row - 2))?.[1]);
  return words.every((word) => word !== undefined) ? words : [];
}

function textAt(sheet: ReviewedSheet, column: number, row: number): string {
  const { value } = sheet.beside({ column, row }, 0);
  return typeof value === 'string' ? value : '';
}

function ofProving(sheet: ReviewedSheet, answers: Answers): Answers | undefined {
  const forces = sheet.column('forces_first_position').map(numberIn);
  const capacity = sheet.number('capacity');
  const runs = ['first_position', 'rotated'].flatMap((id) => sheet.cells.columns(`readings_${id}`) ?? []);
  if (capacity === undefined || runs.length !== 4 || forces.some((force) => force === undefined)) return undefined;
  const sizes = (forces as number[]).map(Math.abs).filter((force) => force > 0);
  const points = sizes.map((size) => rounded((size / capacity) * 100));
  const words = runs.map(([{ column, row }]) => textAt(sheet, column, row - 2));
  return {
    ...answers, capacity: plain(capacity), points: points.map(plain).join(', '), class_from: plain(points[0]),
    direction: (forces as number[]).some((force) => force < 0) ? 'compression' : 'tension',
    use: sheet.has('readings_creep') ? 'increasing only' : 'increasing and decreasing',
    positions: words.every((word) => word !== '') ? words.join(', ') : '',
  };
}

function ofCreep(sheet: ReviewedSheet, answers: Answers): Answers {
  const times = (record: string) => sheet.column(`times_${record}`).map((cell) => String(cell.value)).join(', ');
  const load = sheet.number('load');
  const head = sheet.column('times_loaded')[0];
  const direction = /, (.+)$/.exec(head ? textAt(sheet, head.column, head.row - 2) : '')?.[1];
  return {
    ...answers, loaded_times: times('loaded'), unloaded_times: times('unloaded'), ...(direction === undefined ? {} : { direction }),
    ...(load === undefined ? {} : { load: plain(rounded((load / Number(answers.capacity)) * 100)) }),
  };
}

function ofThermal(sheet: ReviewedSheet, answers: Answers): Answers {
  const planned = sheet.column('planned_temperature');
  const heading = planned[0] ? textAt(sheet, 1, planned[0].row - 3) : '';
  const direction = /output in (.+) at each/.exec(heading)?.[1];
  const load = sheet.number('load');
  // The temperatures of the chamber can be typed over: their number is what shapes the sheet.
  return {
    ...answers, temperatures: planned.map((_, i) => String(i - 10)).join(', '), ...(direction === undefined ? {} : { direction }),
    ...(load === undefined ? {} : { load: plain(rounded((load / Number(answers.capacity)) * 100)) }),
  };
}

function ofHistory(sheet: ReviewedSheet, answers: Answers): Answers {
  const shift = sheet.cells.cell('value_shift');
  const loadingClass = /class (\w+)$/.exec((shift && sheet.cells.labelOf(shift)) ?? '')?.[1];
  return { ...answers, rows: String(sheet.column('typed_date').length), ...(loadingClass === undefined ? {} : { class: loadingClass }) };
}

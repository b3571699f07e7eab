import type { FilledCell } from '../worksheets/filledSheet';
import { found, held } from './finding';
import type { Expected } from './recompute/expected';
import type { ReviewedSheet } from './reviewedSheet';
import type { ReviewFinding } from './reviewFinding';

/** Columns of a line of results, from its value. */
const [LIMIT, VERDICT] = [2, 3];
/** Columns from the tolerance of a point to its verdict. */
const POINT_VERDICT = 2;
/** What is let go on the sheets, so that binary fractions decide nothing. */
const LET_GO = 1e-9;

/** A value beside the limit that it is judged by. */
export interface Judged {
  readonly value: FilledCell;
  readonly limit: FilledCell;
  readonly verdict: FilledCell;
  readonly rule: 'magnitude' | 'greatest' | 'least';
  /** What is let go of the limit, in its units. */
  readonly letGo: (limit: number) => number;
  /** True where the rule needs U and none is computed: nothing can be judged. */
  readonly needsU?: boolean;
}

/** Every value of a sheet that a verdict stands beside: results, and points within a tolerance. */
export function judgedCells(sheet: ReviewedSheet): Judged[] {
  const results = sheet.cells.namesAfter('verdict_').flatMap((id): Judged[] => {
    const [value, verdict] = [sheet.cells.cell(`value_${id}`), sheet.cells.cell(`verdict_${id}`)];
    if (!value || !verdict || verdict.at !== sheet.beside(value, VERDICT).at) return [];
    return [{ value, limit: sheet.beside(value, LIMIT), verdict, rule: ruleOf(id), letGo: (limit) => LET_GO * Math.abs(limit) }];
  });
  const step = sheet.number('resolution') ?? 0;
  const points = sheet.cells.namesAfter('errors_').flatMap((id) => sheet.column(`errors_${id}`).flatMap((value, row): Judged[] => {
    const limit = sheet.column(`tolerances_${id}`)[row];
    return limit ? [{ value, limit, verdict: sheet.beside(limit, POINT_VERDICT), rule: 'magnitude', letGo: () => 1e-6 * step }] : [];
  }));
  return [...results, ...points, ...comparedPoints(sheet)];
}

/** Points of a comparison before and after, each against its tolerance, or what the guard band of its run leaves of it. */
function comparedPoints(sheet: ReviewedSheet): Judged[] {
  return sheet.cells.namesAfter('allowed_').flatMap((id) => [['deviation_found', 'before'], ['deviation_left', 'after']].flatMap(([deviation, verdict]) => {
    const guard = guardOf(sheet, `${verdict}_${id}`);
    const [limits, verdictCells] = [sheet.column(`allowed_${id}`), sheet.column(`${verdict}_${id}`)];
    return sheet.column(`${deviation}_${id}`).flatMap((value, row): Judged[] => (limits[row] && verdictCells[row]
      ? [{ value, limit: guarded(limits[row], guard), verdict: verdictCells[row], rule: 'magnitude', letGo: (limit) => LET_GO * Math.abs(limit), ...(guard === undefined ? { needsU: true } : {}) }] : []));
  }));
}

/** What the rule of a comparison takes off the tolerance: nothing, or U; undefined where it needs U and there is none. */
function guardOf(sheet: ReviewedSheet, id: string): number | undefined {
  return sheet.cells.text('comparison_rule') === 'guarded' ? sheet.number(`expanded_${id}`) : 0;
}

function guarded(limit: FilledCell, guard = 0): FilledCell {
  return typeof limit.value === 'number' && guard !== 0 ? { ...limit, value: limit.value - guard, format: GUARDED } : limit;
}

/** How a comparison shows the limit that a guard band leaves. */
const GUARDED = '0.0000%';

/** Which way a limit holds, by what is judged. */
function ruleOf(id: string): Judged['rule'] {
  if (id === 'soak') return 'least';
  return /^(class_|points_outside|not_judged|settled)/.test(id) ? 'greatest' : 'magnitude';
}

/** Whether a number keeps its limit. */
export function keeps({ rule, letGo }: Pick<Judged, 'rule' | 'letGo'>, value: number, limit: number): boolean {
  if (rule === 'least') return value >= limit - letGo(limit);
  return (rule === 'magnitude' ? Math.abs(value) : value) <= limit + letGo(limit);
}

/** Verdicts that say otherwise than the unrounded value and the limit. */
export function verdicts(sheet: ReviewedSheet, expected: readonly Expected[]): ReviewFinding[] {
  const independent = new Map(expected.map(({ cell, value }) => [cell.at, value]));
  const wrong = judgedCells(sheet).flatMap((judged): ReviewFinding[] => {
    const { value, limit, verdict } = judged;
    const unrounded = independent.has(value.at) ? independent.get(value.at) ?? null : value.value;
    const should = expectedVerdict(judged, unrounded);
    if (should === undefined || verdict.value === should) return [];
    return [found(sheet, verdict, 'result', `${verdict.at} says ${held(verdict.value)} of ${held(unrounded, value.format)} (${value.at}) against ${held(limit.value, limit.format)} (${limit.at}); expected ${held(should)}`)];
  });
  return [...wrong, ...outcomes(sheet)];
}

/** Undefined where the value is an error, or the limit no number. */
function expectedVerdict(judged: Judged, value: FilledCell['value']): string | null | undefined {
  const limit = judged.limit.value;
  if (value === null) return null;
  if (typeof value === 'object') return undefined;
  if (limit === null) return 'no limit';
  if (typeof limit !== 'number') return undefined;
  if (judged.needsU) return 'no result';
  return typeof value === 'number' && keeps(judged, value, limit) ? 'within' : 'outside';
}

/** The line for the customer, against the verdicts that it sums up. */
function outcomes(sheet: ReviewedSheet): ReviewFinding[] {
  return sheet.cells.namesAfter('verdict_overall').concat('').flatMap((stage): ReviewFinding[] => {
    const cell = sheet.cells.cell(`verdict_overall${stage}`);
    if (typeof cell?.value !== 'string') return [];
    const own = sheet.cells.namesAfter('verdict_').filter((id) => !id.startsWith('overall') && (stage === '' || id.includes(stage)));
    const words = own.map((id) => sheet.cells.cell(`verdict_${id}`)?.value);
    const bad = words.filter((word) => word === 'outside' || word === 'no result').length;
    if (!/^within/.test(cell.value) || bad === 0) return [];
    return [found(sheet, cell, 'result', `${cell.at} says “${cell.value}”, and ${bad} verdicts of the sheet say “outside”; expected it to count them`)];
  });
}

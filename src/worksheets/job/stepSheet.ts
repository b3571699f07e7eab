import { checkSheet } from '../check/checkSheet';
import { readingsThatAreNoNumbers } from '../check/completeness';
import { isBlank, RunSheet } from '../check/runSheet';
import type { ReadSheet } from '../readSheet';
import type { Missing } from './job';
import type { WayStep } from './jobLines';

/** The start of an outcome while readings are missing. */
const OPEN = /^open\b/i;

/** The sheet of a name, whatever the case of its letters. */
export function sheetCalled(sheets: readonly ReadSheet[], name: string | undefined): ReadSheet | undefined {
  const wanted = name?.trim().toLowerCase();
  return wanted === undefined ? undefined : sheets.find((sheet) => sheet.name.toLowerCase() === wanted);
}

/**
 * What the sheet of a step still misses: readings, and what belongs beside them; of a sheet with both stages, only those of the
 * step's own stage.
 */
export function missingOnSheet(read: ReadSheet, step: WayStep): readonly Missing[] {
  const sheet = new RunSheet(read);
  const ends = ENDS[step];
  if (ends !== undefined) return sheet.cells.cell(ends.name) ? [] : [{ sheet: read.name, at: 'A1', message: `The sheet “${read.name}” is no ${ends.what}` }];
  const outcomes = outcomesOf(sheet, step);
  if (!holdsWork(sheet)) return [{ sheet: read.name, at: 'A1', message: `The sheet “${read.name}” has no place for readings; expected the sheet of a run or an inspection` }];
  const other = cellsOfOtherStage(sheet, step);
  const findings = [...checkSheet(read).filter(({ severity }) => severity === 'missing'), ...blankStage(sheet, step), ...readingsThatAreNoNumbers(sheet)];
  const missing = findings.filter(({ at }) => !other.has(at)).map(({ at, message }): Missing => ({ sheet: read.name, at, message }));
  if (missing.length > 0) return missing;
  return outcomes.filter(({ text }) => OPEN.test(text)).map(({ at, text }) => ({ sheet: read.name, at, message: `${at} says “${text}”` }));
}

/** Steps whose sheet is told by a name alone. */
const ENDS: Partial<Record<WayStep, { readonly name: string; readonly what: string }>> = {
  certificate: { name: 'certificate_number', what: 'certificate' },
  reviewed: { name: 'review_outcome', what: 'review' },
};

/** Whether the sheet is one that something is measured on. */
function holdsWork({ blocks, cells }: RunSheet): boolean {
  return blocks.length > 0 || ['typed_', 'proving_', 'verdict_'].some((start) => cells.namesAfter(start).length > 0);
}

/** Whether a sheet has blocks of both stages in itself. */
export function hasBothStages(read: ReadSheet): boolean {
  const { blocks } = new RunSheet(read);
  return ['as_found', 'as_left'].every((stage) => blocks.some(({ id }) => id.startsWith(stage)));
}

function cellsOfOtherStage(sheet: RunSheet, step: WayStep): ReadonlySet<string> {
  const other = { as_found: 'as_left', as_left: 'as_found' }[step as string];
  const blocks = sheet.blocks.filter(({ id }) => other !== undefined && id.startsWith(other));
  return new Set(blocks.flatMap(({ runs }) => runs.flat().map(({ at }) => at)));
}

/** Blocks as left without a reading, which a check of the sheet alone takes for "nothing was adjusted". */
function blankStage(sheet: RunSheet, step: WayStep) {
  if (step !== 'as_left') return [];
  return sheet.blocks.filter((block) => block.id.startsWith('as_left') && isBlank(block)).map(({ label, runs }) => {
    const { at } = runs[0][0];
    return { at, message: `${label}: no readings yet, the first belongs in ${at}` };
  });
}

/** The lines that sum verdicts up: of the whole sheet, or of the step's stage. */
function outcomesOf({ cells }: RunSheet, step: WayStep): { readonly at: string; readonly text: string }[] {
  return ['verdict_overall', `verdict_overall_${step}`].flatMap((name) => {
    const cell = cells.cell(name);
    return typeof cell?.value === 'string' ? [{ at: cell.at, text: cell.value }] : [];
  });
}

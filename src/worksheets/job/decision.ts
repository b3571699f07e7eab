import { inWords } from '../block';
import { FilledSheet } from '../filledSheet';
import type { ReadSheet } from '../readSheet';
import { NO_ADJUSTMENT } from './jobTerms';

/**
 * The decision that a run's own cells propose, for a person to confirm: its outcome, and each decision with the uncertainty by
 * its rule, like "within specification in all 6 judged; with the uncertainty (guarded): pass". Of a sheet with both stages, the
 * stage as left, unless it was not run. Where a comparison judges the run against the tolerance of the job, its words lead, like
 * "outside the tolerance in 2 of 12 points; the run's own limits: within specification in all 6 judged". Undefined while readings
 * are missing or the comparison cannot judge yet, and where the sheet has no outcome.
 */
export function proposedDecision(run: ReadSheet, comparison?: ReadSheet): string | undefined {
  const sheet = new FilledSheet(run);
  const stage = stageOf(sheet);
  const outcome = sheet.text(stage === '' ? 'verdict_overall' : `verdict_overall_${stage}`);
  if (outcome === undefined || UNDECIDED.test(outcome)) return undefined;
  const compared = comparedOutcome(run, comparison);
  if (compared !== undefined && UNDECIDED.test(compared)) return undefined;
  const lead = compared === undefined ? undefined : ofTolerance(compared);
  return [...(lead === undefined ? [outcome] : [lead, `the run's own limits: ${outcome}`]), ...decisions(sheet, stage)].join('; ');
}

/** Outcomes that wait for something. */
const UNDECIDED = /^(open|not judged)\b/i;

/** The final outcome of a comparison, if it is the run that it judges last: the one as left, or as found where nothing was adjusted. */
export function comparedOutcome(run: ReadSheet, comparison: ReadSheet | undefined): string | undefined {
  if (!comparison) return undefined;
  const sheet = new FilledSheet(comparison);
  const left = sheet.text('comparison_left');
  const last = left === undefined || left === NO_ADJUSTMENT ? sheet.text('comparison_found') : left;
  return last === run.name ? sheet.text('outcome_after') : undefined;
}

/** The outcome of a comparison in words that tell it from the outcome of the run; undefined if it judged nothing. */
function ofTolerance(outcome: string): string | undefined {
  const [, side, count] = /^(within|outside)\D*(\d+(?: of \d+)?)\D*$/i.exec(outcome) ?? [];
  if (side === undefined) return undefined;
  return side.toLowerCase() === 'within' ? `within the tolerance in all ${count} points` : `outside the tolerance in ${count} points`;
}

/** The stage whose outcome counts; "" for a sheet without stages. */
function stageOf(sheet: FilledSheet): string {
  if (sheet.cell('verdict_overall')) return '';
  return /^not run\b/i.test(sheet.text('verdict_overall_as_left') ?? 'not run') ? 'as_found' : 'as_left';
}

function decisions(sheet: FilledSheet, stage: string): string[] {
  const suffixes = ['', ...sheet.namesAfter('decision_').filter((name) => !/^rule(_|$)/.test(name)).map((name) => `_${name}`)];
  return suffixes.filter((suffix) => suffix.startsWith(stage === '' ? '' : `_${stage}`)).flatMap((suffix) => {
    const decided = sheet.text(`decision${suffix}`);
    if (decided === undefined) return [];
    const of = inWords(suffix.slice(1)).toLowerCase();
    return [`with the uncertainty (${sheet.text(`decision_rule${suffix}`) ?? 'simple'})${of === '' ? '' : `, ${of}`}: ${decided}`];
  });
}

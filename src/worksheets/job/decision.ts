import { inWords } from '../block';
import { FilledSheet } from '../filledSheet';
import type { ReadSheet } from '../readSheet';

/**
 * The decision that a run's own cells propose, for a person to confirm: its outcome, and each decision with the uncertainty by
 * its rule, like "within specification in all 6 judged; with the uncertainty (guarded): pass". Of a sheet with both stages, the
 * stage as left, unless it was not run. Undefined while readings are missing, and where the sheet has no outcome.
 */
export function proposedDecision(run: ReadSheet): string | undefined {
  const sheet = new FilledSheet(run);
  const stage = stageOf(sheet);
  const outcome = sheet.text(stage === '' ? 'verdict_overall' : `verdict_overall_${stage}`);
  if (outcome === undefined || /^open\b/i.test(outcome)) return undefined;
  return [outcome, ...decisions(sheet, stage)].join('; ');
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

import type { Job, JobItem } from '../job/job';
import { linkTo } from '../comparison/links';
import { formula } from '../planBuilder';
import { blockTable, type BlockLine } from './blockTable';
import { type CertificateDesk, type Field, fieldPairs, linked, paragraph, section, wideField } from './certificateDesk';
import type { CertifiedBlock, CertifiedRun } from './certifiedRun';
import { oneLine } from './curveSection';
import { decimalsOf, fixedFormat, percentFormat, uncertaintyFormat } from './digits';
import { shownFrom } from './cellReference';

/** How the uncertainty is to be understood. Wording after JCGM 100, 7.2 (from memory). */
const STATEMENT = 'U is the expanded uncertainty: the combined standard uncertainty of the result, evaluated after JCGM 100, times the coverage factor k, for a coverage probability of 95.45 %. '
  + 'It is evaluated at the greatest load, and stated in units of the output for every load: no part of it is greater below.';
const PROVING_STATEMENT = 'W is the relative expanded uncertainty of the force by the instrument, with k = 2, for a coverage probability of about 95 %, after ISO 376, Annex C (from memory). '
  + 'Drift since the calibration and the use of the instrument add their own parts.';

/** The output with its uncertainty, its factor and probability; gives the next free row. */
export function uncertaintySection(desk: CertificateDesk, start: number, run: CertifiedRun): number {
  let row = section(desk, start, run.kind === 'run' ? 'Output and uncertainty' : 'Uncertainty');
  if (run.kind === 'proving') return paragraph(desk, row, 'text', PROVING_STATEMENT);
  row = paragraph(desk, row, 'text', STATEMENT);
  for (let i = 0; i < run.blocks.length; i += 2) {
    const blocks = run.blocks.slice(i, i + 2);
    row = blockTable(desk, row, run.name, run.blocks.length > 1 ? blocks.map(({ label }) => label) : [''], uncertaintyLines(run, blocks));
  }
  return row;
}

function uncertaintyLines(run: CertifiedRun, blocks: readonly CertifiedBlock[]): BlockLine[] {
  const least = (id: string) => Math.min(...blocks.flatMap(({ ending }) => run.cells.number(`value_${id}${ending}`) ?? []));
  return [
    ...oneLine(run, blocks, 'sensitivity', fixedFormat(decimalsOf(least('expanded_output')))),
    ...oneLine(run, blocks, 'expanded_output', uncertaintyFormat(least('expanded_output')), 'U at the greatest load'),
    ...oneLine(run, blocks, 'expanded_load', uncertaintyFormat(least('expanded_load')), 'The same as a load'),
    ...oneLine(run, blocks, 'expanded', percentFormat(least('expanded')), 'The same, relative'),
    ...oneLine(run, blocks, 'coverage_factor', '0.00', 'Coverage factor k'),
  ];
}

/** What was asked, the rule of decision, the outcome and the decision; gives the next free row. */
export function decisionSection(desk: CertificateDesk, start: number, job: Job, item: JobItem, run: CertifiedRun): number {
  const { fields, sheet } = job;
  let row = section(desk, start, 'Statement of conformity');
  const asked: readonly (Field | undefined)[] = [
    fields.tolerance.value === undefined ? undefined : linked('Tolerance asked, of output', sheet, fields.tolerance.at, { format: '0.000%', called: 'shown_tolerance' }),
    fields.class.value === undefined ? undefined : linked('Class asked', sheet, fields.class.at),
  ];
  const there = asked.filter((field) => field !== undefined);
  if (there.length > 0) row = fieldPairs(desk, row, [[there[0], there[1]]]);
  const rule = linkTo(sheet, fields.decision_rule.at);
  row = wideField(desk, row, { label: 'Decision rule', content: formula(`IF(${rule}="guarded","${GUARDED}",IF(${rule}="simple","${SIMPLE}",""))`), words: fields.decision_rule.value === 'guarded' ? GUARDED : SIMPLE });
  for (const name of run.cells.namesAfter('verdict_overall')) row = outcome(desk, row, run, `verdict_overall${name}`);
  if (run.cells.cell('verdict_overall')) row = outcome(desk, row, run, 'verdict_overall');
  for (const { ending, label } of run.blocks) {
    const decided = run.cells.cell(`decision${ending}`);
    if (!decided || decided.value === null) continue;
    row = wideField(desk, row, { label: `By the rule${run.blocks.length > 1 ? `, ${label.toLowerCase()}` : ''}`, content: formula(`"${run.cells.labelOf(decided)?.replace(/, decision$/, '') ?? ''}: "&${linkTo(run.name, decided.at)}`), called: `shown_decision${ending}` });
  }
  return wideField(desk, row, { label: 'Decision', content: shownFrom(sheet, item.way.decided.at), words: item.way.decided.value ?? '', called: 'shown_decided' });
}

/** Risks of both rules for a result on its limit: ILAC-G8:09/2019 (from memory). */
const SIMPLE = 'Simple acceptance: a result conforms if it is within its limit; U is not added, and near the limit a wrong decision has a probability of up to 50 %.';
const GUARDED = 'Guarded acceptance: a result conforms if it is within its limit by U or more; a wrong acceptance then has a probability of 2.5 % at most.';

function outcome(desk: CertificateDesk, row: number, run: CertifiedRun, name: string): number {
  const cell = run.cells.cell(name);
  if (!cell) return row;
  const stage = name.replace(/^verdict_overall_?/, '').replace(/_/g, ' ');
  return wideField(desk, row, linked(stage === '' ? 'Outcome' : `Outcome ${stage}`, run.name, cell.at, { called: `shown_${name}` }));
}

import { address, fixed, formula } from '../planBuilder';
import type { Desk } from '../planner/desk';
import type { HeadCells } from './comparisonHead';
import { linkTo } from './links';
import { resultOf, type RunSide } from './runSide';

/** Columns of the line: U and its unit, the limit and how it was made. */
const [LABEL, EXPANDED, UNIT, LIMIT_LABEL, LIMIT, HOW] = [1, 4, 5, 6, 9, 10];
const FORMAT = '0.0000%';
/** Coverage factor of W by ISO 376, on whose sheets stands the standard uncertainty alone. */
const PROVING_FACTOR = 2;

/** Where U of a run stands, of the output at capacity, and up to where a deviation is accepted. */
export interface Acceptance {
  readonly expanded: string;
  /** At the greatest load; words where the rule needs U and there is none. */
  readonly limit: string;
}

/** A run whose points are judged. */
export interface JudgedRun {
  readonly side: RunSide;
  /** "as found", and what ends the names of its cells. */
  readonly words: string;
  readonly id: string;
  /** The output at capacity, the output of the run and the tolerance at the greatest load. */
  readonly output: string;
  readonly top: string;
  readonly tolerance: string;
}

/**
 * The line of a run that says U and the limit of acceptance: the tolerance by the rule "simple", tolerance − U by "guarded"
 * (guard band w = U, ILAC-G8:09/2019 and JCGM 106, from memory). U is that of the run's own budget at the greatest load.
 */
export function acceptanceLine({ sheet, width }: Desk, row: number, { side, words, id, output, top, tolerance }: JudgedRun, { rule }: HeadCells): Acceptance {
  const expanded = fixed(EXPANDED, row);
  sheet.put(LABEL, row, 'label', `U ${words}, at the greatest load`).put(EXPANDED, row, 'reference', formula(expandedOf(side, output, top)), FORMAT).put(UNIT, row, 'aside', 'of RO');
  sheet.put(LIMIT_LABEL, row, 'aside', `Accepted up to, ${words}`);
  sheet.put(LIMIT, row, 'reference', formula(`IF(${tolerance}="","",IF(${rule}="guarded",IF(${expanded}="","no U",${tolerance}-${expanded}),${tolerance}))`), FORMAT);
  sheet.wide(HOW, row, width - HOW + 1, 'aside', formula(`IF(${tolerance}="","no tolerance",IF(${rule}="guarded",IF(${expanded}="","U is not computed","tolerance − U"),"the tolerance"))`));
  sheet.called(`expanded_${id}`, address(EXPANDED, row)).called(`accepted_${id}`, address(LIMIT, row));
  return { expanded, limit: fixed(LIMIT, row) };
}

/** The verdict on a deviation against the tolerance of its point, by the rule. A billionth of the limit is let go, as for other verdicts. */
export function acceptanceVerdict(deviation: string, tolerance: string, { expanded }: Acceptance, { rule }: HeadCells): string {
  const judged = `IF(ABS(${deviation})<=(${tolerance}-IF(${rule}="guarded",${expanded},0))*(1+1E-9),"within","outside")`;
  return `IF(ISERROR(${deviation}),"no result",IF(${deviation}="","",IF(${tolerance}="","no limit",IF(AND(${rule}="guarded",${expanded}=""),"no result",${judged}))))`;
}

/** U of a run as a fraction of the output at capacity; nothing while its budget gives none. */
function expandedOf(side: RunSide, output: string, top: string): string {
  const [budget, proving] = [resultOf(side, 'expanded_output'), resultOf(side, 'wc_greatest')];
  const link = (at: string) => linkTo(side.sheet, at);
  if (budget) return fraction(link(budget.at), link(budget.at), output);
  return proving ? fraction(link(proving.at), `${PROVING_FACTOR}*${link(proving.at)}*ABS(N(${top}))`, output) : '""';
}

function fraction(needed: string, expanded: string, output: string): string {
  return `IF(ISNUMBER(${needed}),IF(N(${output})=0,"",${expanded}/${output}),"")`;
}

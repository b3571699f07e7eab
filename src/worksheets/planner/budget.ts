import { address, type Formula, formula } from '../planBuilder';
import { checkHeading, checkLines } from './checkLines';
import { type Desk, RESULT } from './desk';
import type { SeriesBlock } from './seriesBlock';

export const DISTRIBUTIONS = ['normal', 'rectangular', 'triangular', 'ushaped', 'resolution'] as const;
const RULES = ['simple', 'guarded'] as const;

/** Columns of the budget: component, distribution, half-width or U, divisor, degrees of freedom, sensitivity, contribution, share. */
const DISTRIBUTION = 4;
const VALUE = 5;
const DIVISOR = 6;
const DOF = 7;
const SENSITIVITY = 8;
const CONTRIBUTION = 9;
const SHARE = 10;
/** Lines that are left to the user. */
const FREE_LINES = 2;
const FINE = '0.0000%';

/** A component of uncertainty, as a fraction of the output (or the indication) at the greatest load. */
export interface BudgetComponent {
  readonly label: string;
  /** Half-width, or U with k = 2 of a normal one, or the full step of a resolution; left to be typed in if omitted. */
  readonly value?: Formula;
  readonly distribution: (typeof DISTRIBUTIONS)[number];
  /** Infinite if omitted. */
  readonly dof?: Formula;
}

/** What is decided with the uncertainty: a value within limits, all in one unit. */
export interface BudgetDecision {
  readonly label: string;
  readonly value: string;
  readonly lower: string;
  readonly upper: string;
  /** U in the unit of the value, from the cell of the relative U. */
  readonly expanded: (relative: string) => string;
  /** True while there is nothing to decide, as a condition in formulas. */
  readonly unless: string;
}

/** What a budget is made of. */
export interface Budget {
  readonly title: string;
  /** Ends the names of its cells; empty if the sheet has one budget. */
  readonly suffix: string;
  readonly block: SeriesBlock;
  readonly components: readonly BudgetComponent[];
  /** Expressions of the greatest output and the greatest load, magnitudes, and the units. */
  readonly output: { readonly at: string; readonly unit: string };
  readonly load?: { readonly at: string; readonly unit: string };
  readonly decision?: BudgetDecision;
}

/** Where the parts of a budget stand. */
export interface BudgetTable {
  readonly nextRow: number;
  /** Writes the check of the combined uncertainty; gives the next free row. */
  readonly check: (row: number) => number;
}

/** Writes a budget from a row on: its components, the expanded uncertainty, and the decision with its rule. */
export function budgetTable(desk: Desk, row: number, budget: Budget): BudgetTable {
  const { sheet, width } = desk;
  const { block, suffix } = budget;
  sheet.wide(1, row, width, 'heading', budget.title);
  sheet.wide(1, row + 1, width, 'note', 'Each as a fraction of the reading at the greatest load; normal: U with k = 2, resolution: the full step, the others: half-widths. Lines can be changed, and the free ones filled.');
  sheet.acrossTo(width, 1, row + 2, 'header', ['Component', undefined, undefined, 'Distribution', 'Half-width or U', 'Divisor', 'Deg. of freedom', 'Sensitivity', 'Contribution', 'Share']);
  const first = row + 3;
  const lines: (BudgetComponent | undefined)[] = [...budget.components, ...Array.from({ length: FREE_LINES }, () => undefined)];
  const last = first + lines.length - 1;
  const range = (column: number) => `${address(column, first)}:${address(column, last)}`;
  const results = last + 2;
  const combined = address(RESULT.value, results);
  lines.forEach((line, i) => componentLine(desk, first + i, line, combined));
  sheet.validate({ range: range(VALUE), rule: { kind: 'number', least: 0 }, message: 'Expected a fraction of 0 or more, like 0.02 %, or nothing.' });
  sheet.validate({ range: range(DISTRIBUTION), rule: { kind: 'list', words: [...DISTRIBUTIONS] }, message: `Expected ${DISTRIBUTIONS.join(', ')}.` });
  sheet.validate({ range: range(DOF), rule: { kind: 'number', least: 1 }, message: 'Expected 1 or more degrees of freedom, or nothing if they are infinite.' });
  sheet.called(`components_${block.id}`, range(CONTRIBUTION));

  const nothing = `OR(${block.waiting},COUNT(${range(CONTRIBUTION)})=0)`;
  const report = (column: number) => formula(`IF(${nothing},"",INDEX(PROVE.UNCERTAINTY(${range(CONTRIBUTION)},${range(DOF)},${PROBABILITY},FALSE),1,${column}))`);
  const expanded = address(RESULT.value, results + 3);
  const shown = 'PROVE.UNCERTAINTY(components,dofs)';
  const rows: readonly (readonly [id: string, label: string, value: Formula, format: string, unit: string, words: string])[] = [
    ['uncertainty', 'Combined standard uncertainty', report(1), FINE, 'of reading', shown],
    ['dof', 'Effective degrees of freedom', report(2), '0.0', '', shown],
    ['coverage_factor', `Coverage factor k, ${PROBABILITY * 100} %`, report(3), '0.000', '', shown],
    ['expanded', 'Expanded uncertainty U', report(4), FINE, 'of reading', shown],
    ['expanded_output', 'U at the greatest load', formula(`IF(${expanded}="","",${expanded}*${budget.output.at})`), '0.0E+00', budget.output.unit, 'U × output'],
    ...(budget.load ? [['expanded_load', 'The same as a load', formula(`IF(${expanded}="","",${expanded}*${budget.load.at})`), '0.0E+00', budget.load.unit, 'U × load'] as const] : []),
  ];
  rows.forEach(([id, label, value, format, unit, words], i) => {
    const at = results + i;
    sheet.put(RESULT.label, at, 'label', label).put(RESULT.value, at, 'result', value, format).put(RESULT.unit, at, 'aside', unit);
    sheet.acrossTo(width, RESULT.function, at, 'formula', [words]);
    sheet.called(`value_${id}${suffix}`, address(RESULT.value, at));
  });
  let nextRow = results + rows.length;
  if (budget.decision) nextRow = decisionLines(desk, nextRow, budget.decision, expanded, suffix);
  return {
    nextRow: nextRow + 1,
    check: (at) => checkLines(desk, checkHeading(desk, at, ', uncertainty'), [{
      id: `uncertainty${suffix}`, label: 'Combined standard unc.', own: `IF(${combined}="","",${combined})`, plain: formula(`IF(${nothing},"",SQRT(${lines.map((_, i) => squared(first + i)).join('+')}))`),
      format: FINE, scale: combined, words: '√Σ(value × sensitivity/divisor)²',
    }]),
  };
}

/** Two-sided probability of the expanded uncertainty, as calibration certificates state it. */
const PROBABILITY = 0.9545;

/** The square of a contribution by built-in functions alone. */
function squared(row: number): string {
  const [value, distribution] = [address(VALUE, row), address(DISTRIBUTION, row)];
  const divisor = `IF(${distribution}="normal",2,IF(${distribution}="triangular",SQRT(6),IF(${distribution}="ushaped",SQRT(2),IF(${distribution}="resolution",SQRT(12),SQRT(3)))))`;
  return `(N(${value})*${address(SENSITIVITY, row)}/${divisor})^2`;
}

function componentLine({ sheet }: Desk, row: number, line: BudgetComponent | undefined, combined: string): void {
  const at = (column: number) => address(column, row);
  const [value, distribution, contribution] = [at(VALUE), at(DISTRIBUTION), at(CONTRIBUTION)];
  if (line) sheet.put(1, row, 'label', line.label);
  else sheet.wide(1, row, DISTRIBUTION - 1, 'input');
  sheet.put(VALUE, row, 'input', line?.value, FINE).put(DISTRIBUTION, row, 'input', line?.distribution ?? 'rectangular');
  sheet.put(DIVISOR, row, 'result', formula(`1/PROVE.STANDARDU(1,${distribution})`), '0.000');
  sheet.put(DOF, row, 'input', line?.dof, '0').put(SENSITIVITY, row, 'input', 1);
  sheet.put(CONTRIBUTION, row, 'result', formula(`IF(${value}="","",PROVE.STANDARDU(${value},${distribution})*${at(SENSITIVITY)})`), FINE);
  const share = `(${contribution}/${combined})^2`;
  sheet.put(SHARE, row, 'result', formula(`IF(OR(${contribution}="",${combined}=""),"",REPT("█",ROUND(5*${share},0))&"▏"&TEXT(${share},"0%"))`));
}

function decisionLines({ sheet, width }: Desk, row: number, { label, value, lower, upper, expanded, unless }: BudgetDecision, relative: string, suffix: string): number {
  const rule = address(RESULT.value, row);
  const decided = address(RESULT.value, row + 1);
  sheet.put(RESULT.label, row, 'label', 'Decision rule').put(RESULT.value, row, 'input', RULES[0]);
  sheet.acrossTo(width, RESULT.function, row, 'formula', ['simple: U not added; guarded: w = U']);
  sheet.validate({ range: rule, rule: { kind: 'list', words: [...RULES] }, message: `Expected ${RULES.join(' or ')}.` });
  sheet.put(RESULT.label, row + 1, 'label', label).put(RESULT.value, row + 1, 'verdict', formula(`IF(OR(${unless},${relative}=""),"",PROVE.DECISION(${value},${lower},${upper},${expanded(relative)},${rule}))`));
  sheet.acrossTo(width, RESULT.function, row + 1, 'formula', ['PROVE.DECISION(value,limits,U,rule)']);
  sheet.called(`decision${suffix}`, decided).called(`decision_rule${suffix}`, rule);
  sheet.highlight({ range: decided, formula: `=${decided}="pass"`, look: 'pass' });
  sheet.highlight({ range: decided, formula: `=${decided}="fail"`, look: 'fail' });
  sheet.highlight({ range: decided, formula: `=LEFT(${decided},11)="conditional"`, look: 'doubt' });
  return row + 2;
}

import { address, formula } from '../planBuilder';
import { type Desk, PERCENT, RESULT, rounded, SCIENTIFIC } from './desk';
import type { ClassLimits, Limited } from './provingLimits';
import type { ProvingSetup } from './provingForm';
import type { ForceTable, Figure, TableCells } from './provingTables';
import { lineRow, type ResultLine, type ResultTable, resultTable } from './resultTable';

/** Cells that the results read besides the tables. */
export interface ResultCells extends TableCells {
  readonly limits: ClassLimits;
  readonly figures: ForceTable<Figure>;
  readonly forces: string;
  readonly standardUncertainty: string;
  readonly form: string;
  readonly degree: string;
}

const SMALL = '0.0000%';
const POWERS = ['', '', '²', '³'];

/** The class wanted over the range wanted, and each figure that it limits; the limits come from the table of classes. */
export function classResults(desk: Desk, row: number, setup: ProvingSetup, cells: ResultCells): ResultTable {
  const { item, formats } = desk;
  const { waiting, calls, limits, figures, count, decreasing, forces } = cells;
  const once = (text: string) => formula(`IF(${waiting},"",${text})`);
  const from = address(6, lineRow(row, 0));
  const ofRange = (call: string, column: number) => `INDEX(${call},${limits.wanted},${column})`;
  const worst = (figure: Figure) => {
    const last = figure === 'v' ? count - 2 : count - 1;
    const within = `(${figures.at('force', 0, last)}>=${from}*(1-1E-9))`;
    return once(`SUMPRODUCT(MAX(${within}*ABS(${figures.at(figure, 0, last)})))`);
  };
  const judged = (of: Limited): ResultLine['judged'] => ({ limit: formula(limits.limit(of)), limitFormat: PERCENT, rule: 'magnitude' });
  const notJudged = ofRange(calls.ranges, 8);
  const uncertainty = (k: number) => `INDEX(${calls.uncertainties},${count},${k + 1})`;
  const lines: ResultLine[] = [
    { id: 'class_from', label: 'The class wanted holds from', unit: item.unit, format: formats.applied, value: once(ofRange(calls.ranges, 2)), function: 'PROVE.FORCECLASSRANGE(F,X,…)', judged: { limit: rounded((item.capacity * setup.classFrom) / 100), limitFormat: formats.applied, rule: 'greatest', name: 'class_from' } },
    { id: 'not_judged', label: 'Not judged for want of data', unit: 'figures', format: '0', value: once(`IF(${notJudged}="",0,1+LEN(${notJudged})-LEN(SUBSTITUTE(${notJudged},",","")))`), function: 'PROVE.FORCECLASSRANGE(F,X,…)', judged: { limit: 0, limitFormat: '0', rule: 'greatest', name: 'not_judged' } },
    { id: 'worst_b', label: 'Greatest b, with rotation', unit: '', format: PERCENT, value: worst('b'), function: 'PROVE.FORCEPROVING(F,X,degree)', judged: judged('b') },
    { id: 'worst_b_same', label: 'Greatest b′, same position', unit: '', format: PERCENT, value: worst('same'), function: 'PROVE.FORCEPROVING(F,X,degree)', judged: judged('b_same') },
    { id: 'worst_fc', label: 'Greatest |fc|, interpolation', unit: '', format: PERCENT, value: worst('fc'), function: 'PROVE.FORCEPROVING(F,X,degree)', judged: judged('fc') },
    ...(decreasing
      ? [{ id: 'worst_v', label: 'Greatest v, reversibility', unit: '', format: PERCENT, value: worst('v'), function: 'PROVE.FORCEPROVING(F,X,degree)', judged: judged('v') }]
      : [{ id: 'creep', label: 'Creep c', unit: 'of X_N', format: SMALL, value: once(`${uncertainty(5)}*SQRT(3)`), function: 'w5·√3 of PROVE.FORCEUNCERTAINTY', judged: judged('c') }]),
    { id: 'f0', label: 'Greatest |f0|, zero', unit: 'of X_N', format: SMALL, value: once(uncertainty(6)), function: 'w6 of PROVE.FORCEUNCERTAINTY', judged: judged('f0') },
    { id: 'force_u', label: 'U of the applied force', unit: 'k = 2', format: PERCENT, value: once(`IF(${cells.standardUncertainty}="","",${cells.standardUncertainty})`), function: 'its uncertainty, k = 2', judged: judged('force') },
    { id: 'relative_resolution', label: 'r/F at the lowest force wanted', unit: '', format: PERCENT, value: once(`IF(N(${from})=0,"",${uncertainty(4)}*SQRT(6)*INDEX(${forces},${count})/${from})`), function: 'w4·√6·F_N/F of PROVE.FORCEUNCERTAINTY', judged: judged('resolution') },
  ];
  return resultTable(desk, row, 'Class wanted over the range wanted', lines);
}

/** The interpolation equation and the equation for W over force. */
export function equationLines(desk: Desk, row: number, cells: ResultCells, uncertainty: ForceTable<'combined' | 'expanded' | 'force'>): ResultTable & { readonly a2: string } {
  const { unit, outputUnit } = desk.item;
  const { waiting, count, figures, forces, degree, form } = cells;
  const once = (text: string) => formula(`IF(${waiting},"",${text})`);
  const fit = `PROVE.FORCEUNCERTAINTYFIT(${forces},${uncertainty.at('expanded', 0, count - 1)},${form},FALSE)`;
  const means = figures.at('mean', 0, count - 1);
  const ofFit = (column: number) => once(`INDEX(${fit},1,${column})`);
  const lines: ResultLine[] = [
    ...[0, 1, 2, 3].map((k): ResultLine => ({
      id: `interpolation_a${k}`, label: k === 0 ? 'Interpolation Xa = ΣA·F^k: A0' : `A${k}`, format: SCIENTIFIC, unit: k === 0 ? outputUnit : `${outputUnit}/${unit}${POWERS[k]}`,
      value: formula(`IF(OR(${waiting},${k}>${degree}),"",INDEX(PROVE.FIT(${forces},${means},${degree}),${k + 1},1))`), function: k === 0 ? 'PROVE.FIT(F,Xr,degree)' : '',
    })),
    { id: 'wc_greatest', label: 'wc at the greatest force', format: SMALL, unit: '', value: once(`INDEX(${cells.calls.uncertainties},${count},10)`), function: 'PROVE.FORCEUNCERTAINTY(F,X,…)' },
    { id: 'equation_a0', label: 'Equation for W: a0', format: SCIENTIFIC, unit: '', value: ofFit(2), function: 'PROVE.FORCEUNCERTAINTYFIT(F,W,form)' },
    { id: 'equation_a1', label: 'a1', format: SCIENTIFIC, unit: 'see form', value: ofFit(3), function: 'inverse: a0 + a1/F; linear: a0 + a1·F' },
    { label: 'a2', format: SCIENTIFIC, unit: '', value: ofFit(4), function: 'quadratic: a0 + a1·F + a2·F²' },
    { id: 'equation_shortfall', label: 'Greatest shortfall below W', format: SMALL, unit: '', value: ofFit(5), function: '' },
    { id: 'equation_raised', label: 'a0 raised by it', format: SCIENTIFIC, unit: '', value: ofFit(7), function: 'at no force below W' },
  ];
  return { ...resultTable(desk, row, 'Equations', lines), a2: address(RESULT.value, lineRow(row, lines.findIndex(({ label }) => label === 'a2'))) };
}

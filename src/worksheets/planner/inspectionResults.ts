import { formula } from '../planBuilder';
import type { InspectionTemplate } from '../templateSchema';
import { type Desk, PERCENT } from './desk';
import { type Resistances, withoutArms, type ZeroCells } from './inspectionReadings';
import { type ResultLine, type ResultTable, resultTable } from './resultTable';

/** Of BRIDGEARMS without headers: the row after the arms, and its last column. */
const DISAGREEMENT = '5,3';

/** What results are computed from. */
export interface InspectionCells {
  readonly resistances: Resistances;
  readonly zero: ZeroCells;
  readonly resistance: string;
  readonly ratedOutput: string;
}

/** Diagonals and zero against the arms, balance and shift of the zero, and the shunt check. */
export function inspectionResults(desk: Desk, row: number, { limits }: InspectionTemplate, cells: InspectionCells): ResultTable {
  const { resistances, zero, ratedOutput } = cells;
  const noArms = withoutArms(resistances);
  const once = (missing: readonly string[], value: string) => formula(`IF(OR(${missing.join(',')}),"",${value})`);
  const armsOf = (rest: string) => `PROVE.BRIDGEARMS(${resistances.each.join(',')},${rest},FALSE)`;
  const judged = (name: string, limit: number | undefined) => ({ limit, limitFormat: PERCENT, rule: 'magnitude' as const, name });
  const noZero = [`${zero.now}=""`, `${ratedOutput}=""`];
  const lines: ResultLine[] = [
    {
      id: 'diagonal_input', label: 'Corners 1–3 against the arms', format: PERCENT, unit: 'of it', function: 'PROVE.BRIDGEARMS(corners,r13)',
      value: once([noArms, `${resistances.input}=""`], `INDEX(${armsOf(`${resistances.input},`)},${DISAGREEMENT})`), judged: judged('diagonal_input', limits.diagonals),
    },
    {
      id: 'diagonal_output', label: 'Corners 2–4 against the arms', format: PERCENT, unit: 'of it', function: 'PROVE.BRIDGEARMS(corners,,r24)',
      value: once([noArms, `${resistances.output}=""`], `INDEX(${armsOf(`,${resistances.output}`)},${DISAGREEMENT})`), judged: judged('diagonal_output', limits.diagonals),
    },
    {
      id: 'zero_balance', label: 'Zero balance', format: PERCENT, unit: 'of RO', function: 'PROVE.ZEROBALANCE(zero,output)',
      value: once(noZero, `PROVE.ZEROBALANCE(${zero.now},${ratedOutput})`), judged: judged('zero_balance', limits.zero_balance),
    },
    {
      id: 'zero_shift', label: 'Shift of zero since then', format: PERCENT, unit: 'of RO', function: 'PROVE.ZEROSHIFT(then,now,output)',
      value: once([...noZero, `${zero.then}=""`], `PROVE.ZEROSHIFT(${zero.then},${zero.now},${ratedOutput})`), judged: judged('zero_shift', limits.zero_shift),
    },
    ...(zero.shunt ? ratioLines(zero.shunt) : []),
  ];
  return resultTable(desk, row, 'Results', lines);

  /** What is told in mV/V alone. */
  function ratioLines({ resistor, change }: NonNullable<ZeroCells['shunt']>): ResultLine[] {
    const implied = `PROVE.BRIDGEOUTPUT(${resistances.arms})`;
    const expected = `PROVE.SHUNTOUTPUT(${cells.resistance},${resistor})`;
    const noShunt = [`${resistor}=""`, `${cells.resistance}=""`];
    return [
      { id: 'zero_implied', label: 'Zero that the arms imply', format: desk.formats.output, unit: 'mV/V', function: 'PROVE.BRIDGEOUTPUT(arms)', value: once([noArms], implied) },
      {
        id: 'zero_difference', label: 'Zero read, less that of the arms', format: PERCENT, unit: 'of RO', function: '(zero − zero of the arms)/output',
        value: once([noArms, ...noZero], `(${zero.now}-${implied})/${ratedOutput}`), judged: judged('zero_difference', limits.zero_difference),
      },
      { id: 'shunt_expected', label: 'Shunt: change expected', format: `${desk.formats.output}0`, unit: 'mV/V', function: 'PROVE.SHUNTOUTPUT(R,shunt)', value: once(noShunt, expected) },
      {
        id: 'shunt', label: 'Shunt: shown against expected', format: PERCENT, unit: 'of it', function: '|change|/expected − 1',
        value: once([...noShunt, `${change}=""`], `ABS(${change})/${expected}-1`), judged: judged('shunt', limits.shunt),
      },
    ];
  }
}

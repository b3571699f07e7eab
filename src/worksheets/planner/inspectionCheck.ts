import { address, formula, type Formula } from '../planBuilder';
import { checkHeading, type CheckLine, checkLines } from './checkLines';
import { type Desk, PERCENT, RESULT } from './desk';
import { OHMS, withoutArms } from './inspectionReadings';
import type { InspectionCells } from './inspectionResults';
import type { ResultTable } from './resultTable';

const STEPS = 3;
const ARMS = [1, 2, 3, 4];

/** The results again by built-in functions; gives the next free row. */
export function inspectionCheck(desk: Desk, row: number, cells: InspectionCells, { values }: ResultTable): number {
  const { zero, resistance, resistances, ratedOutput } = cells;
  const top = checkHeading(desk, row);
  const sum = inverseSum(desk, top, cells);
  const table = top + 1;
  const arm = (n: number) => address(RESULT.value, table + n);
  const [r1, r2, r3, r4] = ARMS.map(arm);
  const once = (missing: string, plain: string): Formula => formula(`IF(OR(${missing}),"",${plain})`);
  const noArms = `${r1}="",${r2}="",${r3}="",${r4}=""`;
  const noZero = `${zero.now}="",${ratedOutput}=""`;
  const implied = `1000*(${r1}*${r3}-${r2}*${r4})/((${r1}+${r2})*(${r3}+${r4}))`;
  const line = (id: string, label: string, format: string, scale: string, plain: Formula, words: string): CheckLine => {
    const own = (values.get(id) ?? resistances.armsById.get(id)) as string;
    return { id, label, own: `IF(${own}="","",${own})`, plain, format, scale, words };
  };
  const across = (read: string, [a, b, c, d]: readonly string[]) => `${read}*(${a}+${b}+${c}+${d})/((${a}+${b})*(${c}+${d}))-1`;
  return checkLines(desk, table, [
    ...ARMS.map((n) => line(`arm_${n}`, `Arm ${n}`, OHMS, resistance, once(sum.missing, `(1-SQRT(1-4*${resistances.each[n - 1]}*${sum.cell}))/(2*${sum.cell})`), 'R = (1 − √(1 − 4·r/S))·S/2')),
    line('diagonal_input', 'Corners 1–3', PERCENT, '1', once(`${noArms},${resistances.input}=""`, across(resistances.input, [r1, r2, r3, r4])), 'r·S/((R1 + R2)·(R3 + R4)) − 1'),
    line('diagonal_output', 'Corners 2–4', PERCENT, '1', once(`${noArms},${resistances.output}=""`, across(resistances.output, [r2, r3, r4, r1])), 'r·S/((R2 + R3)·(R4 + R1)) − 1'),
    line('zero_balance', 'Zero balance', PERCENT, '1', once(noZero, `${zero.now}/${ratedOutput}`), 'zero/rated output'),
    line('zero_shift', 'Shift of zero', PERCENT, '1', once(`${noZero},${zero.then}=""`, `(${zero.now}-${zero.then})/${ratedOutput}`), '(zero − zero then)/rated output'),
    ...(zero.shunt ? [
      line('zero_implied', 'Zero of the arms', desk.formats.output, '1', once(noArms, implied), '1000·(R1·R3 − R2·R4)/((R1 + R2)·(R3 + R4))'),
      line('zero_difference', 'Zero less that', PERCENT, '1', once(`${noArms},${noZero}`, `(${zero.now}-${implied})/${ratedOutput}`), '(zero − that)/rated output'),
      line('shunt_expected', 'Shunt, expected', `${desk.formats.output}0`, '1', once(`${zero.shunt.resistor}="",${resistance}=""`, shuntChange(resistance, zero.shunt.resistor)), '1000·R/(4·Rs + 2·R)'),
      line('shunt', 'Shunt, shown', PERCENT, '1', once(`${zero.shunt.resistor}="",${zero.shunt.change}="",${resistance}=""`, `ABS(${zero.shunt.change})/(${shuntChange(resistance, zero.shunt.resistor)})-1`), '|change|/expected − 1'),
    ] : []),
  ]);
}

function shuntChange(resistance: string, shunt: string): string {
  return `1000*${resistance}/(4*${shunt}+2*${resistance})`;
}

/**
 * One over the sum of the arms, 1/S, in a row of Newton's steps from that of equal arms: Σ√(1 − 4·r/S) = 2, as each arm up to
 * S/2 is R = (1 − √(1 − 4·r/S))·S/2. Nothing is given where the steps do not settle: an arm greater than the other three together.
 */
function inverseSum({ sheet }: Desk, row: number, { resistances }: InspectionCells): { readonly cell: string; readonly missing: string } {
  const r = resistances.neighbours;
  const step = (i: number) => address(RESULT.value + i, row);
  sheet.put(1, row, 'label', '1/S, three steps from equal arms').put(RESULT.value, row, 'reference', formula(`IF(${withoutArms(resistances)},"",3/(4*SUM(${r})))`), '0.00000E+00');
  for (let i = 1; i <= STEPS; i += 1) {
    const before = step(i - 1);
    const root = `SQRT(1-4*${r}*${before})`;
    sheet.put(RESULT.value + i, row, 'reference', formula(`IF(${before}="","",IFERROR(${before}+(SUMPRODUCT(${root})-2)/SUMPRODUCT(2*${r}/${root}),""))`), '0.000E+00');
  }
  const [before, cell] = [step(STEPS - 1), step(STEPS)];
  sheet.put(RESULT.value + STEPS + 1, row, 'formula', 'Σ√(1 − 4·r/S) = 2, r between corners');
  // Not settled: the last step was no small one. Text of no letters times 1 would be an error, which counts as not settled.
  return { cell, missing: `ISERROR(1*${cell}),IFERROR(ABS(${before}/${cell}-1),1)>1E-9` };
}

import { address, formula } from '../planBuilder';
import { type Desk, PERCENT, RESULT } from './desk';
import type { InspectionCells } from './inspectionResults';

const WAYS = ['across an arm', 'in series with an arm'];
/** Columns of the table, besides those of results. */
const ARM = 3;
const STANDARD = 6;
const ZERO = 7;
const OF_OUTPUT = 8;
/** Columns of ZEROTRIM. */
const TRIM = { arm: 2, ohms: 3, standard: 5, zero: 6 } as const;

/** Resistors that would re-zero the bridge, and the shunt for an output; gives the next free row. */
export function trimCalculator({ sheet, width, item, formats }: Desk, row: number, { zero, resistance, ratedOutput }: InspectionCells): number {
  sheet.wide(1, row, width, 'heading', 'Calculators: shunt, re-zero');
  sheet.wide(1, row + 1, width, 'caution', 'A trimmed cell is out of calibration until it is run again. A trim changes span and temperature effect on zero a little: a resistor of low temperature coefficient, and only with the customer’s consent. It hides a set or moisture, and mends neither.');
  const [wanted, target] = [address(RESULT.value, row + 2), address(RESULT.value, row + 3)];
  sheet.put(1, row + 2, 'label', 'Shunt for a change of').put(RESULT.value, row + 2, 'input', item.ratedOutput, formats.output).put(RESULT.unit, row + 2, 'aside', 'mV/V');
  sheet.put(STANDARD, row + 2, 'result', formula(`IF(OR(${wanted}="",${resistance}=""),"",PROVE.SHUNTRESISTOR(${resistance},${wanted}))`), '0').put(ZERO, row + 2, 'aside', 'Ω across one arm, by PROVE.SHUNTRESISTOR(R,change)');
  sheet.put(1, row + 3, 'label', 'Zero to reach').put(RESULT.value, row + 3, 'input', 0, formats.output).put(RESULT.unit, row + 3, 'aside', 'mV/V').put(STANDARD, row + 3, 'aside', 'by PROVE.ZEROTRIM(zero,R,target), R of an arm, nominal');
  sheet.acrossTo(width, 1, row + 4, 'header', ['Resistor', undefined, 'Arm', 'Exact', 'Unit', 'Nearest E96', 'Zero then', 'of RO']);
  const trims = `PROVE.ZEROTRIM(${zero.now},${resistance},${target},FALSE)`;
  WAYS.forEach((way, i) => {
    const at = row + 5 + i;
    const then = address(ZERO, at);
    const part = (column: number, none = '""') => formula(`IF(OR(${zero.now}="",${target}="",${resistance}=""),"",IF(${zero.now}=${target},${none},INDEX(${trims},${i + 1},${column})))`);
    sheet.put(1, at, 'label', way).put(ARM, at, 'result', part(TRIM.arm, '"none needed"')).put(RESULT.value, at, 'result', part(TRIM.ohms), '0.000').put(RESULT.unit, at, 'aside', 'Ω');
    sheet.put(STANDARD, at, 'result', part(TRIM.standard), '0.###').put(ZERO, at, 'result', part(TRIM.zero), formats.output);
    sheet.put(OF_OUTPUT, at, 'result', formula(`IF(OR(${then}="",${ratedOutput}=""),"",${then}/${ratedOutput})`), PERCENT);
  });
  sheet.validate({ range: target, rule: { kind: 'number' }, message: 'Expected a zero in mV/V, as a number, or nothing.' });
  sheet.validate({ range: wanted, rule: { kind: 'number', least: 0 }, message: 'Expected a change of output in mV/V above 0, or nothing.' });
  return row + 8;
}

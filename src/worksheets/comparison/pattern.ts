import { formula } from '../planBuilder';
import { type Desk, RESULT } from '../planner/desk';
import type { HeadCells } from './comparisonHead';
import type { LastCells } from './lastTable';

/** What a pattern of changes fits, in words; a hint from common practice, no source. */
export const PATTERNS = {
  none: 'no results of last time to compare with',
  sign: 'the output has the other sign than last time: fits exchanged wires, or the sign as it was typed',
  unsteady: 'the zero drifts within the run: fits moisture or low insulation; test the insulation',
  overload: 'zero moved with the load, span kept: fits an overload (permanent set)',
  against: 'zero moved against the load, span kept: fits an overload the other way, or a changed bridge or wire',
  both: 'zero and span moved: fits damage by overload, or a repair of the bridge',
  alike: 'span alone, alike in every direction: fits the indicator, the cable or the standard',
  oneWay: 'span alone, unlike in its directions: fits fatigue, or adapters and alignment',
  span: 'span alone: fits the indicator, the cable or the standard, or fatigue',
  spanOnly: 'span changed, zero of last time not known: type it to tell more',
  kept: 'zero and span kept: fits ordinary use',
  spanKept: 'span kept, zero of last time not known',
} as const;

const HINT = '; a hint, not a verdict';

/** The line that says what the changes of a block fit, each block after its own results; gives the next free row. */
export function patternLine({ sheet, width }: Desk, row: number, own: LastCells, others: readonly LastCells[], head: HeadCells): number {
  sheet.put(RESULT.label, row, 'label', 'What it fits (a hint, not a verdict)');
  sheet.wide(RESULT.value, row, width - RESULT.value + 1, 'result', formula(patternText(own, others, head)));
  sheet.called(own.named('pattern'), `${String.fromCharCode(64 + RESULT.value)}${row}`);
  return row + 2;
}

function patternText(own: LastCells, others: readonly LastCells[], { zeroMoved, spanChanged, zeroUnsteady }: HeadCells): string {
  const [zero, span, spread] = ['zero_change', 'span_change', 'zero_spread'].map(own.value);
  const words = (id: keyof typeof PATTERNS) => `"${PATTERNS[id]}${id === 'none' ? '' : HINT}"`;
  const beyond = (value: string, limit: string) => `ABS(N(${value}))>=N(${limit})`;
  const changed = beyond(span, spanChanged);
  const alike = others.map((other) => `ABS(N(${other.value('span_change')})-${span})<N(${spanChanged})`);
  const alone = alike.length === 0 ? words('span') : `IF(AND(${alike.join(',')}),${words('alike')},${words('oneWay')})`;
  const zeroKnown = `IF(${beyond(zero, zeroMoved)},IF(${changed},${words('both')},IF(${zero}>0,${words('overload')},${words('against')})),IF(${changed},${alone},${words('kept')}))`;
  const known = `IF(${zero}="",IF(${changed},${words('spanOnly')},${words('spanKept')}),${zeroKnown})`;
  const steady = `IF(AND(${spread}<>"",N(${spread})>=N(${zeroUnsteady})),${words('unsteady')},${known})`;
  return `IF(${span}="",${words('none')},IF(${own.outputThen}*${own.outputNow}<0,${words('sign')},${steady}))`;
}

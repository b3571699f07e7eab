import type { Injector } from '@univerjs/core';
import { IFunctionService, LexerTreeBuilder, sequenceNodeType } from '@univerjs/engine-formula';

const MESSAGES: Readonly<Record<string, string>> = {
  '#VALUE!': 'a value is of the wrong kind for a function or operator, or has the wrong size, or a sheet that is named does not exist',
  '#N/A': 'no value is available: nothing was found, an argument is missing or one too many, or arrays differ in size',
  '#DIV/0!': 'a division by zero, or a statistic of too few numbers',
  '#NUM!': 'a number is outside what a function can take, or the result is outside the range of numbers',
  '#NAME?': 'a name is not known; text needs quotes',
  '#REF!': 'a reference points outside the sheet, or to cells that are gone',
  '#NULL!': 'two ranges have no cell in common',
  '#SPILL!': 'the result does not fit: a cell below or to the right is not empty, or the sheet ends',
  '#CALC!': 'the calculation gives nothing that a cell can show',
  '#CYCLE!': 'the formula refers to a cell that refers back to itself',
};

const NAME = /^[A-Za-z_][\w.]*$/;

/** What an error of the engine's own functions means; it gives no reasons itself. */
export function errorMessage(code: string): string {
  return MESSAGES[code] ?? 'the formula cannot be computed';
}

/** Which function or name of a formula is not known; undefined if none is found. */
export function nameMessage(injector: Injector, formula: string): string | undefined {
  const functions = injector.get(IFunctionService);
  const nodes = injector.get(LexerTreeBuilder).sequenceNodesBuilder(formula) ?? [];
  for (const node of nodes) {
    if (typeof node === 'string' || !NAME.test(node.token) || functions.hasExecutor(node.token.toUpperCase())) continue;
    if (node.nodeType === sequenceNodeType.FUNCTION && formula.includes(`${node.token}(`)) return `there is no function ${node.token}`;
    if (node.nodeType === sequenceNodeType.FUNCTION) return `the name ${node.token} is not known; text needs quotes`;
  }
  return undefined;
}

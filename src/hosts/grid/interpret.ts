import type { Injector, Nullable, Worksheet } from '@univerjs/core';
import {
  type ArrayValueObject, AstTreeBuilder, type BaseReferenceObject, type BaseValueObject, CELL_INVERTED_INDEX_CACHE, type ErrorValueObject, type FunctionVariantType,
  generateExecuteAstNodeData, IFormulaCurrentConfigService, IFormulaRuntimeService, Interpreter, Lexer, LexerNode,
} from '@univerjs/engine-formula';
import { CellError } from './cellData';
import type { EngineValue } from './engine';
import { expandNames } from './localNames';
import { errorMessage, nameMessage } from './nativeErrors';
import { syntaxProblem } from './syntax';

/** A formula, and the sheet that its references without a sheet name mean. */
export interface Question {
  readonly unitId: string;
  readonly sheet: Worksheet;
  /** With its leading "=". */
  readonly formula: string;
}

/** The value of a formula that stands in no cell. An array, unless of one cell, comes row by row; a formula that cannot be read gives an error. */
export async function interpret(injector: Injector, question: Question): Promise<EngineValue | EngineValue[][]> {
  const problem = syntaxProblem(question.formula);
  if (problem) return new CellError('#ERROR!', problem);
  const value = await compute(injector, question);
  if (!value) return new CellError('#ERROR!', 'the formula cannot be read; check its operators, brackets and separators');
  const name = nameMessage(injector, question.formula);
  if (!value.isArray()) return toValue(value, name);
  const array = value as ArrayValueObject;
  const rows = Array.from({ length: array.getRowCount() }, (_, row) =>
    Array.from({ length: array.getColumnCount() }, (_unused, column) => toValue(array.get(row, column), name)));
  return rows.length === 1 && rows[0].length === 1 ? rows[0][0] : rows;
}

async function compute(injector: Injector, { unitId, sheet, formula }: Question): Promise<BaseValueObject | undefined> {
  const runtime = injector.get(IFormulaRuntimeService);
  const interpreter = injector.get(Interpreter);
  injector.get(IFormulaCurrentConfigService).loadDataLite();
  runtime.setCurrent(0, 0, sheet.getRowCount(), sheet.getColumnCount(), sheet.getSheetId(), unitId);
  try {
    const lexed = injector.get(Lexer).treeBuilder(expandNames(injector, unitId, sheet.getSheetId(), formula));
    const tree = lexed instanceof LexerNode ? injector.get(AstTreeBuilder).parse(lexed) : undefined;
    if (!tree) return undefined;
    const node = generateExecuteAstNodeData(tree);
    const value: FunctionVariantType = interpreter.checkAsyncNode(tree) ? await interpreter.executeAsync(node) : interpreter.execute(node);
    return value.isReferenceObject() ? (value as BaseReferenceObject).toArrayValueObject() : (value as BaseValueObject);
  } finally {
    // What comparisons remember of whole columns would be taken for current in the next calculation.
    CELL_INVERTED_INDEX_CACHE.clear();
  }
}

function toValue(value: Nullable<BaseValueObject>, nameError: string | undefined): EngineValue {
  if (!value || value.isNull()) return null;
  if (value.isError()) {
    const error = value as ErrorValueObject;
    const code = error.getErrorType();
    return new CellError(code, error.getErrorContent() || (code === '#NAME?' && nameError) || errorMessage(code));
  }
  if (value.isLambda()) return new CellError('#CALC!', 'the formula gives a function; expected a value, so call it with its arguments');
  const plain = value.getValue() as number | string | boolean;
  if (typeof plain === 'number' && !Number.isFinite(plain)) return new CellError('#NUM!', errorMessage('#NUM!'));
  return plain;
}

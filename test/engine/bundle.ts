/** The engine as `npm run evaluate` runs it. Its packages load only when bundled; scripts/test.mjs builds the bundle first. */
import path from 'node:path';
import type * as Evaluate from '../../src/hosts/grid/evaluate';

const file = path.join(__dirname, '..', '..', 'build', 'evaluate.cjs');

export const { Engine, CellError, GridSheets, describeCellFunctions, descriptionOf, messageAt } = require(file) as typeof Evaluate;
export type Engine = Evaluate.Engine;
export type EngineSheet = ConstructorParameters<typeof Evaluate.Engine>[0][number];

const running: Engine[] = [];

/** A computed workbook, disposed of after the test. */
export async function computed(...sheets: EngineSheet[]): Promise<Engine> {
  const engine = new Engine(sheets);
  running.push(engine);
  await engine.calculate();
  return engine;
}

afterEach(() => {
  running.splice(0).forEach((engine) => engine.dispose());
});

/** A formula for a cell. */
export function formula(text: string): { formula: string } {
  return { formula: text };
}

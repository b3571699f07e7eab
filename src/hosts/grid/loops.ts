import type { Injector, Workbook } from '@univerjs/core';
import { IUniverInstanceService, UniverInstanceType } from '@univerjs/core';
import {
  FormulaDependencyTree, type IFormulaDependencyTree, IDependencyManagerService, IFormulaDependencyGenerator, IFormulaRuntimeService,
} from '@univerjs/engine-formula';
import { addressOf } from '../address';
import type { CellMessages } from './messages';
import { stronglyConnected, wayRound } from './graph';

/** How many cells of a loop a message names. */
const NAMED = 5;

/**
 * Makes every cell of a circular reference an error. As it comes, the engine computes each once with whatever the others held before,
 * which looks like a result. To be called once an engine.
 */
export function mendLoops(injector: Injector, messages: CellMessages): void {
  const generator = injector.get(IFormulaDependencyGenerator);
  const runtime = injector.get(IFormulaRuntimeService);
  const generate = generator.generate.bind(generator);
  generator.generate = async (isModel) => {
    const formulas = await generate(isModel);
    return runtime.isCycleDependency() ? withoutLoops(injector, messages, formulas) : formulas;
  };
}

function withoutLoops(injector: Injector, messages: CellMessages, formulas: IFormulaDependencyTree[]): IFormulaDependencyTree[] {
  const byId = new Map(formulas.map((formula) => [formula.treeId, formula]));
  const needs = precedents(injector, formulas);
  const failing = new Set<number>();
  for (const group of stronglyConnected([...byId.keys()], needs)) {
    for (const id of group) {
      const way = wayRound(id, needs, new Set(group));
      if (!way) continue;
      failing.add(id);
      messages.failed(placeOf(byId.get(id)!), { code: '#CYCLE!', message: words(injector, way.map((step) => byId.get(step)!)) });
    }
  }
  return formulas.map((formula) => (failing.has(formula.treeId) ? failure(formula) : formula));
}

/** For each formula the formulas it reads. */
function precedents(injector: Injector, formulas: readonly IFormulaDependencyTree[]): Map<number, number[]> {
  const dependencies = injector.get(IDependencyManagerService);
  const needs = new Map<number, number[]>(formulas.map(({ treeId }) => [treeId, []]));
  dependencies.openKdTree();
  for (const formula of formulas) {
    for (const reader of dependencies.searchDependency(formula.toRTreeItem())) needs.get(reader)?.push(formula.treeId);
  }
  dependencies.closeKdTree();
  return needs;
}

/** The same cell with an error for a formula. */
function failure(formula: IFormulaDependencyTree): IFormulaDependencyTree {
  const { unitId, subUnitId, row, column, rowCount, columnCount } = formula;
  return Object.assign(new FormulaDependencyTree(formula.treeId), { unitId, subUnitId, row, column, rowCount, columnCount, formula: '=#CYCLE!' });
}

function words(injector: Injector, way: readonly IFormulaDependencyTree[]): string {
  const [own, ...others] = way;
  if (others.length === 0) return 'the formula refers to its own cell';
  const names = others.slice(0, NAMED).map((cell) => nameOf(injector, cell, own.subUnitId));
  return `the formula refers back to its own cell, by way of ${names.join(', ')}${others.length > NAMED ? ' and more' : ''}`;
}

function nameOf(injector: Injector, cell: IFormulaDependencyTree, onSheet: string): string {
  if (cell.subUnitId === onSheet) return addressOf(cell);
  const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(cell.unitId, UniverInstanceType.UNIVER_SHEET);
  return `${workbook?.getSheetBySheetId(cell.subUnitId)?.getName() ?? ''}!${addressOf(cell)}`;
}

function placeOf({ unitId, subUnitId, row, column }: IFormulaDependencyTree): { unitId: string; sheetId: string; row: number; column: number } {
  return { unitId, sheetId: subUnitId, row, column };
}

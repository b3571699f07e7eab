import { ICommandService, type IMutationInfo, type Injector, IUndoRedoService, mergeWorksheetSnapshotWithDefault, type Workbook, type Worksheet } from '@univerjs/core';
import { AddDataValidationMutation, DataValidationModel, RemoveDataValidationMutation } from '@univerjs/data-validation';
import { RemoveDefinedNameMutation, SetDefinedNameMutation } from '@univerjs/engine-formula';
import { InsertSheetMutation, RemoveSheetMutation, SetWorksheetNameMutation } from '@univerjs/sheets';
import {
  AddConditionalRuleMutation, ConditionalFormattingRuleModel, DeleteConditionalRuleMutation,
} from '@univerjs/sheets-conditional-formatting';
import type { SheetPlan } from '../../worksheets/plan';
import { namesOf } from './localNames';
import { definedNames } from './sheetNames';
import { highlightRules, validationRules } from './sheetRules';
import { sheetData, StyleTable } from './workbook';

/** A change of the workbook, and what takes it back. */
export interface Step {
  readonly change: IMutationInfo;
  readonly back: IMutationInfo;
}

/** A sheet with all that the grid keeps beside it, as the steps that bring it into a workbook. */
type Sheet = Parameters<typeof mergeWorksheetSnapshotWithDefault>[0] & { readonly id: string; readonly name: string };

/**
 * The steps that put a plan in the place of a sheet. The sheet goes last, since it may be the only one, under another name, since the
 * engine would take it for the new one. Formulas of other sheets keep its name, and so read the new one.
 */
export function replacement(injector: Injector, workbook: Workbook, plan: SheetPlan, sheetId: string, old: Worksheet): Step[] {
  const aside = `${old.getName()} ${sheetId}`;
  return [
    renaming(workbook.getUnitId(), old, aside),
    ...insertion(workbook, plan, sheetId, `${plan.name} ${sheetId} gone`),
    ...withdrawal(injector, workbook, old, aside),
  ];
}

/**
 * The steps that put a plan into a workbook as its last sheet, of the given id. When it is taken back, the engine looks for `nameGone`
 * in formulas that are to become #REF!.
 */
export function insertion(workbook: Workbook, plan: SheetPlan, sheetId: string, nameGone = plan.name): Step[] {
  const unitId = workbook.getUnitId();
  const styles = new StyleTable(`${sheetId}-`);
  const sheet = { ...sheetData(plan, sheetId, styles), name: plan.name };
  const place = { unitId, index: workbook.getSheetSize(), styles: styles.all, nameGone };
  // Names first: formulas are read when their sheet comes.
  return [
    ...definedNames(plan, sheetId).map((name) => naming(unitId, name)),
    adding(sheet, place),
    ...rules(unitId, sheetId, validationRules(plan, sheetId), highlightRules(plan, sheetId)),
  ];
}

/** The steps that take a sheet, under the name it has by then, out of a workbook, with all that belongs to it. */
function withdrawal(injector: Injector, workbook: Workbook, sheet: Worksheet, name: string): Step[] {
  const unitId = workbook.getUnitId();
  const sheetId = sheet.getSheetId();
  const snapshot = { ...sheet.getSnapshot(), name };
  const steps = [
    ...namesOf(injector, unitId, sheetId).map((known) => naming(unitId, known)),
    adding(snapshot, { unitId, index: workbook.getSheetIndex(sheet), nameGone: name }),
    ...rules(
      unitId, sheetId,
      injector.get(DataValidationModel).getRules(unitId, sheetId),
      injector.get(ConditionalFormattingRuleModel).getSubunitRules(unitId, sheetId) ?? [],
    ),
  ];
  return steps.reverse().map(({ change, back }) => ({ change: back, back: change }));
}

function renaming(unitId: string, sheet: Worksheet, name: string): Step {
  const place = { unitId, subUnitId: sheet.getSheetId() };
  return {
    change: { id: SetWorksheetNameMutation.id, params: { ...place, name } },
    back: { id: SetWorksheetNameMutation.id, params: { ...place, name: sheet.getName() } },
  };
}

function naming(unitId: string, name: object): Step {
  const params = { unitId, ...name };
  return { change: { id: SetDefinedNameMutation.id, params }, back: { id: RemoveDefinedNameMutation.id, params } };
}

function adding(sheet: Sheet, { unitId, index, styles, nameGone }: { unitId: string; index: number; styles?: object; nameGone: string }): Step {
  return {
    change: { id: InsertSheetMutation.id, params: { unitId, index, sheet: mergeWorksheetSnapshotWithDefault(sheet), styles } },
    back: { id: RemoveSheetMutation.id, params: { unitId, subUnitId: sheet.id, subUnitName: nameGone } },
  };
}

/** The grid puts a new highlight before the others, so the last comes first. */
function rules(unitId: string, subUnitId: string, validations: readonly { uid: string }[], highlights: readonly { cfId: string }[]): Step[] {
  const of = { unitId, subUnitId };
  return [
    ...validations.map((rule) => ({
      change: { id: AddDataValidationMutation.id, params: { ...of, rule } },
      back: { id: RemoveDataValidationMutation.id, params: { ...of, ruleId: rule.uid } },
    })),
    ...[...highlights].reverse().map((rule) => ({
      change: { id: AddConditionalRuleMutation.id, params: { ...of, rule } },
      back: { id: DeleteConditionalRuleMutation.id, params: { ...of, cfId: rule.cfId } },
    })),
  ];
}

/** Steps taken one after the other: all of them, or none. */
export class Steps {
  private readonly commands: ICommandService;

  constructor(private readonly injector: Injector, private readonly steps: readonly Step[]) {
    this.commands = injector.get(ICommandService);
  }

  /** Takes every step. If one fails, those before it are taken back, and its error is thrown. */
  take(): void {
    this.steps.forEach(({ change }, index) => {
      try {
        if (!this.commands.syncExecuteCommand(change.id, change.params)) throw new Error(`the grid refused a step (${change.id})`);
      } catch (error) {
        this.takeBack(index);
        throw error;
      }
    });
  }

  /** Takes back the steps before `end`, the last one first. */
  takeBack(end = this.steps.length): void {
    for (const { back } of this.steps.slice(0, end).reverse()) this.commands.syncExecuteCommand(back.id, back.params);
  }

  /** Makes the steps one for undo. */
  noteForUndo(unitID: string): void {
    this.injector.get(IUndoRedoService).pushUndoRedo({
      unitID,
      redoMutations: this.steps.map(({ change }) => change),
      undoMutations: this.steps.map(({ back }) => back).reverse(),
    });
  }
}

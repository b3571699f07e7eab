import { CommandType, ICommandService, type IMutation, type Injector, IUniverInstanceService, UniverInstanceType, type Workbook } from '@univerjs/core';
import { RemoveDefinedNameMutation, SetDefinedNameMutation } from '@univerjs/engine-formula';
import { CopySheetCommand, SheetInterceptorService } from '@univerjs/sheets';
import { namesOf } from './localNames';
import { definedNames, planName } from './sheetNames';

interface CopyNamesParams {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly targetSubUnitId: string;
}

/** Gives a copied sheet the names of the one it was copied from, for its own cells. To be called once an engine. */
export function copyNamesWithSheet(injector: Injector): void {
  injector.get(ICommandService).registerCommand(copyNames(injector));
  injector.get(SheetInterceptorService).interceptCommand({
    getMutations: ({ id, params }) => {
      const { unitId, subUnitId, targetSubUnitId } = (params ?? {}) as Partial<CopyNamesParams>;
      if (id !== CopySheetCommand.id || !unitId || !subUnitId || !targetSubUnitId) return { redos: [], undos: [] };
      const names = namesOf(injector, unitId, subUnitId).flatMap((name) => planName(name) ?? []);
      return {
        redos: names.length > 0 ? [{ id: COPY_NAMES, params: { unitId, subUnitId, targetSubUnitId } }] : [],
        undos: definedNames({ name: '', names }, targetSubUnitId).map((name) => ({ id: RemoveDefinedNameMutation.id, params: { unitId, ...name } })),
      };
    },
  });
}

const COPY_NAMES = 'provingsheet.mutation.copy-names';

/** A change of its own, since what the copy is called is known only when it is there. */
function copyNames(injector: Injector): IMutation<CopyNamesParams> {
  return {
    id: COPY_NAMES,
    type: CommandType.MUTATION,
    handler: (accessor, { unitId, subUnitId, targetSubUnitId }) => {
      const workbook = accessor.get(IUniverInstanceService).getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
      const copy = workbook?.getSheetBySheetId(targetSubUnitId);
      if (!copy) return false;
      const commands = accessor.get(ICommandService);
      const names = namesOf(injector, unitId, subUnitId).flatMap((name) => planName(name) ?? []);
      return definedNames({ name: copy.getName(), names }, targetSubUnitId)
        .every((name) => commands.syncExecuteCommand(SetDefinedNameMutation.id, { unitId, ...name }));
    },
  };
}

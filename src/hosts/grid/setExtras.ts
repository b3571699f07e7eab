import { CommandType, type IMutation, IUniverInstanceService, UniverInstanceType, type Workbook } from '@univerjs/core';
import { EXTRAS, type SheetExtras } from './sheetExtras';

/** Which sheet is to keep what. */
interface SetExtrasParams {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly extras: SheetExtras;
}

/** Changes what a sheet keeps beside its cells, in a way that is stored and undone like any other change. */
export const SetExtrasMutation: IMutation<SetExtrasParams> = {
  id: 'provingsheet.mutation.set-extras',
  type: CommandType.MUTATION,
  handler: (accessor, { unitId, subUnitId, extras }) => {
    const workbook = accessor.get(IUniverInstanceService).getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
    const sheet = workbook?.getSheetBySheetId(subUnitId);
    sheet?.setCustomMetadata({ ...sheet.getCustomMetadata(), [EXTRAS]: extras });
    return Boolean(sheet);
  },
};

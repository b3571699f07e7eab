import type { RunExcel } from './selection';

/** The workbook before a sheet was written, as far as writing changes it. */
export interface Before {
  readonly ids: ReadonlySet<string>;
  /** The id of the sheet that was shown. */
  readonly active: string;
  /** The sheet whose place the new one takes. */
  readonly old?: { readonly id: string; readonly name: string };
  /** The name of the new sheet until it is complete. */
  readonly building: string;
  /** The name of the old sheet between that and its deletion. */
  readonly aside: string;
}

/**
 * Excel stops a batch at the first call that fails and leaves what came before it. This finds out how far the writing of
 * the sheet `name` went, and takes it back. Gives "complete" if all was done and only the answer was lost.
 */
export async function rollBack(run: RunExcel, before: Before, name: string): Promise<'undone' | 'complete'> {
  return run({ delayForCellEdit: true }, async (context) => {
    const sheets = context.workbook.worksheets;
    sheets.load('items/id,items/name');
    await context.sync();
    const ours = sheets.items.filter((sheet) => !before.ids.has(sheet.id) && (sameName(sheet.name, before.building) || sameName(sheet.name, name)));
    const old = sheets.items.find(({ id }) => id === before.old?.id);
    // The new sheet takes its name after it is built, and the old one goes last.
    if (before.old && !old && ours.some((sheet) => sameName(sheet.name, name))) return 'complete';
    for (const sheet of ours) sheet.delete();
    if (old && before.old) old.name = before.old.name;
    sheets.items.find(({ id }) => id === before.active)?.activate();
    await context.sync();
    return 'undone';
  });
}

/** Excel tells sheets apart without regard to case. */
export function sameName(first: string, second: string): boolean {
  return first.toUpperCase() === second.toUpperCase();
}

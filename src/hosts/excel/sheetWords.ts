import { codeOf } from './errorWords';

/** Why Excel did not do something with a sheet, and what the user can do about it. Errors that are not of the Office API are worded already. */
export function sheetWords(error: unknown, sheet: string): string {
  const code = codeOf(error);
  if (code === '') return error instanceof Error ? error.message : String(error);
  switch (code) {
    case 'InvalidOperationInCellEditMode':
      return 'Excel is editing a cell. Press Enter or Esc to leave it, then try again.';
    case 'ItemNotFound':
      return `There is no sheet “${sheet}” in the workbook.`;
    case 'ItemAlreadyExists':
      return `The workbook already has a sheet “${sheet}”, or a name that the sheet needs.`;
    case 'AccessDenied':
      return 'Excel does not allow it. Check whether the workbook is protected, read-only, or open in protected view.';
    case 'HostIsBusy':
    case 'RequestAborted':
      return 'Excel is busy. Try again in a moment.';
    case 'RequestPayloadSizeLimitExceeded':
    case 'ResponsePayloadSizeLimitExceeded':
      return `The sheet “${sheet}” is too large for Excel to pass to the pane.`;
    default:
      return `Excel refused a step on the sheet “${sheet}” (${[code, stepOf(error)].filter(Boolean).join(' at ')}). Try again; if that does not help, close the pane and open it again.`;
  }
}

/** The call that Excel stopped at, like "PageLayout.paperSize": it helps whoever is asked for help. */
function stepOf(error: unknown): string {
  const info = typeof error === 'object' && error !== null && 'debugInfo' in error ? error.debugInfo : undefined;
  const step = typeof info === 'object' && info !== null && 'errorLocation' in info ? info.errorLocation : undefined;
  return typeof step === 'string' ? step : '';
}

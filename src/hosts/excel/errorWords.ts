/** True if Excel refused because a cell is open for editing. */
export function isCellEdit(error: unknown): boolean {
  return codeOf(error) === 'InvalidOperationInCellEditMode';
}

/** What the user can do about an error of the Office API, by its code; its own message is written for programmers. */
export function wordsFor(error: unknown): string {
  const code = codeOf(error);
  switch (code) {
    case 'InvalidOperationInCellEditMode':
      return 'Excel is editing a cell. Press Enter or Esc to leave it; the pane then follows the selection again.';
    case 'ItemNotFound':
    case 'InvalidReference':
      return 'The selected cell or its sheet no longer exists. Select another cell.';
    case 'InvalidSelection':
      return 'The selection holds no cell. Select one to see the help of its functions.';
    case 'AccessDenied':
      return 'Excel does not let the pane read this sheet. Check whether the workbook is open in protected view.';
    case 'HostIsBusy':
    case 'RequestAborted':
      return 'Excel is busy. Select the cell again in a moment.';
    default:
      return `Excel could not tell which cell is selected${code ? ` (${code})` : ''}. Select it again; if that does not help, close the pane and open it again.`;
  }
}

/** The code of an error of the Office API; "" if it is none. */
export function codeOf(error: unknown): string {
  const code = typeof error === 'object' && error !== null && 'code' in error ? error.code : undefined;
  return typeof code === 'string' ? code : '';
}

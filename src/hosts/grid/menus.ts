import type { MenuConfig } from '@univerjs/ui';

/** Commands the workbench has no use for: protection needs accounts, and rules of what may be typed come with a sheet. */
const UNUSED = [
  'sheet.command.add-range-protection-from-toolbar',
  'sheet.contextMenu.permission',
  'sheet.command.add-range-protection-from-sheet-bar',
  'sheet.command.delete-worksheet-protection-from-sheet-bar',
  'sheet.command.change-sheet-protection-from-sheet-bar',
  'sheet.command.view-sheet-permission-from-sheet-bar',
  'sheet.menu.data-validation',
  'sheet.operation.open.conditional.formatting.panel',
];

export const hiddenMenus: MenuConfig = Object.fromEntries(UNUSED.map((id) => [id, { hidden: true }]));

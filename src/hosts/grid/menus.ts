import type { MenuConfig } from '@univerjs/ui';

/** Commands the workbench has no use for: protection needs accounts. */
const UNUSED = [
  'sheet.command.add-range-protection-from-toolbar',
  'sheet.contextMenu.permission',
  'sheet.command.add-range-protection-from-sheet-bar',
  'sheet.command.delete-worksheet-protection-from-sheet-bar',
  'sheet.command.change-sheet-protection-from-sheet-bar',
  'sheet.command.view-sheet-permission-from-sheet-bar',
];

export const hiddenMenus: MenuConfig = Object.fromEntries(UNUSED.map((id) => [id, { hidden: true }]));

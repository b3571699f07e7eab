import { showNotice } from './notice';
import { byId } from './page';
import { workbookLeft } from './tabLock';

/** Warns that another tab stores the workbook, and says when this one can take over. */
export function warnOfOtherTab(): void {
  const reload = { label: 'Reload to edit here', take: () => location.reload() };
  byId('first-button').title = 'Not here: the workbook is open in another tab';
  showNotice('This workbook is open in another tab of this browser, and only that tab saves. What you change here is lost. Close the other tab, then reload this one.', reload);
  void workbookLeft().then(() => {
    byId('first-button').title = 'Reload this tab first: it shows an older state of the workbook';
    showNotice('The other tab is closed. Reload to see what it saved and to edit here; what you changed in this tab is lost.', reload);
  });
}

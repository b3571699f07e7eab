const LOCK = 'provingsheet workbook';

/** Milliseconds to wait for the lock: a page that is being reloaded lets go of it only when it is gone. */
const PATIENCE = 1500;

/**
 * Makes this tab the one that stores the workbook; true also where tabs cannot be told apart. False if another tab is; it stays so until this page is loaded again,
 * since by then the other tab's work must be read first.
 */
export async function claimWorkbook(): Promise<boolean> {
  // A page that is not from this machine, and not by https, has no locks.
  if (!('locks' in navigator)) return true;
  return new Promise((resolve) => {
    const patience = AbortSignal.timeout(PATIENCE);
    navigator.locks
      .request(LOCK, { signal: patience }, () => {
        resolve(true);
        return new Promise(() => undefined);
      })
      .catch(() => resolve(false));
  });
}

/** Resolves once no tab stores the workbook any more, and none took it again as one does that is only reloaded. */
export async function workbookLeft(): Promise<void> {
  for (;;) {
    await navigator.locks.request(LOCK, () => undefined);
    await new Promise((resolve) => setTimeout(resolve, 2 * PATIENCE));
    const { held } = await navigator.locks.query();
    if (!held?.some(({ name }) => name === LOCK)) return;
  }
}

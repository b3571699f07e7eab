const OFFICE_SCRIPT = 'https://appsforoffice.microsoft.com/lib/1/hosted/office.js';
const PATIENCE_MS = 10_000;

/** What happens on the way to Excel. Excel may still answer after it was reported missing: a slow line is no failure. */
export interface OfficeEvents {
  /** The script has run: the moment to associate functions, before Excel asks for them. */
  onScript(): void;
  onExcel(): void;
  /** The page is not in Excel, or the script did not come. */
  onNoExcel(): void;
}

/**
 * Loads Office.js from its usual address into this page and waits for Excel. In a plain tab the script may not come, or
 * `Office.onReady` may never answer, so patience has an end.
 */
export function loadOffice(events: OfficeEvents, patienceMs = PATIENCE_MS): void {
  const timer = setTimeout(() => events.onNoExcel(), patienceMs);
  const giveUp = (): void => {
    clearTimeout(timer);
    events.onNoExcel();
  };
  const script = document.createElement('script');
  script.src = OFFICE_SCRIPT;
  script.addEventListener('error', giveUp);
  script.addEventListener('load', () => {
    events.onScript();
    void Office.onReady((info) => {
      if (info.host !== Office.HostType.Excel) return giveUp();
      clearTimeout(timer);
      events.onExcel();
    });
  });
  document.head.append(script);
}

import { associateFunctions, type CustomFunctionsApi } from '../functions/associate';
import { cellFunctionsIn } from '../functions/formulaNames';
import { ExcelSheets } from '../hosts/excel/excelSheets';
import { Outcomes } from '../hosts/excel/outcomes';
import { ExcelSelection, type RunExcel } from '../hosts/excel/selection';
import { openCopy } from '../hosts/excel/workbookFile';
import { loadOffice } from './loadOffice';
import './page.css';
import { createPane, type PaneParts } from './pane';
import { worksheetParts } from './worksheetParts';

/** The page that Excel opens: it holds the cell functions (shared runtime) and shows the pane. */
function start(): void {
  const notice = part('notice');
  const problem = part('problem');
  const outcomes = new Outcomes();
  const excel = new ExcelComing();
  const host = new ExcelSheets(excel.run, (version) => Office.context.requirements.isSetSupported('ExcelApi', version), () => Office.context.document);
  const { help } = createPane(part('pane'), { ...worksheetParts, ...fileParts, host });

  loadOffice({
    onScript: () => associateFunctions(CustomFunctions as unknown as CustomFunctionsApi, (outcome) => outcomes.record(outcome)),
    onNoExcel: () => {
      notice.hidden = false;
      excel.isMissing();
    },
    onExcel: () => {
      notice.hidden = true;
      excel.isThere();
      followOfficeTheme();
      void new ExcelSelection(Excel.run, outcomes).follow({
        onCell: ({ address, formula, error }) => {
          problem.textContent = '';
          help.show({ cell: address, functionIds: cellFunctionsIn(formula), error });
        },
        onProblem: (words) => { problem.textContent = words; },
      });
    },
  });
}

/** What files are read and copied with comes when it is asked for; Excel opens the copy as a workbook of its own, to be saved there. */
const fileParts: Pick<PaneParts, 'readWorkbook' | 'issueCopy' | 'deliver'> = {
  readWorkbook: async (bytes) => (await import(/* webpackChunkName: "read" */ '../hosts/file/readWorkbook')).readWorkbook(bytes),
  issueCopy: async (bytes) => (await import(/* webpackChunkName: "read" */ '../hosts/file/issueCopy')).issueCopy(bytes),
  deliver: (_name, bytes) => openCopy(bytes, (base64) => Excel.createWorkbook(base64)),
};

/** Excel, which may be long in coming: what is asked of it waits, until it is there or was found missing. */
class ExcelComing {
  isThere!: () => void;
  private refuse!: (reason: Error) => void;
  private coming = new Promise<void>((resolve, reject) => {
    this.refuse = reject;
    this.isThere = () => {
      resolve();
      // It may have been reported missing before.
      this.coming = Promise.resolve();
    };
  });

  isMissing(): void {
    this.coming.catch(() => undefined);
    this.refuse(new Error('This page is not in Excel.'));
  }

  readonly run: RunExcel = async (options, batch) => {
    await this.coming;
    return Excel.run(options, batch);
  };
}

function part(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (!found) throw new Error(`taskpane.html: no element with the id "${id}"`);
  return found;
}

/** Office has a theme of its own, which may differ from the system's. */
function followOfficeTheme(): void {
  const theme = Office.context.officeTheme as Office.OfficeTheme | undefined;
  if (typeof theme?.isDarkTheme === 'boolean') document.documentElement.style.colorScheme = theme.isDarkTheme ? 'dark' : 'light';
}

start();

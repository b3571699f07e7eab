import { associateFunctions, type CustomFunctionsApi } from '../functions/associate';
import { cellFunctionsIn } from '../functions/formulaNames';
import { ExcelSheets } from '../hosts/excel/excelSheets';
import { Outcomes } from '../hosts/excel/outcomes';
import { ExcelSelection, type RunExcel } from '../hosts/excel/selection';
import { loadOffice } from './loadOffice';
import './page.css';
import { createPane } from './pane';
import { worksheetParts } from './worksheetParts';

/** The page that Excel opens: it holds the cell functions (shared runtime) and shows the pane. */
function start(): void {
  const notice = part('notice');
  const problem = part('problem');
  const outcomes = new Outcomes();
  const excel = new ExcelComing();
  const host = new ExcelSheets(excel.run, (version) => Office.context.requirements.isSetSupported('ExcelApi', version));
  const { help } = createPane(part('pane'), { ...worksheetParts, host });

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

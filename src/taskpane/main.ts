import { associateFunctions, type CustomFunctionsApi } from '../functions/associate';
import { cellFunctionsIn } from '../functions/formulaNames';
import { Outcomes } from '../hosts/excel/outcomes';
import { ExcelSelection } from '../hosts/excel/selection';
import { createFunctionHelp } from './functionHelp';
import { loadOffice } from './loadOffice';
import './page.css';
import './pane.css';

/** The page that Excel opens: it holds the cell functions (shared runtime) and shows the help pane. */
function start(): void {
  const notice = part('notice');
  const problem = part('problem');
  const help = createFunctionHelp(part('pane'));
  const outcomes = new Outcomes();

  loadOffice({
    onScript: () => associateFunctions(CustomFunctions as unknown as CustomFunctionsApi, (outcome) => outcomes.record(outcome)),
    onNoExcel: () => { notice.hidden = false; },
    onExcel: () => {
      notice.hidden = true;
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

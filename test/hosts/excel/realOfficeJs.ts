/** The Office.js that Excel on the web loads, with its requests answered here instead of by Excel. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import vm from 'node:vm';
import type { RunExcel } from '../../../src/hosts/excel/selection';

const SCRIPT = path.resolve(__dirname, '../../../node_modules/@microsoft/office-js/dist/excel-web-16.00.debug.js');

interface Action { readonly Id: number; readonly ActionType: number; readonly ObjectPathId: number }
interface Body { readonly Actions: readonly Action[]; readonly ObjectPaths: Readonly<Record<string, { readonly Name: string }>> }

/** The kind of action that loads properties. */
const QUERY = 2;

/** What loading gives, by the name of the member that led to the object; a null object if there is none. */
export type Answers = Readonly<Record<string, unknown>>;

export interface Fault { readonly request: number; readonly code: string; readonly location: string }

export interface RealOfficeJs {
  readonly run: RunExcel;
  /** The calls of each request, in the words of Office.js. */
  readonly requests: string[][];
}

export function realOfficeJs(answers: Answers, fault?: Fault): RealOfficeJs {
  const { Excel: excel } = loaded();
  const requests: string[][] = [];
  const executeAsync = async (_: unknown, __: unknown, message: { readonly Body: string | Body }) => {
    const body = typeof message.Body === 'string' ? JSON.parse(message.Body) as Body : message.Body;
    const failed = fault?.request === requests.length && { Code: fault.code, Message: 'inner detail', Location: fault.location, ActionIndex: body.Actions.length - 1 };
    const results = body.Actions.map(({ Id, ActionType, ObjectPathId }) =>
      ({ ActionId: Id, Value: ActionType === QUERY ? answers[body.ObjectPaths[ObjectPathId].Name] ?? null : null }));
    return { ErrorCode: '', ErrorMessage: '', Headers: {}, Body: { Results: results, ...(failed && { Error: failed }) } };
  };
  const run = ((options: Excel.RunOptions, batch: (context: Excel.RequestContext) => Promise<unknown>) => excel.run(options, async (context) => {
    const sync = context.sync.bind(context);
    context.sync = ((result: unknown) => {
      const { pendingStatements } = context.debugInfo;
      if (pendingStatements.length > 0) requests.push([...pendingStatements]);
      return sync(result);
    }) as typeof context.sync;
    return batch(Object.assign(context, { _requestExecutor: { executeAsync } }));
  })) as RunExcel;
  return { run, requests };
}

/** Runs the script in a page of its own, which has no more than the script looks for. */
function loaded(): { readonly Excel: { run: RunExcel } } {
  const document = { createElement: () => ({}), getElementsByTagName: () => [], cookie: '' };
  const page: Record<string, unknown> = {
    console, setTimeout, clearTimeout, Promise, performance, document, navigator: { userAgent: '' }, location: { href: '', search: '' }, addEventListener: () => undefined,
  };
  for (const name of ['window', 'self', 'top', 'parent']) page[name] = page;
  vm.createContext(page);
  vm.runInContext(readFileSync(SCRIPT, 'utf8'), page);
  return page as unknown as ReturnType<typeof loaded>;
}

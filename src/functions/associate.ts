import metadata from '@generated/functions.json';
import { callFunction } from './call';
import type { CellResult } from './cells';
import { fromExcel } from './excelArguments';
import { CellFault, type FaultCode } from './faults';

/** The part of Excel's `CustomFunctions` object that is used. `Error` appears only once Excel has finished loading. */
export interface CustomFunctionsApi {
  associate(id: string, implementation: (...args: unknown[]) => CellResult): void;
  readonly Error: new (code: CustomFunctions.ErrorCode, message?: string) => object;
}

/** What came of a calculation in a cell; no fault means that it gave a result. */
export interface Outcome {
  readonly id: string;
  /** Address with the sheet's name, like "Sheet1!B4". */
  readonly address: string;
  readonly fault?: CellFault;
}

/**
 * Gives Excel every PROVE function, under its id.
 * @param api Excel's `CustomFunctions`, or a stand-in.
 * @param onOutcome told of each calculation whose cell Excel names; a value preview while typing is none.
 */
export function associateFunctions(api: CustomFunctionsApi, onOutcome?: (outcome: Outcome) => void): void {
  for (const { id, parameters } of metadata.functions) {
    api.associate(id, (...args) => {
      const invocation = args.length > parameters.length ? readInvocation(args[args.length - 1]) : undefined;
      const own = invocation ? args.slice(0, -1) : args;
      const report = (fault?: CellFault): void => {
        if (invocation?.address && !invocation.isInValuePreview) onOutcome?.({ id, address: invocation.address, fault });
      };
      try {
        const result = callFunction(id, own.map(fromExcel));
        report();
        return result;
      } catch (error) {
        const fault = asFault(error, id);
        report(fault);
        throw toExcel(api, fault);
      }
    });
  }
}

/** Excel appends an object that says where the call stands; it is no argument of ours. */
function readInvocation(last: unknown): { address?: string; isInValuePreview?: unknown } | undefined {
  const isInvocation = typeof last === 'object' && last !== null && !Array.isArray(last) && !('basicValue' in last) && !('code' in last);
  return isInvocation ? last : undefined;
}

function asFault(error: unknown, id: string): CellFault {
  if (error instanceof CellFault) return error;
  return new CellFault('#VALUE!', `PROVE.${id} failed inside (${String(error)}); please report it with the input that does this`);
}

const WITH_MESSAGE: readonly FaultCode[] = ['#VALUE!', '#N/A'];
const NOT_RETURNABLE: readonly FaultCode[] = ['#NAME?', '#REF!'];

/** Excel shows a message only beside `#VALUE!` and `#N/A`, and takes no `#NAME?` or `#REF!` from a function. */
function toExcel(api: CustomFunctionsApi, fault: CellFault): object {
  const as = (code: FaultCode, message?: string): object => new api.Error(code as CustomFunctions.ErrorCode, message);
  if (WITH_MESSAGE.includes(fault.code)) return as(fault.code, fault.message);
  if (!NOT_RETURNABLE.includes(fault.code)) return as(fault.code);
  const named = fault.message.includes(fault.code) ? fault.message : `${fault.code}: ${fault.message || 'found in the input'}`;
  return as('#VALUE!', named);
}

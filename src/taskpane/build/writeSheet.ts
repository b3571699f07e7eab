import { type SheetHost, SheetTaken } from '../../hosts/sheetHost';
import type { SheetPlan } from '../../worksheets/plan';
import type { TakenChoice } from './takenDialog';

/** How writing meets the user. */
interface Meeting {
  /** Asks what becomes of a sheet that holds something. */
  readonly ask: (sheet: string, taken: readonly string[]) => Promise<TakenChoice>;
  /** Shows that a sheet is being written, until that ends. */
  readonly show: (writing: Promise<void>) => Promise<void>;
}

/**
 * Writes a plan, and asks first if a sheet of its name holds something.
 * @returns the plan as it was written, maybe under another name; undefined if the user left everything as it was.
 */
export async function writeSheet(host: SheetHost, plan: SheetPlan, meeting: Meeting): Promise<SheetPlan | undefined> {
  try {
    await meeting.show(host.write(plan));
    return plan;
  } catch (error) {
    if (!(error instanceof SheetTaken)) throw error;
  }
  const choice = await meeting.ask(plan.name, (await host.sheets()).map(({ name }) => name));
  if (choice.do === 'leave') return undefined;
  if (choice.do === 'rename') return writeSheet(host, { ...plan, name: choice.name }, meeting);
  await meeting.show(host.write(plan, { replace: true }));
  return plan;
}

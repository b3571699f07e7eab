import { type SheetContent, type SheetHost, SheetTaken } from '../../src/hosts/sheetHost';
import type { PaneMemory } from '../../src/taskpane/memory';
import type { Planning } from '../../src/taskpane/build/planning';
import type { Entry, SheetPlan } from '../../src/worksheets/plan';
import type { Answers, Problem, Question } from '../../src/worksheets/question';
import { type Template, TemplateError } from '../../src/worksheets/template';

/** Memory of a test alone; `refuses` is a browser that stores nothing. */
export function fakeMemory(refuses = false): PaneMemory & { readonly held: Map<string, string> } {
  const held = new Map<string, string>();
  return { held, get: (key) => held.get(key), set: (key, value) => { held.set(key, value); return !refuses; } };
}

/** A workbook in memory that tells of everything asked of it. */
export class FakeHost implements SheetHost {
  readonly written: SheetPlan[] = [];
  readonly selected: string[] = [];
  readonly filled: { readonly sheet: string; readonly entries: readonly Entry[] }[] = [];
  readonly content = new Map<string, SheetContent>([['Sheet1', { name: 'Sheet1', cells: [], merges: [], names: [] }]]);
  open = 'Sheet1';
  reads = 0;
  failure: Error | undefined;
  private readonly listeners: (() => void)[] = [];

  async sheets() {
    return [...this.content.values()].map(({ name, cells }) => ({ name, empty: cells.length === 0 }));
  }

  async write(plan: SheetPlan, options: { readonly replace?: boolean } = {}): Promise<void> {
    if (this.failure) throw this.failure;
    if ((this.content.get(plan.name)?.cells.length ?? 0) > 0 && !options.replace) throw new SheetTaken(plan.name);
    this.written.push(plan);
    this.content.set(plan.name, { name: plan.name, cells: [{ at: 'A1', value: 'x' }], merges: [], names: [] });
    this.open = plan.name;
  }

  async read(sheet: string): Promise<SheetContent> {
    this.reads += 1;
    if (this.failure) throw this.failure;
    return this.content.get(sheet)!;
  }

  async remove(sheet: string): Promise<void> {
    this.content.delete(sheet);
  }

  async fill(sheet: string, entries: readonly Entry[]): Promise<void> {
    if (this.failure) throw this.failure;
    const before = this.content.get(sheet)!;
    const cells = new Map(before.cells.map((cell) => [cell.at, cell]));
    for (const { at, value } of entries) {
      if (value === null) cells.delete(at);
      else cells.set(at, { at, value });
    }
    this.content.set(sheet, { ...before, cells: [...cells.values()] });
    this.filled.push({ sheet, entries });
  }

  async save(): Promise<Uint8Array> {
    if (this.failure) throw this.failure;
    return new Uint8Array([80, 75]);
  }

  async select(sheet: string, address: string): Promise<void> {
    this.selected.push(`${sheet}!${address}`);
  }

  async active(): Promise<string> {
    return this.open;
  }

  onChange(listener: () => void): void {
    this.listeners.push(listener);
  }

  change(): void {
    for (const listener of this.listeners) listener();
  }
}

/** A template of which only the words matter here. */
export function template(id: string, title: string, purpose = 'For tests', source = 'No source'): Template {
  return { id, title, purpose, source, kind: 'run' } as Template;
}

const QUESTIONS: readonly Omit<Question, 'unit'>[] = [
  { id: 'item', label: 'Item', group: 'Item', kind: 'text', help: 'What it is.', optional: true },
  { id: 'capacity', label: 'Capacity', group: 'Item', kind: 'number', help: 'Greatest force.', optional: false },
  { id: 'unit', label: 'Unit', group: 'Item', kind: 'choice', choices: [{ value: 'N', label: 'newton' }, { value: 'kN', label: 'kilonewton' }], help: 'Of force.', optional: false },
  { id: 'directions', label: 'Directions', group: 'Procedure', kind: 'choices', choices: [{ value: 'tension', label: 'Tension' }, { value: 'compression', label: 'Compression' }], help: 'Which way.', optional: false },
];

/** A planner with rules a test can see through: capacity is a number above 0 and best at least 1; compression asks for a pad. */
export const fakePlanning: Planning = {
  builtInTemplates: () => [template('two', 'Two points', 'Zero and full scale', 'common practice'), template('ten', 'Ten points', 'Three runs', 'a standard')],
  readTemplate(text) {
    if (!text.startsWith('{')) throw new TemplateError(['runs: found "x"; expected a whole number', 'title: found nothing; expected a text']);
    return JSON.parse(text) as Template;
  },
  templateText: (one) => JSON.stringify(one),
  suggestedAnswers: () => ({ item: '', capacity: '20', unit: 'kN', directions: 'tension' }),
  questions: (_, answers) => [
    ...QUESTIONS.map((question) => (question.id === 'capacity' ? { ...question, unit: answers.unit } : question)),
    ...(answers.directions.includes('compression') ? [{ id: 'pad', label: 'Pad', group: 'Procedure', kind: 'text' as const, help: 'Under the cell.', optional: true }] : []),
  ],
  planSheet(_, answers) {
    const problems = problemsOf(answers);
    return { problems, ...(problems.some(({ severity }) => severity === 'refuse') ? {} : { plan: planOf(answers) }) };
  },
  changedTemplate: (one, answers) => ({ ...one, purpose: `For ${answers.capacity} ${answers.unit}` }),
};

function problemsOf({ capacity, directions }: Answers): Problem[] {
  return [
    ...(Number(capacity) > 0 ? [] : [{ severity: 'refuse' as const, question: 'capacity', message: `found “${capacity}”; expected a number above 0` }]),
    ...(Number(capacity) < 1 ? [{ severity: 'warn' as const, question: 'capacity', message: 'a small cell' }] : []),
    ...(directions === '' ? [{ severity: 'refuse' as const, question: 'directions', message: 'found none; expected at least one' }] : []),
  ];
}

function planOf({ capacity }: Answers): SheetPlan {
  return {
    name: 'Run',
    columns: [8, 12, 12],
    cells: [
      { at: 'A1', role: 'title', value: 'Run' },
      { at: 'A3', role: 'heading', value: 'Readings' },
      { at: 'A4', role: 'header', value: 'Force' }, { at: 'B4', role: 'header', value: 'Run 1' }, { at: 'C4', role: 'header', value: 'Net' },
      { at: 'A5', role: 'reference', value: 0 }, { at: 'B5', role: 'input' }, { at: 'C5', role: 'result', formula: '=B5-B$5' },
      { at: 'A6', role: 'reference', value: Number(capacity) }, { at: 'B6', role: 'input' }, { at: 'C6', role: 'result', formula: '=B6-B$5' },
    ],
    merges: ['A1:C1', 'A3:C3'],
  };
}

/** What jsdom lacks of a dialog: opening over the page, and closing with an event. */
export function giveDialogs(): void {
  HTMLDialogElement.prototype.showModal = function showModal() { this.open = true; };
  HTMLDialogElement.prototype.close = function close() {
    this.open = false;
    this.dispatchEvent(new Event('close'));
  };
}

/** Waits until promises that are settled have been heard, and timers of up to `ms` have run. */
export function passed(ms = 0): Promise<void> {
  return new Promise((resolve) => { setTimeout(resolve, ms); });
}

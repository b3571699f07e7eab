import { type Content, Formula, PlanBuilder } from '../planBuilder';
import { shownFrom } from './cellReference';

/** What the parts of a certificate are laid out with. */
export interface CertificateDesk {
  readonly sheet: PlanBuilder;
  /** Columns of the printed page. */
  readonly width: number;
}

/** Columns of the page, where no table needs more; fields stand in two halves. */
export const USUAL_WIDTH = 8;
const LABEL_COLUMNS = 2;
/** Characters that stand beside each other on the page, shared by its columns: two pages hold a run of ten points with them. */
const PAGE_CHARACTERS = 112;
/** Pixels a letter takes on average, with some to spare: text that is linked is measured by what it holds when planned. */
const LETTER = 5.9;
const CHARACTER = 7.5;

export function certificateDesk(name: string, width: number): CertificateDesk {
  // Right of the page stand the ends of limit lines.
  return { width, sheet: new PlanBuilder(name, Array.from({ length: width + 4 }, () => charactersOf(width))) };
}

function charactersOf(width: number): number {
  return Math.floor(PAGE_CHARACTERS / width);
}

/** A statement with its name. */
export interface Field {
  readonly label: string;
  readonly content: Content;
  readonly format?: string;
  /** What it shows when planned, if it may take more than a line. */
  readonly words?: string;
  /** Name of its cell, if the review reads it. */
  readonly called?: string;
  /** True: typed on the certificate itself. */
  readonly typed?: boolean;
}

/** A field that shows a cell of another sheet. */
export function linked(label: string, sheet: string, at: string, more: Omit<Field, 'label' | 'content'> = {}): Field {
  return { label, content: shownFrom(sheet, at), ...more };
}

/** Writes fields two by two, left and right; gives the next free row. A place that is undefined stays blank. */
export function fieldPairs(desk: CertificateDesk, row: number, pairs: readonly (readonly [Field | undefined, Field | undefined])[]): number {
  pairs.forEach(([left, right], i) => {
    const half = Math.floor(desk.width / 2);
    writeField(desk, row + i, left, 1, half);
    writeField(desk, row + i, right, half + 1, desk.width);
  });
  return row + pairs.length;
}

/** Letters that fit beside the label of a field that shares its row. */
export function roomInPair({ width }: CertificateDesk): number {
  return Math.floor(((Math.floor(width / 2) - LABEL_COLUMNS) * charactersOf(width) * CHARACTER) / (1.1 * LETTER));
}

/** Writes a field across the page, over as many lines as its words take; gives the next free row. */
export function wideField(desk: CertificateDesk, row: number, field: Field): number {
  writeField(desk, row, field, 1, desk.width);
  const room = (desk.width - LABEL_COLUMNS) * charactersOf(desk.width) * CHARACTER;
  const lines = (field.words ?? '').split('\n').reduce((sum, line) => sum + Math.max(1, Math.ceil((line.length * LETTER) / room)), 0);
  // Words that stand on the certificate itself are measured by the host.
  if (lines > 1 || typeof field.content === 'string') desk.sheet.roomy(row, field.content instanceof Formula ? lines : 1, 'stated');
  return row + 1;
}

function writeField({ sheet }: CertificateDesk, row: number, field: Field | undefined, first: number, last: number): void {
  if (!field) return;
  const value = first + LABEL_COLUMNS;
  sheet.wide(first, row, LABEL_COLUMNS, 'field', field.label);
  const role = field.typed ? 'input' : 'stated';
  sheet.wide(value, row, last - value + 1, role, field.content, field.format);
  if (field.called !== undefined) sheet.called(field.called, cellAt(value, row));
}

/** A heading across the page; gives the next free row. */
export function section({ sheet, width }: CertificateDesk, row: number, title: string): number {
  sheet.wide(1, row, width, 'heading', title);
  return row + 1;
}

/** Words across the page; gives the next free row. Linked words get the lines that they take when planned. */
export function paragraph({ sheet, width }: CertificateDesk, row: number, role: 'text' | 'note', content: Content, words?: string): number {
  sheet.wide(1, row, width, role, content);
  if (content instanceof Formula && words !== undefined) {
    const room = width * charactersOf(width) * CHARACTER;
    sheet.roomy(row, Math.max(1, Math.ceil((words.length * LETTER) / room)), role);
  }
  return row + 1;
}

function cellAt(column: number, row: number): string {
  return `${String.fromCharCode(64 + column)}${row}`;
}

import type { FilledCell } from '../filledSheet';
import { described } from './completeness';
import { capped, type Finding } from './finding';
import type { RunSheet } from './runSheet';
import { dateText } from './serialDate';

/** A column of a table that is typed in row by row, other than readings at forces or times: names `typed_<id>`. */
interface TypedColumn {
  readonly id: string;
  readonly cells: readonly FilledCell[];
}

/** Columns that hold a word; the others hold numbers, dates among them. */
const WORDS: readonly string[] = ['found'];

function typedColumns(sheet: RunSheet): TypedColumn[] {
  return sheet.cells.namesAfter('typed_').flatMap((id): TypedColumn[] => {
    const cells = sheet.cells.columns(`typed_${id}`)?.[0];
    return cells ? [{ id, cells }] : [];
  });
}

/** The table row by row; rows that differ in length from the first column's are cut to it. */
function typedRows(columns: readonly TypedColumn[]): FilledCell[][] {
  return (columns[0]?.cells ?? []).map((_, i) => columns.flatMap(({ cells }) => (cells[i] ? [cells[i]] : [])));
}

/** Whether the sheet has such a table, and nothing stands in it yet. */
export function rowsAreUntouched(sheet: RunSheet): boolean {
  const columns = typedColumns(sheet);
  return columns.length > 0 && columns.every(({ cells }) => cells.every(({ value }) => value === null));
}

/** Cells that are not typed yet: in rows that are begun, and rows still to come while the sheet needs more than are complete. */
export function emptyRows(sheet: RunSheet): Finding[] {
  const rows = typedRows(typedColumns(sheet));
  if (rows.length === 0) return [];
  if (rowsAreUntouched(sheet)) return [{ severity: 'missing', at: rows[0][0].at, message: `No readings yet: the first belongs in ${rows[0][0].at}` }];
  const count = (row: readonly FilledCell[]) => row.filter(({ value }) => value !== null).length;
  const begun = rows.filter((row) => count(row) > 0);
  const findings = begun.flatMap((row): Finding[] => {
    const empty = row.filter(({ value }) => value === null);
    if (empty.length === 0) return [];
    const { at } = empty[0];
    return [{ severity: 'missing', at, message: `Row ${empty[0].row}: ${empty.length === 1 ? `${at} is empty` : `${empty.length} cells are empty, first ${at}`}; expected the row complete, or blank` }];
  });
  const needed = sheet.cells.number('needed_rows') ?? rows.length;
  if (begun.length >= needed) return capped(findings, 'rows that are not complete');
  const { at } = (rows.find((row) => count(row) === 0) ?? rows[0])[0];
  return [...capped(findings, 'rows that are not complete'), { severity: 'missing', at, message: `${begun.length} of ${needed} rows are there; the next begins in ${at}` }];
}

/** Cells of such a table that are text, true or false, or an error, where a number or a date is expected. */
export function rowsThatAreNoNumbers(sheet: RunSheet): Finding[] {
  const found = typedColumns(sheet).filter(({ id }) => !WORDS.includes(id)).flatMap(({ id, cells }) => cells
    .filter(({ value }) => value !== null && typeof value !== 'number')
    .map(({ at, value }): Finding => ({ severity: 'wrong', at, message: `${at} holds ${described(value)}; expected ${id === 'date' ? 'a date, like 2026-11-25' : 'a number'}` })));
  return capped(found, 'cells that are no numbers');
}

/** Dates that do not rise, and temperatures of the cell that move against those of the chamber. */
export function orderOfRows(sheet: RunSheet): Finding[] {
  return [...datesThatFall(sheet), ...temperaturesAgainstChamber(sheet)];
}

function datesThatFall(sheet: RunSheet): Finding[] {
  const dates = numbersOf(sheet, 'typed_date');
  const found = dates.slice(1).flatMap((after, i): Finding[] => {
    const before = dates[i];
    if (after.value > before.value) return [];
    return [{ severity: 'wrong', at: after.at, message: `${after.at} holds ${dateText(after.value)}, which is not after ${dateText(before.value)} in ${before.at}; expected dates that rise` }];
  });
  return capped(found, 'dates that do not rise');
}

function temperaturesAgainstChamber(sheet: RunSheet): Finding[] {
  const chamber = new Map(numbersOf(sheet, 'planned_temperature').map(({ row, value }) => [row, value]));
  const cells = numbersOf(sheet, 'typed_temperature').filter(({ row }) => chamber.has(row));
  const found = cells.slice(1).flatMap((after, i): Finding[] => {
    const before = cells[i];
    const [from, to] = [chamber.get(before.row) as number, chamber.get(after.row) as number];
    if ((after.value - before.value) * Math.sign(to - from) > 0 || from === to) return [];
    return [{
      severity: 'wrong', at: after.at,
      message: `The cell goes from ${before.value} °C (${before.at}) to ${after.value} °C (${after.at}) while the chamber goes from ${from} to ${to} °C; expected it to follow. Were rows swapped?`,
    }];
  });
  return capped(found, 'temperatures that do not follow the chamber');
}

function numbersOf(sheet: RunSheet, name: string): { at: string; row: number; value: number }[] {
  return (sheet.cells.columns(name)?.[0] ?? []).flatMap(({ at, row, value }) => (typeof value === 'number' ? [{ at, row, value }] : []));
}

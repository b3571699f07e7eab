import { type ICellData, isDefaultFormat, type Nullable, type Worksheet } from '@univerjs/core';
import { addressOf, placeOf } from '../address';
import type { CellContent, CellValue, SheetContent } from '../sheetHost';
import { fromCellData, isErrorCode } from './cellData';
import { CellReader, type OpenWorkbook } from './cellReader';
import { namesOf } from './localNames';
import { planName } from './sheetNames';

/** Reads a sheet of the grid: what its cells hold, unrounded, and its merges and names. */
export function readSheet(grid: OpenWorkbook, sheet: Worksheet): SheetContent {
  const cells = new SheetCells(grid, sheet);
  return {
    name: sheet.getName(),
    cells: cells.all(),
    merges: sheet.getMergeData().map(({ startRow, startColumn, endRow, endColumn }) =>
      `${addressOf({ row: startRow, column: startColumn })}:${addressOf({ row: endRow, column: endColumn })}`),
    names: namesOf(grid.injector, grid.workbook().getUnitId(), sheet.getSheetId()).flatMap((name) => planName(name) ?? []),
  };
}

/** Whether no cell of a sheet holds anything; a look is nothing. */
export function isEmpty(sheet: Worksheet): boolean {
  let empty = true;
  sheet.getCellMatrix().forValue((_row, _column, cell) => {
    empty = !holds(cell);
    return empty;
  });
  return empty;
}

/** What each cell of a sheet holds, spilled ones included; null if blank, empty text if its formula gives that. */
export function valuesOf(grid: OpenWorkbook, sheet: Worksheet): (at: string) => CellValue {
  const cells = new SheetCells(grid, sheet);
  const matrix = sheet.getCellMatrix();
  return (at) => {
    const { row, column } = placeOf(at);
    const cell = matrix.getValue(row, column);
    const value = cells.valueAt(row, column, cell);
    return value === undefined ? (cell?.f || cell?.si ? '' : null) : contentOf(value);
  };
}

/** The constant that a cell without a formula holds; undefined if it is blank. */
export function constantOf(cell: ICellData): number | string | boolean | undefined {
  const value = fromCellData(cell) ?? textOf(cell);
  return value === undefined || value === '' ? undefined : value;
}

/** The cells of one sheet, spilled ones included. */
class SheetCells {
  private readonly reader: CellReader;
  private readonly sheetId: string;

  constructor(private readonly grid: OpenWorkbook, private readonly sheet: Worksheet) {
    this.reader = new CellReader(grid);
    this.sheetId = sheet.getSheetId();
  }

  all(): CellContent[] {
    const matrix = this.sheet.getCellMatrix();
    const found: CellContent[] = [];
    for (let row = 0; row < this.sheet.getRowCount(); row += 1) {
      for (let column = 0; column < this.sheet.getColumnCount(); column += 1) {
        const content = this.at(row, column, matrix.getValue(row, column));
        if (content) found.push(content);
      }
    }
    return found;
  }

  private at(row: number, column: number, cell: Nullable<ICellData>): CellContent | undefined {
    const formula = this.reader.ownFormula(this.sheetId, { row, column });
    const value = this.valueAt(row, column, cell);
    if (formula === undefined && value === undefined) return undefined;
    const format = this.formatOf(cell);
    return {
      at: addressOf({ row, column }),
      // A formula without a value gave an empty text.
      value: contentOf(value ?? ''),
      ...(formula === undefined ? {} : { formula }),
      ...(format === undefined ? {} : { format }),
    };
  }

  valueAt(row: number, column: number, cell: Nullable<ICellData>): number | string | boolean | undefined {
    return this.reader.valueAt(this.sheetId, { row, column }) ?? textOf(cell);
  }

  private formatOf(cell: Nullable<ICellData>): string | undefined {
    const pattern = cell && this.grid.workbook().getStyles().getStyleByCell(cell)?.n?.pattern;
    return pattern && !isDefaultFormat(pattern) ? pattern : undefined;
  }
}

function contentOf(value: number | string | boolean): CellValue {
  return isErrorCode(value) ? { error: value } : value;
}

function holds(cell: Nullable<ICellData>): boolean {
  return Boolean(cell && (cell.f || cell.si || (fromCellData(cell) ?? textOf(cell) ?? '') !== ''));
}

/** Text of several lines or looks; the grid keeps it apart from the value. */
function textOf(cell: Nullable<ICellData>): string | undefined {
  const text = cell?.p?.body?.dataStream;
  return text === undefined ? undefined : text.replace(/\r\n$/, '').replaceAll('\r', '\n');
}

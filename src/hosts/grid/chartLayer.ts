import { type Injector, type IRange, type IScale, numfmt, Rectangle, ThemeService, type Workbook, type Worksheet } from '@univerjs/core';
import { ICanvasColorService, IRenderManagerService, SheetExtension, type Spreadsheet, type SpreadsheetSkeleton, type UniverRenderingContext } from '@univerjs/engine-render';
import type { ChartPlan } from '../../worksheets/plan';
import { rangeOf } from '../address';
import { CellReader, type OpenWorkbook } from './cellReader';
import { type ChartContent, type ChartFrame, chartPicture, type Point } from './chartPicture';
import { readExtras } from './sheetExtras';

/** Draws the charts of a workbook on its sheets, with every drawing of the cells. To be called once a workbook. */
export function drawCharts(grid: OpenWorkbook): void {
  const render = grid.injector.get(IRenderManagerService).getRenderById(grid.workbook().getUnitId());
  (render?.mainComponent as Spreadsheet | undefined)?.register(new ChartLayer(grid));
}

/** What the grid's cells stand on in either theme. */
const LIGHT_GROUND = '#ffffff';
const DARK_GROUND = '#1b1c1f';

/** A picture, and what it shows. */
interface Drawn {
  readonly of: string;
  readonly picture: HTMLCanvasElement;
}

class ChartLayer extends SheetExtension {
  override uKey = 'provingsheet-charts';
  /** Above the cells and their lines. */
  override Z_INDEX = 60;
  private readonly injector: Injector;
  private readonly cells: CellReader;
  private readonly workbook: Workbook;
  /** Pictures by sheet and chart. What is drawn for every scroll is painted only when it changes. */
  private readonly pictures = new Map<string, Drawn>();

  constructor(grid: OpenWorkbook) {
    super();
    this.injector = grid.injector;
    this.cells = new CellReader(grid);
    this.workbook = grid.workbook();
  }

  override draw(ctx: UniverRenderingContext, _scale: IScale, skeleton: SpreadsheetSkeleton, changed?: IRange[]): void {
    const sheet = skeleton.worksheet;
    if (!sheet || sheet.getUnitId() !== this.workbook.getUnitId()) return;
    readExtras(sheet).charts?.forEach((plan, index) => {
      const over = rangeOf(plan.over);
      if (changed?.length && !changed.some((range) => Rectangle.intersects(range, over))) return;
      const first = skeleton.getCellWithCoordByIndex(over.startRow, over.startColumn, false);
      const last = skeleton.getCellWithCoordByIndex(over.endRow, over.endColumn, false);
      const width = last.endX - first.startX;
      const height = last.endY - first.startY;
      if (width <= 0 || height <= 0) return;
      const picture = this.picture(`${sheet.getSheetId()} ${index}`, this.content(sheet, plan), { width, height, scale: ctx.getTransform().a });
      ctx.drawImage(picture, 0, 0, picture.width, picture.height, first.startX, first.startY, width, height);
    });
  }

  private picture(key: string, content: ChartContent, size: Pick<ChartFrame, 'width' | 'height' | 'scale'>): HTMLCanvasElement {
    const colors = this.injector.get(ICanvasColorService);
    const color = (house: string): string => colors.getRenderColor(house);
    const ground = this.injector.get(ThemeService).darkMode ? DARK_GROUND : LIGHT_GROUND;
    const of = JSON.stringify([content, size, ground]);
    const known = this.pictures.get(key);
    if (known?.of === of) return known.picture;
    const picture = chartPicture(content, { ...size, ground, color, format: (value, pattern) => numfmt.format(pattern, value) });
    this.pictures.set(key, { of, picture });
    return picture;
  }

  private content(sheet: Worksheet, plan: ChartPlan): ChartContent {
    const [first] = plan.series;
    return {
      plan,
      points: plan.series.map(({ x, y }) => this.points(sheet, x, y)),
      formats: first ? { x: this.format(sheet, first.x), y: this.format(sheet, first.y) } : {},
    };
  }

  private points(sheet: Worksheet, x: string, y: string): Point[] {
    const [xs, ys] = [this.numbers(sheet, x), this.numbers(sheet, y)];
    return xs.map((value, i) => ({ x: value, y: ys[i] ?? NaN }));
  }

  /** The numbers of a range; what is none is NaN. */
  private numbers(sheet: Worksheet, range: string): number[] {
    const { startRow, endRow, startColumn, endColumn } = rangeOf(range);
    const found: number[] = [];
    for (let row = startRow; row <= endRow; row += 1) {
      for (let column = startColumn; column <= endColumn; column += 1) {
        const value = this.cells.valueAt(sheet.getSheetId(), { row, column });
        found.push(typeof value === 'number' ? value : NaN);
      }
    }
    return found;
  }

  /** The number format of a range's first cell. */
  private format(sheet: Worksheet, range: string): string | undefined {
    const { startRow, startColumn } = rangeOf(range);
    return sheet.getCellStyle(startRow, startColumn)?.n?.pattern;
  }
}

import type { SheetPlan } from '../../worksheets/plan';
import { element } from '../dom';
import { type GridCell, planGrid } from './planGrid';

/** Small text is wider than a sheet's, measured in characters. */
const WIDER = 1.15;

/** Rows shown at most: enough for readings and results, and quick to draw with every key. */
const MOST_ROWS = 60;

/** The sheet to be as a small table: its readings and results, with the looks of the cells and without their values. */
export function planPreview(plan: SheetPlan): HTMLElement {
  const { columns, rows, more } = planGrid(plan, MOST_ROWS);
  const inputs = plan.cells.filter(({ role }) => role === 'input').length;
  const summary = `“${plan.name}”: ${inputs} cells to fill in, ${plan.cells.filter(({ formula }) => formula !== undefined).length} formulas.`;
  const table = element('table', {
    children: [
      element('caption', { class: 'rp-unseen', children: [`Preview of the sheet ${summary}`] }),
      element('colgroup', { children: columns.map(columnOf) }),
      element('tbody', { children: rows.map(({ cells }) => element('tr', { children: cells.map(cellOf) })) }),
    ],
  });
  table.style.width = `${WIDER * columns.reduce((sum, width) => sum + width, 0)}ch`;
  return element('div', {
    class: 'rp-preview',
    children: [
      element('p', { class: 'rp-quiet', children: [summary] }),
      element('div', {
        class: 'rp-preview-table',
        attributes: { tabindex: '0', role: 'region', 'aria-label': 'Preview of the sheet, scrolls' },
        children: [table],
      }),
      ...(more > 0 ? [element('p', { class: 'rp-quiet', children: [`and ${more} more rows`] })] : []),
    ],
  });
}

function columnOf(width: number): HTMLElement {
  const column = element('col');
  column.style.width = `${WIDER * width}ch`;
  return column;
}

function cellOf({ cell, columns, rows }: GridCell): HTMLElement {
  const made = element('td', { class: cell ? `rp-${cell.role}` : '', children: contentOf(cell) });
  if (columns > 1) made.colSpan = columns;
  if (rows > 1) made.rowSpan = rows;
  return made;
}

function contentOf(cell: GridCell['cell']): (Node | string)[] {
  if (!cell) return [];
  if (cell.formula !== undefined) return [element('span', { attributes: { 'aria-hidden': 'true' }, children: ['ƒ'] }), unseen('formula')];
  if (cell.value !== undefined) return [typeof cell.value === 'number' ? cell.value.toLocaleString() : String(cell.value)];
  return cell.role === 'input' ? [unseen('to fill in')] : [];
}

function unseen(text: string): HTMLElement {
  return element('span', { class: 'rp-unseen', children: [text] });
}

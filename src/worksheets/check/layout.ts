import { isBlank, type RunSheet } from './runSheet';
import { rowsAreUntouched } from './typedRows';
import type { Finding } from './finding';

/** A sheet that was not built from a template, and blocks that rows or columns were taken from. */
export function layout(sheet: RunSheet): Finding[] {
  const { cells, blocks } = sheet;
  const readings = cells.namesAfter('readings_');
  if (readings.length === 0 && cells.namesAfter('value_').length === 0) {
    return [{ severity: 'missing', at: 'A1', message: 'This sheet names no readings and no results, so there is nothing to check; expected a sheet built from a template' }];
  }
  return readings.filter((id) => blocks.every((block) => block.id !== id)).map((id): Finding => {
    const over = ['forces', 'times'].find((kind) => cells.rows(`${kind}_${id}`));
    const { length } = cells.rows(`readings_${id}`) as unknown[];
    const at = cells.cell(`readings_${id}`)?.at as string;
    if (!over) return { severity: 'wrong', at, message: `The readings in ${at} have no forces beside them: the name forces_${id} is gone; expected the sheet as it was built` };
    return {
      severity: 'wrong', at,
      message: `readings_${id}, from ${at} on, has ${length} rows and ${over}_${id} ${cells.rows(`${over}_${id}`)?.length}; expected as many: were rows inserted or deleted?`,
    };
  });
}

/** Whether no reading of the sheet is there yet. */
export function isUntouched(sheet: RunSheet): boolean {
  const { blocks } = sheet;
  return blocks.length > 0 ? blocks.every(isBlank) : rowsAreUntouched(sheet);
}

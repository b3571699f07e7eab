import type { Worksheet } from '@univerjs/core';
import type { ChartPlan, PrintPlan, SheetPlan } from '../../worksheets/plan';

/** What a sheet keeps beside its cells that the grid has no place of its own for. It is stored, copied and undone with the sheet. */
export interface SheetExtras {
  /** Present if the sheet is locked: the ranges that may be typed into. */
  readonly open?: readonly string[];
  readonly charts?: readonly ChartPlan[];
  /** How the sheet prints from a file; the grid does not print. */
  readonly print?: PrintPlan;
}

/** Under which name the extras stand in a sheet's own data. */
export const EXTRAS = 'provingsheet';

/** A plan's extras, as a sheet's own data; undefined if there are none. */
export function extrasOf({ cells, charts = [], locked, print }: SheetPlan): Record<string, SheetExtras> | undefined {
  const extras: SheetExtras = {
    ...(locked ? { open: cells.filter(({ role }) => role === 'input').map(({ at }) => at) } : {}),
    ...(charts.length > 0 ? { charts } : {}),
    ...(print ? { print } : {}),
  };
  return Object.keys(extras).length > 0 ? { [EXTRAS]: extras } : undefined;
}

/** What a sheet in the grid keeps. */
export function readExtras(sheet: Worksheet): SheetExtras {
  return (sheet.getCustomMetadata()?.[EXTRAS] as SheetExtras | undefined) ?? {};
}


import type { SheetContent } from '../../hosts/sheetHost';

/** True if a sheet names readings or values to be filled in, as every sheet does that was built from a template. */
export function isRun({ names }: SheetContent): boolean {
  return names.some(({ name }) => /^(readings|value)_/i.test(name));
}

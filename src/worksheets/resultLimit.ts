import type { FilledSheet } from './filledSheet';

/** The limit that a sheet sets for a result, of one block if it has one of its own; a magnitude. Undefined if it sets none. */
export function limitOf(sheet: FilledSheet, result: string, block: string): number | undefined {
  const wanted = [`${result}_${block}`, `${block}_${result}`, result].map(plain);
  const names = sheet.namesAfter('limit_').filter((name) => sheet.number(`limit_${name}`) !== undefined);
  const found = wanted.flatMap((name) => names.filter((candidate) => plain(candidate) === name));
  return found.length === 0 ? undefined : Math.abs(sheet.number(`limit_${found[0]}`) as number);
}

/** zero_return and zeroreturn are the same result. */
function plain(name: string): string {
  return name.replace(/_/g, '');
}

/** A cell of another sheet, as a formula names it: ('Cell A', "C7") is 'Cell A'!$C$7. */
export function linkTo(sheet: string, at: string): string {
  return `'${sheet.replace(/'/g, "''")}'!${at.replace(/\$/g, '').replace(/([A-Z]+)(\d+)/g, '$$$1$$$2')}`;
}

/** What a cell of another sheet holds: nothing where it is empty, since a bare reference would give 0. */
export function heldBy(link: string): string {
  return `IF(${link}="","",${link})`;
}

/** The first of several cells that is not empty; nothing if all are. */
export function firstHeld(links: readonly string[]): string {
  return links.reduceRight((rest, link) => `IF(${link}="",${rest},${link})`, '""');
}

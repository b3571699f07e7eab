const NAMED: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

/** Text of an XML part as it reads: `&quot;` becomes a quotation mark, and so on. */
export function unescaped(text: string): string {
  return text.replace(/&(?:#x([0-9a-f]+)|#(\d+)|(amp|lt|gt|quot|apos));/gi, (_, hex?: string, decimal?: string, name?: string) =>
    (name === undefined ? String.fromCodePoint(hex === undefined ? Number(decimal) : parseInt(hex, 16)) : NAMED[name.toLowerCase()]));
}

/** Milliseconds after which the browser has surely read the file's address. */
const READ_BY = 60_000;

/** Hands a text, or the bytes of a file, to the browser as a file to save. */
export function saveFile(name: string, content: string | Uint8Array<ArrayBuffer>, type = 'application/json'): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), READ_BY);
}

const WORKBOOK = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** Gives a workbook file to the person, as a download of the browser. */
export function download(name: string, bytes: Uint8Array): void {
  const address = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: WORKBOOK }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser takes hold of the file some time after the click.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

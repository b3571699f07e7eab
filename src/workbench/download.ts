import { saveFile } from '../taskpane/saveFile';

const WORKBOOK = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** Gives a workbook file to the person, as a download of the browser. */
export function download(name: string, bytes: Uint8Array): void {
  saveFile(name, bytes as Uint8Array<ArrayBuffer>, WORKBOOK);
}

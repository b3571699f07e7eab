/** LibreOffice as an independent judge: it opens a workbook file, computes every formula anew, and saves it. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { readWorkbook, type ReadSheet } from '../../src/hosts/file/readWorkbook';

/** Where LibreOffice is: SOFFICE, or on the path; undefined if it is not there. */
export const office = process.env.SOFFICE ?? (process.env.PATH ?? '').split(path.delimiter)
  .map((folder) => path.join(folder, 'soffice'))
  .find((file) => existsSync(file));

/** Without this setting it shows the values in the file as they are. */
const ALWAYS_RECALCULATE = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>`;

/** The sheets of a file as LibreOffice computes them, in a profile of its own that is removed afterwards. */
export function recalculated(file: Uint8Array): ReadSheet[] {
  if (!office) throw new Error('LibreOffice (soffice) is not installed');
  const folder = mkdtempSync(path.join(tmpdir(), 'provingsheet-office-'));
  try {
    mkdirSync(path.join(folder, 'profile', 'user'), { recursive: true });
    writeFileSync(path.join(folder, 'profile', 'user', 'registrymodifications.xcu'), ALWAYS_RECALCULATE);
    writeFileSync(path.join(folder, 'in.xlsx'), file);
    execFileSync(office, [
      `-env:UserInstallation=${pathToFileURL(path.join(folder, 'profile')).href}`, '--headless', '--norestore',
      '--convert-to', 'xlsx', '--outdir', path.join(folder, 'out'), path.join(folder, 'in.xlsx'),
    ], { stdio: 'ignore', timeout: 120_000 });
    return readWorkbook(readFileSync(path.join(folder, 'out', 'in.xlsx')));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

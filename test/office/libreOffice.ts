/** LibreOffice as an independent judge: it opens workbook files, computes every formula anew, and saves or prints them. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';

function onPath(program: string): string | undefined {
  return (process.env.PATH ?? '').split(path.delimiter).map((folder) => path.join(folder, program)).find((file) => existsSync(file));
}

/** Where LibreOffice is: SOFFICE, or on the path; undefined if it is not there. */
export const office = process.env.SOFFICE ?? onPath('soffice');

/** Where the reader of printed pages is; undefined if it is not there. */
export const pageReader = onPath('pdftotext');

/** What is missing for these tests; undefined if nothing is. */
export const missing = !office ? 'LibreOffice (soffice) is not installed' : !pageReader ? 'pdftotext (poppler-utils) is not installed' : undefined;

/** How LibreOffice treats stored values on opening: 0 computes anew, 1 shows them as they are, which is how it comes. */
const RECALCULATION = { always: 0, never: 1 };

function settings(recalculate: keyof typeof RECALCULATION): string {
  return `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>${RECALCULATION[recalculate]}</value></prop></item>
</oor:items>`;
}

const START_TIME = 60_000;
const TIME_PER_FILE = 10_000;

/** How long the conversion of so many files may take, in milliseconds. */
export function timeFor(files: number): number {
  return START_TIME + files * TIME_PER_FILE;
}

/**
 * Workbook files as LibreOffice saves or prints them, all in one go, in a profile of its own that is removed afterwards.
 * Throws if a file is not converted in time.
 */
export function converted(files: ReadonlyMap<string, Uint8Array>, to: 'xlsx' | 'pdf', recalculate: keyof typeof RECALCULATION = 'always'): Map<string, Uint8Array> {
  if (!office) throw new Error(missing);
  const folder = mkdtempSync(path.join(tmpdir(), 'provingsheet-office-'));
  try {
    const [profile, input, output] = ['profile', 'in', 'out'].map((name) => path.join(folder, name));
    mkdirSync(path.join(profile, 'user'), { recursive: true });
    mkdirSync(input);
    writeFileSync(path.join(profile, 'user', 'registrymodifications.xcu'), settings(recalculate));
    const names = [...files.keys()];
    for (const name of names) writeFileSync(path.join(input, name), files.get(name) as Uint8Array);
    execFileSync(office, [
      `-env:UserInstallation=${pathToFileURL(profile).href}`, '--headless', '--norestore', '--convert-to', to, '--outdir', output,
      ...names.map((name) => path.join(input, name)),
    ], { stdio: 'ignore', timeout: timeFor(names.length) });
    return new Map(names.map((name) => [name, readFileSync(path.join(output, name.replace(/\.xlsx$/, `.${to}`)))]));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

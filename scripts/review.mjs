/**
 * npm run review -- FILES…|FOLDERS… [--report FILE]: reviews workbooks (.xlsx), one after the other; folders with what is in them.
 * The report goes to stdout, and as text or comma-separated values (.csv) into FILE; progress goes to stderr. Ends with 1 if
 * there is a finding or a file that cannot be read, with 2 if there is nothing to review.
 */
import { appendFileSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { root, run } from './ensure.mjs';
import { ensureEngine } from './ensureEngine.mjs';

const EPOCH = 25_569;
const DAY = 86_400_000;
const BAR = 24;

const { values: { report }, positionals } = parseArgs({ options: { report: { type: 'string' } }, allowPositionals: true });
// npm starts this in the project's folder; file names are meant from where the user stands.
const from = process.cwd() === root && process.env.INIT_CWD ? process.env.INIT_CWD : process.cwd();
const files = positionals.flatMap((given) => workbooksIn(path.resolve(from, given), given));
if (files.length === 0) {
  console.error(positionals.length === 0 ? 'found no file to review; expected: npm run review -- FILES…|FOLDERS… [--report FILE]' : `found no workbook (.xlsx) in ${positionals.join(', ')}`);
  process.exit(2);
}

ensureEngine();
run('npx', ['webpack', '--env', 'only=review']);
const { Engine } = createRequire(import.meta.url)(path.join(root, 'build', 'evaluate.cjs'));
const { needsALook, reportCsv, reportCsvHead, reportSummary, reportText, reviewFile } = await import(pathToFileURL(path.join(root, 'build', 'review.mjs')).href);

const target = report && path.resolve(from, report);
const asCsv = /\.csv$/i.test(report ?? '');
if (target) writeFileSync(target, asCsv ? `\uFEFF${reportCsvHead()}` : '');
const now = new Date();
const today = Math.floor((now.getTime() - now.getTimezoneOffset() * 60_000) / DAY) + EPOCH;
const done = [];
for (const [i, { file, shown }] of files.entries()) {
  progress(i, shown);
  const reviewed = await outcomeOf(file, shown);
  done.push(reviewed);
  clearProgress();
  process.stdout.write(reportText(reviewed));
  if (target) appendFileSync(target, asCsv ? reportCsv(reviewed) : reportText(reviewed));
}
process.stdout.write(reportSummary(done));
if (target && !asCsv) appendFileSync(target, reportSummary(done));
process.exitCode = done.some(needsALook) ? 1 : 0;

/** The workbooks of a folder and its folders, or the file itself; those that a program keeps open beside them are left out. */
function workbooksIn(file, shown) {
  let status;
  try {
    status = statSync(file);
  } catch {
    return [{ file, shown }];
  }
  if (!status.isDirectory()) return [{ file, shown }];
  return readdirSync(file, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1)).flatMap((entry) => {
    const [inner, name] = [path.join(file, entry.name), path.join(shown, entry.name)];
    if (entry.isDirectory()) return entry.name === 'node_modules' || entry.name.startsWith('.') ? [] : workbooksIn(inner, name);
    return /\.xlsx$/i.test(entry.name) && !entry.name.startsWith('~$') ? [{ file: inner, shown: name }] : [];
  });
}

/** What became of one file; a file that cannot be read does not stop the others. */
async function outcomeOf(file, shown) {
  try {
    return { file: shown, review: await reviewFile(readFileSync(file), recalculate, { today }) };
  } catch (error) {
    return { file: shown, failure: error.code === 'ENOENT' ? 'found no such file' : error.message };
  }
}

async function recalculate(sheets, use) {
  const engine = new Engine(sheets);
  try {
    await engine.calculate();
    return use((sheet, at) => engine.value(sheet, at));
  } finally {
    engine.dispose();
  }
}

function progress(count, shown) {
  if (!process.stderr.isTTY) {
    process.stderr.write(`${count + 1}/${files.length} ${shown}\n`);
    return;
  }
  const full = Math.round((BAR * count) / files.length);
  const room = Math.max(10, (process.stderr.columns ?? 80) - BAR - 16);
  const name = shown.length > room ? `…${shown.slice(1 - room)}` : shown;
  process.stderr.write(`\r\x1b[K[${'█'.repeat(full)}${'·'.repeat(BAR - full)}] ${count + 1}/${files.length} ${name}`);
}

function clearProgress() {
  if (process.stderr.isTTY) process.stderr.write('\r\x1b[K');
}

/**
 * npm test: everything that must hold, on a fresh clone too. Installs what is missing, checks types and lint, builds, and runs
 * the unit, engine, office (LibreOffice) and browser suites. A suite that cannot run is counted as skipped and named. Ends with "N passed, N failed".
 * `npm test -- unit engine` runs only these suites; `-t NAME` and other jest options go through.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { ensureBrowser, ensureLibreOffice, ensurePackages, root, run } from './ensure.mjs';
import { ensureEngine } from './ensureEngine.mjs';

const SUITES = ['unit', 'engine', 'office', 'browser'];
const words = process.argv.slice(2);
const asked = words.filter((word) => SUITES.includes(word));
const jestOptions = words.filter((word) => !SUITES.includes(word));
const suites = asked.length > 0 ? asked : SUITES;

/** A step that is not a jest suite counts as one check. */
function check(name, command, args) {
  console.log(`— ${name}`);
  const { status } = spawnSync(command, args, { cwd: root, stdio: 'inherit', shell: process.platform === 'win32' });
  return status === 0 ? { passed: 1, failed: 0, skipped: 0 } : { passed: 0, failed: 1, skipped: 0, name };
}

function jest(projects, env) {
  const folder = mkdtempSync(path.join(tmpdir(), 'provingsheet-test-'));
  const file = path.join(folder, 'results.json');
  console.log(`— ${projects.join(', ')} tests`);
  spawnSync('npx', ['jest', '--selectProjects', ...projects, '--json', '--outputFile', file, ...jestOptions], {
    cwd: root, stdio: ['ignore', 'ignore', 'inherit'], env: { ...process.env, ...env }, shell: process.platform === 'win32',
  });
  try {
    const results = JSON.parse(readFileSync(file, 'utf8'));
    // A file that does not even load has no failed test of its own.
    const broken = results.testResults.filter((suite) => suite.status === 'failed' && suite.assertionResults.every(({ status }) => status !== 'failed'));
    return { passed: results.numPassedTests, failed: results.numFailedTests + broken.length, skipped: results.numPendingTests };
  } catch {
    return { passed: 0, failed: 1, skipped: 0, name: 'jest gave no results' };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

ensurePackages();
run('node', ['scripts/generate.mjs']);
ensureEngine();

const counts = [];
if (asked.length === 0) {
  counts.push(check('types', 'npx', ['tsc', '--noEmit']));
  counts.push(check('lint', 'npx', ['eslint', '.', '--max-warnings', '0']));
}
if (suites.includes('browser')) counts.push(check('build', 'node', ['scripts/build.mjs']));

const notRun = [];
const inNode = suites.filter((suite) => suite === 'unit' || suite === 'engine');
if (inNode.length > 0) counts.push(jest(inNode, {}));
if (suites.includes('office')) {
  if (ensureLibreOffice()) counts.push(jest(['office'], {}));
  else notRun.push('office tests: no LibreOffice (soffice) or no pdftotext found, and none could be installed. Install them (Debian: apt-get install libreoffice-calc poppler-utils)');
}
if (suites.includes('browser')) {
  const browser = ensureBrowser();
  if (browser) counts.push(jest(['browser'], { CHROMIUM: browser }));
  else notRun.push('browser tests: no Chromium found and none could be installed. Install the package "chromium" (Debian: apt-get install chromium), or set CHROMIUM to its path');
}

const total = (what) => counts.reduce((sum, count) => sum + count[what], 0);
const skipped = total('skipped') + notRun.length;
for (const { name } of counts) if (name) console.log(`FAILED: ${name}`);
for (const reason of notRun) console.log(`SKIPPED: ${reason}`);
console.log(`${total('passed')} passed, ${total('failed')} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
process.exit(total('failed') > 0 ? 1 : 0);

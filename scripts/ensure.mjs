/** Makes sure that what the commands need is on the machine. Uses nothing but node itself, since it runs first. */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = path.dirname(path.dirname(fileURLToPath(import.meta.url)));

/** Runs a command in the project's folder, its output on stderr so that stdout stays the caller's. Throws if it fails. */
export function run(command, args, { env } = {}) {
  const result = spawnSync(command, args, {
    cwd: root,
    stdio: ['ignore', 2, 2],
    env: { ...process.env, ...env },
    shell: process.platform === 'win32',
  });
  if (result.error) throw new Error(`${command}: ${result.error.message}`);
  if (result.status !== 0) throw new Error(`${command} ${args.join(' ')} ended with exit code ${result.status}`);
}

/** Installs the packages of the lock file, unless they are there already. */
export function ensurePackages() {
  if (Number(process.versions.node.split('.')[0]) < 20) {
    throw new Error(`Node ${process.versions.node} is running; Provingsheet needs Node 20 or later`);
  }
  if (isInstalled()) return;
  console.error('Installing packages (npm ci), a minute or two the first time …');
  run('npm', ['ci', '--no-audit', '--no-fund']);
}

/** Whether npm's record of what it installed holds every package of the lock file, at its version. npm writes it last. */
function isInstalled() {
  const record = path.join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(record)) return false;
  const packagesOf = (file) => JSON.parse(readFileSync(file, 'utf8')).packages;
  const installed = packagesOf(record);
  return Object.entries(packagesOf(path.join(root, 'package-lock.json')))
    .filter(([name, entry]) => name !== '' && !entry.optional)
    .every(([name, entry]) => installed[name]?.version === entry.version);
}

/** Where a program is, by the names it goes by; undefined if it is not on the path. */
export function findProgram(names) {
  const folders = (process.env.PATH ?? '').split(path.delimiter);
  for (const name of names) {
    for (const folder of folders) {
      const file = path.join(folder, name);
      if (folder && existsSync(file)) return file;
    }
  }
  return undefined;
}

const BROWSERS = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];

/** The browser for the browser tests: CHROMIUM, one on the path, or one installed now from the system's packages. */
export function ensureBrowser() {
  const found = process.env.CHROMIUM ?? findProgram(BROWSERS);
  if (found) return found;
  installSystemPackages(['chromium', 'fonts-liberation']);
  return findProgram(BROWSERS);
}

/** LibreOffice, and the reader of the pages that it prints, for the tests of workbook files: on the path, or installed now from the system's packages. */
export function ensureLibreOffice() {
  const found = () => (process.env.SOFFICE ?? findProgram(['soffice'])) && findProgram(['pdftotext']);
  if (!found()) installSystemPackages(['--no-install-recommends', 'libreoffice-calc', 'poppler-utils', 'fonts-liberation']);
  return found();
}

/** Installs Debian packages where it may (root, or sudo that asks nothing); otherwise leaves things as they are. */
function installSystemPackages(packages) {
  if (!findProgram(['apt-get'])) return;
  const asRoot = process.getuid?.() === 0;
  if (!asRoot && spawnSync('sudo', ['-n', 'true']).status !== 0) return;
  const prefix = asRoot ? [] : ['sudo', '-n'];
  const apt = (...args) => {
    const [command, ...rest] = [...prefix, 'env', 'DEBIAN_FRONTEND=noninteractive', 'apt-get', '-qq', ...args];
    return spawnSync(command, rest, { stdio: ['ignore', 2, 2] }).status === 0;
  };
  console.error(`Installing ${packages.filter((name) => !name.startsWith('-')).join(', ')} from the system's packages …`);
  if (!apt('install', '-y', ...packages)) {
    apt('update');
    apt('install', '-y', ...packages);
  }
}

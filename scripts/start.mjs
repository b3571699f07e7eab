/** npm start: installs and builds what is missing or out of date, then serves the workbench. */
import { existsSync, readdirSync, statSync } from 'node:fs';
import path from 'node:path';
import { ensurePackages, root, run } from './ensure.mjs';

/** What the workbench is built from. */
const SOURCES = ['src', 'templates', 'webpack.config.js', 'tsconfig.json', 'package-lock.json', 'scripts/generate.mjs'];

function newest(file) {
  if (!existsSync(file)) return 0;
  const status = statSync(file);
  if (!status.isDirectory()) return status.mtimeMs;
  return Math.max(status.mtimeMs, ...readdirSync(file).map((name) => newest(path.join(file, name))));
}

function isBuilt() {
  const page = path.join(root, 'dist', 'index.html');
  return existsSync(page) && statSync(page).mtimeMs > Math.max(...SOURCES.map((source) => newest(path.join(root, source))));
}

ensurePackages();
if (!isBuilt()) {
  console.error('Building the workbench, about a minute …');
  run('node', ['scripts/build.mjs', 'workbench']);
}
const { serveUntilStopped } = await import('./serve.mjs');
await serveUntilStopped();

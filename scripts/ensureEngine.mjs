/** Makes sure that build/evaluate.cjs, the formula engine for node, is there and not older than what it is made from. */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { ensurePackages, root, run } from './ensure.mjs';

const SOURCES = ['src/metrology', 'src/functions', 'src/hosts', 'src/worksheets/planBuilder.ts', 'scripts/generate.mjs', 'webpack.config.js', 'tsconfig.json', 'package-lock.json'];

/** Installs packages and builds the engine where needed, which takes a minute the first time and nothing after. */
export function ensureEngine() {
  ensurePackages();
  const bundle = path.join(root, 'build', 'evaluate.cjs');
  const stamp = path.join(root, 'build', 'evaluate.stamp');
  const wanted = sourcesHash();
  if (existsSync(bundle) && existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return;
  console.error('Building the formula engine …');
  run('node', ['scripts/generate.mjs']);
  run('npx', ['webpack', '--env', 'only=engine']);
  writeFileSync(stamp, wanted);
}

function sourcesHash() {
  const hash = createHash('sha256');
  for (const file of SOURCES.flatMap((source) => filesOf(path.join(root, source)))) hash.update(file).update(readFileSync(file));
  return hash.digest('hex');
}

function filesOf(source) {
  if (!statSync(source).isDirectory()) return [source];
  return readdirSync(source).sort().flatMap((name) => filesOf(path.join(source, name)));
}

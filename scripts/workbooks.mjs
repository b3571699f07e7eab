/** npm run workbooks [-- FOLDER]: the ready workbooks (.xlsx), with the values that the engine of the page computes, into dist/workbooks. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensurePackages, root, run } from './ensure.mjs';
import { ensureEngine } from './ensureEngine.mjs';

ensurePackages();
run('node', ['scripts/generate.mjs']);
ensureEngine();
run('npx', ['webpack', '--env', 'only=workbooks']);

const { Engine } = createRequire(import.meta.url)(path.join(root, 'build', 'evaluate.cjs'));
const { engineSheets, readyWorkbooks, writeWorkbook } = await import(pathToFileURL(path.join(root, 'build', 'workbooks.mjs')).href);

const folder = path.resolve(root, process.argv[2] ?? path.join('dist', 'workbooks'));
mkdirSync(folder, { recursive: true });
for (const { file, plans } of readyWorkbooks()) {
  const engine = new Engine(engineSheets(plans));
  try {
    await engine.calculate();
    const sheets = plans.map((plan) => ({ plan, values: (at) => engine.value(plan.name, at) }));
    writeFileSync(path.join(folder, file), await writeWorkbook(sheets));
  } finally {
    engine.dispose();
  }
  console.log(path.relative(root, path.join(folder, file)));
}

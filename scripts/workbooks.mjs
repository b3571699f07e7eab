/**
 * npm run workbooks [-- [--only NAME] [FOLDER]]: the ready workbooks (.xlsx), with the values that the engine of the page
 * computes, into dist/workbooks or FOLDER. `--only NAME` writes those whose file name holds NAME.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { root, run } from './ensure.mjs';
import { ensureEngine } from './ensureEngine.mjs';

const { values: { only = '' }, positionals: [folderName = path.join('dist', 'workbooks')] } =
  parseArgs({ options: { only: { type: 'string' } }, allowPositionals: true });

ensureEngine();
run('npx', ['webpack', '--env', 'only=workbooks']);

const { Engine } = createRequire(import.meta.url)(path.join(root, 'build', 'evaluate.cjs'));
const { engineSheets, readyWorkbooks, writeWorkbook } = await import(pathToFileURL(path.join(root, 'build', 'workbooks.mjs')).href);

/** The bytes of a file, with the values that the engine computes. */
async function computed(plans) {
  const engine = new Engine(engineSheets(plans));
  try {
    await engine.calculate();
    return await writeWorkbook(plans.map((plan) => ({ plan, values: (at) => engine.value(plan.name, at) })));
  } finally {
    engine.dispose();
  }
}

const all = readyWorkbooks();
const wanted = all.filter(({ file }) => file.includes(only));
if (wanted.length === 0) {
  console.error(`found no workbook whose name holds "${only}"; there are ${all.map(({ file }) => file).join(', ')}`);
  process.exit(1);
}
const folder = path.resolve(root, folderName);
mkdirSync(folder, { recursive: true });
for (const { file, plans } of wanted) {
  const start = Date.now();
  try {
    writeFileSync(path.join(folder, file), await computed(plans));
  } catch (error) {
    console.error(`${file}: ${error.message}`);
    process.exit(1);
  }
  const formulas = plans.flatMap(({ cells }) => cells).filter(({ formula }) => formula !== undefined).length;
  console.log(`${path.relative(root, path.join(folder, file))}: ${formulas} formulas, ${((Date.now() - start) / 1000).toFixed(1)} s`);
}

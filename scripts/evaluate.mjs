/** npm run --silent evaluate -- [--data FILE.csv] FORMULA...: formulas in, JSON out. All but the results goes to stderr. */
import { createRequire } from 'node:module';
import path from 'node:path';
import { ensureEngine } from './ensureEngine.mjs';
import { root } from './ensure.mjs';

ensureEngine();
const { main } = createRequire(import.meta.url)(path.join(root, 'build', 'evaluate.cjs'));
// npm starts this in the project's folder; file names are meant from where the user stands.
if (process.cwd() === root && process.env.INIT_CWD) process.chdir(process.env.INIT_CWD);
process.exitCode = await main(process.argv.slice(2), {
  out: (line) => process.stdout.write(`${line}\n`),
  error: (line) => process.stderr.write(`${line}\n`),
});

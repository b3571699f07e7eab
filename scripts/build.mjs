/** npm run build [-- workbench|excel|engine]: metadata first, then the bundles. BASE_URL sets where Excel finds the package. */
import { ensurePackages, run } from './ensure.mjs';

ensurePackages();
run('node', ['scripts/generate.mjs']);
const only = process.argv[2];
run('npx', ['webpack', ...(only ? ['--env', `only=${only}`] : [])]);

/**
 * npm run excel: builds the Excel package, serves it at https://localhost:3000/ and opens desktop Excel with it. Where there
 * is no desktop Excel it serves the package and says how to load it in Excel on the web. Ctrl+C ends it and takes the package
 * out of Excel again. The Office tools used here report nothing: since their version 3 they carry no usage reporting
 * (test/excel/usageData.test.ts).
 */
import path from 'node:path';
import { ensurePackages, root, run } from './ensure.mjs';

const PORT = 3000;
const dist = path.join(root, 'dist');
const manifest = path.join(dist, 'manifest.xml');
const hasDesktopExcel = process.platform === 'win32' || process.platform === 'darwin';

ensurePackages();
run('node', ['scripts/build.mjs', 'excel'], { env: { BASE_URL: `https://localhost:${PORT}/` } });

// Loaded only now: on a fresh clone these packages have just been installed.
const { default: certificates } = await import('office-addin-dev-certs');
const { default: debugging } = await import('office-addin-debugging');
const { serveFolder } = (await import('./excelServer.cjs')).default;

const server = await serveFolder(dist, await certificateOfLocalhost(), PORT);
console.error(`Serving ${dist} at https://localhost:${PORT}/ (Ctrl+C ends it)`);
process.once('SIGINT', () => void stop());
process.once('SIGTERM', () => void stop());

if (hasDesktopExcel) await openExcel();
else explainExcelOnTheWeb(`There is no desktop Excel for ${process.platform}.`);

/** Makes and trusts a certificate for localhost the first time; the system may ask for permission. */
async function certificateOfLocalhost() {
  try {
    return await certificates.getHttpsServerOptions();
  } catch (error) {
    throw new Error(`No certificate for https://localhost:${PORT}/ (${error.message}). Excel loads https only; run "npx office-addin-dev-certs install" and try again`);
  }
}

async function openExcel() {
  try {
    await debugging.startDebugging(manifest, { appType: 'desktop', app: 'excel', enableDebugging: false });
  } catch (error) {
    explainExcelOnTheWeb(`Desktop Excel could not be opened with the package: ${error.message}`);
  }
}

function explainExcelOnTheWeb(reason) {
  console.error(`
${reason}
Load the package in Excel on the web instead, in a browser on this machine:
  1. Open https://localhost:${PORT}/help.html once and accept the certificate if the browser asks.
  2. Open a workbook in Excel on the web.
  3. Home > Add-ins > More Add-ins > My Add-ins > Upload My Add-in.
  4. Choose ${manifest}
Leave this command running meanwhile.`);
}

async function stop() {
  server.close();
  server.closeAllConnections();
  if (hasDesktopExcel) await debugging.stopDebugging(manifest).catch((error) => console.error(`Excel still lists the package: ${error.message}`));
}

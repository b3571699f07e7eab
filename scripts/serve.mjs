/** node scripts/serve.mjs: serves the built workbench (dist/) to this machine only, with the headers it must run under. */
import http from 'node:http';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import sirv from 'sirv';

const root = path.dirname(path.dirname(fileURLToPath(import.meta.url)));
const DEFAULT_PORT = 4710;
/** How many ports after the wanted one are tried. */
const TRIES = 20;

/** Nothing from elsewhere: no script, style, picture, font or request. The grid sets styles and pictures of its own inline. */
const POLICY = [
  "default-src 'self'",
  // The writer of .xlsx files is WebAssembly, which is a script of its own kind; text still never becomes a script.
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data:",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

function setHeaders(response, pathname) {
  response.setHeader('Content-Security-Policy', POLICY);
  response.setHeader('X-Content-Type-Options', 'nosniff');
  response.setHeader('Referrer-Policy', 'no-referrer');
  // Names under assets/ change with their content; the rest is asked for anew.
  response.setHeader('Cache-Control', pathname.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache');
}

/**
 * Starts the server on the wanted port or the next free one; port 0 takes any.
 * Resolves with the server and its address, once it answers.
 */
export async function serve({ folder = path.join(root, 'dist'), port = DEFAULT_PORT } = {}) {
  const files = sirv(folder, { dev: true, setHeaders });
  const server = http.createServer((request, response) => {
    files(request, response, () => {
      setHeaders(response, '');
      response.writeHead(404, { 'Content-Type': 'text/plain; charset=utf-8' }).end('There is no such file in the workbench.\n');
    });
  });
  const taken = await listen(server, port);
  return { server, url: `http://localhost:${taken}/` };
}

async function listen(server, wanted) {
  for (let port = wanted; port < wanted + TRIES; port += 1) {
    try {
      await new Promise((resolve, reject) => {
        server.once('error', reject);
        server.listen(port, '127.0.0.1', () => {
          server.off('error', reject);
          resolve();
        });
      });
      return server.address().port;
    } catch (error) {
      if (error.code !== 'EADDRINUSE') throw error;
    }
  }
  throw new Error(`Ports ${wanted} to ${wanted + TRIES - 1} are all taken; set PORT to a free one`);
}

/** Serves until Ctrl-C, and says where. PORT in the environment sets the wanted port. */
export async function serveUntilStopped() {
  const { PORT } = process.env;
  const port = PORT === undefined ? DEFAULT_PORT : Number(PORT);
  if (!Number.isInteger(port) || port < 0 || port > 65_535) throw new Error(`PORT is "${PORT}"; expected a number from 0 to 65535`);
  const { server, url } = await serve({ port });
  console.log(`Provingsheet workbench: ${url}`);
  const stop = () => {
    server.closeAllConnections();
    server.close();
  };
  process.once('SIGINT', stop);
  process.once('SIGTERM', stop);
}

if (process.argv[1] && path.resolve(process.argv[1]) === fileURLToPath(import.meta.url)) await serveUntilStopped();

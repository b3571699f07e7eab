import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import type { Server } from 'node:https';
import { request } from 'node:https';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { generateCertificates } from 'office-addin-dev-certs';
import { serveFolder } from '../../scripts/excelServer.cjs';

let folder: string;
let authority: Buffer;
let certificate: { cert: Buffer; key: Buffer };
let server: Server;

function get(url: string): Promise<{ status?: number; headers: NodeJS.Dict<string | string[]>; body: string }> {
  return new Promise((resolve, reject) => {
    const { port } = server.address() as AddressInfo;
    const asked = request({ host: 'localhost', port, path: url, ca: authority }, (response) => {
      let body = '';
      response.on('data', (piece) => { body += String(piece); });
      response.on('end', () => resolve({ status: response.statusCode, headers: response.headers, body }));
    });
    asked.on('error', reject).end();
  });
}

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'excel-'));
  const [ca, cert, key] = ['ca.crt', 'localhost.crt', 'localhost.key'].map((name) => path.join(folder, name));
  jest.spyOn(console, 'log').mockImplementation(() => undefined);
  // Made, but not put among those the machine trusts.
  await generateCertificates(ca, cert, key, 1, ['localhost']);
  authority = readFileSync(ca);
  certificate = { cert: readFileSync(cert), key: readFileSync(key) };
  writeFileSync(path.join(folder, 'functions.json'), '{"functions":[]}');
  server = await serveFolder(folder, certificate, 0);
});

afterAll(() => {
  server.close();
  server.closeAllConnections();
  rmSync(folder, { recursive: true });
});

test('a file is served over https, readable from the origin of Excel on the web', async () => {
  const { status, headers, body } = await get('/functions.json');
  expect([status, body]).toEqual([200, '{"functions":[]}']);
  expect(headers['access-control-allow-origin']).toBe('*');
  expect(headers['content-type']).toContain('application/json');
});

test('a file that is not there, or not in the folder, is not found', async () => {
  expect((await get('/nothing.js')).status).toBe(404);
  expect((await get('/../../../etc/hostname')).status).toBe(404);
});

test('a taken port is named', async () => {
  const { port } = server.address() as AddressInfo;
  await expect(serveFolder(folder, certificate, port)).rejects.toThrow(`Port ${port} is taken`);
});

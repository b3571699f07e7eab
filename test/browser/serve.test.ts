import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import path from 'node:path';

jest.setTimeout(60_000);

const root = path.resolve(__dirname, '../..');
const running: ChildProcess[] = [];

afterAll(() => running.forEach((server) => server.kill('SIGKILL')));

function start(PORT: string): ChildProcess {
  const server = spawn(process.execPath, ['scripts/serve.mjs'], { cwd: root, env: { ...process.env, PORT }, stdio: ['ignore', 'pipe', 'pipe'] });
  running.push(server);
  return server;
}

async function firstLine(server: ChildProcess): Promise<string> {
  const [chunk] = (await once(server.stdout!, 'data')) as [Buffer];
  return chunk.toString().trim();
}

test('the server says its address once it answers there, and moves on from a port that is taken', async () => {
  const said = await firstLine(start('0'));
  expect(said).toMatch(/^Provingsheet workbench: http:\/\/localhost:\d+\/$/);
  const url = new URL(said.slice(said.indexOf('http')));
  expect((await fetch(url)).status).toBe(200);

  const next = await firstLine(start(url.port));
  expect(Number(new URL(next.slice(next.indexOf('http'))).port)).toBeGreaterThan(Number(url.port));
});

test('an interrupt ends it in good order, with a page still connected', async () => {
  const server = start('0');
  const said = await firstLine(server);
  await fetch(said.slice(said.indexOf('http')));
  server.kill('SIGINT');
  expect(await once(server, 'exit')).toEqual([0, null]);
});

test('a PORT that is no port is refused with what was found', async () => {
  const server = start('many');
  const errors: Buffer[] = [];
  server.stderr!.on('data', (chunk: Buffer) => errors.push(chunk));
  expect((await once(server, 'exit'))[0]).not.toBe(0);
  expect(Buffer.concat(errors).toString()).toContain('PORT is "many"; expected a number from 0 to 65535');
});

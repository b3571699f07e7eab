/** npm run review, as a person starts it: on a signed job, its issue copy, copies of both that were edited, and files that are no workbooks. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { issueCopy } from '../../src/hosts/file/issueCopy';
import { writeWorkbook } from '../../src/hosts/file/writeWorkbook';
import { planRecord } from '../../src/worksheets/record/planRecord';
import { cellOf, LiveWorkbook } from '../review/workbooks';
import { certifiedJob } from '../worksheets/certificate/certifiedJobs';

jest.setTimeout(300_000);

const root = path.join(__dirname, '..', '..');
let folder: string;

beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'review-'));
  mkdirSync(path.join(folder, 'jobs'));
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The file with the stored value of one cell of its second sheet changed. */
function withStored(file: Uint8Array, at: string, change: (value: number) => number): Uint8Array {
  const parts = unzipSync(file);
  const part = 'xl/worksheets/sheet2.xml';
  const pattern = new RegExp(`(<c r="${at}"[^>]*>(?:<f[^>]*>[^<]*</f>)?<v>)([^<]*)(?=</v>)`);
  const xml = strFromU8(parts[part]);
  if (!pattern.test(xml)) throw new Error(`no value in ${at}`);
  parts[part] = strToU8(xml.replace(pattern, (_, head: string, value: string) => head + String(change(Number(value)))));
  return zipSync(parts);
}

function reviewed(...args: string[]) {
  const { status, stdout, stderr } = spawnSync('node', [path.join(root, 'scripts', 'review.mjs'), ...args], { cwd: root, env: { ...process.env, INIT_CWD: folder }, encoding: 'utf8' });
  return { status, stdout, stderr };
}

test('reports each file with its findings, goes on after one that cannot be read, and ends with 1; sound files alone end with 0', async () => {
  const { plans, sheets } = await certifiedJob({ template: 'two-point' });
  const all = [...plans, planRecord(sheets, { by: 'A. Nother (invented)', on: 46_354, version: 'test' })];
  const live = await LiveWorkbook.of(all);
  const file = await writeWorkbook(all.map((plan) => ({ plan, values: live.values(plan.name) })));
  const issued = issueCopy(file);
  const run = 'Cell A as found';
  const [result, plain] = ['value_sensitivity', 'plain_sensitivity'].map((name) => cellOf(all, run, name));
  const write = (name: string, bytes: Uint8Array) => writeFileSync(path.join(folder, 'jobs', name), bytes);
  write('a-signed.xlsx', file);
  write('b-issued.xlsx', issued);
  const sound = reviewed('jobs');
  expect(sound.stdout).toMatch(/^jobs.a-signed\.xlsx: Nothing found; (\d+) of \1 results agree; everything is as signed\njobs.b-issued\.xlsx: Nothing found; (\d+) of \2 results agree; everything is as signed\n2 files: 2 without a finding, 0 with findings, 0 not reviewed\n$/);
  expect(sound.status).toBe(0);

  write('c-stale.xlsx', withStored(file, result, (value) => value * 1.00001));
  write('d-issued-edited.xlsx', withStored(issued, plain, (value) => value * 1.00001));
  write('e-cut.xlsx', file.slice(0, 4000));
  writeFileSync(path.join(folder, 'jobs', '~$a-signed.xlsx'), 'kept open by a program');
  writeFileSync(path.join(folder, 'words.xlsx'), 'no workbook');
  const { status, stdout, stderr } = reviewed('jobs', 'words.xlsx', 'nowhere.xlsx', '--report', 'report.csv');
  expect(stdout).toMatch(new RegExp(`c-stale\\.xlsx: .*wrong[^]*Result +${run}!${result}: ${result} holds`));
  expect(stdout).toMatch(new RegExp(`d-issued-edited\\.xlsx: .*differs from what was signed[^]*${run}!${plain}`));
  expect(stdout).toContain('e-cut.xlsx: not reviewed: found a file that is no zip archive; expected a workbook (.xlsx)');
  expect(stdout).toContain('words.xlsx: not reviewed:');
  expect(stdout).toContain('nowhere.xlsx: not reviewed: found no such file');
  expect(stdout).not.toContain('~$');
  expect(stdout).toMatch(/7 files: 2 without a finding, 2 with findings, 3 not reviewed\n$/);
  expect(stderr).toContain('7/7 nowhere.xlsx');
  expect(status).toBe(1);
  const csv = readFileSync(path.join(folder, 'report.csv'), 'utf8').split('\r\n');
  expect(csv[0]).toBe('\uFEFF"File","Severity","Kind","Sheet","Cell","Message"');
  expect(csv.filter((line) => line.includes('c-stale.xlsx') && line.includes(`"${result}"`)).length).toBeGreaterThan(0);
});

test('without a file it says what is expected, and ends with 2', () => {
  const { status, stderr } = reviewed();
  expect(stderr).toContain('npm run review -- FILES');
  expect(status).toBe(2);
});

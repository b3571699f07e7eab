/** npm run workbooks: files with the values of the engine, one line each. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { engineSheets } from '../../src/hosts/file/engineSheets';
import { readWorkbook } from '../../src/hosts/file/readWorkbook';
import { readyWorkbooks } from '../../src/hosts/file/readyWorkbooks';
import { CellError, computed } from './bundle';

const script = path.join(__dirname, '..', '..', 'scripts', 'workbooks.mjs');
let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'provingsheet-workbooks-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function workbooks(...words: string[]) {
  const { status, stdout, stderr } = spawnSync('node', [script, ...words, path.join(folder, 'made')], { encoding: 'utf8' });
  return { status, lines: stdout.trim().split('\n'), stderr };
}

test('writes the workbooks that were asked for, with a line each, and every formula with the value of the engine', async () => {
  const { status, lines, stderr } = workbooks('--only', 'first');
  expect([status, stderr.includes('Error')]).toEqual([0, false]);
  expect(readdirSync(path.join(folder, 'made'))).toEqual(['first-workbook.xlsx']);
  const [first] = readyWorkbooks().filter(({ file }) => file === 'first-workbook.xlsx');
  const formulas = first.plans.flatMap(({ cells }) => cells).filter(({ formula }) => formula !== undefined);
  expect(lines).toHaveLength(1);
  expect(lines[0]).toMatch(new RegExp(`made/first-workbook\\.xlsx: ${formulas.length} formulas, \\d+\\.\\d s$`));

  const engine = await computed(...engineSheets(first.plans));
  const sheets = readWorkbook(readFileSync(path.join(folder, 'made', 'first-workbook.xlsx')));
  const read = sheets.flatMap(({ name, cells }) => cells.filter(({ formula }) => formula !== undefined).map(({ at, value }) => {
    const expected = engine.value(name, at);
    return [name, at, value, expected instanceof CellError ? { error: expected.error } : expected];
  }));
  expect(read).toHaveLength(formulas.length);
  for (const [name, at, value, expected] of read) expect([name, at, value]).toEqual([name, at, expected]);
}, 120_000);

test('a name that no workbook has is refused with the names that there are', () => {
  const { status, stderr } = workbooks('--only', 'nothing-like-it');
  expect(status).toBe(1);
  expect(stderr).toContain('found no workbook whose name holds "nothing-like-it"; there are first-workbook.xlsx');
  expect(existsSync(path.join(folder, 'made'))).toBe(false);
}, 120_000);

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

const script = path.join(__dirname, '..', '..', 'scripts', 'evaluate.mjs');
const folder = mkdtempSync(path.join(tmpdir(), 'evaluate-'));

jest.setTimeout(60_000);

afterAll(() => rmSync(folder, { recursive: true }));

interface Answer {
  readonly code: number | null;
  readonly lines: unknown[];
  readonly stderr: string;
}

function evaluate(...args: string[]): Answer {
  const { status, stdout, stderr } = spawnSync('node', [script, ...args], { cwd: folder, encoding: 'utf8', maxBuffer: 2 ** 26 });
  const lines = stdout.split('\n').slice(0, -1).map((line) => JSON.parse(line) as unknown);
  return { code: status, lines, stderr };
}

function csv(text: string): string {
  const file = path.join(folder, 'data.csv');
  writeFileSync(file, text);
  return file;
}

describe('npm run evaluate', () => {
  test('prints a scalar with every digit', () => {
    expect(evaluate('=1/3')).toMatchObject({ code: 0, lines: [0.3333333333333333] });
  });

  test('prints an array as rows, and one line for each formula in order', () => {
    const { code, lines } = evaluate('=PROVE.NET({0;50;100},{0.010;1.01;2.01})', 'SUM({1,2;3,4})', '={1,TRUE;"a",""}');
    expect(code).toBe(0);
    expect(lines).toEqual([[[0], [1], [1.9999999999999998]], 10, [[1, true], ['a', '']]]);
  });

  test('prints an error with its message and ends with code 1, the other formulas still computed', () => {
    const { code, lines } = evaluate('=PROVE.NET({0;50},{0;"high"})', '=1/0', '=2*3');
    expect(code).toBe(1);
    expect(lines[0]).toEqual({ error: '#VALUE!', message: 'readings row 2: found the text "high"; expected a number' });
    expect(lines[1]).toMatchObject({ error: '#DIV/0!', message: expect.stringContaining('division by zero') });
    expect(lines[2]).toBe(6);
  });

  test('prints an error within an array in its place', () => {
    const { code, lines } = evaluate('={1,2}/{1,0}');
    expect(code).toBe(1);
    expect(lines).toEqual([[[2 / 2, { error: '#DIV/0!', message: expect.any(String) }]]]);
  });

  test('reads numbers, blanks, text and quoted fields of a CSV file', () => {
    const file = csv('\uFEFFforce,reading,"note, quoted"\r\n0,1.5E-3,"say ""hi"""\r\n-2.50,,TRUE\r\n+.5,1 000,\r\n');
    const { code, lines } = evaluate('--data', file, '=A1:C4', '=A5', '=ISBLANK(B3)', '=ISTEXT(B4)');
    expect(code).toBe(0);
    expect(lines).toEqual([
      [['force', 'reading', 'note, quoted'], [0, 0.0015, 'say "hi"'], [-2.5, null, 'TRUE'], [0.5, '1 000', null]],
      null, true, true,
    ]);
  });

  test('takes an error value in a CSV file for an error, and a formula in it for text', () => {
    const { code, lines } = evaluate('--data', csv('0,0.5,=1+1\n50,#N/A,\n'), '=C1', '=PROVE.NET(A1:A2,B1:B2)');
    expect(code).toBe(1);
    expect(lines).toEqual(['=1+1', { error: '#N/A', message: 'readings row 2: the cell holds #N/A' }]);
  });

  test('finds a file by its name relative to where the user stands', () => {
    csv('1\n2\n');
    expect(evaluate('--data=data.csv', '=SUM(A1:A2)')).toMatchObject({ code: 0, lines: [3] });
  });

  test('computes native functions on the data', () => {
    const file = csv('x,y\n1,2\n2,4\n3,6.5\n');
    const { lines } = evaluate('--data', file, '=LINEST(B2:B4,A2:A4)', '=SORT(B2:B4,1,-1)', '=B2:B4', '=SUMPRODUCT(A2:A4,B2:B4)');
    const [[slope, intercept]] = lines[0] as number[][];
    expect(slope).toBeCloseTo(2.25, 9);
    expect(intercept).toBeCloseTo(-1 / 3, 9);
    expect(lines.slice(1)).toEqual([[[6.5], [4], [2]], [[2], [4], [6.5]], 29.5]);
  });

  test('fits a large table and prints a large result', () => {
    const rows = Array.from({ length: 10_000 }, (_, index) => [index, ...Array.from({ length: 20 }, (_unused, run) => index * 0.5 + run)].join(','));
    const { code, lines } = evaluate('--data', csv(rows.join('\n')), '=PROVE.NET(A1:A10000,B1:U10000)', '=PROVE.FIT(A1:A10000,B1:B10000,1)');
    const net = lines[0] as number[][];
    expect([code, net.length, net[0].length, net[9999][19]]).toEqual([0, 10_000, 20, 4999.5]);
    expect((lines[1] as number[][])[1][0]).toBeCloseTo(0.5, 12);
  });

  test('says what is wrong with a formula that cannot be read or names what is not there', () => {
    const wrong: Record<string, string> = {
      '=SUM(1,2': 'found "(" that is not closed',
      '=SUM(1,2))': 'found ")" without a "(" before it',
      '=1+': 'the formula cannot be read',
      '=': 'found nothing after "="',
      '="a': 'without its partner',
      '=PROVE.NOTHING(1)': 'there is no function PROVE.NOTHING',
      '=unquoted': 'the name unquoted is not known',
    };
    const { code, lines } = evaluate(...Object.keys(wrong));
    expect(code).toBe(1);
    expect(lines).toEqual(Object.values(wrong).map((message) => ({ error: expect.stringMatching(/^#/), message: expect.stringContaining(message) })));
  });

  test.each([
    [[], 'found no formula'],
    [['--sheet', '=1'], 'found the option --sheet'],
    [['--data'], 'found nothing after --data'],
    [['--data', 'nowhere.csv', '=1'], 'nowhere.csv: cannot be read'],
    [['--data', 'a.csv', '--data', 'b.csv', '=1'], 'found --data twice'],
  ])('refuses the command line %j with code 2 and prints no result', (args, message) => {
    const { code, lines, stderr } = evaluate(...args);
    expect([code, lines]).toEqual([2, []]);
    expect(stderr).toContain(message);
  });

  test('names the row of a CSV file whose quotes do not pair', () => {
    const { code, stderr } = evaluate('--data', csv('1,2\n3,"4\n'), '=A1');
    expect(code).toBe(2);
    expect(stderr).toMatch(/data\.csv, row 2: /);
  });

  test('takes a formula that begins with a minus after --', () => {
    expect(evaluate('--', '-2+5')).toMatchObject({ code: 0, lines: [3] });
  });

  test('explains itself', () => {
    const { status, stdout } = spawnSync('node', [script, '--help'], { encoding: 'utf8' });
    expect(status).toBe(0);
    expect(stdout).toMatch(/--data FILE\.csv/);
  });

  test('never prints Infinity or NaN', () => {
    const { lines } = evaluate('=10^308*10', '=-(10^308)*{10,1}', '=1E999', '=EXP(1000)', '=PROVE.ZEROBALANCE(1,0)');
    for (const line of lines.flat(2)) expect(line === null || typeof line === 'object' || Number.isFinite(line)).toBe(true);
    expect(lines.flat(2)).not.toContain(null);
  });
});

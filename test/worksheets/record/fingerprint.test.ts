import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { fingerprints, readingsFingerprint, recordFits, sha256Of } from '../../../src/worksheets/record/fingerprint';
import type { RecordLine } from '../../../src/worksheets/record/record';
import { SampleSheet } from '../sampleSheet';

/** FIPS 180-4 examples of NIST, one block and two blocks, and the empty message. */
test.each([
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  ['abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq', '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1'],
  ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
])('SHA-256 of %j is the published one', (message, digest) => {
  expect(sha256Of(message)).toBe(digest);
});

test('SHA-256 of any text is that of node', () => {
  fc.assert(fc.property(fc.string({ unit: 'grapheme' }), (held) => expect(sha256Of(held)).toBe(createHash('sha256').update(held, 'utf8').digest('hex'))));
});

const LINES: readonly RecordLine[] = [
  { sheet: 'As found', at: 'A1', part: 'entry', content: 'Run\tof\\the day', value: '' },
  { sheet: 'As found', at: 'B4', part: 'reading', content: '2.00001', value: '' },
  { sheet: 'As found', at: 'C4', part: 'formula', content: '=PROVE.NET(A4:A5,B4:B5)', value: '{0;2}' },
  { sheet: 'As found', at: 'D4', part: 'limit', content: '0.0005', value: '' },
];

test('a person with node and the words of the record recomputes the fingerprints', () => {
  const hash = (held: string) => createHash('sha256').update(held, 'utf8').digest('hex');
  expect(fingerprints(LINES)).toEqual({
    readings: hash('As found\tB4\treading\t2.00001\t\n'),
    results: hash('As found\tC4\tformula\t=PROVE.NET(A4:A5,B4:B5)\t{0;2}\n'),
    everything: hash('As found\tA1\tentry\tRun\\tof\\\\the day\t\nAs found\tB4\treading\t2.00001\t\nAs found\tC4\tformula\t=PROVE.NET(A4:A5,B4:B5)\t{0;2}\nAs found\tD4\tlimit\t0.0005\t\n'),
  });
});

test('a change of any field changes the fingerprint of everything', () => {
  const { everything } = fingerprints(LINES);
  for (const [row, line] of LINES.entries()) {
    for (const field of ['sheet', 'at', 'content', 'value'] as const) {
      const changed = LINES.map((other, i) => (i === row ? { ...line, [field]: `${line[field]}1` } : other));
      expect(fingerprints(changed).everything).not.toBe(everything);
    }
  }
});

test('the readings of a sheet have the same fingerprint whatever its results and its other cells are', () => {
  const sheet = (reading: number, note: string) => new SampleSheet().range('forces_tension', 1, 4, [[0], [10]]).range('readings_tension', 2, 4, [[0.01], [reading]]).put('A1', note)
    .single('value_output', 'D9', reading, { formula: '=B5-B4' }).read();
  const first = readingsFingerprint(sheet(2, 'a'));
  expect(readingsFingerprint(sheet(2, 'b'))).toBe(first);
  expect(readingsFingerprint(sheet(2.00001, 'a'))).not.toBe(first);
});

test('a record fits if it states the fingerprints of its own lines', () => {
  const record = { sheet: 'Record', lines: LINES, ...fingerprints(LINES), signedBy: 'A. Nother (invented)', signedOn: 46_000 };
  expect(recordFits(record)).toBe(true);
  expect(recordFits({ ...record, lines: LINES.slice(1) })).toBe(false);
  expect(recordFits({ ...record, readings: record.results })).toBe(false);
});

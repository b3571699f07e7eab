import generated from '@generated/functions.json';
import { catalogue } from '../../src/functions/catalogue';
import { helpTexts, type HelpText } from '../../src/taskpane/helpTexts';
import { isCellAddress, metadataProblems, problemsOfName, type Metadata } from './metadataProblems';

const ids = Object.keys(catalogue);

test('metadata, catalogue and help agree and are complete', () => {
  expect(metadataProblems(generated, ids, helpTexts)).toEqual([]);
});

describe('the metadata check', () => {
  const sound: Metadata = {
    allowErrorForDataTypeAny: true,
    functions: [
      { id: 'FIRST.ONE', name: 'FIRST.ONE', description: 'd', parameters: [{ name: 'a', description: 'd' }, { name: 'b', description: 'd', optional: true }] },
      { id: 'SECONDONE', name: 'SECONDONE', description: 'd', parameters: [] },
    ],
  };
  const [first, second] = sound.functions;
  const helpFor = (id: string): HelpText => ({
    id, name: `PROVE.${id}`, group: 'g', summary: 's', returns: 'r', parameters: [], formula: ['f'], source: ['s'], notes: [],
    examples: [{ formula: `=PROVE.${id}()`, result: '1' }],
  });
  const bothIds = ['FIRST.ONE', 'SECONDONE'];
  const help = bothIds.map(helpFor);

  test('finds nothing in a sound set', () => {
    expect(metadataProblems(sound, bothIds, help)).toEqual([]);
  });

  test('finds a function that is missing in the metadata', () => {
    expect(metadataProblems({ ...sound, functions: [first] }, bothIds, help)).toEqual(['SECONDONE: in the catalogue, not in the metadata']);
  });

  test('finds a function that is missing in the catalogue', () => {
    expect(metadataProblems(sound, ['FIRST.ONE'], help)).toEqual(['SECONDONE: in the metadata, not in the catalogue']);
  });

  test('finds a function that is missing in the help', () => {
    expect(metadataProblems(sound, bothIds, help.slice(1))).toEqual(['FIRST.ONE: has no help']);
  });

  test('finds a function that stands twice', () => {
    expect(metadataProblems({ ...sound, functions: [first, second, second] }, bothIds, help)).toContain('SECONDONE: stands twice');
  });

  test('finds a missing description of a function or an argument', () => {
    const functions = [{ ...first, description: '', parameters: [{ name: 'a', description: '' }] }, second];
    expect(metadataProblems({ ...sound, functions }, bothIds, help)).toEqual(['FIRST.ONE: has no description', 'FIRST.ONE: argument a has no description']);
  });

  test('finds a required argument behind an optional one', () => {
    const functions = [{ ...first, parameters: [...first.parameters, { name: 'c', description: 'd' }] }, second];
    expect(metadataProblems({ ...sound, functions }, bothIds, help)).toEqual(['FIRST.ONE: argument c follows an optional one']);
  });

  test('finds that errors in a range would not reach the functions', () => {
    expect(metadataProblems({ functions: sound.functions }, bothIds, help)).toEqual(['allowErrorForDataTypeAny is not set']);
  });

  test.each([
    ['formula', { formula: [] }],
    ['source', { source: [''] }],
    ['group', { group: '' }],
    ['example', { examples: [{ formula: '=PROVE.SECONDONE()', result: '' }] }],
  ])('finds help without %s', (part, change) => {
    expect(metadataProblems(sound, bothIds, [help[0], { ...help[1], ...change }])).toEqual([`SECONDONE: help has no ${part}`]);
  });
});

describe('the name check', () => {
  test.each(['A1', 'FIT2', 'ISO376', 'CAL1', 'XFD1048576', 'R', 'C', 'R1C1', 'RC', 'R12', 'C7', 'R1C'])('%s is a cell address', (name) => {
    expect(isCellAddress(name)).toBe(true);
  });

  test.each(['XFE1', 'XFD1048577', 'ABCD1', 'FIT', 'A0', 'FIT.2', 'RUN', 'CREEP', 'R1X1'])('%s is no cell address', (name) => {
    expect(isCellAddress(name)).toBe(false);
  });

  test.each([
    ['FIT2', 'is a cell address'],
    ['FORECAST', 'is a function of Excel'],
    ['REGRESS', 'is an Excel 4 macro name'],
    ['STEIGUNG', 'is a function of Excel in another language'],
    ['FI', 'is not 3 to 128 characters long'],
    ['X'.repeat(129), 'is not 3 to 128 characters long'],
    ['Fit', 'is not made of A–Z, 0–9, "." and "_", a letter first'],
    ['FIT-A', 'is not made of A–Z, 0–9, "." and "_", a letter first'],
    ['1FIT', 'is not made of A–Z, 0–9, "." and "_", a letter first'],
  ])('%s %s', (name, problem) => {
    expect(problemsOfName(name)).toContain(problem);
  });
});

import { FakeHost } from '../taskpane/fakes';
import { makeRoom } from '../../src/workbench/makeRoom';
import { firstWorkbook } from '../../src/worksheets/firstWorkbook';

/** A workbook with the sheets of the first one, as they are read back, and one of the user's own. */
function workbook(changed: Readonly<Record<string, string>> = {}): FakeHost {
  const host = new FakeHost();
  for (const { name, cells } of firstWorkbook()) {
    host.content.set(name, {
      name, merges: [], names: [],
      cells: cells.flatMap(({ at, value = null, formula }) => {
        const held = changed[`${name} ${at}`] ?? value;
        return held === null && formula === undefined ? [] : [{ at, value: formula === undefined ? held : 1, ...(formula === undefined ? {} : { formula }) }];
      }),
    });
  }
  host.content.set('Job', { name: 'Job', cells: [{ at: 'A1', value: 'Job' }], merges: [], names: [] });
  return host;
}

const names = async (host: FakeHost) => (await host.sheets()).map(({ name }) => name);

test('sheets of the first workbook that nobody changed are taken out, and nothing else', async () => {
  const host = workbook();
  expect(await makeRoom(host)).toEqual(['Start', 'Load cell study', 'Five-point run']);
  expect(await names(host)).toEqual(['Sheet1', 'Job']);
});

test('a sheet of the first workbook stays if a cell of it was changed, or one was typed beside', async () => {
  const host = workbook({ 'Load cell study A6': '151000' });
  const start = host.content.get('Start')!;
  host.content.set('Start', { ...start, cells: [...start.cells, { at: 'H1', value: 'my note' }] });
  expect(await makeRoom(host)).toEqual(['Five-point run']);
  expect(await names(host)).toEqual(['Sheet1', 'Start', 'Load cell study', 'Job']);
});

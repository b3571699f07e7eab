import { readyWorkbooks } from '../../../src/hosts/file/readyWorkbooks';

test('each ready workbook has a file name of its own, in small letters, and a sheet', () => {
  const files = readyWorkbooks().map(({ file }) => file);
  expect(new Set(files).size).toBe(files.length);
  for (const file of files) expect(file).toMatch(/^[a-z0-9-]+\.xlsx$/);
  for (const { file, plans } of readyWorkbooks()) expect([file, plans.length > 0]).toEqual([file, true]);
});

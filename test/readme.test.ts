import { readFileSync } from 'node:fs';
import path from 'node:path';
import metadata from '../build/functions.json';
import packageJson from '../package.json';

const text = (name: string) => readFileSync(path.join(__dirname, '..', name), 'utf8');

describe('README', () => {
  test('names every cell function, and no other', () => {
    const table = text('README.md').split('## The functions')[1].split('## ')[0];
    const named = [...table.matchAll(/`([A-Z]{3,})`/g)].map(([, id]) => id);
    expect(named.sort()).toEqual(metadata.functions.map(({ id }) => id).sort());
  });
  test('shows pictures that exist', () => {
    const pictures = [...text('README.md').matchAll(/\]\((docs\/[^)]+)\)/g)].map(([, file]) => file);
    expect(pictures.length).toBeGreaterThan(0);
    for (const file of pictures) expect(text(file).length).toBeGreaterThan(1000);
  });
  test('names only npm scripts that exist', () => {
    const named = [...`${text('README.md')}${text('DEVELOPERS.md')}`.matchAll(/npm run (?:--silent )?([a-z]+)/g)].map(([, name]) => name);
    for (const name of named) expect(Object.keys(packageJson.scripts)).toContain(name);
  });
  test('the manifest carries the version of the package', () => {
    expect(text('manifest.xml')).toContain(`<Version>${packageJson.version}.0</Version>`);
  });
});

import { FileRefused, templateFromFile } from '../../../src/taskpane/build/templateFile';
import { fakePlanning, template } from '../fakes';

const file = (text: string, name = 'own.json'): File => new File([text], name);

async function refusal(one: File): Promise<FileRefused> {
  return templateFromFile(one, fakePlanning.readTemplate).then(() => { throw new Error('it was taken'); }, (error: FileRefused) => error);
}

test('a template is read from its file', async () => {
  expect(await templateFromFile(file(JSON.stringify(template('own', 'My own'))), fakePlanning.readTemplate)).toEqual(template('own', 'My own'));
});

test('a file over 1 MB is refused unread, with its size', async () => {
  const large = file('x'.repeat(1_250_000));
  large.text = () => { throw new Error('it was read'); };
  expect((await refusal(large)).message).toMatch(/“own.json” has 1.3 MB. A template has at most 1 MB/);
});

test('an empty file is called empty', async () => {
  expect((await refusal(file(''))).message).toContain('“own.json” is empty');
});

test('a file that is no template is refused with each path and expectation', async () => {
  const { message, problems } = await refusal(file('no json'));
  expect(message).toContain('“own.json”');
  expect(problems).toEqual(['runs: found "x"; expected a whole number', 'title: found nothing; expected a text']);
});

test('a failure of another kind is told too', async () => {
  expect((await refusal(file('{ broken'))).problems).toEqual([expect.stringContaining('JSON')]);
});

test('a file that went away is refused with the reason', async () => {
  const gone = file('x');
  gone.text = () => Promise.reject(new Error('the file was moved'));
  expect((await refusal(gone)).message).toContain('could not be read: the file was moved');
});

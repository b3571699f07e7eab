import { type Template, TemplateError } from '../../worksheets/template';
import { reasonOf } from '../reason';

/** Greatest size of a template's file, in bytes: 1 MB. */
export const GREATEST_SIZE = 1_000_000;

/** A file that is no template: what it is about, and each thing to mend. */
export class FileRefused extends Error {
  constructor(message: string, readonly problems: readonly string[] = []) {
    super(message);
    this.name = 'FileRefused';
  }
}

/**
 * Reads a template from a file that the user chose.
 * @throws FileRefused
 */
export async function templateFromFile(file: File, read: (text: string) => Template): Promise<Template> {
  if (file.size === 0) throw new FileRefused(`“${file.name}” is empty. A template is a JSON file, as “Save this template…” writes it.`);
  if (file.size > GREATEST_SIZE) {
    const size = (file.size / 1e6).toLocaleString(undefined, { maximumFractionDigits: 1, minimumFractionDigits: 1 });
    throw new FileRefused(`“${file.name}” has ${size} MB. A template has at most 1 MB, so this is likely another file.`);
  }
  let text: string;
  try {
    text = await file.text();
  } catch (error) {
    throw new FileRefused(`“${file.name}” could not be read: ${reasonOf(error)}`);
  }
  try {
    return read(text);
  } catch (error) {
    throw new FileRefused(`“${file.name}” is no template that can be used.`, error instanceof TemplateError ? error.problems : [reasonOf(error)]);
  }
}

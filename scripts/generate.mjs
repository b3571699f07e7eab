/**
 * Reads the JSDoc of the cell functions and writes, into build/:
 *   functions.json  the metadata Excel loads (also names, arguments and options for the grid)
 *   help.json       the same with formula, units, source and worked examples, for help texts
 *   version.json    the version that package.json states, for what is signed
 * Fails if a function or an argument has no description, an id stands twice or not in the catalogue, or a tag is unknown.
 */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const require = createRequire(import.meta.url);
const ts = require('typescript');
const { generateCustomFunctionsMetadata } = require('custom-functions-metadata');

const root = path.dirname(path.dirname(fileURLToPath(import.meta.url)));
const folder = path.join(root, 'src', 'functions');
const files = readdirSync(folder)
  .filter((name) => name.endsWith('.ts'))
  .map((name) => path.join(folder, name))
  .filter((file) => readFileSync(file, 'utf8').includes('@customfunction'))
  .sort();

/** The Excel metadata, with errors let through to the functions so that they come out as what they are. */
async function excelMetadata() {
  const result = await generateCustomFunctionsMetadata(files);
  if (result.errors.length > 0) throw new Error(`Custom function metadata:\n${result.errors.join('\n')}`);
  const { functions } = JSON.parse(result.metadataJson);
  for (const entry of functions) {
    for (const parameter of entry.parameters) parameter.description = sentence(parameter.description);
  }
  return {
    allowErrorForDataTypeAny: true,
    functions: functions.map((entry) => ({ ...entry, description: sentence(entry.description) })),
  };
}

const TAGS = ['customfunction', 'group', 'param', 'returns', 'formula', 'source', 'note', 'example'];

/** What the help shows of one function, in the order of the JSDoc. */
function helpOf(declaration, metadata) {
  const tags = ts.getJSDocTags(declaration);
  const texts = (name) =>
    tags.filter((tag) => tag.tagName.text === name).map((tag) => sentence(ts.getTextOfJSDocComment(tag.comment)));
  const id = texts('customfunction')[0].split(/\s/)[0];
  const unknown = tags.map((tag) => tag.tagName.text).filter((name) => !TAGS.includes(name));
  if (unknown.length > 0) throw new Error(`${id}: unknown tags ${unknown.join(', ')}; expected ${TAGS.join(', ')}`);
  const entry = metadata.functions.find((candidate) => candidate.id === id);
  if (!entry) throw new Error(`${id}: not in the metadata`);
  return {
    id,
    name: `PROVE.${id}`,
    group: texts('group')[0],
    summary: entry.description,
    returns: texts('returns')[0],
    parameters: entry.parameters.map(({ name, description, optional, dimensionality }) => ({
      name, description, optional: Boolean(optional), range: dimensionality === 'matrix',
    })),
    formula: texts('formula'),
    source: texts('source'),
    notes: texts('note'),
    examples: texts('example').map((text) => {
      const [formula, result] = text.split('→').map((part) => part.trim());
      return { formula, result };
    }),
  };
}

function sentence(text) {
  return (text ?? '').replace(/\s+/g, ' ').trim();
}

function check(help) {
  const problems = [];
  const seen = new Set();
  for (const { id, summary, group, returns, parameters, formula, source, examples } of help) {
    if (seen.has(id)) problems.push(`${id}: declared twice`);
    seen.add(id);
    if (!summary) problems.push(`${id}: no description`);
    if (!group) problems.push(`${id}: no @group`);
    if (!returns) problems.push(`${id}: no @returns`);
    if (formula.length === 0) problems.push(`${id}: no @formula`);
    if (source.length === 0) problems.push(`${id}: no @source`);
    if (examples.length === 0 || examples.some((example) => !example.result)) problems.push(`${id}: no @example with "→ result"`);
    for (const parameter of parameters) if (!parameter.description) problems.push(`${id}: argument ${parameter.name} has no description`);
  }
  if (problems.length > 0) throw new Error(`JSDoc of the cell functions:\n${problems.join('\n')}`);
}

const metadata = await excelMetadata();
const help = files.flatMap((file) => {
  const source = ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, true);
  return source.statements
    .filter((node) => ts.isFunctionDeclaration(node) && ts.getJSDocTags(node).some((tag) => tag.tagName.text === 'customfunction'))
    .map((node) => helpOf(node, metadata));
});
check(help);
const order = [...readFileSync(path.join(folder, 'catalogue.ts'), 'utf8').matchAll(/^ {2}([A-Z]+):/gm)].map((match) => match[1]);
const missing = help.filter(({ id }) => !order.includes(id));
if (missing.length > 0) throw new Error(`Not in catalogue.ts: ${missing.map(({ id }) => id).join(', ')}`);
const byCatalogue = (a, b) => order.indexOf(a.id) - order.indexOf(b.id);
help.sort(byCatalogue);
metadata.functions.sort(byCatalogue);
mkdirSync(path.join(root, 'build'), { recursive: true });
writeFileSync(path.join(root, 'build', 'functions.json'), `${JSON.stringify(metadata, null, 2)}\n`);
writeFileSync(path.join(root, 'build', 'help.json'), `${JSON.stringify(help, null, 2)}\n`);
const { version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));
writeFileSync(path.join(root, 'build', 'version.json'), `${JSON.stringify({ version }, null, 2)}\n`);

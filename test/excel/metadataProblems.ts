import { cellFunctionsIn } from '../../src/functions/formulaNames';
import type { HelpText } from '../../src/taskpane/helpTexts';
import { BUILT_IN, LOCALISED, MACRO } from './reservedNames';

export interface Metadata {
  readonly allowErrorForDataTypeAny?: boolean;
  readonly functions: readonly {
    readonly id: string;
    readonly name: string;
    readonly description?: string;
    readonly parameters: readonly { readonly name: string; readonly description?: string; readonly optional?: boolean }[];
  }[];
}

/** Whether a name could be read as a cell: A1 to XFD1048576, or R1C1 style. */
export function isCellAddress(name: string): boolean {
  if (/^(?:R\d*C?\d*|C\d*)$/.test(name)) return true;
  const [, letters, digits] = /^([A-Z]{1,3})(\d{1,7})$/.exec(name) ?? [];
  if (!letters) return false;
  const column = [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
  return column <= 16384 && Number(digits) >= 1 && Number(digits) <= 1048576;
}

/** What is wrong with a function's name; empty if nothing. */
export function problemsOfName(name: string): string[] {
  return [
    ...(/^[A-Z][A-Z0-9._]*$/.test(name) ? [] : ['is not made of A–Z, 0–9, "." and "_", a letter first']),
    ...(name.length >= 3 && name.length <= 128 ? [] : ['is not 3 to 128 characters long']),
    ...(isCellAddress(name) ? ['is a cell address'] : []),
    ...(BUILT_IN.includes(name) ? ['is a function of Excel'] : []),
    ...(MACRO.includes(name) ? ['is an Excel 4 macro name'] : []),
    ...(LOCALISED.includes(name) ? ['is a function of Excel in another language'] : []),
  ];
}

/** What is wrong between metadata, catalogue and help, a line each; empty if nothing. */
export function metadataProblems(metadata: Metadata, catalogued: readonly string[], help: readonly HelpText[]): string[] {
  const ids = metadata.functions.map(({ id }) => id);
  return [
    ...(metadata.allowErrorForDataTypeAny === true ? [] : ['allowErrorForDataTypeAny is not set']),
    ...catalogued.filter((id) => !ids.includes(id)).map((id) => `${id}: in the catalogue, not in the metadata`),
    ...ids.filter((id) => !catalogued.includes(id)).map((id) => `${id}: in the metadata, not in the catalogue`),
    ...ids.filter((id, index) => ids.indexOf(id) !== index).map((id) => `${id}: stands twice`),
    ...ids.flatMap((id) => problemsOfName(id).map((problem) => `${id}: ${problem}`)),
    ...metadata.functions.flatMap((entry) => problemsOfEntry(entry).map((problem) => `${entry.id}: ${problem}`)),
    ...ids.flatMap((id) => problemsOfHelp(help.find((text) => text.id === id)).map((problem) => `${id}: ${problem}`)),
  ];
}

function problemsOfEntry({ id, name, description, parameters }: Metadata['functions'][number]): string[] {
  const firstOptional = parameters.findIndex(({ optional }) => optional);
  return [
    ...(name === id ? [] : [`name is ${name}`]),
    ...(description ? [] : ['has no description']),
    ...parameters.filter((parameter) => !parameter.description).map((parameter) => `argument ${parameter.name} has no description`),
    ...parameters
      .filter(({ optional }, index) => !optional && firstOptional >= 0 && index > firstOptional)
      .map((parameter) => `argument ${parameter.name} follows an optional one`),
  ];
}

function problemsOfHelp(help: HelpText | undefined): string[] {
  if (!help) return ['has no help'];
  return [
    ...(help.group ? [] : ['help has no group']),
    ...(help.formula.some(Boolean) ? [] : ['help has no formula']),
    ...(help.source.some(Boolean) ? [] : ['help has no source']),
    ...(help.examples.some(({ formula, result }) => cellFunctionsIn(formula).includes(help.id) && result) ? [] : ['help has no example']),
  ];
}

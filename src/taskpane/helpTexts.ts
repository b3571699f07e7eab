import generated from '@generated/help.json';

/** What is written about one cell function, taken from its JSDoc. */
export interface HelpText {
  readonly id: string;
  /** The name in a formula, like "PROVE.NET". */
  readonly name: string;
  readonly group: string;
  readonly summary: string;
  readonly returns: string;
  readonly parameters: readonly { readonly name: string; readonly description: string; readonly optional: boolean; readonly range: boolean }[];
  readonly formula: readonly string[];
  readonly source: readonly string[];
  readonly notes: readonly string[];
  readonly examples: readonly { readonly formula: string; readonly result: string }[];
}

/** The help of every cell function, in the order of the source. */
export const helpTexts: readonly HelpText[] = generated;

/** The formula as one would type it, optional arguments in brackets. */
export function signature(help: HelpText): string {
  return `=${help.name}(${help.parameters.map(({ name, optional }) => (optional ? `[${name}]` : name)).join(', ')})`;
}

/** The functions in which every word of the search occurs: in name, group, summary or an argument's name. */
export function searchHelp(search: string, texts: readonly HelpText[] = helpTexts): HelpText[] {
  const words = search.toLowerCase().split(/\s+/).filter((word) => word !== '');
  return texts.filter((help) => {
    const content = [help.name, help.group, help.summary, ...help.parameters.map(({ name }) => name)].join(' ').toLowerCase();
    return words.every((word) => content.includes(word));
  });
}

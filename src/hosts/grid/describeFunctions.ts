import help from '@generated/help.json';
import { BooleanNumber, IConfigService, type Injector, LocaleService, LocaleType } from '@univerjs/core';
import { FunctionType, type IFunctionInfo } from '@univerjs/engine-formula';
import { IDescriptionService, PLUGIN_CONFIG_KEY_BASE } from '@univerjs/sheets-formula';
import { splitOutside } from './splitOutside';

const CATEGORY = 'Provingsheet';

type Help = (typeof help)[number];

/** What autocomplete and the argument help show of a function; undefined if it is not known. */
export function descriptionOf(injector: Injector, name: string): IFunctionInfo | undefined {
  return injector.get(IDescriptionService).getFunctionInfo(name);
}

/** Gives the grid the names, descriptions and argument helps of the cell functions, for its autocomplete and function list. */
export function describeCellFunctions(injector: Injector): void {
  // The list has no categories of one's own: the one meant for users' functions takes our name, and is shown only if this is set.
  injector.get(LocaleService).load({ [LocaleType.EN_US]: { 'sheets-formula-ui': { functionType: { user: CATEGORY } } } });
  injector.get(IConfigService).setConfig(PLUGIN_CONFIG_KEY_BASE, { function: [] }, { merge: true });
  injector.get(IDescriptionService).registerDescriptions(help.map(describe));
}

function describe(entry: Help): IFunctionInfo {
  const example = exampleArguments(entry);
  return {
    functionName: entry.name,
    functionType: FunctionType.User,
    description: helpText(entry),
    abstract: entry.summary,
    functionParameter: entry.parameters.map(({ name, description, optional }, index) => ({
      name,
      detail: description,
      example: example[index] ?? '',
      require: optional ? BooleanNumber.FALSE : BooleanNumber.TRUE,
      repeat: BooleanNumber.FALSE,
    })),
  };
}

/** Shown as one paragraph: what it does, what it gives, the formula, the source and one example. */
function helpText({ summary, returns, formula, source, notes, examples }: Help): string {
  const [example] = examples;
  return [
    summary,
    `Gives: ${returns}`,
    `Formula: ${formula.join('; ')}.`,
    `Source: ${source.join('; ')}.`,
    ...notes,
    ...(example ? [`Example: ${example.formula} → ${example.result}`] : []),
  ].join(' ');
}

/** The arguments of the first example that calls the function itself, one for each parameter as far as they go. */
function exampleArguments({ name, examples }: Help): string[] {
  const call = examples.map(({ formula }) => formula).find((formula) => formula.startsWith(`=${name}(`));
  return call ? splitOutside(call.slice(name.length + 2, -1), ',') : [];
}

/** What a command line asks for. */
export interface Request {
  readonly help: boolean;
  readonly dataFile?: string;
  /** With their leading "=". */
  readonly formulas: readonly string[];
}

export const USAGE = `Usage: npm run --silent evaluate -- [--data FILE.csv] FORMULA...

Computes each formula with the workbench's engine and prints one line of JSON for each, in order.

  --data FILE.csv  comma-separated values to put at A1: plain decimal numbers (1.5, -2E-3) become numbers, empty fields
                   blanks, #N/A and the like errors, all else text ("=1+1" too). Without it every cell is blank.
                   No formula sees the result of another.
  --help           this text
  --               what follows is a formula, even if it begins with "-"

A formula may use the cell functions (=PROVE.FIT(A2:A34,B2:B34,2)) and the built-in ones (=LINEST(B2:B34,A2:A34)); its "=" may
be left out. One cell is printed as a number (all digits of a double), a string, true or false, or null if it is blank; more
cells as an array of rows; an error, alone or in an array, as {"error":"#VALUE!","message":"why"}.

Exit code: 0 if all is well, 1 if a formula gives an error, 2 if the command line or the file cannot be used.`;

/** Reads the arguments. @throws {Error} saying what was found and what was expected. */
export function readCommandLine(args: readonly string[]): Request {
  const formulas: string[] = [];
  let help = false;
  let dataFile: string | undefined;
  let onlyFormulas = false;
  for (let index = 0; index < args.length; index += 1) {
    const argument = args[index];
    if (onlyFormulas || !argument.startsWith('-')) formulas.push(argument.startsWith('=') ? argument : `=${argument}`);
    else if (argument === '--') onlyFormulas = true;
    else if (argument === '--help' || argument === '-h') help = true;
    else if (argument === '--data' || argument.startsWith('--data=')) {
      if (dataFile !== undefined) throw new Error('found --data twice; expected one file');
      dataFile = argument === '--data' ? args[(index += 1)] : argument.slice('--data='.length);
      if (!dataFile) throw new Error('found nothing after --data; expected the name of a CSV file');
    } else throw new Error(`found the option ${argument}; expected --data FILE.csv, --help or a formula (one that begins with "-" needs its "=")`);
  }
  if (!help && formulas.length === 0) throw new Error('found no formula; expected at least one');
  return { help, dataFile, formulas };
}

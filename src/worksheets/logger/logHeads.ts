import { secondsIn } from './logTime';

/** What the head of a column says. */
export interface ColumnHead {
  readonly name: string;
  readonly unit?: string;
}

const UNIT_IN_BRACKETS = /^(.*?)\s*[[(]([^\])]+)[\])]\s*$/;
const UNIT_AFTER = /^(.*\S)\s*(?:\/|,)\s*([^\s/,]+(?:\/[^\s/,]+)?)$/;

/** "Force [kN]", "Force (kN)", "Force / kN" and "Force, kN" as name and unit. */
export function headOf(text: string): ColumnHead {
  const inBrackets = UNIT_IN_BRACKETS.exec(text);
  if (inBrackets) return named(inBrackets[1], inBrackets[2].trim());
  // "Force mV/V" holds a unit of ratio, not a name over a unit.
  const after = /\s\/\s|,\s*\S+$/.test(text) ? UNIT_AFTER.exec(text) : null;
  return after ? named(after[1], after[2]) : { name: text };
}

function named(name: string, unit: string): ColumnHead {
  return { name: name === '' ? unit : name, unit };
}

/**
 * The heads of columns from the lines above the first sample, of which those count that have a field a column. Two such lines
 * are names and units.
 */
export function headsOf(lines: readonly (readonly string[])[], columns: number): ColumnHead[] | undefined {
  const whole = lines.filter((fields) => fields.length === columns && fields.some((field) => field !== ''));
  const last = whole.at(-1);
  if (!last) return undefined;
  const above = whole.at(-2);
  const isUnits = above !== undefined && last.every((field) => field.length <= 8 && !/\s\S+\s/.test(field)) && last.some((field, i) => isUnit(field) && above[i] !== '');
  if (!isUnits) return last.map(headOf);
  return above.map((name, i) => {
    const unit = last[i].replace(/^[[(]|[\])]$/g, '').trim();
    return unit === '' || unit === '-' ? headOf(name) : { name: name === '' ? unit : name, unit };
  });
}

/** True of words that name a unit rather than a quantity, as far as they can be told apart. */
function isUnit(field: string): boolean {
  const plain = field.replace(/^[[(]|[\])]$/g, '').trim();
  return secondsIn(plain) !== undefined || /^([mµμu]?V\/V|[mµμ]?V|[kMm]?N|kgf?|g|lbf?|[kMm]?N[·.]?m|°C|degC|%|bar|digits?|counts?)$/.test(plain);
}

/** True if a head names time. */
export function namesTime({ name, unit }: ColumnHead): boolean {
  return /^(t|zeit|time|timestamp|elapsed|date|datum|clock|seconds?|sec|s|ms|min)\b/i.test(name.trim()) || (secondsIn(unit) !== undefined && /time|zeit|^t$/i.test(name));
}

/** True if a head names the number of a sample. */
export function namesSamples({ name }: ColumnHead): boolean {
  return /^(no\.?|nr\.?|n|#|index|samples?|sample no\.?|count|point|scan)$/i.test(name.trim());
}

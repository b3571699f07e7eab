/** The units of a run; undefined where it does not say. */
export interface Units {
  readonly unit?: string;
  readonly outputUnit?: string;
}

/** Whether two runs are in other units; one that does not say is taken to be in the same. */
export function unitsDiffer(one: Units, other: Units): boolean {
  return differ(one.unit, other.unit) || differ(one.outputUnit, other.outputUnit);
}

function differ(one: string | undefined, other: string | undefined): boolean {
  return one !== undefined && other !== undefined && one !== other;
}

/** Something about a filled-in sheet that a person should look at. */
export interface Finding {
  /** "wrong": the result cannot stand. "odd": unusual, so look again. "missing": not there yet. */
  readonly severity: 'wrong' | 'odd' | 'missing';
  /** Names the cell, what was found and what was expected. */
  readonly message: string;
  /** The cell to jump to, like "C21". */
  readonly at: string;
}

/** More findings of one kind are counted, not listed. */
const MOST_OF_A_KIND = 5;

/** The first findings of one kind, and one that counts the rest. `rest` says what they are: "readings that are no numbers". */
export function capped(findings: readonly Finding[], rest: string): Finding[] {
  if (findings.length <= MOST_OF_A_KIND + 1) return [...findings];
  const [next, ...others] = findings.slice(MOST_OF_A_KIND);
  const more: Finding = { ...next, message: `${others.length + 1} more ${rest}, from ${next.at} on` };
  return [...findings.slice(0, MOST_OF_A_KIND), more];
}

const GRAVEST_FIRST: readonly Finding['severity'][] = ['wrong', 'odd', 'missing'];

/** By severity, then row by row. */
export function inOrder(findings: readonly Finding[]): Finding[] {
  return findings
    .map((finding) => ({ finding, place: /^([A-Z]+)(\d+)$/.exec(finding.at) }))
    .sort((a, b) => GRAVEST_FIRST.indexOf(a.finding.severity) - GRAVEST_FIRST.indexOf(b.finding.severity)
      || Number(a.place?.[2]) - Number(b.place?.[2])
      || Number(a.place?.[1].length) - Number(b.place?.[1].length)
      || String(a.place?.[1]).localeCompare(String(b.place?.[1]), 'en'))
    .map(({ finding }) => finding);
}

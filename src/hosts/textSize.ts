/**
 * How much room text takes, from the widths of Arial's letters in parts of the font size, so that a plan becomes the same
 * sheet with and without a screen.
 */
const LETTERS: readonly (readonly [number, string])[] = [
  [0.222, 'ijl|’‘'], [0.278, " !,./:;I[\\]ft'·"], [0.333, '()-r`"°“”'], [0.5, 'cksvxyzJ'], [0.584, '+<=>±×−≤≥~'], [0.611, 'FTZ'],
  [0.667, 'ABEKPSVXY&'], [0.722, 'CDHNRUw'], [0.778, 'GOQ'], [0.833, 'mM'], [0.889, '%'], [1, 'W@…—→'],
];
const WIDTHS = new Map(LETTERS.flatMap(([width, letters]) => [...letters].map((letter) => [letter, width] as const)));
const USUAL = 0.556;
const BOLD = 1.07;
const PIXELS_PER_POINT = 96 / 72;
const LINE_HEIGHT = 1.2;

/** Width of one line of text, in pixels. `size` in points. */
export function textWidth(text: string, size: number, bold = false): number {
  const ems = [...text].reduce((sum, letter) => sum + (WIDTHS.get(letter) ?? USUAL), 0);
  return ems * size * PIXELS_PER_POINT * (bold ? BOLD : 1);
}

/** How many lines text takes in a column `width` pixels wide, broken at spaces. */
export function lineCount(text: string, width: number, size: number, bold = false): number {
  let lines = 0;
  for (const paragraph of text.split('\n')) {
    lines += 1;
    let used = 0;
    for (const word of paragraph.split(/(?<=\s)/)) {
      const length = textWidth(word, size, bold);
      if (used > 0 && used + textWidth(word.trimEnd(), size, bold) > width) {
        lines += 1;
        used = 0;
      }
      used += length;
      // A word longer than the column is broken inside.
      while (used > width) {
        lines += 1;
        used -= width;
      }
    }
  }
  return lines;
}

/** Height of so many lines, in pixels. */
export function linesHeight(lines: number, size: number): number {
  return Math.ceil(lines * size * PIXELS_PER_POINT * LINE_HEIGHT);
}

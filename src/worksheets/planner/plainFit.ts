import { address, type PlanBuilder } from '../planBuilder';
import { RESULT, SCIENTIFIC } from './desk';
import { type PlainCells, type PlainLine, type PlainTable, rowOfReadings, whole } from './plainTable';
import type { SeriesBlock } from './seriesBlock';

/**
 * The calibration polynomial by LINEST on the means, which gives the coefficients of all readings where each force has as many
 * readings as any other, and s, the lower limit factor and the classes from them. Also fills the column of fitted values.
 * @param firstLine sheet row of the first of these lines
 */
export function fitChecks(sheet: PlanBuilder, { block, at }: PlainCells, table: PlainTable, { degree, most }: NonNullable<PlainCells['fit']>, firstLine: number): PlainLine[] {
  const first = block.firstRow + 1;
  const last = block.answers.points.at(-1) === 0 ? block.lastRow - 1 : block.lastRow;
  const loads = last - first + 1;
  const topForce = `ABS(${table.applied(block.topRow)})`;
  const top = `ABS(${table.mean(block.topRow)})`;
  const powers = Array.from({ length: most }, (_, k) => table.powers(k + 1, first, last));
  // The powers up to the degree; not CHOOSE, which the grid's engine takes only with a number typed into the formula.
  const used = powers.slice(0, -1).reduceRight((rest, range, i) => `IF(${degree}=${i + 1},${range},${rest})`, powers[most - 1]);
  const linest = `LINEST(${table.fittedMean(first, last)},${used})`;
  const again = (line: number) => address(RESULT.value, firstLine + line);
  fillFitted(sheet, block, table, most, again);
  const net = `(${rowsOfReadings(block, first, last)}-${zeroOf(block, first, last)})`;
  const forces = table.applied(first, last);
  const [sd, resolution, factor] = [again(most + 1), at('force_resolution'), again(most + 2)];
  const line = (id: string, label: string, plain: string, format: string, scale: string, words: string): PlainLine => ({ id, label, plain, format, scale, words, own: `IF(${at(id)}="","",${at(id)})` });
  const ofClass = (id: string, word: string, multiple: number) => {
    const limit = `MAX(${multiple}*${factor},${multiple}*${resolution},SUMPRODUCT(MIN(ABS(${forces}))))`;
    return line(id, `Class ${word} from`, `IF(${limit}>${topForce},"not met",${limit})`, '0.000000', topForce, `greatest of ${multiple} × factor, ${multiple} × resolution, lowest force`);
  };
  return [
    ...Array.from({ length: most + 1 }, (_, k) => line(
      `a${k}`, `A${k}`, `IF(${k}>${degree},"",INDEX(${linest},1,${degree}+1-${k})/${topForce}^${k})`, SCIENTIFIC, `${top}/${topForce}^${k}`,
      k === 0 ? 'LINEST of the mean on powers of x' : '',
    )),
    line('residual_sd', 's', `SQRT(SUMPRODUCT((${net}-${table.fitted(first, last)})^2)/(${loads * block.answers.runs}-${degree}-1))`, '0.0000E+00', sd, '√(Σ(net − fitted)²/(n − degree − 1))'),
    line('limit_factor', 'Lower limit factor', `MAX(2.4*${sd}*ABS(SUMPRODUCT(${forces}/${net})/${loads * block.answers.runs}),${resolution})`, '0.0000E+00', factor, '2.4·s × mean of force/net, at least the resolution'),
    ofClass('class_aa', 'AA', 2000), ofClass('class_a', 'A', 400),
  ];
}

/** The fitted value in each row of the table, from the coefficients by plain formulas. */
function fillFitted(sheet: PlanBuilder, block: SeriesBlock, table: PlainTable, most: number, again: (line: number) => string): void {
  for (let row = block.firstRow; row <= block.lastRow; row += 1) {
    const terms = Array.from({ length: most + 1 }, (_, k) => (k === 0 ? again(0) : `N(${again(k)})*ABS(${table.applied(row)})^${k}`));
    sheet.fill(table.fitted(row), 'result', whole(block, terms.join('+')), '0.0000000');
  }
}

function rowsOfReadings({ readingColumn, netColumn }: SeriesBlock, first: number, last: number): string {
  return `${address(readingColumn, first)}:${address(netColumn - 1, last)}`;
}

/** What is taken off each reading of the rows under load: a row of zeros, or between two rows of zeros by row. */
function zeroOf(block: SeriesBlock, first: number, last: number): string {
  const before = rowOfReadings(block, block.firstRow);
  const after = rowOfReadings(block, block.lastRow);
  if (block.answers.zero === 'initial') return before;
  if (block.answers.zero === 'average') return `(${before}+${after})/2`;
  const column = `${address(block.readingColumn, first)}:${address(block.readingColumn, last)}`;
  return `(${before}+(${after}-${before})*(ROW(${column})-${block.firstRow})/${block.lastRow - block.firstRow})`;
}

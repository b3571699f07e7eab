import type { ChartSeries } from '../plan';
import { address, formula } from '../planBuilder';
import { type Desk, PERCENT } from './desk';
import { type Plot, plotArea, plotRows } from './plots';
import type { Limited } from './provingLimits';
import type { ResultCells } from './provingResults';
import type { ForceTable } from './provingTables';

/** Cells of the equation for W. */
export interface EquationCells {
  readonly raised: string;
  readonly a1: string;
  readonly a2: string;
}

/** Columns of the lines that the plots show beside the figures. */
const LINES = { force: 1, b: 2, b_same: 3, fc: 4, fc_lower: 5, v: 6, w: 7 } as const;
type Line = keyof typeof LINES;

/** Figures by force with the limits of the class wanted, and W with its equation; gives the next free row. */
export function provingPlots(desk: Desk, row: number, cells: ResultCells, uncertainty: ForceTable<'force' | 'combined' | 'expanded'>, equation: EquationCells): number {
  const { sheet } = desk;
  const { figures, decreasing, count } = cells;
  const lines = linesTable(desk, row + plotRows(decreasing ? 4 : 3), cells, equation);
  const last = count - 1;
  const series = (name: string, y: string, drawn: ChartSeries['drawn'], until = last): ChartSeries => ({ name, x: lines.at('force', 0, until), y, drawn });
  const limit = (name: string, line: Line, until = last) => series(name, lines.at(line, 0, until), 'limit', until);
  const x = `Force, ${desk.item.unit}`;
  const plots: Plot[] = [
    { title: 'b with rotation, b′ in the same position', x, y: 'of output', series: [series('b', figures.at('b', 0, last), 'both'), series('b′', figures.at('same', 0, last), 'both'), limit('Limit of b', 'b'), limit('Limit of b′', 'b_same')] },
    { title: 'fc, interpolation', x, y: 'of output', series: [series('fc', figures.at('fc', 0, last), 'both'), limit('Limit, upper', 'fc'), limit('Limit, lower', 'fc_lower')] },
    ...(decreasing ? [{ title: 'v, reversibility', x, y: 'of output', series: [series('v', figures.at('v', 0, last - 1), 'both', last - 1), limit('Limit', 'v', last - 1)] }] : []),
    { title: 'W, k = 2', x, y: 'of force', series: [series('W', uncertainty.at('expanded', 0, last), 'points'), series('Equation, a0 raised', lines.at('w', 0, last), 'line')] },
  ];
  sheet.called('proving_forces', lines.at('force', 0, last)).called('proving_b', figures.at('b', 0, last)).called('proving_b_same', figures.at('same', 0, last));
  sheet.called('proving_fc', figures.at('fc', 0, last)).called('proving_v', figures.at('v', 0, last)).called('proving_w', uncertainty.at('expanded', 0, last));
  sheet.called('proving_xr', figures.at('mean', 0, last)).called('proving_xa', figures.at('fitted', 0, last)).called('proving_class', figures.at('class', 0, last));
  for (const line of ['b', 'b_same', 'fc', 'v', 'w'] as const) sheet.called(`proving_line_${line}`, lines.at(line, 0, last));
  plotArea(desk, row, plots);
  return lines.nextRow;
}

/** Limits and equation at each force, for the plots. */
function linesTable({ sheet, width, item, formats }: Desk, row: number, { waiting, force, count, limits, form }: ResultCells, { raised, a1, a2 }: EquationCells): ForceTable<Line> {
  sheet.wide(1, row, width, 'heading', 'Lines of the plots');
  sheet.across(1, row + 1, 'header', ['Force', 'b', 'b′', 'fc, upper', 'fc, lower', 'v', 'W']);
  sheet.across(1, row + 2, 'header', [item.unit, 'limit', 'limit', 'limit', 'limit', 'limit', 'by equation']);
  const first = row + 3;
  for (let i = 0; i < count; i += 1) {
    const at = (line: Line) => address(LINES[line], first + i);
    const put = (line: Line, text: string) => sheet.fill(at(line), 'reference', formula(text), PERCENT);
    sheet.put(LINES.force, first + i, 'reference', formula(force(i)), formats.applied);
    (['b', 'b_same', 'fc', 'v'] satisfies (Limited & Line)[]).forEach((of) => put(of, `IF(${waiting},"",${limits.limit(of)})`));
    put('fc_lower', `IF(${at('fc')}="","",-${at('fc')})`);
    put('w', `IF(${raised}="","",IF(${form}="inverse",${raised}+${a1}/${at('force')},${raised}+${a1}*${at('force')}+N(${a2})*${at('force')}^2))`);
  }
  return {
    nextRow: first + count + 1,
    at: (line, from, to = from) => `${address(LINES[line], first + from)}:${address(LINES[line], first + to)}`,
  };
}

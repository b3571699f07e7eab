import type { SheetPlan } from '../plan';
import { address, fixed, formula } from '../planBuilder';
import type { Question } from '../question';
import { DIRECTIONS, type RunTemplate } from '../templateSchema';
import type { AnswerReader } from './answerReader';
import { CALIBRATION_LINES, type CalibrationCells, calibrationLines, MOST_DEGREE, residualTable } from './calibration';
import { type Desk, newDesk, PERCENT, rounded } from './desk';
import { closeSheet, type ConditionLine, openSheet } from './frame';
import { changedItem, type ItemAnswers, itemQuestions, readItem, suggestedItem } from './itemForm';
import { plainCheck } from './plainCheck';
import { limitLines, type Plot, plotArea, type LimitLines } from './plots';
import type { Procedure } from './procedure';
import { lineRow, outcomeLine, type ResultLine, type ResultTable, resultTable } from './resultTable';
import { nameUnits, type SeriesBlock, span, startBlock } from './seriesBlock';
import { changedSeries, checkSeries, differentLoads, readSeries, type SeriesAnswers, seriesQuestions, suggestedSeries } from './seriesForm';
import { impossible, possibleResults, type StaticId, staticLines } from './staticResults';

/** What a run sheet is planned from. */
export interface RunSetup {
  readonly item: ItemAnswers;
  readonly series: SeriesAnswers;
  /** Degree of the calibration polynomial, if there is one. */
  readonly degree?: number;
}

/** Runs of a transducer: readings of its output at applied forces or torques. */
export const runProcedure: Procedure<RunTemplate, RunSetup> = {
  questions: (template, answers) => {
    const [item, rest] = split(itemQuestions(template, answers));
    return [...item, ...seriesQuestions(template), ...(fits(template) ? [DEGREE] : []), ...rest];
  },
  suggested: (template) => ({ ...suggestedItem(template), ...suggestedSeries(template), ...(fits(template) ? { degree: String(template.degree ?? 2) } : {}) }),
  read,
  plan: (template, setup) => new RunSheet(template, setup).plan(),
  changed: (template, { item, series, degree }) => ({ ...template, item: changedItem(item), ...changedSeries(series), ...(degree === undefined ? {} : { degree }) }),
};

const DEGREE: Question = {
  id: 'degree', label: 'Degree of the polynomial', group: 'Procedure', kind: 'number', optional: false,
  help: 'To begin with; the sheet finds the degree of best fit, and its cell can be changed.',
};

function fits({ results }: RunTemplate): boolean {
  return results.includes('calibration');
}

/** The questions on the item, and those on standard and sheet, which come last. */
export function split(questions: readonly Question[]): [Question[], Question[]] {
  return [questions.filter(({ group }) => group === 'Item'), questions.filter(({ group }) => group !== 'Item')];
}

function read(reader: AnswerReader, template: RunTemplate): RunSetup | undefined {
  const item = readItem(reader, template);
  const series = readSeries(reader, template);
  const degree = fits(template) ? reader.number('degree', { least: 1, greatest: MOST_DEGREE, whole: true }) : undefined;
  if (item === undefined || series === undefined || (fits(template) && degree === undefined)) return undefined;
  checkSeries(reader, item, series);
  for (const id of template.results) {
    const why = impossible(id, series);
    if (why !== undefined) reader.warn(why.startsWith('repeat') ? 'runs' : 'points', `Left out: ${why}.`);
  }
  if (degree !== undefined) checkCalibration(reader, item, series, degree);
  return { item, series, degree };
}

/** What a calibration polynomial needs, and what a run for it is by ASTM E74 (from memory). */
function checkCalibration(reader: AnswerReader, { resolution, ratedOutput }: ItemAnswers, { points, runs }: SeriesAnswers, degree: number): void {
  const loads = points.filter((point) => point > 0).length;
  const different = differentLoads(points);
  if (different < degree + 1 || loads * runs < degree + 2) {
    reader.refuse('degree', `Found degree ${degree} for ${different} different loads; expected at least ${degree + 1} different loads and ${degree + 2} readings under load.`);
    return;
  }
  const asked = 'ASTM E74 (from memory) asks for';
  if (loads * runs < 30) reader.warn('runs', `${loads * runs} applications of load; ${asked} 30 or more.`);
  if (different < 10) reader.warn('points', `${different} different loads; ${asked} 10 or more, one in each tenth of the range.`);
  if (runs < 3) reader.warn('runs', `${runs === 1 ? '1 run' : `${runs} runs`}; ${asked} 3 with a rotation between them.`);
  if (ratedOutput === undefined) return;
  const greatest = (ratedOutput * Math.max(...points)) / 100;
  if (degree > 2 && resolution > greatest / 50_000) reader.warn('resolution', `Degree ${degree} needs a resolution finer than 1/50 000 of the output at the greatest load by ASTM E74 (from memory); found 1/${Math.round(greatest / resolution)}.`);
  const lowest = Math.min(...points.filter((point) => point > 0)) / 100 * ratedOutput;
  if (lowest < 400 * resolution) reader.warn('resolution', `The lowest load is ${Math.floor(lowest / resolution)} steps of the resolution; class A needs 400 by ASTM E74 (from memory).`);
}

/** Lays out one run sheet from top to bottom. */
class RunSheet {
  private readonly desk: Desk;
  private readonly applied: readonly number[];
  private readonly several: boolean;

  constructor(private readonly template: RunTemplate, private readonly setup: RunSetup) {
    const { item, series, degree } = setup;
    this.applied = series.points.map((point) => rounded((item.capacity * point) / 100));
    this.desk = newDesk(item, Math.max(2 * series.runs + 4, degree === undefined ? 0 : 9), this.applied);
    this.several = series.directions.length > 1;
  }

  plan(): SheetPlan {
    const { desk, template, setup } = this;
    const { degree } = setup;
    const more: ConditionLine[] = degree === undefined ? [] : [{ label: 'Polynomial degree', name: 'degree', value: degree, rule: { kind: 'whole', least: 1, greatest: MOST_DEGREE } }];
    const { nextRow, cell } = openSheet(desk, template, more);
    const cells = { capacity: cell('capacity'), ratedOutput: cell('rated_output'), resolution: cell('resolution'), degree: degree === undefined ? '' : cell('degree') };
    let row = nextRow;
    const blocks = setup.series.directions.map((direction) => {
      const block = this.readingBlock(direction, row);
      if (row === nextRow) nameUnits(desk, row);
      row = block.lastRow + 3;
      return block;
    });
    const tables: ResultTable[] = [];
    for (const block of blocks) {
      tables.push(this.results(block, row, cells, tables[0], blocks[0]));
      row = tables[tables.length - 1].nextRow + 1;
    }
    row = 1 + outcomeLine(desk, row, {
      label: 'Outcome, for the customer', name: 'verdict_overall', verdicts: tables.map(({ verdicts }) => verdicts), waiting: blocks.map(({ waiting }) => waiting),
    });
    const residuals = blocks.map((block) => {
      if (degree === undefined) return undefined;
      const table = residualTable(desk, row, block, cells);
      row = table.nextRow;
      return table;
    });
    row = this.plots(row, blocks, tables, residuals);
    blocks.forEach((block, i) => {
      const at = (id: string) => tables[i].values.get(this.named(block, id)) ?? '';
      row = plainCheck(desk, row, { block, capacity: cells.capacity, at, ...(degree === undefined ? {} : { degree: cells.degree }) }, this.statics(), (id) => this.named(block, id));
    });
    return closeSheet(desk, row, template);
  }

  /** The name of a result of a block. */
  private named(block: SeriesBlock, id: string): string {
    return this.several ? `${id}_${block.id}` : id;
  }

  private statics(): readonly StaticId[] {
    const { series, item } = this.setup;
    return possibleResults(this.template, series)
      .filter((id): id is StaticId => id !== 'calibration' && (id !== 'rated_output' || item.ratedOutput !== undefined));
  }

  private readingBlock(direction: string, row: number): SeriesBlock {
    const { desk, template, setup } = this;
    const { sheet } = desk;
    const sign = direction === DIRECTIONS[template.quantity][1] ? -1 : 1;
    const id = direction.replace('-', '_');
    const block = startBlock(desk, setup.series, {
      id, row, title: this.several || template.quantity === 'torque' ? `Readings, ${direction}` : `Readings in ${direction}`, appliedHead: 'Applied', appliedUnit: setup.item.unit,
      applied: this.applied.map((value) => (value === 0 ? 0 : sign * value)), typed: template.applied === 'typed',
    });
    const [deviation, spread] = [block.meanColumn + 1, block.meanColumn + 2];
    sheet.put(deviation, row + 1, 'header', 'Deviation').put(deviation, row + 2, 'header', 'of RO');
    sheet.put(spread, row + 1, 'header', 'Spread').put(spread, row + 2, 'header', setup.item.outputUnit);
    const top = fixed(block.meanColumn, block.topRow);
    const topForce = fixed(block.forceColumn, block.topRow);
    for (let at = block.firstRow; at <= block.lastRow; at += 1) {
      const mean = address(block.meanColumn, at);
      const line = `${address(block.netColumn, at)}:${address(block.meanColumn - 1, at)}`;
      sheet.put(deviation, at, 'result', formula(`IF(OR(${mean}="",${top}=""),"",${mean}/${top}-${address(block.forceColumn, at)}/${topForce})`), PERCENT);
      sheet.put(spread, at, 'result', formula(`IF(COUNT(${line})<2,"",MAX(${line})-MIN(${line}))`), desk.formats.output);
    }
    sheet.called(`deviations_${id}`, span(block, deviation));
    return block;
  }

  private results(block: SeriesBlock, row: number, cells: CalibrationCells & { readonly ratedOutput: string }, first: ResultTable | undefined, firstBlock: SeriesBlock): ResultTable {
    const { desk, template, setup } = this;
    const ids = this.statics();
    const name = (id: string) => this.named(block, id);
    const limits = (id: string) => {
      const known = first?.limits.get(this.named(firstBlock, id.replace(/_from$/, '')));
      if (known !== undefined) return formula(`IF(${known}="","",${known})`);
      const own = template.limits[id as keyof typeof template.limits];
      return own !== undefined && id.endsWith('_from') ? rounded(own * setup.item.capacity) : own;
    };
    const order: string[] = [...ids, ...(setup.degree === undefined ? [] : CALIBRATION_LINES)];
    const at = (id: string) => address(4, lineRow(row, order.indexOf(id)));
    const lines: ResultLine[] = [
      ...staticLines(desk, block, ids, cells, limits, name, at),
      ...(setup.degree === undefined ? [] : calibrationLines(desk, block, cells, limits, name, at)),
    ];
    const output = first?.values.get(this.named(firstBlock, 'sensitivity'));
    if (output !== undefined) {
      lines.push({
        id: 'asymmetry', label: 'Asymmetry of the directions', format: PERCENT, unit: 'of mean', function: 'PROVE.ASYMMETRY(first,second)',
        value: formula(`IF(OR(${output}="",${at('sensitivity')}=""),"",PROVE.ASYMMETRY(${output},${at('sensitivity')}))`),
      });
    }
    return resultTable(desk, row, this.several ? `Results, ${block.id.replace('_', '-')}` : 'Results', lines);
  }

  private plots(row: number, blocks: readonly SeriesBlock[], tables: readonly ResultTable[], residuals: readonly ({ readonly firstRow: number } | undefined)[]): number {
    const { desk, setup } = this;
    const { item, series } = setup;
    const lines: LimitLines[] = [];
    const plots: { plot: Plot; line?: number }[] = [];
    blocks.forEach((block, i) => {
      const to = address(block.forceColumn, block.topRow);
      const of = this.several ? `, ${block.id.replace('_', '-')}` : '';
      const x = `Applied, ${item.unit}`;
      const forces = span(block, block.forceColumn);
      const limit = tables[i].limits.get(this.named(block, 'nonlinearity'));
      const deviation = { title: `Deviation from the terminal line${of}`, x, y: 'of rated output', series: [{ name: 'Mean net', x: forces, y: span(block, block.meanColumn + 1), drawn: 'both' as const }] };
      if (series.points.filter((point) => point > 0).length > 1) {
        plots.push({ plot: deviation, ...(limit === undefined ? {} : { line: lines.length }) });
        if (limit !== undefined) lines.push({ name: `Non-linearity${of}`, to, limit, format: PERCENT });
      }
      const table = residuals[i];
      const sd = tables[i].values.get(this.named(block, 'residual_sd'));
      if (table === undefined || sd === undefined) return;
      const rows = (column: number) => `${address(column, table.firstRow + 1)}:${address(column, table.firstRow + (block.lastRow - block.firstRow) - (series.points.at(-1) === 0 ? 1 : 0))}`;
      plots.push({
        line: lines.length,
        plot: { title: `Residuals of the polynomial${of}`, x, y: item.outputUnit, series: Array.from({ length: series.runs }, (_, k) => ({ name: `Run ${k + 1}`, x: rows(1), y: rows(3 + k), drawn: 'points' as const })) },
      });
      lines.push({ name: `2.4·s${of}`, to, limit: `IF(${sd}="","",2.4*${sd})`, format: '0.00E+00' });
    });
    const { nextRow, series: limitSeries } = limitLines(desk, row, lines);
    lines.forEach(({ name }, i) => {
      if (name.startsWith('2.4')) desk.sheet.called(`residual_limit${this.several ? `_${blocks[Math.floor(i / (lines.length / blocks.length))].id}` : ''}`, address(6, row + 1 + 2 * i));
    });
    return plotArea(desk, nextRow, plots.map(({ plot, line }) => ({ ...plot, series: [...plot.series, ...(line === undefined ? [] : limitSeries[line])] })));
  }
}

import type { SheetPlan } from '../plan';
import { address, formula } from '../planBuilder';
import { DIRECTIONS, type IndicationTemplate } from '../templateSchema';
import { type Budget, budgetTable } from './budget';
import { type Desk, newDesk, PERCENT, rounded } from './desk';
import { closeSheet, type ConditionLine, openSheet } from './frame';
import type { ItemAnswers } from './itemForm';
import { plainCheck } from './plainCheck';
import { type Plot, plotArea } from './plots';
import { programmedPoint } from './programmedPoint';
import { highlightVerdicts, lineRow, outcomeLine, type ResultLine, type ResultTable, resultTable, toleranceVerdict } from './resultTable';
import { runBudget } from './runBudget';
import { nameUnits, onceRead, readings, type SeriesBlock, span, startBlock } from './seriesBlock';
import type { SeriesAnswers } from './seriesForm';
import { possibleResults, type StaticId, staticLines } from './staticResults';
import { appliedByWeights, type WeightsTable, weightsTable } from './weights';

/** What a sheet of indications is planned from. */
export interface IndicationSetup {
  readonly item: ItemAnswers;
  readonly series: SeriesAnswers;
  /** Fractions. */
  readonly tolerance: IndicationTemplate['tolerance'];
  /** Indicated units per unit applied; undefined if both are the same. */
  readonly scale?: number;
}

/** The sheet of a system or an indicator, from top to bottom. */
export function planIndication(template: IndicationTemplate, setup: IndicationSetup): SheetPlan {
  return new IndicationSheet(template, setup).plan();
}

/** Columns after the mean. */
const [ERROR, SHARE, TOLERANCE, LOWER, VERDICT, CHANGE] = [1, 2, 3, 4, 5, 6];

/** Cells that the blocks read. */
interface Cells {
  readonly ofReading: string;
  readonly ofCapacity: string;
  readonly resolution: string;
  /** Capacity in the unit of the indication, as an expression. */
  readonly capacity: string;
  readonly scale?: string;
}

/** Lays out one sheet of indications from top to bottom. */
class IndicationSheet {
  private readonly desk: Desk;
  private readonly applied: readonly number[];

  constructor(private readonly template: IndicationTemplate, private readonly setup: IndicationSetup) {
    const { item, series, scale } = setup;
    this.applied = series.points.map((point) => rounded((item.capacity * point) / 100));
    const columns = (scale === undefined ? 2 : 3) + 2 * series.runs + (template.stages.length > 1 ? CHANGE : VERDICT);
    this.desk = newDesk(item, columns, this.applied);
  }

  plan(): SheetPlan {
    const { desk, template, setup } = this;
    const { unit, outputUnit } = setup.item;
    const number = { kind: 'number', least: 0 } as const;
    const more: ConditionLine[] = [
      ...(setup.scale === undefined ? [] : [{ label: `Scale, ${outputUnit} per ${unit}`, name: 'scale', value: setup.scale, rule: number }]),
      { label: 'Tolerance of reading', name: 'tolerance_reading', value: setup.tolerance.ofReading, format: PERCENT, rule: number },
      { label: 'Tolerance of capacity', name: 'tolerance_capacity', value: setup.tolerance.ofCapacity, format: PERCENT, rule: number },
    ];
    const { nextRow, cell } = openSheet(desk, template, more);
    const scale = setup.scale === undefined ? undefined : cell('scale');
    const cells: Cells = {
      ofReading: cell('tolerance_reading'), ofCapacity: cell('tolerance_capacity'), resolution: cell('resolution'),
      capacity: scale === undefined ? cell('capacity') : `(${cell('capacity')}*${scale})`, ...(scale === undefined ? {} : { scale }),
    };
    const weights = setup.series.applied === 'weights' ? weightsTable(desk, nextRow, setup.series.points) : undefined;
    const firstBlock = weights?.nextRow ?? nextRow;
    let row = firstBlock;
    const stages = template.stages.map((stage) => setup.series.directions.map((direction, i) => {
      const block = this.block(stage, direction, row, cells, weights);
      if (row === firstBlock) nameUnits(desk, row);
      row = block.lastRow + 3;
      return { stage, direction, index: i, block };
    }));
    const found = stages[0];
    if (stages.length > 1) stages[1].forEach(({ block }, i) => this.change(block, found[i].block));
    const parts = stages.flat();
    const tables = parts.map(({ block }, i) => {
      const table = this.results(block, row, cells, i);
      row = table.nextRow + 1;
      return table;
    });
    for (const stage of template.stages) row = this.outcome(row, stage, parts, tables);
    row += 1;
    if (scale === undefined) row = programmedPoint(desk, row, cells);
    row = plotArea(desk, row, parts.map(({ block }) => this.plot(block)));
    const budgets = parts.map(({ block }, i) => {
      const table = budgetTable(desk, row, this.budget(block, tables[i], cells, cell('standard_uncertainty')));
      row = table.nextRow;
      return table;
    });
    parts.forEach(({ block }, i) => {
      const at = (id: string) => tables[i].values.get(`${id}_${block.id}`) ?? '';
      row = plainCheck(desk, row, { block, capacity: cells.capacity, at }, this.statics(), (id) => `${id}_${block.id}`);
      row = budgets[i].check(row);
    });
    return closeSheet(desk, row, template);
  }

  private statics(): readonly StaticId[] {
    return possibleResults(this.template, this.setup.series).filter((id): id is StaticId => id !== 'calibration' && id !== 'rated_output');
  }

  private block(stage: string, direction: string, row: number, { ofReading, ofCapacity, capacity, resolution, scale }: Cells, weights: WeightsTable | undefined): SeriesBlock {
    const { desk, template, setup } = this;
    const { sheet, formats } = desk;
    const { unit, outputUnit } = setup.item;
    const several = setup.series.directions.length > 1;
    const sign = direction === DIRECTIONS[template.quantity][1] ? -1 : 1;
    const block = startBlock(desk, setup.series, {
      id: [stage, ...(several ? [direction] : [])].join('_').replace(/[ -]/g, '_'), row,
      title: `${stage[0].toUpperCase()}${stage.slice(1)}, ${direction}`,
      appliedHead: scale === undefined ? 'Applied' : 'Simulator', appliedUnit: unit, typed: setup.series.applied === 'typed',
      applied: this.applied.map((value) => (value === 0 ? 0 : sign * value)),
      ...(weights ? { computed: (point: number) => appliedByWeights(weights, point, sign) } : {}),
      ...(scale === undefined ? {} : { expected: { head: 'Expected', unit: outputUnit, formula: (at) => `${at}*${scale}` } }),
    });
    const column = (offset: number) => block.meanColumn + offset;
    ['Error', 'Error', 'Tolerance ±', 'Lower limit', 'Verdict'].forEach((head, i) => {
      sheet.put(column(1 + i), row + 1, 'header', head).put(column(1 + i), row + 2, 'header', [outputUnit, 'of reading', outputUnit, outputUnit, ''][i]);
    });
    for (let at = block.firstRow; at <= block.lastRow; at += 1) {
      const [mean, expected] = [address(block.meanColumn, at), address(block.forceColumn, at)];
      const [error, tolerance] = [address(column(ERROR), at), address(column(TOLERANCE), at)];
      sheet.put(column(ERROR), at, 'result', formula(`IF(${mean}="","",${mean}-${expected})`), formats.output);
      sheet.put(column(SHARE), at, 'result', formula(`IF(OR(${error}="",${expected}=0),"",${error}/${expected})`), PERCENT);
      sheet.put(column(TOLERANCE), at, 'input', formula(`MAX(${ofReading}*ABS(${expected}),${ofCapacity}*${capacity})`), `${formats.output}0`);
      sheet.put(column(LOWER), at, 'reference', formula(`IF(${tolerance}="","",-${tolerance})`), `${formats.output}0`);
      sheet.put(column(VERDICT), at, 'verdict', formula(toleranceVerdict(error, tolerance, resolution)));
    }
    sheet.validate({ range: span(block, column(TOLERANCE)), rule: { kind: 'number', least: 0 }, message: 'Expected a tolerance of 0 or more, or nothing if the point is not judged.' });
    highlightVerdicts(sheet, span(block, column(VERDICT)));
    sheet.called(`errors_${block.id}`, span(block, column(ERROR))).called(`tolerances_${block.id}`, span(block, column(TOLERANCE))).called(`verdicts_${block.id}`, span(block, column(VERDICT)));
    return block;
  }

  /** What the adjustment changed, beside the readings as left. */
  private change(block: SeriesBlock, found: SeriesBlock): void {
    const { sheet, formats } = this.desk;
    const column = block.meanColumn + CHANGE;
    sheet.put(column, block.firstRow - 2, 'header', 'Change').put(column, block.firstRow - 1, 'header', this.setup.item.outputUnit);
    for (let at = block.firstRow; at <= block.lastRow; at += 1) {
      const [now, before] = [address(block.meanColumn, at), address(found.meanColumn, found.firstRow + at - block.firstRow)];
      sheet.put(column, at, 'result', formula(`IF(OR(${now}="",${before}=""),"",${now}-${before})`), formats.output);
    }
  }

  private results(block: SeriesBlock, row: number, cells: Cells, index: number): ResultTable {
    const { desk, template, setup } = this;
    const ids = this.statics();
    const errors = span(block, block.meanColumn + ERROR);
    const verdicts = span(block, block.meanColumn + VERDICT);
    const own: ResultLine[] = [
      { id: `greatest_error_${block.id}`, label: 'Greatest error, magnitude', format: desk.formats.output, unit: setup.item.outputUnit, value: onceRead(block, `MAX(MAX(${errors}),-MIN(${errors}))`), function: 'greatest |mean net − expected|' },
      { id: `points_outside_${block.id}`, label: 'Points outside tolerance', format: '0', unit: 'points', value: onceRead(block, `COUNTIF(${verdicts},"outside")`), function: 'count of verdicts “outside”', judged: { limit: 0, limitFormat: '0', rule: 'greatest' } },
    ];
    const at = (id: string) => address(4, lineRow(row, own.length + ids.indexOf(id as StaticId)));
    // Every block has limits of its own; the first gives the names.
    const limits = (id: string) => template.limits[id as keyof typeof template.limits];
    const lines = staticLines(desk, block, ids, cells, limits, (id) => `${id}_${block.id}`, at)
      .map((line) => (index > 0 && line.judged ? { ...line, judged: { ...line.judged, name: undefined } } : line));
    return resultTable(desk, row, `Results ${block.title.toLowerCase()}`, [...own, ...lines]);
  }

  /** What the uncertainty of a block is made of, and the decision on its greatest load. */
  private budget(block: SeriesBlock, { values }: ResultTable, { resolution }: Cells, standard: string): Budget {
    const of = (id: string) => values.get(`${id}_${block.id}`);
    const top = (offset: number) => address(block.meanColumn + offset, block.topRow);
    const expected = address(block.forceColumn, block.topRow);
    return runBudget(this.desk, {
      block, standard, resolution, title: `Uncertainty, ${block.title.toLowerCase()}`, suffix: `_${block.id}`, output: expected,
      repeatability: of('repeatability'), hysteresis: of('hysteresis'), zeroReturn: of('zero_return'),
      decision: {
        label: 'Greatest load, decision', value: top(ERROR), lower: `-${top(TOLERANCE)}`, upper: top(TOLERANCE),
        expanded: (relative) => `${relative}*ABS(${expected})`, unless: `${top(ERROR)}="",${top(TOLERANCE)}=""`,
      },
    });
  }

  private outcome(row: number, stage: string, parts: readonly { readonly stage: string; readonly block: SeriesBlock }[], tables: readonly ResultTable[]): number {
    const own = parts.flatMap((part, i) => (part.stage === stage ? [{ block: part.block, table: tables[i] }] : []));
    const typed = own.map(({ block }) => `COUNT(${readings(block)})`).join('+');
    return outcomeLine(this.desk, row, {
      label: `Outcome ${stage}`, name: `verdict_overall_${stage.replace(' ', '_')}`,
      verdicts: own.map(({ table }) => table.verdicts), waiting: own.map(({ block }) => block.waiting),
      ...(stage === 'as left' ? { unless: { condition: `${typed}=0`, words: 'not run: without adjustment, as found is final' } } : {}),
    });
  }

  private plot(block: SeriesBlock): Plot {
    const x = span(block, block.forceColumn);
    const y = (offset: number) => span(block, block.meanColumn + offset);
    // Limits are drawn once, on the way up: drawn again on the way down, their dashes would fill each other's gaps.
    const rising = { ...block, lastRow: block.topRow };
    const limit = (offset: number) => ({ x: span(rising, block.forceColumn), y: span(rising, block.meanColumn + offset), drawn: 'limit' as const });
    return {
      title: `Error, ${block.title.toLowerCase()}`, x: `Expected, ${this.setup.item.outputUnit}`, y: this.setup.item.outputUnit,
      series: [
        { name: 'Error', x, y: y(ERROR), drawn: 'both' },
        { name: 'Tolerance, upper', ...limit(TOLERANCE) },
        { name: 'Tolerance, lower', ...limit(LOWER) },
      ],
    };
  }
}


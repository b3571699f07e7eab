import type { SheetPlan } from '../plan';
import { address, fixed, formula } from '../planBuilder';
import { DIRECTIONS, type RunTemplate } from '../templateSchema';
import { budgetTable } from './budget';
import { type CalibrationCells, calibrationIds, calibrationLines, residualTable, roomForDegree } from './calibration';
import { type Desk, newDesk, PERCENT, rounded } from './desk';
import { type Correction, correctionCheck } from './correction';
import { closeSheet, type ConditionLine, openSheet } from './frame';
import type { ItemAnswers } from './itemForm';
import { plainCheck } from './plainCheck';
import { lineRow, outcomeLine, type ResultLine, type ResultTable, resultTable } from './resultTable';
import { runBudget, type RunBudgetCells } from './runBudget';
import { runPlots } from './runPlots';
import { nameUnits, type SeriesBlock, span, startBlock } from './seriesBlock';
import type { SeriesAnswers } from './seriesForm';
import { possibleResults, type StaticId, staticLines } from './staticResults';
import { tedsBlock } from './tedsBlock';
import { appliedByWeights, type WeightsTable, weightsTable } from './weights';

/** What a run sheet is planned from. */
export interface RunSetup {
  readonly item: ItemAnswers;
  readonly series: SeriesAnswers;
  /** True: readings are corrected to the reference temperature. */
  readonly corrected: boolean;
  /** True: the sheet ends with the content of an electronic data sheet. */
  readonly teds: boolean;
  /** Degree of the calibration polynomial, if there is one. */
  readonly degree?: number;
}

/** The sheet of a run, from top to bottom. */
export function planRun(template: RunTemplate, setup: RunSetup): SheetPlan {
  return new RunSheet(template, setup).plan();
}

/** Temperature effects of the transducer, for the correction of readings. */
const EFFECTS: readonly ConditionLine[] = [
  { label: 'Zero effect, per °C', name: 'zero_effect', format: '0.0000000', rule: { kind: 'number' } },
  { label: 'Span effect, per °C', name: 'span_effect', format: '0.0000000', rule: { kind: 'number' } },
];

/** The direction of a block, in words. */
function direction({ id }: SeriesBlock): string {
  return id.replace('_', '-');
}

/** Lays out one run sheet from top to bottom. */
class RunSheet {
  private readonly desk: Desk;
  private readonly applied: readonly number[];
  private readonly several: boolean;

  constructor(private readonly template: RunTemplate, private readonly setup: RunSetup) {
    const { item, series, corrected, degree } = setup;
    this.applied = series.points.map((point) => rounded((item.capacity * point) / 100));
    this.desk = newDesk(item, Math.max(2 * series.runs + 4 + (corrected ? series.runs + 1 : 0), degree === undefined ? 0 : 9), this.applied);
    this.several = series.directions.length > 1;
  }

  plan(): SheetPlan {
    const { desk, template, setup } = this;
    const { degree } = setup;
    const more: ConditionLine[] = [
      ...(degree === undefined ? [] : [{ label: 'Polynomial degree', name: 'degree', value: degree, rule: { kind: 'whole', least: 1, greatest: roomForDegree(degree) } as const }]),
      ...(setup.corrected ? EFFECTS : []),
    ];
    const { nextRow, cell } = openSheet(desk, template, more);
    const cells = { capacity: cell('capacity'), ratedOutput: cell('rated_output'), resolution: cell('resolution'), degree: degree === undefined ? '' : cell('degree'), mostDegree: roomForDegree(degree ?? 1) };
    const correction = setup.corrected
      ? { zeroEffect: cell('zero_effect'), spanEffect: cell('span_effect'), reference: cell('reference_temperature'), room: cell('temperature') }
      : undefined;
    const weights = setup.series.applied === 'weights' ? weightsTable(desk, nextRow, setup.series.points) : undefined;
    const firstBlock = weights?.nextRow ?? nextRow;
    let row = firstBlock;
    const blocks = setup.series.directions.map((direction) => {
      const block = this.readingBlock(direction, row, weights, correction);
      if (row === firstBlock) nameUnits(desk, row);
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
    const plots = runPlots(desk, row, blocks.map((block, i) => ({
      block, direction: this.several ? direction(block) : undefined, limit: tables[i].limits.get(this.named(block, 'nonlinearity')),
      sd: tables[i].values.get(this.named(block, 'residual_sd')), residualRow: residuals[i]?.firstRow, limitName: this.named(block, 'residual_limit'),
    })));
    row = plots.nextRow;
    const budgets = blocks.map((block, i) => {
      const table = budgetTable(desk, row, runBudget(desk, this.budgetCells(block, tables[i], { ...cells, standard: cell('standard_uncertainty') })));
      row = table.nextRow;
      return table;
    });
    blocks.forEach((block, i) => {
      const at = (id: string) => tables[i].values.get(this.named(block, id)) ?? '';
      row = plainCheck(desk, row, { block, capacity: cells.capacity, at, ...(degree === undefined ? {} : { fit: { degree: cells.degree, most: cells.mostDegree } }) }, this.statics(), (id) => this.named(block, id));
      if (correction) row = correctionCheck(desk, row, block, correction, this.named(block, 'corrected'));
      row = budgets[i].check(row);
    });
    row = plots.finish(row);
    if (setup.teds) {
      const output = tables[0].values.get(this.named(blocks[0], 'sensitivity')) ?? address(blocks[0].meanColumn, blocks[0].topRow);
      row = tedsBlock(desk, row, { quantity: template.quantity, capacity: cells.capacity, output, date: cell('date') });
    }
    return closeSheet(desk, row, template);
  }

  /** What the uncertainty of a block is made of, and what is decided with it. */
  private budgetCells(block: SeriesBlock, table: ResultTable, { resolution, standard, degree }: { readonly resolution: string; readonly standard: string; readonly degree: string }): RunBudgetCells {
    const of = (id: string) => table.values.get(this.named(block, id));
    const sd = of('residual_sd');
    const [rated, limit] = [of('rated_output'), table.limits.get(this.named(block, 'rated_output'))];
    return {
      block, standard, resolution, title: `Uncertainty${this.several ? `, ${direction(block)}` : ''}`, suffix: this.several ? `_${block.id}` : '',
      output: address(block.meanColumn, block.topRow), load: address(block.forceColumn, block.topRow),
      repeatability: of('repeatability'), hysteresis: of('hysteresis'), zeroReturn: of('zero_return'),
      ...(sd === undefined ? {} : { fit: { sd, degree } }),
      ...(rated === undefined || limit === undefined ? {} : {
        decision: { label: 'Rated output, decision', value: rated, lower: `-${limit}`, upper: limit, expanded: (relative) => relative, unless: `${rated}="",${limit}=""` },
      }),
    };
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

  private readingBlock(direction: string, row: number, weights: WeightsTable | undefined, correction: Correction | undefined): SeriesBlock {
    const { desk, template, setup } = this;
    const { sheet } = desk;
    const sign = direction === DIRECTIONS[template.quantity][1] ? -1 : 1;
    const id = direction.replace('-', '_');
    const block = startBlock(desk, setup.series, {
      id, row, title: this.several || template.quantity === 'torque' ? `Readings, ${direction}` : `Readings in ${direction}`, appliedHead: 'Applied', appliedUnit: setup.item.unit,
      applied: this.applied.map((value) => (value === 0 ? 0 : sign * value)), typed: setup.series.applied === 'typed', correction,
      ...(weights ? { computed: (point: number) => appliedByWeights(weights, point, sign) } : {}),
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
    const order: string[] = [...ids, ...(setup.degree === undefined ? [] : calibrationIds(cells.mostDegree))];
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
    return resultTable(desk, row, this.several ? `Results, ${direction(block)}` : 'Results', lines);
  }
}

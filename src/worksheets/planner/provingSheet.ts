import type { SheetPlan } from '../plan';
import type { ProvingTemplate } from '../templateSchema';
import { EQUATION_FORMS } from '../../metrology/forceProvingEquation';
import { GREATEST_PROVING_DEGREE } from '../../metrology/forceProving';
import { type Desk, newDesk, PERCENT, rounded } from './desk';
import { closeSheet, type ConditionLine, openSheet } from './frame';
import { changedItem } from './itemForm';
import type { Procedure } from './procedure';
import { provingCheck } from './provingCheck';
import { type ProvingSetup, provingQuestions, readProvingAnswers, suggestedProving } from './provingForm';
import { CLASS_WORDS, classLimits } from './provingLimits';
import { provingPlots } from './provingPlots';
import { provingBlocks } from './provingReadings';
import { provingSeries } from './provingSeries';
import { classResults, equationLines, type ResultCells } from './provingResults';
import { type Figure, figuresTable, type ForceTable, rangesTable, uncertaintyTable } from './provingTables';
import { outcomeLine } from './resultTable';

/** A force-proving instrument: series with rotation, classes, and uncertainty over force. */
export const provingProcedure: Procedure<ProvingTemplate, ProvingSetup> = {
  questions: provingQuestions,
  suggested: suggestedProving,
  read: readProvingAnswers,
  plan: planProving,
  changed: (template, { item, direction, decreasing, points, positions, degree, equation, classWanted, classFrom }) => ({
    ...template, item: changedItem(item), direction, decreasing, points: [...points], degree, equation, classWanted, classFrom,
    positions: positions.length > 0 ? [...positions] : undefined,
  }),
};

/** Columns: force, and the ten of the uncertainty. */
const WIDTH = 11;

function planProving(template: ProvingTemplate, setup: ProvingSetup): SheetPlan {
  const { item, decreasing } = setup;
  const sizes = setup.points.map((point) => rounded((item.capacity * point) / 100));
  const desk = newDesk(item, WIDTH, sizes);
  const { nextRow, cell } = openSheet(desk, template, conditions(setup));
  const [degree, wanted, resolution, standardUncertainty, temperature, form] = ['degree', 'class_wanted', 'resolution', 'standard_uncertainty', 'temperature_effect', 'equation_form'].map(cell);
  const blocks = provingBlocks(desk, nextRow, setup, sizes);
  const series = provingSeries(desk, blocks.nextRow, blocks, sizes);
  const waiting = `OR(${blocks.waiting},${degree}="",${wanted}="",${form}="")`;
  const last = sizes.length - 1;
  const limits = classLimits(desk, series.nextRow, template, { wanted, resolution, force: series.force(last), deflection: series.deflection });

  const data = `${series.forces},${series.series},${degree}`;
  const known = `${limits.resolution},${series.zeros},${blocks.creep ?? ''},${standardUncertainty}`;
  const judged = `${data},${known},${limits.range},FALSE`;
  const tables = {
    calls: {
      figures: `PROVE.FORCEPROVING(${data},FALSE)`, classes: `PROVE.FORCECLASS(${judged})`, ranges: `PROVE.FORCECLASSRANGE(${judged})`,
      uncertainties: `PROVE.FORCEUNCERTAINTY(${data},${known},${temperature},FALSE)`,
    },
    waiting, force: series.force, count: sizes.length, decreasing,
  };
  const figures = figuresTable(desk, limits.nextRow, tables);
  const uncertainty = uncertaintyTable(desk, rangesTable(desk, figures.nextRow, tables), tables);
  const cells: ResultCells = { ...tables, limits, figures, forces: series.forces, standardUncertainty, form, degree };
  const equations = equationLines(desk, uncertainty.nextRow, cells, uncertainty);
  const results = classResults(desk, equations.nextRow + 1, setup, cells);
  let row = 1 + outcomeLine(desk, results.nextRow + 1, { label: 'Outcome, for the customer', name: 'verdict_overall', verdicts: [results.verdicts], waiting: [waiting] });
  const chosen = chosenForces(sizes.length);
  const values = new Map([...equations.values, ...results.values, ...namedFigures(desk, figures, chosen, decreasing ? last : 0)]);
  row = provingPlots(desk, row, cells, uncertainty, { raised: equations.values.get('equation_raised') as string, a1: equations.values.get('equation_a1') as string, a2: equations.a2 });
  row = provingCheck(desk, row, blocks, {
    sizes, waiting, degree, from: results.limits.get('class_from') as string, resolution, standardUncertainty, temperature, decreasing, chosen,
    at: (id) => values.get(id) as string,
  });
  return closeSheet(desk, row, template);
}

/** What the functions are told beside the readings. */
function conditions({ degree, classWanted, equation }: ProvingSetup): ConditionLine[] {
  return [
    { label: 'Degree of interpolation', name: 'degree', value: degree, rule: { kind: 'whole', least: 1, greatest: GREATEST_PROVING_DEGREE } },
    { label: 'Class wanted', name: 'class_wanted', value: `class ${classWanted}`, rule: { kind: 'list', words: CLASS_WORDS } },
    { label: 'Equation for W', name: 'equation_form', value: equation, rule: { kind: 'list', words: [...EQUATION_FORMS] } },
    { label: 'Temperature in use, K·ΔT', name: 'temperature_effect', format: PERCENT, rule: { kind: 'number', least: 0 } },
  ];
}

/** The forces whose figures are checked one by one. */
function chosenForces(count: number): readonly (readonly [string, number])[] {
  return [['lowest', 0], ['middle', Math.floor((count - 1) / 2)], ['greatest', count - 1]];
}

/** Names the figures of chosen forces as results, v only below the place from which it is not read; gives their cells. */
function namedFigures({ sheet }: Desk, figures: ForceTable<Figure>, chosen: ReturnType<typeof chosenForces>, vBelow: number): readonly (readonly [string, string])[] {
  const cells = chosen.flatMap(([name, index]) => ([['xr', 'mean'], ['b', 'b'], ['b_same', 'same'], ['v', 'v']] as const)
    .filter(([figure]) => figure !== 'v' || index < vBelow)
    .map(([figure, column]) => [`${figure}_${name}`, figures.at(column, index)] as const));
  cells.forEach(([id, at]) => sheet.called(`value_${id}`, at));
  return cells;
}

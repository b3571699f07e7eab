import { address, formula } from '../planBuilder';
import { type Desk, SCIENTIFIC } from './desk';
import type { ResultLine } from './resultTable';
import { forces, net, onceRead, type SeriesBlock } from './seriesBlock';
import { differentLoads } from './seriesForm';
import type { Limits } from './staticResults';

export const MOST_DEGREE = 5;
/** A sheet leaves room for this degree at least: a run may turn out to need it. */
const USUAL_DEGREE = 3;

/** The highest degree that a sheet planned for one leaves room for. */
export function roomForDegree(degree: number): number {
  return Math.min(MOST_DEGREE, Math.max(degree, USUAL_DEGREE));
}

/** Cells that the calibration reads. */
export interface CalibrationCells {
  /** The degree in use. */
  readonly degree: string;
  readonly resolution: string;
  readonly capacity: string;
  /** The highest degree that the sheet has room for. */
  readonly mostDegree: number;
}

/** Ids of the lines of a calibration, in the order of the sheet. */
export function calibrationIds(mostDegree: number): readonly string[] {
  return ['best_degree', ...Array.from({ length: mostDegree + 1 }, (_, k) => `a${k}`), 'residual_sd', 'force_resolution', 'limit_factor', 'class_aa', 'class_a'];
}

/** Lines of the calibration polynomial of a block, and of what class its readings reach from which force. */
export function calibrationLines(
  { item, formats }: Desk, block: SeriesBlock, cells: CalibrationCells, limits: Limits, name: (id: string) => string, at: (id: string) => string,
): ResultLine[] {
  const data = `${forces(block)},${net(block)}`;
  const fit = `${data},${cells.degree}`;
  const { unit, outputUnit } = item;
  const top = address(block.meanColumn, block.topRow);
  const topForce = address(block.forceColumn, block.topRow);
  const classLine = (id: 'class_aa' | 'class_a', word: string): ResultLine => ({
    id: name(id), label: `Class ${word} holds from`, format: formats.applied === '0' ? '0.0' : `${formats.applied}0`, unit,
    value: onceRead(block, `IFNA(PROVE.LOWERLIMIT(${fit},"${word}",${at('force_resolution')}),"not met")`),
    function: `PROVE.LOWERLIMIT(F,N,degree,"${word}",…)`,
    judged: { limit: limits(`${id}_from`), limitFormat: formats.applied, rule: 'greatest', ...(typeof limits(`${id}_from`) === 'object' ? {} : { name: `${id}_from` }) },
  });
  return [
    { id: name('best_degree'), label: 'Degree of best fit', format: '0', unit: '', value: onceRead(block, `PROVE.FITDEGREE(${data},${Math.min(cells.mostDegree, differentLoads(block.answers.points) - 2)})`), function: 'PROVE.FITDEGREE(F,N)' },
    ...Array.from({ length: cells.mostDegree + 1 }, (_, k): ResultLine => ({
      id: name(`a${k}`), label: `A${k}`, format: SCIENTIFIC, unit: k === 0 ? outputUnit : `${outputUnit}/${unit}${k === 1 ? '' : '²³⁴⁵'[k - 2]}`,
      value: formula(`IF(OR(${block.waiting},${k}>${cells.degree}),"",INDEX(PROVE.FIT(${fit}),${k + 1},1))`),
      function: k === 0 ? 'PROVE.FIT(F,N,degree)' : '',
    })),
    {
      id: name('residual_sd'), label: 'Residual standard deviation s', format: '0.00E+00', unit: outputUnit,
      value: onceRead(block, `INDEX(PROVE.FITREPORT(${fit},"response",TRUE,FALSE),${cells.degree}+4,2)`), function: 'PROVE.FITREPORT(F,N,degree)',
    },
    {
      id: name('force_resolution'), label: `Resolution, ${unit}`, format: '0.00E+00', unit,
      value: onceRead(block, `ABS(${cells.resolution}*${topForce}/${top})`), function: 'resolution·force/output',
    },
    {
      id: name('limit_factor'), label: 'Lower limit factor', format: '0.00E+00', unit,
      value: onceRead(block, `PROVE.LIMITFACTOR(${fit},${at('force_resolution')})`), function: 'PROVE.LIMITFACTOR(F,N,degree,…)',
    },
    classLine('class_aa', 'AA'), classLine('class_a', 'A'),
  ];
}

/** The table of residuals: applied, fitted, and a column a run; gives the next free row. */
export function residualTable({ sheet, width, item, formats }: Desk, row: number, block: SeriesBlock, { degree }: CalibrationCells): { readonly nextRow: number; readonly firstRow: number } {
  const { runs } = block.answers;
  const firstRow = row + 3;
  const count = block.lastRow - block.firstRow + 1;
  const fit = `${forces(block)},${net(block)},${degree}`;
  const finer = `${formats.output}0`;
  sheet.wide(1, row, width, 'heading', `Residuals, ${block.title.toLowerCase()}`);
  sheet.across(1, row + 1, 'header', ['Applied', 'Fitted', ...Array.from({ length: runs }, (_, i) => `Run ${i + 1}`)]);
  sheet.across(1, row + 2, 'header', [item.unit, ...Array.from({ length: runs + 1 }, () => item.outputUnit)]);
  for (let i = 0; i < count; i += 1) sheet.put(1, firstRow + i, 'reference', formula(address(block.forceColumn, block.firstRow + i)), formats.applied);
  sheet.spill(2, firstRow, 1, count, onceRead(block, `PROVE.RESPONSE(PROVE.FIT(${fit}),${forces(block)})`), formats.output);
  sheet.spill(3, firstRow, runs, count, onceRead(block, `PROVE.RESIDUALS(${fit})`), finer);
  sheet.called(`fitted_${block.id}`, `${address(2, firstRow)}:${address(2, firstRow + count - 1)}`);
  sheet.called(`residuals_${block.id}`, `${address(3, firstRow)}:${address(2 + runs, firstRow + count - 1)}`);
  return { nextRow: firstRow + count + 1, firstRow };
}

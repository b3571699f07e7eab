import { FilledSheet } from '../filledSheet';
import type { Job, JobItem } from '../job/job';
import type { PlannedSheet } from '../planner';
import { newDesk } from '../planner/desk';
import { closeSheet } from '../planner/frame';
import type { Problem } from '../question';
import type { ReadSheet } from '../readSheet';
import { comparedBlocks, type ComparedBlock } from './comparedBlock';
import { type BlockCells, comparisonBlock, WIDTH } from './comparisonBlock';
import { comparisonCheck } from './comparisonCheck';
import { comparisonHead } from './comparisonHead';
import { comparisonPlotRows, comparisonPlots } from './comparisonPlot';
import { comparisonResults } from './comparisonResults';
import { lastOf, type LastResults } from './lastResults';
import { lastTable } from './lastTable';
import { patternLine } from './pattern';
import { appliedOf, hasReadings, type RunSide, sidesOf } from './runSide';
import { unitsDiffer, type Units } from './units';

/** What is compared. */
export interface ComparisonParts {
  readonly job: Job;
  readonly item: JobItem;
  /** The run as found; a sheet with stages may hold the run as left too. */
  readonly found: ReadSheet;
  /** The run as left; undefined if it stands on the same sheet, or nothing was adjusted. */
  readonly left?: ReadSheet;
  /** Results of the last calibration, as `lastResults` read them from its workbook. */
  readonly last?: readonly LastResults[];
  /** Name of the sheet to be. */
  readonly name: string;
}

const DECISION = 'By the rule of the job a point is within if the magnitude of its deviation is not greater than the tolerance (simple), or than tolerance − U (guarded: guard band w = U, ILAC-G8:09/2019 and JCGM 106, from memory). U is that of the point\'s own run at the greatest load, for every point. What a pattern fits is a hint: inspect before anything is concluded.';

/**
 * The sheet that holds a run as found against the run as left and against the last calibration, point by point, for every block
 * of readings at forces. Without a run as left the run as found is final. Refuses runs that have no points in common, or other units.
 */
export function planComparison(parts: ComparisonParts): PlannedSheet {
  const { job, item, found, name } = parts;
  const sides = { found: sidesOf(found, 'as_found'), left: leftSides(parts) };
  const compared = comparedBlocks(sides.found, sides.left?.length === 0 ? undefined : sides.left);
  const refusals = [...nameProblems(parts), ...soundness(sides.found, sides.left, found.name), ...compared.refused.map((message) => refuse('left', message))];
  const last = compared.blocks.map(({ id }) => lastOf(parts.last ?? [], id, { name: item.name.value, identification: item.identification.value }));
  const units = unitsOf(sides.found[0]);
  const strange = last.map((one) => one !== undefined && unitsDiffer(one, units));
  const problems: Problem[] = [
    ...refusals, ...compared.warnings.map((message) => warn('left', message)),
    ...(parts.last !== undefined && compared.blocks.length > 0 && last.every((one) => one === undefined) ? [warn('last', 'Found no results of this item and direction in the earlier workbook; expected a run of the same. Its results can be typed on the sheet')] : []),
    ...(strange.includes(true) ? [warn('last', `Found last time in ${last[strange.indexOf(true)]?.unit} and ${last[strange.indexOf(true)]?.outputUnit}; expected ${units.unit} and ${units.outputUnit}. Its results are left out: type them converted`)] : []),
    ...(job.fields.tolerance.value === undefined ? [warn('job', `Found no tolerance in ${job.fields.tolerance.at} of “${job.sheet}”; expected the greatest deviation allowed. Points without a tolerance are not judged`)] : []),
  ];
  if (refusals.length > 0) return { problems };

  const applied = compared.blocks.flatMap(({ found: side }) => appliedOf(side)).filter((value) => value !== undefined);
  const { cells } = sides.found[0];
  const desk = newDesk({ sheet: name, capacity: cells.number('capacity') ?? 0, unit: units.unit ?? '', outputUnit: units.outputUnit ?? '', resolution: cells.number('resolution') ?? 1e-5 }, WIDTH, applied);
  const head = comparisonHead(desk, { job, item, found: sides.found[0], ...(sides.left ? { left: sides.left[0] } : {}) });
  let row = head.nextRow;
  const blocks = compared.blocks.map((block): BlockCells => {
    const written = comparisonBlock(desk, row, block, head);
    row = written.nextRow;
    return written;
  });
  nameUnits(desk.sheet, blocks[0]);
  const results = comparisonResults(desk, row, blocks, head);
  const plotRow = results.nextRow;
  row = plotRow + comparisonPlotRows(blocks.length);
  const suffix = ({ id }: ComparedBlock) => (blocks.length > 1 ? `_${id}` : '');
  const patterns: number[] = [];
  const tables = blocks.map((written, i) => {
    const table = lastTable(desk, row, {
      cells: written, head, suffix: suffix(written.block), ...(last[i] && !strange[i] ? { last: last[i] } : {}), ...(item.last_calibrated.value === undefined ? {} : { lastDate: item.last_calibrated.value }),
    });
    patterns.push(table.nextRow);
    row = table.nextRow + 2;
    return table;
  });
  tables.forEach((table, i) => patternLine(desk, patterns[i], table, tables.filter((other) => other !== table), head));
  row = comparisonCheck(desk, row, blocks, results, tables, head);
  row = comparisonPlots(desk, plotRow, row, blocks);
  return { problems, plan: closeSheet(desk, row, { decisionRule: DECISION }) };
}

/** The run as left: of its own sheet, or of the sheet as found where it holds one that was read; undefined if nothing was adjusted. */
function leftSides({ found, left }: ComparisonParts): RunSide[] | undefined {
  if (left) return sidesOf(left, 'as_left');
  const own = sidesOf(found, 'as_left').filter(({ block }) => block.id.startsWith('as_left'));
  return hasReadings(own) ? own : undefined;
}

/** Names the cells that say the units, in the head of the first block. */
function nameUnits(sheet: ReturnType<typeof newDesk>['sheet'], { firstRow }: BlockCells): void {
  sheet.called('unit', `A${firstRow - 1}`).called('output_unit', `B${firstRow - 1}`);
}

function unitsOf(side: RunSide | undefined): Units {
  const cells = side?.cells ?? new FilledSheet({ name: '', cells: [], names: [] });
  return { unit: cells.text(cells.cell('scale') ? 'output_unit' : 'unit'), outputUnit: cells.text('output_unit') };
}

function nameProblems({ name, job, found, left }: ComparisonParts): Problem[] {
  const taken = [job.sheet, found.name, ...(left ? [left.name] : [])].find((other) => other.toLowerCase() === name.toLowerCase());
  if (taken !== undefined) return [refuse('name', `Found “${name}”, which is the sheet “${taken}” itself; expected a name of its own`)];
  return /^[^\\/?*[\]:'\p{Cc}]{1,31}$/u.test(name) ? [] : [refuse('name', `Found “${name}”; expected a name of 1 to 31 characters without \\ / ? * [ ] : and apostrophes`)];
}

function soundness(found: readonly RunSide[], left: readonly RunSide[] | undefined, foundName: string): Problem[] {
  if (found.length === 0) return [refuse('found', `Found no readings at forces on “${foundName}”; expected the sheet of a run, or of a system as found`)];
  if (left === undefined) return [];
  if (left.length === 0) return [refuse('left', 'Found no readings at forces on the sheet as left; expected the sheet of a run, or of a system as left')];
  const [before, after] = [unitsOf(found[0]), unitsOf(left[0])];
  return unitsDiffer(before, after) ? [refuse('left', `Found “${left[0].sheet}” in ${after.unit} and ${after.outputUnit}, “${foundName}” in ${before.unit} and ${before.outputUnit}; expected the same units`)] : [];
}

function refuse(question: string, message: string): Problem {
  return { severity: 'refuse', question, message: `${message}.` };
}

function warn(question: string, message: string): Problem {
  return { severity: 'warn', question, message: `${message}.` };
}

import type { Job, JobCell, JobItem } from '../job/job';
import { address, fixed, formula, type Formula } from '../planBuilder';
import { type Desk, PERCENT } from '../planner/desk';
import { DATE } from '../planner/frame';
import { firstHeld, heldBy, linkTo } from './links';
import { isIndication, type RunSide } from './runSide';

const FIRST_LINE = 5;
const [LABEL, VALUE, RIGHT_LABEL, RIGHT_VALUE] = [1, 3, 6, 9];
const SOURCE = 'Limits of stability: ASTM E74 (from memory); shift of zero and span, and what a pattern fits: common practice, no source.';

/** What the head is told. */
export interface HeadParts {
  readonly job: Job;
  readonly item: JobItem;
  readonly found: RunSide;
  readonly left?: RunSide;
}

/** Where the conditions stand, as formulas name them. */
export interface HeadCells {
  readonly nextRow: number;
  readonly capacity: string;
  /** Empty for a sheet of indications, which has none. */
  readonly ratedOutput: string;
  /** Greatest deviation allowed, of the output at capacity. */
  readonly tolerance: string;
  /** "simple" or "guarded", as the job says. */
  readonly rule: string;
  readonly loadingClass: string;
  readonly foundDate: string;
  readonly leftDate: string;
  /** From where on a change counts for the hint, fractions of the rated output. */
  readonly zeroMoved: string;
  readonly spanChanged: string;
  readonly zeroUnsteady: string;
}

/** A line of "Item and conditions": what another sheet holds, or a number to type over. */
interface Line {
  readonly id: string;
  readonly label: string;
  readonly content: Formula | string | number;
  readonly format?: string;
}

/** Title, item, and which runs are compared. */
export function comparisonHead({ sheet, width, item: { unit, outputUnit } }: Desk, parts: HeadParts): HeadCells {
  sheet.wide(1, 1, width, 'title', 'As found, as left, last time');
  sheet.wide(1, 2, width, 'subtitle', 'The run before and the run after adjustment point by point, each against the tolerance of the job, and what changed since the last calibration.');
  sheet.wide(1, 3, width, 'note', `Source: ${SOURCE} Everything on this sheet comes from other sheets; yellow cells are to type in.`);
  sheet.wide(1, 4, width, 'heading', 'Item and runs');
  const left = itemLines(parts, unit, outputUnit);
  const right = runLines(parts);
  left.forEach((line, i) => writeLine(sheet, line, LABEL, VALUE, RIGHT_LABEL - 1, FIRST_LINE + i));
  right.forEach((line, i) => writeLine(sheet, line, RIGHT_LABEL, RIGHT_VALUE, width, FIRST_LINE + i));
  const at = (id: string): string => {
    const onLeft = left.findIndex((line) => line.id === id);
    return onLeft >= 0 ? fixed(VALUE, FIRST_LINE + onLeft) : fixed(RIGHT_VALUE, FIRST_LINE + right.findIndex((line) => line.id === id));
  };
  return {
    nextRow: FIRST_LINE + Math.max(left.length, right.length) + 1,
    capacity: at('capacity'), ratedOutput: isIndication(parts.found) ? '' : at('rated_output'), tolerance: at('tolerance'), rule: at('comparison_rule'), loadingClass: at('class'),
    foundDate: at('found_date'), leftDate: at('left_date'), zeroMoved: at('hint_zero'), spanChanged: at('hint_span'), zeroUnsteady: at('hint_unsteady'),
  };
}

function itemLines({ job, item, found }: HeadParts, unit: string, outputUnit: string): Line[] {
  const ofJob = ({ at }: JobCell<string | number>) => formula(heldBy(linkTo(job.sheet, at)));
  // A number of the job in another unit than the run's says nothing here.
  const ofRun = (name: string, otherwise: JobCell<number>, inUnit: boolean) => {
    const cell = found.cells.cell(name);
    return formula(firstHeld([...(cell ? [linkTo(found.sheet, cell.at)] : []), ...(inUnit ? [linkTo(job.sheet, otherwise.at)] : [])]));
  };
  return [
    { id: 'comparison_job', label: 'Job', content: ofJob(job.fields.number) },
    { id: 'comparison_item', label: 'Item', content: ofJob(item.name) },
    { id: 'identification', label: 'Identification', content: ofJob(item.identification) },
    { id: 'customer', label: 'Customer', content: ofJob(job.fields.customer) },
    { id: 'capacity', label: `Capacity, ${unit}`, content: ofRun('capacity', item.capacity, item.unit.value === unit) },
    ...(isIndication(found) ? [] : [{ id: 'rated_output', label: `Rated output, ${outputUnit}`, content: ofRun('rated_output', item.rated_output, item.output_unit.value === outputUnit) }]),
    { id: 'tolerance', label: 'Tolerance, of RO', content: ofJob(job.fields.tolerance), format: PERCENT },
    { id: 'class', label: 'Class required', content: ofJob(job.fields.class) },
  ];
}

function runLines({ job, found, left }: HeadParts): Line[] {
  const dateOf = (side: RunSide | undefined) => {
    const cell = side?.cells.cell('date');
    return side && cell ? formula(heldBy(linkTo(side.sheet, cell.at))) : '';
  };
  return [
    { id: 'comparison_found', label: 'Run as found, on sheet', content: found.sheet },
    { id: 'found_date', label: 'Its date', content: dateOf(found), format: DATE },
    { id: 'comparison_left', label: 'Run as left, on sheet', content: left ? left.sheet : 'no adjustment made' },
    { id: 'left_date', label: 'Its date', content: dateOf(left), format: DATE },
    { id: 'comparison_rule', label: 'Decision rule of the job', content: formula(heldBy(linkTo(job.sheet, job.fields.decision_rule.at))) },
    { id: 'hint_zero', label: 'Zero counts as moved from', content: 0.005, format: PERCENT },
    { id: 'hint_span', label: 'Span counts as changed from', content: 0.001, format: PERCENT },
    { id: 'hint_unsteady', label: 'Zero counts as unsteady from', content: 0.001, format: PERCENT },
  ];
}

function writeLine(sheet: Desk['sheet'], { id, label, content, format }: Line, labelColumn: number, first: number, last: number, row: number): void {
  const at = address(first, row);
  const typed = typeof content === 'number';
  sheet.put(labelColumn, row, labelColumn === RIGHT_LABEL ? 'aside' : 'label', label);
  sheet.wide(first, row, last - first + 1, typed ? 'input' : 'reference', content === '' ? undefined : content, format).called(id, at);
  if (typed) sheet.validate({ range: at, rule: { kind: 'number', least: 0 }, message: `${label}: expected a fraction of the rated output, 0 or more, like 0.5 %.` });
}

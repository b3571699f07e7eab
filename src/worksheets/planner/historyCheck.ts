import { address, formula, type Formula } from '../planBuilder';
import type { ChartSeries } from '../plan';
import { checkHeading, type CheckLine, checkLines } from './checkLines';
import { type Desk, PERCENT, RESULT } from './desk';
import { DATE } from './frame';
import type { HistoryConditions } from './historyResults';
import type { HistoryCells } from './historyTable';

/** Days that a cell can show as a date. */
const LAST_DAY = 2_958_465;
/** Days between which the band of the plot is drawn, in equal steps. */
const STEPS = 12;

/** Cells of the prediction band by built-in functions. */
interface Band {
  readonly nextRow: number;
  readonly meanDay: string;
  readonly meanOutput: string;
  readonly spread: string;
  readonly slope: string;
  readonly share: string;
  /** When the band meets a limit: a day, "past" or "never". */
  readonly met: string;
}

type CheckedId = 'drift' | 'drift_error' | 'limit_date' | 'shift' | 'change' | 'interval_staircase' | 'interval_reliability';

/** The line and its band step by step, and the main results from it, by built-in functions; gives the next free row. */
export function plainHistory(desk: Desk, row: number, cells: HistoryCells, conditions: HistoryConditions, at: (id: CheckedId) => string): { readonly nextRow: number; readonly series: readonly ChartSeries[] } {
  const band = bandCells(desk, checkHeading(desk, row), cells, conditions);
  const nextRow = checkLines(desk, band.nextRow, lines(cells, conditions, band, at));
  return bandTable(desk, nextRow, cells, conditions, band);
}

/** Half-width of the band at so many days from the mean day. */
function halfWidth({ share, spread }: Pick<Band, 'share' | 'spread'>, count: string, days: string): string {
  return `${share}*SQRT(1+1/${count}+(${days})^2/${spread})`;
}

function bandCells({ sheet, formats }: Desk, row: number, cells: HistoryCells, { lower, upper, probability }: HistoryConditions): Band {
  const { days, outputs, count } = cells;
  const place = (i: number) => address(RESULT.value, row + i);
  const [meanDay, meanOutput, spread, slope, share, toUpper, toLower, met] = [0, 1, 2, 3, 4, 5, 6, 7].map(place);
  const once = (text: string) => formula(`IF(OR(${cells.waiting}),"",${text})`);
  const last = `(MAX(${days})-${meanDay})`;
  const edge = (sign: '+' | '-') => `${meanOutput}+${slope}*${last}${sign}${halfWidth({ share, spread }, count, last)}`;
  // Where the upper edge b·x + √(q·(c + x²/S)) meets k: of (b² − q/S)·x² − 2kb·x + k² − q·c = 0 the root that is right for either sign of the first coefficient.
  const meeting = (b: string, k: string) => {
    const rest = `((${k})^2-${share}^2*(1+1/${count}))`;
    const root = `${rest}/(${b}*(${k})+SQRT(MAX(0,(${b}*(${k}))^2-(${slope}^2-${share}^2/${spread})*${rest})))`;
    return `IFERROR(IF(${root}>${last},${root},"never"),"never")`;
  };
  const steps: readonly (readonly [label: string, value: Formula, format: string])[] = [
    ['Mean date', once(`AVERAGE(${days})`), DATE], ['Mean output', once(`AVERAGE(${outputs})`), `${formats.output}00`],
    ['DEVSQ of the dates', once(`DEVSQ(${days})`), '0'], ['SLOPE, per day', once(`SLOPE(${outputs},${days})`), '0.000E+00'],
    ['t·s: T.INV.2T × STEYX', once(`T.INV.2T(1-${probability},${count}-2)*STEYX(${outputs},${days})`), '0.000E+00'],
    ['Days from mean to the upper limit', once(`IF(${upper}="","never",${meeting(slope, `(${upper}-${meanOutput})`)})`), '0.0'],
    ['Days from mean to the lower limit', once(`IF(${lower}="","never",${meeting(`(-${slope})`, `(${meanOutput}-${lower})`)})`), '0.0'],
    ['Band meets a limit', formula(`IF(OR(${cells.waiting},AND(${lower}="",${upper}="")),"",IF(OR(IF(${upper}="",FALSE,${edge('+')}>=${upper}),IF(${lower}="",FALSE,${edge('-')}<=${lower})),"past",`
      + `IF(COUNT(${toUpper}:${toLower})=0,"never",IF(${meanDay}+MIN(${toUpper}:${toLower})>${LAST_DAY},"never",${meanDay}+MIN(${toUpper}:${toLower})))))`), DATE],
  ];
  steps.forEach(([label, value, format], i) => sheet.put(1, row + i, 'label', label).put(RESULT.value, row + i, 'result', value, format));
  return { nextRow: row + steps.length + 1, meanDay, meanOutput, spread, slope, share, met };
}

function lines(cells: HistoryCells, { interval, target, least, greatest }: HistoryConditions, band: Band, at: (id: CheckedId) => string): CheckLine[] {
  const { days, outputs, last, before, counts } = cells;
  const once = (text: string): Formula => formula(`IF(OR(${cells.waiting}),"",${text})`);
  const withWord = (text: string): Formula => formula(`IF(OR(${last('found')}="",${interval}=""),"",${text})`);
  const [inside, outside] = counts.split(':');
  const held = (months: string) => `MIN(MAX(${months},${least}),${greatest})`;
  const line = (id: CheckedId, label: string, plain: Formula, format: string, scale: string, words: string): CheckLine => ({ id, label, own: `IF(${at(id)}="","",${at(id)})`, plain, format, scale, words });
  return [
    line('drift', 'Drift per year', once(`${band.slope}*365.25`), '0.000E+00', `(ABS(N(${at('drift')}))+1E-6)`, 'SLOPE × 365.25'),
    line('drift_error', 'Its standard error', once(`STEYX(${outputs},${days})/SQRT(${band.spread})*365.25/ABS(${last('output')})`), '0.00000%', `(N(${at('drift_error')})+1E-6)`, 'STEYX/√DEVSQ × 365.25/last'),
    // To a hundredth of a day.
    line('limit_date', 'Band meets a limit', formula(`IF(${band.met}="","",${band.met})`), DATE, '1E6', 'mean date + days to the limit'),
    line('shift', 'Shift since before', once(`${last('output')}/${before('output')}-1`), PERCENT, '1', 'last/before − 1'),
    line('change', 'Change since first', once(`${last('output')}/${cells.first}-1`), PERCENT, '1', 'last/first − 1'),
    line('interval_staircase', 'Staircase', withWord(held(`${interval}*IF(${last('found')}="outside",1.1^(-${target}/(1-${target})),1.1)`)), '0.0000', interval, '× 1.1, or × 1.1^(−R/(1 − R))'),
    line('interval_reliability', 'Reliability', withWord(`IF(${outside}=0,${greatest},IF(${inside}=0,${least},${held(`${interval}*LN(${target})/LN(${inside}/(${inside}+${outside}))`)}))`), '0.0000', interval, '× ln R/ln(part inside)'),
  ];
}

/** The line, the band and the limits in equal steps from the first calibration to two intervals after the last; gives their series. */
function bandTable({ sheet, width, formats }: Desk, row: number, cells: HistoryCells, { lower, upper, interval }: HistoryConditions, band: Band): { readonly nextRow: number; readonly series: readonly ChartSeries[] } {
  const { days, waiting } = cells;
  const heads = ['Date', 'Line', 'Band, upper', 'Band, lower', 'Limit, upper', 'Limit, lower'];
  sheet.wide(1, row, width, 'heading', 'Line, prediction band and limits of the plot');
  sheet.acrossTo(width, 1, row + 1, 'header', [...heads]);
  const first = row + 2;
  const finer = `${formats.output}0`;
  for (let i = 0; i <= STEPS; i += 1) {
    const at = first + i;
    const [day, middle] = [address(1, at), address(2, at)];
    const once = (text: string) => formula(`IF(${day}="","",${text})`);
    const half = halfWidth(band, cells.count, `${day}-${band.meanDay}`);
    sheet.put(1, at, 'result', formula(`IF(OR(${waiting}),"",MIN(${days})+(MAX(${days})+2*${interval}*365.25/12-MIN(${days}))*${i}/${STEPS})`), DATE);
    sheet.put(2, at, 'result', once(`${band.meanOutput}+${band.slope}*(${day}-${band.meanDay})`), finer);
    sheet.put(3, at, 'result', once(`${middle}+${half}`), finer).put(4, at, 'result', once(`${middle}-${half}`), finer);
    sheet.put(5, at, 'reference', once(`IF(${upper}="","",${upper})`), finer).put(6, at, 'reference', once(`IF(${lower}="","",${lower})`), finer);
  }
  const range = (column: number) => `${address(column, first)}:${address(column, first + STEPS)}`;
  ['day', 'middle', 'upper', 'lower', 'upper_limit', 'lower_limit'].forEach((id, i) => sheet.called(`band_${id}`, range(i + 1)));
  const series = heads.slice(1).map((name, i): ChartSeries => ({ name, x: range(1), y: range(i + 2), drawn: i < 3 ? 'line' : 'limit' }));
  return { nextRow: first + STEPS + 2, series };
}

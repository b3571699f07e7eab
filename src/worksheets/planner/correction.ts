import { address, formula } from '../planBuilder';
import { checkHeading, checkLines } from './checkLines';
import type { Desk } from './desk';
import { readings, type SeriesBlock, span } from './seriesBlock';

/** Cells that a correction to the reference temperature takes its numbers from. */
export interface Correction {
  /** Output units per degree; blank counts as 0. */
  readonly zeroEffect: string;
  /** Fraction of span per degree; blank counts as 0. */
  readonly spanEffect: string;
  readonly reference: string;
  /** Temperature of the room, which a row without a temperature of its own has. */
  readonly room: string;
}

/** Column of the temperatures of a block that is corrected. */
function temperatureColumn({ typedColumn, answers }: SeriesBlock): number {
  return typedColumn + answers.runs;
}

/** A column of temperatures, and the readings as they would be at the reference temperature; the first zero of a run is what the span effect leaves alone. */
export function correctedReadings(sheet: Desk['sheet'], block: SeriesBlock, { zeroEffect, spanEffect, reference, room }: Correction, format: string): void {
  const temperatures = temperatureColumn(block);
  for (let row = block.firstRow; row <= block.lastRow; row += 1) {
    const temperature = address(temperatures, row);
    sheet.put(temperatures, row, 'input', formula(`IF(${room}="","",${room})`), '0.0');
    for (let run = 0; run < block.answers.runs; run += 1) {
      const [read, zero] = [address(block.typedColumn + run, row), address(block.typedColumn + run, block.firstRow)];
      const off = `(${temperature}-${reference})`;
      sheet.put(block.readingColumn + run, row, 'result', formula(
        `IF(OR(${read}="",${zero}=""),"",IF(${temperature}="",${read},(${read}-${zero}-N(${zeroEffect})*${off})/(1+N(${spanEffect})*${off})+${zero}))`,
      ), `${format}0`);
    }
  }
  sheet.validate({ range: span(block, temperatures), rule: { kind: 'number' }, message: 'Expected a temperature in °C, or nothing.' });
  sheet.called(`temperatures_${block.id}`, span(block, temperatures)).called(`corrected_${block.id}`, readings(block));
}

/** Checks the corrected readings, which plain formulas give, by their sum from the add-in's function; gives the next free row. */
export function correctionCheck(desk: Desk, row: number, block: SeriesBlock, { zeroEffect, spanEffect, reference }: Correction, name: string): number {
  const temperatures = span(block, temperatureColumn(block));
  const missing = `COUNT(${temperatures})<${block.answers.points.length}`;
  const sums = Array.from({ length: block.answers.runs }, (_, run) => {
    const read = span(block, block.typedColumn + run);
    return `SUM(PROVE.TEMPCORRECT(${read},${temperatures},N(${zeroEffect}),N(${spanEffect}),${reference},${address(block.typedColumn + run, block.firstRow)}))`;
  });
  return checkLines(desk, checkHeading(desk, row, ', temperature'), [{
    id: name, label: 'Corrected, sum', own: `IF(OR(${block.waiting},${missing}),"",${sums.join('+')})`, plain: formula(`IF(OR(${block.waiting},${missing}),"",SUM(${readings(block)}))`),
    format: '0.0000000', scale: `MAX(1,SUMSQ(${readings(block)}))`, words: '(X − zero − effect·ΔT)/(1 + effect·ΔT) + zero',
  }]);
}

import { readingsFingerprint } from '../worksheets/record/fingerprint';
import { FINGERPRINT } from '../worksheets/certificate/certificateEnd';
import { found, held } from './finding';
import { numberIn, type ReviewedSheet } from './reviewedSheet';
import type { ReviewFinding } from './reviewFinding';
import { shownNumber } from './shownNumber';
import { type Judged, judgedCells, keeps } from './verdicts';

/** Column of the limits of a certificate's results. */
const LIMIT_COLUMN = 4;

/** What a certificate says of its run: figures that are typed in, the fingerprint of other readings, digits that hide a failure. */
export function certificate(sheet: ReviewedSheet, byName: ReadonlyMap<string, ReviewedSheet>): ReviewFinding[] {
  const named = sheet.cells.cell('certificate_run');
  if (!sheet.has('certificate_number') || !named) return [];
  const run = typeof named.value === 'string' ? byName.get(named.value.trim().toLowerCase()) : undefined;
  if (!run) return [found(sheet, named, 'record', `${named.at} names the run ${held(named.value)}, which is no sheet of this workbook; expected the run that the certificate is of`)];
  return [...typedFigures(sheet), ...fingerprint(sheet, run), ...hidden(sheet, run)];
}

function typedFigures(sheet: ReviewedSheet): ReviewFinding[] {
  return sheet.cells.namesAfter('shown_').flatMap((id) => sheet.all(`shown_${id}`)).flatMap((cell): ReviewFinding[] => {
    if (cell.formula !== undefined || cell.value === null) return [];
    return [found(sheet, cell, 'overwritten', `${cell.at} holds ${held(cell.value, cell.format)}; expected a formula that shows a cell of the run`)];
  });
}

function fingerprint(sheet: ReviewedSheet, run: ReviewedSheet): ReviewFinding[] {
  const cell = sheet.cells.cell('certificate_fingerprint');
  const now = `${FINGERPRINT}${readingsFingerprint(run.read)}`;
  if (!cell || cell.value === now) return [];
  return [found(sheet, cell, 'record', `${cell.at} holds the fingerprint of other readings than those of “${run.name}”; expected ${now}`)];
}

/** Results and points that are beyond their limit, and look within it in the digits of the certificate. */
function hidden(sheet: ReviewedSheet, run: ReviewedSheet): ReviewFinding[] {
  const judged = new Map(judgedCells(run).map((one) => [one.value.at, one]));
  const results = sheet.cells.namesAfter('shown_').flatMap((id): ReviewFinding[] => {
    const cells = sheet.all(`shown_${id}`);
    const sources = [run.all(`value_${id}`), run.column(id)].find((list) => list.length > 0) ?? [];
    return cells.flatMap((cell, i): ReviewFinding[] => {
      const one = sources[i] && judged.get(sources[i].at);
      const limit = one && limitCell(sheet, cell.row, id, i);
      return one ? hiddenIn(sheet, cell, one, limit?.format) : [];
    });
  });
  return results;
}

/** Where the certificate shows the limit: beside a result, or in the column of tolerances beside a point. */
function limitCell(sheet: ReviewedSheet, row: number, id: string, index: number) {
  return /^errors_/.test(id) ? sheet.column(`shown_${id.replace(/^errors_/, 'tolerances_')}`)[index] : sheet.beside({ column: LIMIT_COLUMN, row }, 0);
}

function hiddenIn(sheet: ReviewedSheet, cell: ReturnType<ReviewedSheet['at']>, judged: Judged, limitFormat: string | undefined): ReviewFinding[] {
  const [value, limit] = [numberIn(judged.value), numberIn(judged.limit)];
  if (value === undefined || limit === undefined || keeps(judged, value, limit)) return [];
  const [shown, shownLimit] = [shownNumber(value, cell.format) ?? value, shownNumber(limit, limitFormat) ?? limit];
  if (!keeps(judged, shown, shownLimit)) return [];
  return [found(sheet, cell, 'rounding', `${cell.at} shows ${held(shown, cell.format)}, within ${held(shownLimit, limitFormat)}; unrounded it is ${held(value, cell.format)}, beyond the limit ${held(limit, limitFormat)}; expected digits that tell it`)];
}

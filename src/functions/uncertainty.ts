import { combineUncertainty, type UncertaintyComponent } from '../metrology/combinedUncertainty';
import { TWO_SIGMA } from '../metrology/coverage';
import { DIVISORS, standardUncertainty, type Distribution } from '../metrology/standardUncertainty';
import { counted } from '../metrology/wording';
import type { Cell, Cells } from './cells';
import { CellFault } from './faults';
import { isBlank, named, readList, readNumber, readWord } from './readCell';
import { headed } from './table';

/** How degrees of freedom without limit are written in a cell. */
const INFINITE = 'infinite';

/**
 * Standard uncertainty of a quantity known by its limits.
 * @customfunction STANDARDU
 * @group Uncertainty and decision
 * @param {any} halfWidth Half-width ± of the limits, 0 or more; for "normal" the expanded uncertainty of a certificate (k = 2), for "resolution" the full step of the display.
 * @param {any} distribution "normal" (÷ 2), "rectangular" (÷ √3), "triangular" (÷ √6), "ushaped" (÷ √2) or "resolution" (full step ÷ √12).
 * @returns {any} Standard uncertainty, units of the half-width.
 * @formula u = half-width / divisor
 * @source JCGM 100, 4.3 and F.2.2.1; "ushaped": JCGM 101, 6.4.6
 * @note A certificate with another k than 2: give U·2/k.
 * @example =PROVE.STANDARDU(0.3,"rectangular") → 0.17320508075688773
 * @example =PROVE.STANDARDU(0.01,"resolution") → 0.002886751345948129
 */
export function standardU(halfWidth: any, distribution: any): any {
  const name = readWord(distribution, 'distribution', Object.keys(DIVISORS) as Distribution[], true);
  return standardUncertainty(readNumber(halfWidth, 'halfWidth'), name);
}

/**
 * Combined and expanded uncertainty of independent components.
 * @customfunction UNCERTAINTY
 * @group Uncertainty and decision
 * @param {any[][]} components Standard uncertainties times their sensitivities, in the units of the result; one column or row. Blank cells are skipped.
 * @param {any[][]} [dofs] Degrees of freedom beside them, 1 or more; blank, or the word "infinite", means infinite. All infinite if left out.
 * @param {any} [probability] Coverage probability between 0 and 1; 0.9545 if left out. 0.6827, 0.9545 and 0.9973 mean exactly 1, 2 and 3 standard deviations of a normal distribution.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} uc, effective degrees of freedom (or the word "infinite"), k and U side by side; uc and U in the units of the components.
 * @formula uc = √Σu²
 * @formula effective dof = uc⁴ / Σ(u⁴/dof) (Welch–Satterthwaite), not rounded
 * @formula U = k·uc, k of Student's t at the effective dof
 * @source JCGM 100, 5.1.2, G.3 and G.4
 * @note The components must be independent. Where one that is not normal outweighs all others, k = 2 encloses more than 95.45 %.
 * @example =PROVE.UNCERTAINTY({3;4},,,FALSE) → {5,"infinite",2,10}
 * @example =PROVE.UNCERTAINTY({0.25;0.57;0.82},{9;4;14},0.95,FALSE) → {1.0294658809304948,18.998742314267954,2.093033432222585,2.1547065061200006}
 */
export function uncertainty(components: any[][], dofs?: any[][], probability?: any, headers?: any): any[][] {
  const { combined, dof, factor, expanded } = combineUncertainty(readComponents(components, dofs), readNumber(probability, 'probability', TWO_SIGMA));
  return headed(['uc', 'Effective dof', 'k', 'U'], [[combined, Number.isFinite(dof) ? dof : INFINITE, factor, expanded]], headers);
}

/** Components with their degrees of freedom; a row blank in both is skipped. */
function readComponents(components: Cells, dofs: Cells | null | undefined): UncertaintyComponent[] {
  const values = readList(components, 'components');
  const freedoms = dofs && !(dofs.length === 1 && dofs[0].length === 1 && isBlank(dofs[0][0])) ? readDofs(dofs) : undefined;
  if (freedoms && freedoms.length !== values.length) {
    throw new CellFault('#VALUE!', `components has ${counted(values.length, 'cell')} and dofs ${freedoms.length}; expected the same number`);
  }
  const found = values.flatMap(({ value }, i) => {
    const { dof, place } = freedoms?.[i] ?? { dof: undefined, place: '' };
    if (value !== undefined) return [{ value, dof: dof ?? Infinity, place }];
    if (dof === undefined) return [];
    throw new CellFault('#VALUE!', `${named('dofs', place)}: found ${dof} without a component; expected one beside it`);
  });
  if (found.length === 0) throw new CellFault('#VALUE!', 'components: found nothing; expected at least one standard uncertainty');
  return found;
}

/** Degrees of freedom as this function also writes them: numbers, or the word for none that limit. */
function readDofs(cells: Cells): { place: string; dof: number | undefined }[] {
  const isInfinite = (cell: Cell) => typeof cell === 'string' && [INFINITE, '∞'].includes(cell.trim().toLowerCase());
  const numbers = cells.map((line) => line.map((cell) => (isInfinite(cell) ? null : cell)));
  return readList(numbers, 'dofs').map(({ place, value }) => ({ place, dof: value }));
}

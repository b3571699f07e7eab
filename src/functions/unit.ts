import { converter } from '../metrology/units';
import { numberAt } from './readCell';
import { readUnits } from './readUnit';

/**
 * Values in another unit of force, torque or mass.
 * @customfunction UNIT
 * @group Applied force
 * @param {any[][]} value Values; one cell or any block of cells.
 * @param {any} from Unit they are in, such as "lbf", "kN", "N·m" (also Nm, N.m, N*m), "lbf·in" (also lbf in, lbf-in), "kg".
 * @param {any} to Unit to turn them into, of the same kind.
 * @returns {any[][]} Values in the unit to, shaped like value; blanks stay blank.
 * @formula value·(size of from)/(size of to), sizes exact: 1 lb = 0.45359237 kg, g = 9.80665 m/s², 1 in = 25.4 mm
 * @source NIST SP 811, appendix B
 * @note Force: N, daN, kN, MN, mN, lbf, klbf, kip, ozf, kgf, gf, tf, kp. Torque: N·m, kN·m, MN·m, mN·m, N·cm, N·mm, lbf·in, lbf·ft, klbf·ft, ozf·in, kgf·m, kgf·cm, gf·cm. Mass: kg, g, mg, t, lb, oz.
 * @note Capitals count where they tell units apart: mN is a thousandth of a newton, MN a million newtons. tf is 1000 kgf, t is 1000 kg; ounces are avoirdupois.
 * @note kg and lb are masses. The force of a mass depends on where it hangs: see WEIGHTFORCE.
 * @example =PROVE.UNIT({1;10},"klbf","kN") → {4.4482216152605;44.482216152605}
 * @example =PROVE.UNIT({100},"lbf-in","Nm") → {11.29848290276167}
 */
export function unit(value: any[][], from: any, to: any): any[][] {
  const convert = converter(...readUnits(from, to));
  return value.map((row, i) => row.map((_, j) => {
    const number = numberAt(value, i, j, 'value');
    return number === undefined ? '' : convert(number);
  }));
}

import { UNITS, type Unit, type UnitKind } from '../metrology/units';
import type { Cell } from './cells';
import { CellFault } from './faults';
import { describe } from './readCell';

/** What people type between the factors of a unit, all of which says the same. */
const SEPARATORS = /[\s·.*⋅•∙×-]/gu;
const bare = (text: string) => text.replace(SEPARATORS, '');

/** Other names in use, beside the symbols. */
const OTHER_NAMES: Readonly<Record<string, readonly string[]>> = { lb: ['lbs', 'lbm'], kip: ['kips'] };

/** Every spelling, separators left out. Inches and feet may stand first: in·lbf. */
const SPELLINGS = UNITS.flatMap((unit) => {
  const reversed = /^(.+)·(in|ft)$/.exec(unit.symbol);
  const spellings = [bare(unit.symbol), ...(reversed ? [reversed[2] + reversed[1]] : []), ...(OTHER_NAMES[unit.symbol] ?? [])];
  return spellings.map((spelling) => ({ spelling, unit }));
});

/** "force (N, kN, …)" */
function known(kind: UnitKind): string {
  return `${kind} (${UNITS.filter((unit) => unit.kind === kind).map(({ symbol }) => symbol).join(', ')})`;
}

/**
 * A unit named in a cell. Case is of no matter, except where it tells one unit from another: m (milli) from M (mega), and
 * in symbols of one letter.
 */
export function readUnit(cell: Cell, argument: string): Unit {
  const text = typeof cell === 'string' ? cell.trim() : '';
  const key = bare(text);
  const isParted = key !== text; // then a torque is meant: m·N is no millinewton
  const anyCase = SPELLINGS.filter(({ spelling, unit }) =>
    spelling.toLowerCase() === key.toLowerCase() && (unit.kind === 'torque' || !isParted));
  const exact = anyCase.find(({ spelling }) => spelling === key);
  if (exact) return exact.unit;
  if (anyCase.length === 0) {
    throw new CellFault('#VALUE!', `${argument}: found ${describe(cell)}; expected a unit of ${known('force')}, ${known('torque')} or ${known('mass')}`);
  }
  if (key.length === 1 || /^m/i.test(key)) {
    const meant = anyCase.map(({ unit }) => `"${unit.symbol}"`).join(' or ');
    throw new CellFault('#VALUE!', `${argument}: found ${describe(cell)}; expected ${meant}: capitals count here`);
  }
  return anyCase[0].unit;
}

/** Two units of one kind. */
export function readUnits(from: Cell, to: Cell): [Unit, Unit] {
  const units: [Unit, Unit] = [readUnit(from, 'from'), readUnit(to, 'to')];
  const [{ kind, symbol }, other] = units;
  if (other.kind === kind) return units;
  const isWeight = kind !== 'torque' && other.kind !== 'torque';
  const hint = isWeight ? '. WEIGHTFORCE turns a mass into a force; a pound of force is lbf' : '';
  throw new CellFault('#VALUE!', `to: found ${other.symbol}, a ${other.kind}, for ${symbol}, a ${kind}; expected a unit of ${known(kind)}${hint}`);
}

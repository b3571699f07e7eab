import { numberIn, type ReviewedSheet } from '../reviewedSheet';
import type { Expectations } from './expectations';

/** What a class limits, in the order of the columns of its table. */
const LIMITED = ['b', 'same', 'fc', 'f0', 'v', 'c', 'forceU', 'resolution'] as const;
type Limited = (typeof LIMITED)[number];
/** No class below this share of the greatest force; and a class must hold from this share on. Source: ISO 376:2011 (from memory). */
const LEAST_SHARE = 0.02;
const SHARE_TO_HOLD = 0.5;
const ROUNDING = 1e-12;

/** Figures at one force that a class limits. */
export interface ClassFigures {
  readonly force: number;
  readonly b: number;
  readonly same: number;
  readonly fc: number;
  readonly v: number | undefined;
}

/** What is known of the whole instrument. */
interface Known {
  readonly f0: number;
  readonly c: number | undefined;
  readonly resolution: number | undefined;
  readonly forceU: number | undefined;
}

type Limits = Readonly<Partial<Record<Limited, number>>>;

/** The class wanted over the range wanted, and each figure that it limits. */
export function classResults(expect: Expectations, figures: readonly ClassFigures[], known: Known): void {
  const { sheet } = expect;
  const limits = limitsWanted(sheet);
  const from = sheet.number('limit_class_from');
  const last = figures.length - 1;
  if (limits) {
    const { holdsFrom, notJudged } = range(figures, known, limits);
    expect.result('class_from', holdsFrom).result('not_judged', notJudged);
  }
  expect.result('f0', known.f0).result('force_u', known.forceU ?? null);
  if (known.c !== undefined) expect.result('creep', known.c);
  if (from === undefined || from === 0) return;
  const greatest = (of: (one: ClassFigures) => number, until = last) => Math.max(0, ...figures.slice(0, until + 1).filter(({ force }) => force >= from * (1 - 1e-9)).map((one) => Math.abs(of(one))));
  expect.result('worst_b', greatest(({ b }) => b)).result('worst_b_same', greatest(({ same }) => same)).result('worst_fc', greatest(({ fc }) => fc));
  expect.result('worst_v', greatest(({ v }) => v ?? 0, last - 1));
  if (known.resolution !== undefined) expect.result('relative_resolution', known.resolution / from);
}

/** The limits of the class wanted: the row of its name below the heads of the first table of classes. */
function limitsWanted(sheet: ReviewedSheet): Limits | undefined {
  const wanted = sheet.cells.text('class_wanted')?.trim();
  const rows = sheet.read.cells.filter(({ at, value }) => /^A\d+$/.test(at) && value === wanted).map(({ at }) => sheet.at(at)).sort((a, b) => a.row - b.row);
  const [row] = rows;
  if (!row) return undefined;
  return Object.fromEntries(LIMITED.flatMap((of, i) => {
    const limit = numberIn(sheet.beside(row, i + 1));
    return limit === undefined ? [] : [[of, limit]];
  }));
}

function range(figures: readonly ClassFigures[], known: Known, limits: Limits): { readonly holdsFrom: number | string; readonly notJudged: number } {
  const greatest = figures[figures.length - 1].force;
  const falling = [...figures].reverse();
  const stop = falling.findIndex((one) => breaks(one, greatest, known, limits));
  const held = stop < 0 ? falling : falling.slice(0, stop);
  const lowest = held[held.length - 1]?.force ?? Infinity;
  const missing = new Set(held.flatMap((one) => unknown(figures, one, greatest, known, limits)));
  return { holdsFrom: lowest <= (SHARE_TO_HOLD + ROUNDING) * greatest ? lowest : 'not met', notJudged: missing.size };
}

function valuesAt({ force, b, same, fc, v }: ClassFigures, { f0, c, resolution, forceU }: Known): Readonly<Record<Limited, number | undefined>> {
  return { b, same, fc, f0, v: c === undefined ? v : undefined, c, forceU, resolution: resolution === undefined ? undefined : resolution / force };
}

function breaks(one: ClassFigures, greatest: number, known: Known, limits: Limits): boolean {
  if (one.force / greatest < LEAST_SHARE - ROUNDING) return true;
  const values = valuesAt(one, known);
  return LIMITED.some((of) => {
    const [found, limit] = [values[of], limits[of]];
    return found !== undefined && limit !== undefined && Math.abs(found) > limit + ROUNDING;
  });
}

/** What a class needs and is not known: either v or c is judged, and v need not be there at the greatest force. */
function unknown(figures: readonly ClassFigures[], one: ClassFigures, greatest: number, known: Known, limits: Limits): string[] {
  const values = valuesAt(one, known);
  const single = (['f0', 'forceU', 'resolution'] as const).filter((of) => limits[of] !== undefined && values[of] === undefined);
  if ((limits.v === undefined && limits.c === undefined) || values.v !== undefined || values.c !== undefined) return single;
  if (figures.every(({ v }) => v === undefined)) return ['v or c', ...single];
  return one.force === greatest ? single : ['v', ...single];
}

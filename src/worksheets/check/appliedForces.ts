import { appliedUnitOf } from '../appliedUnit';
import type { Block } from '../block';
import type { FilledCell } from '../filledSheet';
import { described } from './completeness';
import { capped, type Finding } from './finding';
import type { RunSheet } from './runSheet';

/** A force that is a number, with its cell. */
interface Applied {
  readonly cell: FilledCell;
  readonly force: number;
}

/** Forces that are no numbers, mix directions, come in an odd order, or have no zero where one is needed. */
export function appliedForces(sheet: RunSheet): Finding[] {
  return sheet.forceBlocks().flatMap((block) => {
    const applied = block.applied.flatMap((cell): Applied[] => (typeof cell.value === 'number' ? [{ cell, force: cell.value }] : []));
    const findings = [
      ...noNumbers(block, 'the applied force'),
      ...mixedDirections(sheet, applied),
      ...sameTwice(sheet, applied),
      ...risesAgain(sheet, applied),
      ...zeros(sheet, block, applied),
    ];
    return findings.map((finding) => ({ ...finding, message: sheet.blockPrefix(block) + finding.message }));
  });
}

/** Times that are no numbers, or do not rise. */
export function appliedTimes(sheet: RunSheet): Finding[] {
  return sheet.blocks.filter(({ over }) => over === 'times').flatMap((block) => {
    const notRising = block.applied.flatMap((cell, i): Finding[] => {
      const before = block.applied[i - 1]?.value;
      if (typeof cell.value !== 'number' || typeof before !== 'number' || cell.value > before) return [];
      return [{ severity: 'wrong', at: cell.at, message: `${cell.at} holds ${cell.value} min after ${before} min; expected times that rise` }];
    });
    return [...noNumbers(block, 'the time in minutes'), ...capped(notRising, 'times that do not rise')]
      .map((finding) => ({ ...finding, message: sheet.blockPrefix(block) + finding.message }));
  });
}

/** A blank row counts only where something was read. */
function noNumbers(block: Block, expected: string): Finding[] {
  const found = block.applied
    .filter(({ value }, row) => typeof value !== 'number' && (value !== null || block.runs.some((run) => run[row].value !== null)))
    .map(({ at, value }): Finding => ({ severity: 'wrong', at, message: `${at} holds ${described(value)}; expected ${expected}` }));
  return capped(found, `rows without ${expected}`);
}

function mixedDirections(sheet: RunSheet, applied: readonly Applied[]): Finding[] {
  const loaded = applied.filter(({ force }) => force !== 0);
  const other = loaded.find(({ force }) => Math.sign(force) !== Math.sign(loaded[0].force));
  if (!other) return [];
  return [{
    severity: 'wrong', at: other.cell.at,
    message: `${other.cell.at} holds ${sheet.force(other.force)}, ${loaded[0].cell.at} ${sheet.force(loaded[0].force)}; expected one direction in a block`,
  }];
}

function sameTwice(sheet: RunSheet, applied: readonly Applied[]): Finding[] {
  const found = applied.flatMap(({ cell, force }, i): Finding[] => {
    if (force === 0 || force !== applied[i - 1]?.force) return [];
    return [{ severity: 'odd', at: cell.at, message: `${cell.at} holds ${sheet.force(force)}, as does the row before; expected another force` }];
  });
  return capped(found, 'forces that are applied twice in a row');
}

/** Between two zeros, or over the whole block, |force| is expected to rise to its greatest and then fall. */
function risesAgain(sheet: RunSheet, applied: readonly Applied[]): Finding[] {
  if (!firstRise(applied.filter(({ force }) => force !== 0))) return [];
  const rise = betweenZeros(applied).map(firstRise).find((found) => found !== undefined);
  if (!rise) return [];
  const { before, after } = rise;
  return [{
    severity: 'odd', at: after.cell.at,
    message: `${after.cell.at} holds ${sheet.force(after.force)} after ${sheet.force(before.force)} on the way down; expected forces that rise to the greatest, then fall`,
  }];
}

/**
 * The stretches between zeros, each a course of its own. Where each holds one force, with a zero after every force, they
 * are one course together.
 */
function betweenZeros(applied: readonly Applied[]): Applied[][] {
  const stretches: Applied[][] = [[]];
  for (const point of applied) {
    if (point.force === 0) stretches.push([]);
    else stretches[stretches.length - 1].push(point);
  }
  return stretches.every(({ length }) => length < 2) ? [stretches.flat()] : stretches;
}

function firstRise(course: readonly Applied[]): { before: Applied; after: Applied } | undefined {
  let falling = false;
  for (let i = 1; i < course.length; i += 1) {
    const step = Math.abs(course[i].force) - Math.abs(course[i - 1].force);
    if (step > 0 && falling) return { before: course[i - 1], after: course[i] };
    falling ||= step < 0;
  }
  return undefined;
}

function zeros(sheet: RunSheet, block: Block, applied: readonly Applied[]): Finding[] {
  const [first, last] = [applied[0], applied[applied.length - 1]];
  if (!first || !sheet.cells.cell(`net_${block.id}`)) return [];
  const { at } = first.cell;
  if (first.force !== 0) {
    const none = applied.every(({ force }) => force !== 0);
    return [{
      severity: 'wrong', at,
      message: `${at} holds ${sheet.force(first.force)}${none ? ', and no row is at zero force' : ' before the first zero'}; expected a zero before the run, to take net readings from`,
    }];
  }
  const greatest = applied.reduce((most, { force }) => Math.max(most, Math.abs(force)), 0);
  if (last.force === 0 || Math.abs(last.force) === greatest) return [];
  return [{
    severity: 'odd', at: last.cell.at,
    message: `the forces end on the way down with ${sheet.force(last.force)} in ${last.cell.at}; expected a zero after the run, to see how it returns`,
  }];
}

/** Forces greater than the standard measures. */
export function beyondStandard(sheet: RunSheet): Finding[] {
  const stated = sheet.cells.number('standard_capacity');
  if (stated === undefined) return [];
  const capacity = Math.abs(stated * appliedUnitOf(sheet.cells).scale);
  return sheet.forceBlocks().flatMap((block) => {
    const beyond = block.applied.filter(({ value }) => typeof value === 'number' && Math.abs(value) > capacity * (1 + 1e-9));
    if (beyond.length === 0) return [];
    const [{ at, value }] = beyond;
    const others = beyond.length > 1 ? ` (and ${beyond.length - 1} more)` : '';
    return [{
      severity: 'wrong', at,
      message: `${sheet.blockPrefix(block)}${at} holds ${sheet.force(value as number)}${others}; expected no more than the standard’s capacity, ${sheet.force(capacity)}`,
    }];
  });
}

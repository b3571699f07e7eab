import { numberIn, type ReviewedSheet } from '../reviewedSheet';
import type { Expected } from './expected';
import { Expectations } from './expectations';

/** Creep and creep return of a record under load and after it. */
export function creepExpected(sheet: ReviewedSheet): readonly Expected[] {
  const expect = new Expectations(sheet);
  const [from, to, rated] = ['creep_from', 'creep_to', 'rated_output'].map((name) => sheet.number(name));
  for (const [record, id] of [['loaded', 'creep'], ['unloaded', 'creep_return']]) {
    const times = sheet.column(`times_${record}`).map(numberIn);
    const outputs = sheet.column(`readings_${record}`).map(numberIn);
    const points = times.flatMap((time, i) => (time === undefined || outputs[i] === undefined ? [] : [{ time, output: outputs[i] }]));
    const complete = points.length >= (sheet.number(`needed_${record}`) ?? Infinity);
    if (!complete || rated === undefined) expect.result(id, null);
    else {
      const start = outputAt(points, from ?? points[0].time);
      const end = outputAt(points, to ?? points[points.length - 1].time);
      if (start !== undefined && end !== undefined) expect.result(id, (end - start) / rated);
    }
  }
  return expect.list;
}

/** Straight between readings; undefined outside of the record. */
function outputAt(points: readonly { readonly time: number; readonly output: number }[], time: number): number | undefined {
  const after = points.find((point) => point.time >= time);
  const before = points.findLast((point) => point.time <= time);
  if (!after || !before) return undefined;
  return after.time === before.time ? after.output : before.output + ((after.output - before.output) * (time - before.time)) / (after.time - before.time);
}

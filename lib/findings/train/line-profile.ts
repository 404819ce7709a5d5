import { standing } from '../../case/current';
import type { Entity } from '../../case/record';
import { courseOf, valueOnLine, type Course, type LineRow } from '../../train/line-profile';
import type { Context } from '../context';
import { oncePerContext } from '../once-per-context';
import type { NonEmpty, Taken } from '../reading-index';

/** One quantity along the line, with the readings of every row. */
export type LineCourse = { readonly course: Course; readonly readings: readonly NonEmpty<string>[] };

/** The line's profile as entered, distances counted from the POD in the direction of travel. */
export type LineProfile = {
  readonly grade: LineCourse | null;
  /** Of the hand of the curve at the POD positive; on tangent to the right positive. 1/m. */
  readonly curvature: LineCourse | null;
  /** Rows without a distance: they are of no place. */
  readonly unplaced: number;
};

const HANDS: Readonly<Record<string, number>> = { left: -1, right: 1 };

/** Sign of a curvature of that hand where the curve at the POD is positive. */
function signOf(context: Context, { hand }: Entity['fields'], value: number): number {
  const own = HANDS[String(hand)];
  if (own === undefined) return value;
  const { alignment } = context.record.fields;
  return own * (alignment === 'curveLeft' ? -1 : 1) * Math.abs(value);
}

/** The profile of the line; courses are null where no row says anything of them. */
export const lineProfile = oncePerContext((context: Context): LineProfile => {
  const { read } = context;
  const entities = standing(context.record, 'lineStretch');
  let unplaced = 0;
  const grade: [LineRow, NonEmpty<string>][] = [];
  const curvature: [LineRow, NonEmpty<string>][] = [];
  for (const { id, fields } of entities) {
    const take = (quantity: string): Taken | null => read.take('lineStretch', id, quantity);
    const from = take('lineFrom');
    if (from === null) {
      unplaced += 1;
      continue;
    }
    const to = take('lineTo');
    const place = { fromM: from.value, toM: to?.value ?? from.value, uPlaceM: Math.max(from.u, to?.u ?? 0) };
    const readings = [...from.readings, ...(to?.readings ?? [])];
    for (const [rows, taken] of [
      [grade, take('lineGrade')],
      [curvature, take('lineCurvature')],
    ] as const) {
      if (taken === null) continue;
      const value = rows === curvature ? signOf(context, fields, taken.value) : taken.value;
      rows.push([
        { ...place, value, u: taken.u },
        [taken.readings[0], ...taken.readings.slice(1), ...readings],
      ]);
    }
  }
  const whole = (rows: readonly [LineRow, NonEmpty<string>][]): LineCourse | null => {
    const course = courseOf(rows.map(([row]) => row));
    return course === null ? null : { course, readings: rows.map(([, readings]) => readings) };
  };
  return { grade: whole(grade), curvature: whole(curvature), unplaced };
});

/** The value at a distance from the POD, m, with its readings; null where the profile does not reach. */
export function takenOnLine(line: LineCourse | null, m: number): Taken | null {
  const found = line === null ? null : valueOnLine(line.course, m);
  if (line === null || found === null) return null;
  const [first, ...rest] = [...new Set(found.rows.flatMap((row) => line.readings[row]!))];
  return first === undefined
    ? null
    : { value: found.value, u: found.u, readings: [first, ...rest], remarks: [] };
}

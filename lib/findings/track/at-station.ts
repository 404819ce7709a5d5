import type { SubjectRef } from '../../case/record';
import type { Dimension } from '../../readings/unit';
import { joined, notMeasured } from '../build';
import type { Context } from '../context';
import type { Finding, LimitCheck, Method } from '../finding';
import { oncePerContext } from '../once-per-context';
import type { ColumnRead } from '../column-read';
import type { Taken } from '../reading-index';
import { LEFT_OUT_WORDS } from '../reading-state';

/** What is found at every station of a sheet; the title ends where the station's name follows. */
export type AtStations = {
  readonly what: string;
  readonly title: `${string} `;
  readonly method: Method;
  readonly dimension: Dimension;
};

const subjectsOf = oncePerContext(({ stations }): readonly SubjectRef[] =>
  stations.map(({ id }) => ({ kind: 'station', id })),
);

type AtStation = (
  index: number,
  taken: Taken,
  limits?: readonly LimitCheck[],
  remarks?: readonly string[],
) => Finding;

/**
 * Findings at stations, each by its place in the context's list. As `measured`, written out once more: a
 * sheet of thousands of stations makes tens of thousands, and a heading for each took a fifth of their time.
 */
export function atStation(of: AtStations, context: Context): AtStation {
  const { what, title, method, dimension } = of;
  const idBegins = `${what}:`;
  const { stations } = context;
  const subjects = subjectsOf(context);
  return (index, taken, limits = NONE, remarks = NONE) => {
    const subject = subjects[index]!;
    return {
      id: idBegins + subject.id,
      what,
      title: title + stations[index]!.name,
      part: 'track',
      subject,
      method,
      remarks: joined(remarks, taken.remarks),
      kind: 'measured',
      value: taken.value,
      u: taken.u,
      dimension,
      readings: taken.readings,
      limits,
    };
  };
}

const NONE: readonly never[] = [];

type LimitsOf = (taken: Taken, index: number) => readonly LimitCheck[];

/**
 * A finding at each station of the context where something was taken, in their order; `instead` may
 * give another where nothing was.
 */
export function atStations(
  of: AtStations,
  context: Context,
  takenAt: (index: number) => Taken | null | undefined,
  limits?: LimitsOf,
  instead?: (index: number) => Finding | null,
): Finding[] {
  const finding = atStation(of, context);
  const found: Finding[] = [];
  for (let index = 0; index < context.stations.length; index += 1) {
    const taken = takenAt(index);
    const here = taken ? finding(index, taken, limits?.(taken, index)) : instead?.(index);
    if (here) found.push(here);
  }
  return found;
}

/** As `atStations` of a column, and where something was read that may not be used, that it was not measured. */
export function readAtStations(
  of: AtStations,
  context: Context,
  { at, leftOut }: ColumnRead,
  missing: string,
  limits: LimitsOf,
): Finding[] {
  const { what, title, method } = of;
  const notUsed = (index: number): Finding | null => {
    const why = leftOut[index];
    if (!why) return null;
    return notMeasured(
      {
        part: 'track',
        what,
        title: title + (context.stations[index]?.name ?? '?'),
        subject: subjectsOf(context)[index] ?? null,
        method,
      },
      [`${missing} undisturbed; read only where ${LEFT_OUT_WORDS[why]}`],
    );
  };
  return atStations(of, context, (index) => at[index], limits, notUsed);
}

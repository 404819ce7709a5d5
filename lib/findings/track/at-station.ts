import type { SubjectRef } from '../../case/record';
import type { Dimension } from '../../readings/unit';
import { measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, LimitCheck, Method } from '../finding';
import { oncePerContext } from '../once-per-context';
import type { Taken } from '../reading-index';
import { LEFT_OUT_WORDS, type LeftOutWhy } from '../reading-state';

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

const heading = (
  { what, title, method }: AtStations,
  context: Context,
  index: number,
  remarks?: readonly string[],
): Heading => ({
  part: 'track',
  what,
  title: title + (context.stations[index]?.name ?? '?'),
  subject: subjectsOf(context)[index] ?? null,
  method,
  remarks,
});

/** A finding at one station, by its place in the context's list. */
export const atStation = (
  of: AtStations,
  context: Context,
  index: number,
  taken: Taken,
  limits?: readonly LimitCheck[],
  remarks?: readonly string[],
): Finding => measured(heading(of, context, index, remarks), of.dimension, taken, limits);

/** Where something was read and may not be used. */
export const leftOutAt = (
  of: AtStations,
  context: Context,
  index: number,
  what: string,
  why: LeftOutWhy,
): Finding =>
  notMeasured(heading(of, context, index), [`${what} undisturbed; read only where ${LEFT_OUT_WORDS[why]}`]);

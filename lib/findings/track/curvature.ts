import { bisectLeft, bisectRight } from 'd3-array';
import { curvatureMethod } from '../../track/curvature';
import { curveSegment, isInSegment, segmentAverageMethod } from '../../track/deviation';
import { derive, distinct, measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, Method } from '../finding';
import { oncePerContext } from '../once-per-context';
import type { Taken } from '../reading-index';
import { stationColumn } from '../station-column';
import { along } from '../words';
import { atStations, type AtStations } from './at-station';
import { lineSegments, PART_WORDS, stretchAt } from './line-segments';
import { stationCurvatures } from './station-curvatures';
import { placesOf } from './uniform';

const MISSING_CURVATURE =
  'mid-ordinates of a 62-ft or 31-ft chord, or of a chord whose length is given, at undisturbed stations';

/** A mean over the 155 ft nearest to the POD, and which stations it was taken over. */
export type PodAverage = { readonly taken: Taken; readonly remark: string };

/**
 * Mean over the 155 ft at the POD, kept inside the tangent, the spiral or the body of the curve the POD lies
 * on where the parts can be told apart. Where the track from the POD on is disturbed the
 * segment ends with the last undisturbed station. Readings are taken as independent: u of the mean
 * is the root of the summed squares over n.
 */
export function podAverage(context: Context, values: readonly (Taken | null)[]): PodAverage | null {
  const known = knownAverages(context);
  const before = known.get(values);
  if (before !== undefined) return before;
  const average = averageAtPod(context, values);
  known.set(values, average);
  return average;
}

const knownAverages = oncePerContext(() => new WeakMap<readonly (Taken | null)[], PodAverage | null>());

function averageAtPod(context: Context, values: readonly (Taken | null)[]): PodAverage | null {
  const { positionsM } = placesOf(context);
  const line = lineSegments(context);
  const part = line === null ? null : stretchAt(line, 0);
  const own = part === null ? null : readWithin(context, values, part);
  // A part too short for one station, or with none read on it, tells nothing by itself.
  const known = own ?? readWithin(context, values, { fromM: -Infinity, toM: Infinity });
  if (known === null) return null;
  const segment = curveSegment(0, positionsM[known.first]!, positionsM[known.last]!);
  const inside: number[] = [];
  for (let index = known.first; index <= known.last; index += 1)
    if (isInSegment(segment, positionsM[index]!) && values[index]) inside.push(index);
  const [head, ...rest] = inside.flatMap((index) => values[index] ?? []);
  if (head === undefined) return null;
  const from = positionsM[inside[0]!]!;
  const to = positionsM[inside.at(-1)!]!;
  const reaches = from <= 0 && to >= 0;
  return {
    taken: derive((...each) => each.reduce((sum, value) => sum + value, 0) / each.length, [head, ...rest]),
    remark: `Mean of ${inside.length} station${inside.length === 1 ? '' : 's'} from ${along(from)} to ${along(to)} from the POD${
      reaches ? '' : ', the nearest that were undisturbed'
    }; ${
      part === null || own === null
        ? 'spirals are not told apart from the body of the curve.'
        : `within the ${PART_WORDS[part.kind]} the POD lies on.`
    }`,
  };
}

/** The first and the last station with a value on a stretch of the line; null where there is none. */
function readWithin(
  context: Context,
  values: readonly (Taken | null)[],
  { fromM, toM }: { readonly fromM: number; readonly toM: number },
): { readonly first: number; readonly last: number } | null {
  const { positionsM } = placesOf(context);
  let first = bisectLeft(positionsM, fromM);
  let last = bisectRight(positionsM, toM) - 1;
  while (first <= last && !values[first]) first += 1;
  while (first <= last && !values[last]) last -= 1;
  return first > last ? null : { first, last };
}

export const curvatureAverageMethod: Method = {
  ...segmentAverageMethod,
  id: 'curvature-average',
  name: 'Average curvature over 155 ft',
  formula: `${curvatureMethod.formula} Averaged: ${segmentAverageMethod.formula}.`,
  sources: [...segmentAverageMethod.sources, ...curvatureMethod.sources],
};

const CURVATURE: AtStations = {
  what: 'curvature',
  title: 'Curvature, station ',
  method: curvatureMethod,
  dimension: 'curvature',
};

/** Curvature per station and its 155-ft average at the POD. */
export function curvatureFindings(context: Context): readonly Finding[] {
  const curvatures = stationCurvatures(context);
  const column = stationColumn(context, 'midOrdinate62');
  const average = podAverage(context, curvatures);
  const heading: Heading = {
    part: 'track',
    method: curvatureAverageMethod,
    what: 'curvatureAtPod',
    title: 'Curvature at the POD, 155-ft average',
    subject: null,
    remarks: column.remarks,
  };
  const atPod =
    average === null
      ? notMeasured(heading, [MISSING_CURVATURE])
      : measured(
          { ...heading, remarks: distinct([average.remark, ...(heading.remarks ?? [])]) },
          'curvature',
          average.taken,
        );
  return [atPod, ...atStations(CURVATURE, context, (index) => curvatures[index])];
}

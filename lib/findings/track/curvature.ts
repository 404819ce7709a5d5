import { curvatureMethod } from '../../track/curvature';
import { curveSegment, isInSegment, segmentAverageMethod } from '../../track/deviation';
import { derive, distinct, measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, Method } from '../finding';
import { oncePerContext } from '../once-per-context';
import type { Taken } from '../reading-index';
import { stationColumn } from '../station-column';
import { along } from '../words';
import { atStation, type AtStations } from './at-station';
import { isWithin, lineSegments, PART_WORDS, stretchAt } from './line-segments';
import { stationCurvatures } from './station-curvatures';

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
  const { stations } = context;
  const line = lineSegments(context);
  const part = line === null ? null : stretchAt(line, 0);
  const positionAt = (index: number | undefined): number => stations[index ?? -1]?.positionM ?? NaN;
  const all: number[] = [];
  for (let index = 0; index < stations.length; index += 1) if (values[index]) all.push(index);
  const own = part === null ? all : all.filter((index) => isWithin(part, positionAt(index)));
  // A part too short for one station, or with none read on it, tells nothing by itself.
  const known = own.length > 0 ? own : all;
  const segment = curveSegment(0, positionAt(known[0]), positionAt(known.at(-1)));
  const inside = known.filter((index) => isInSegment(segment, positionAt(index)));
  const [head, ...rest] = inside.flatMap((index) => values[index] ?? []);
  if (head === undefined) return null;
  const from = positionAt(inside[0]);
  const to = positionAt(inside.at(-1));
  const reaches = from <= 0 && to >= 0;
  return {
    taken: derive((...each) => each.reduce((sum, value) => sum + value, 0) / each.length, [head, ...rest]),
    remark: `Mean of ${inside.length} station${inside.length === 1 ? '' : 's'} from ${along(from)} to ${along(to)} from the POD${
      reaches ? '' : ', the nearest that were undisturbed'
    }; ${
      part === null || known === all
        ? 'spirals are not told apart from the body of the curve.'
        : `within the ${PART_WORDS[part.kind]} the POD lies on.`
    }`,
  };
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
  const perStation: Finding[] = [];
  context.stations.forEach((_, index) => {
    const taken = curvatures[index];
    if (taken) perStation.push(atStation(CURVATURE, context, index, taken));
  });
  return [atPod, ...perStation];
}

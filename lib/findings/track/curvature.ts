import { toCanonical } from '../../readings/convert';
import { curvatureFromMidOrdinate, curvatureMethod, RULE_OF_THUMB_CHORD_M } from '../../track/curvature';
import { curveSegment, segmentAverage, segmentAverageMethod } from '../../track/deviation';
import { derive, distinct, measured, notMeasured, remarked, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding, Method } from '../finding';
import { oncePerContext } from '../once-per-context';
import type { Taken } from '../reading-index';
import { stationColumn } from '../station-column';
import { along } from '../words';

const CHORD_31_M = toCanonical(31, 'ft', 'alongTrack');

/** Curvature at each station, 1/m, from the 62-ft chord, else from the 31-ft one. */
export const stationCurvatures = oncePerContext((context: Context): readonly (Taken | null)[] => {
  const long = stationColumn(context, 'midOrdinate62').at;
  const short = stationColumn(context, 'midOrdinate31').at;
  return context.stations.map((_, index) => {
    const at62 = long[index];
    if (at62) return derive((m) => curvatureFromMidOrdinate(m, RULE_OF_THUMB_CHORD_M), [at62]);
    const at31 = short[index];
    return at31
      ? remarked(
          derive((m) => curvatureFromMidOrdinate(m, CHORD_31_M), [at31]),
          'From the 31-ft chord: the 62-ft chord was not read here.',
        )
      : null;
  });
});

/** A mean over the 155 ft nearest to the POD, and which stations it was taken over. */
export type PodAverage = { readonly taken: Taken; readonly remark: string };

/**
 * Mean over the 155 ft at the POD. Where the track from the POD on is disturbed the segment ends
 * with the last undisturbed station. Readings are taken as independent: u of the mean is the root
 * of the summed squares over n.
 */
export function podAverage(context: Context, values: readonly (Taken | null)[]): PodAverage | null {
  const { stations } = context;
  const known = stations.flatMap((station, index) => {
    const taken = values[index];
    return taken ? [{ station, taken }] : [];
  });
  const first = known[0];
  const last = known.at(-1);
  if (first === undefined || last === undefined) return null;
  const segment = curveSegment(0, first.station.positionM, last.station.positionM);
  const inside = known.filter(({ station }) => segmentAverage([station.positionM], [1], segment) !== null);
  const [head, ...rest] = inside.map(({ taken }) => taken);
  if (head === undefined) return null;
  const from = inside[0]?.station.positionM ?? 0;
  const to = inside.at(-1)?.station.positionM ?? 0;
  const reaches = from <= 0 && to >= 0;
  return {
    taken: derive((...all) => all.reduce((sum, value) => sum + value, 0) / all.length, [head, ...rest]),
    remark: `Mean of ${inside.length} station${inside.length === 1 ? '' : 's'} from ${along(from)} to ${along(to)} from the POD${
      reaches ? '' : ', the nearest that were undisturbed'
    }; spirals are not told apart from the body of the curve.`,
  };
}

export const curvatureAverageMethod: Method = {
  ...segmentAverageMethod,
  id: 'curvature-average',
  name: 'Average curvature over 155 ft',
  formula: `${curvatureMethod.formula} Averaged: ${segmentAverageMethod.formula}.`,
  sources: [...segmentAverageMethod.sources, ...curvatureMethod.sources],
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
      ? notMeasured(heading, ['mid-ordinates of a 62-ft or 31-ft chord at undisturbed stations'])
      : measured(
          { ...heading, remarks: distinct([average.remark, ...(heading.remarks ?? [])]) },
          'curvature',
          average.taken,
        );
  return [
    atPod,
    ...curvatures.flatMap((taken, index): readonly Finding[] => {
      const station = context.stations[index];
      if (!taken || station === undefined) return [];
      return [
        measured(
          {
            part: 'track',
            method: curvatureMethod,
            what: 'curvature',
            title: `Curvature, station ${station.name}`,
            subject: { kind: 'station', id: station.id },
          },
          'curvature',
          taken,
        ),
      ];
    }),
  ];
}

import type { Method } from '../findings/finding';

/** Nine stations, as 49 CFR 213.327(a) averages them. */
export const UNIFORM_STATIONS = 9;

/** 155 ft, over which 49 CFR 213.57 averages curvature and elevation. */
export const CURVE_SEGMENT_M = 47.244;

/** Positions a millimetre apart are the same position. */
const SAME_POSITION_M = 0.001;

export type Deviation = {
  /** Mean of the stations used: what "uniform" is here. */
  readonly uniform: number;
  /** Value at the station less `uniform`. */
  readonly deviation: number;
  /** Stations averaged, the station itself among them; fewer than asked for near an end or a gap. */
  readonly used: number;
};

/**
 * How far each value (mid-ordinate, profile) departs from uniform, uniform being the mean of
 * `stations` consecutive stations centred on it, itself included.
 * Values: any one unit, in order along the track, evenly spaced; NaN where not taken.
 * Near an end, or beside a station not taken, the stations opposite are left out too, so that
 * the window stays centred and a steady spiral still counts as uniform. null where the value
 * itself was not taken or fewer than three stations remain.
 * Source: 49 CFR 213.327(a) for class 6 and above; an adopted method for classes 1 to 5.
 */
export function deviationsFromUniform(
  values: ArrayLike<number>,
  stations: number = UNIFORM_STATIONS,
): (Deviation | null)[] {
  const reach = Math.floor(stations / 2);
  const result: (Deviation | null)[] = [];
  for (let i = 0; i < values.length; i += 1) {
    const value = values[i]!;
    let sum = value;
    let used = 1;
    for (let step = 1; step <= reach; step += 1) {
      const pair = (values[i - step] ?? NaN) + (values[i + step] ?? NaN);
      if (Number.isFinite(pair)) {
        sum += pair;
        used += 2;
      }
    }
    const uniform = sum / used;
    result.push(Number.isFinite(value) && used >= 3 ? { uniform, deviation: value - uniform, used } : null);
  }
  return result;
}

/** Where a segment begins and ends, m; the beginning belongs to it, the end does not. */
export type Segment = { readonly fromM: number; readonly toM: number };

/**
 * The 155-ft segment around a point, kept inside the body of the curve; the whole body when that
 * is shorter, as the rule's note has it. Units m. Source: 49 CFR 213.57, notes.
 */
export function curveSegment(aroundM: number, bodyFromM: number, bodyToM: number): Segment {
  if (bodyToM - bodyFromM <= CURVE_SEGMENT_M) {
    // The end of a segment is open, and the last station of the body belongs to the average.
    return { fromM: bodyFromM, toM: bodyToM + 2 * SAME_POSITION_M };
  }
  const fromM = Math.min(
    Math.max(aroundM - CURVE_SEGMENT_M / 2, bodyFromM),
    bodyToM + 2 * SAME_POSITION_M - CURVE_SEGMENT_M,
  );
  return { fromM, toM: fromM + CURVE_SEGMENT_M };
}

/**
 * Mean of the values at the stations of a segment; stations without a value are passed over.
 * A station at the beginning counts, one at the end does not, so that 155 ft at 15 ft 6 in
 * holds ten stations, as the rule's note says. null when no station has a value.
 * Units: positions m; values any one unit. Source: 49 CFR 213.57, notes.
 */
export function segmentAverage(
  positionsM: ArrayLike<number>,
  values: ArrayLike<number>,
  segment: Segment,
): { readonly mean: number; readonly used: number } | null {
  let sum = 0;
  let used = 0;
  for (let i = 0; i < positionsM.length; i += 1) {
    const position = positionsM[i]!;
    const value = values[i] ?? NaN;
    if (position < segment.fromM - SAME_POSITION_M || position >= segment.toM - SAME_POSITION_M) continue;
    if (!Number.isFinite(value)) continue;
    sum += value;
    used += 1;
  }
  return used === 0 ? null : { mean: sum / used, used };
}

export const deviationFromUniformMethod: Method = {
  id: 'deviation-from-uniform',
  name: 'Deviation from uniform, nine-station average',
  formula:
    'deviation(i) = m(i) − mean of m(i−4) … m(i+4), m: mid-chord offset at evenly spaced stations (every 15 ft 6 in for a 62-ft chord, 7 ft 9 in for a 31-ft chord)',
  validRange:
    'Evenly spaced stations. Near an end or a missing station fewer are averaged, kept in pairs about the station, and their number is given; at least three are needed.',
  sources: [
    {
      text: '49 CFR 213.327(a): nine consecutive points, for track classes 6 and above',
      status: 'published',
    },
    {
      text: 'Adopted here for classes 1 to 5, for which 49 CFR 213.55 and 213.63 do not say how uniform is found',
      status: 'engineering judgement',
    },
  ],
};

export const segmentAverageMethod: Method = {
  id: 'segment-average',
  name: 'Average curvature and elevation over 155 ft of the body of a curve',
  formula:
    'mean of the stations within 155 ft (ten at 15 ft 6 in); of the whole body of the curve when it is shorter',
  validRange: 'Body of the curve, not its spirals. Stations without a reading are passed over.',
  sources: [
    { text: '49 CFR 213.57, notes on actual elevation and degree of curvature', status: 'published' },
  ],
};

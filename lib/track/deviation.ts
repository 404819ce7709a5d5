import type { Method } from '../findings/finding';
import { findPoint, pointFinder, type PointFinder } from './resample';

/** Nine stations, as 49 CFR 213.327(a) averages them. */
export const UNIFORM_STATIONS = 9;

/** 155 ft, over which 49 CFR 213.57 averages curvature and elevation. */
export const CURVE_SEGMENT_M = 47.244;

/** Positions a millimetre apart are the same position. */
const SAME_POSITION_M = 0.001;

export type Deviation = {
  /** Mean of the points used: what "uniform" is here. */
  readonly uniform: number;
  /** Value at the station less `uniform`. */
  readonly deviation: number;
  /** Points averaged, the station itself among them; fewer than asked for near an end or a gap. */
  readonly used: number;
  /** True where a point lay between two stations and was read off the line joining them. */
  readonly resampled: boolean;
};

/** Where the values stand and how far apart the points averaged are to be, m. */
export type Spread = {
  readonly positionsM: ArrayLike<number>;
  readonly spacingM: number;
  /** A point this close to a station is that station. */
  readonly sameM: number;
  /** Farthest two stations may stand apart for a point between them to be read off the line joining them. */
  readonly bridgeM: number;
};

/**
 * How far each value (mid-ordinate, profile) departs from uniform, uniform being the mean of
 * `stations` points centred on it, itself included. Values: any one unit, in order along the track;
 * NaN where not taken. Without `spread` the values are evenly spaced and the points are the
 * stations themselves; with it the points are `spacingM` apart wherever the stations stand, and one
 * between two stations is read off the straight line joining them (see `findPoint`).
 * Near an end, or beside a station not taken, the points opposite are left out too, so that the
 * window stays centred and a steady spiral still counts as uniform. null where the value itself
 * was not taken or fewer than three points remain.
 * Source: 49 CFR 213.327(a) for class 6 and above; an adopted method for classes 1 to 5.
 */
export function deviationsFromUniform(
  values: ArrayLike<number>,
  stations: number = UNIFORM_STATIONS,
  spread: Spread = evenly(values.length),
): (Deviation | null)[] {
  const shares = uniformShares(takenOf(values), stations, spread);
  const uniforms = uniformOf(shares, values);
  return Array.from(uniforms, (uniform, index) =>
    shares.used[index] === 0
      ? null
      : {
          uniform,
          deviation: values[index]! - uniform,
          used: shares.used[index]!,
          resampled: shares.resampled[index] === 1,
        },
  );
}

/** 1 where there is a value, else 0. */
export function takenOf(values: ArrayLike<number>): Uint8Array {
  const isTaken = new Uint8Array(values.length);
  for (let i = 0; i < values.length; i += 1) if (Number.isFinite(values[i])) isTaken[i] = 1;
  return isTaken;
}

/**
 * Which readings the uniform of every station is the mean of, and with what weight: those of station i
 * are entries `from[i]` to `from[i + 1]` of `indices` and `weights`, its own first; none where there is
 * no uniform. The same for every quantity read at the same stations.
 */
export type UniformShares = {
  readonly from: Int32Array;
  readonly indices: Int32Array;
  readonly weights: Float64Array;
  readonly used: Uint8Array;
  readonly resampled: Uint8Array;
};

/** The shares for stations with a reading (1 in `isTaken`); the rest as `deviationsFromUniform`. */
export function uniformShares(isTaken: Uint8Array, stations: number, spread: Spread): UniformShares {
  const { positionsM, spacingM } = spread;
  const sheet = { positionsM, isTaken };
  const count = isTaken.length;
  const reach = Math.floor(stations / 2);
  const from = new Int32Array(count + 1);
  const indices = new Int32Array(count * (4 * reach + 1));
  const weights = new Float64Array(indices.length);
  const used = new Uint8Array(count);
  const resampled = new Uint8Array(count);
  const before = Array.from({ length: reach }, (_, step) => pointFinder(-(step + 1) * spacingM));
  const after = Array.from({ length: reach }, (_, step) => pointFinder((step + 1) * spacingM));
  // Where a reading stands in the list, while `listedFor` says that it is in the list of this station.
  const placeOf = new Int32Array(count);
  const listedFor = new Int32Array(count).fill(-1);
  let end = 0;
  const add = (station: number, point: PointFinder): void => {
    for (let k = 0; k < point.count; k += 1) {
      const index = point.indices[k]!;
      const weight = point.weights[k]!;
      if (listedFor[index] === station) {
        weights[placeOf[index]!]! += weight;
        continue;
      }
      listedFor[index] = station;
      placeOf[index] = end;
      indices[end] = index;
      weights[end] = weight;
      end += 1;
    }
  };
  for (let i = 0; i < count; i += 1) {
    const begin = end;
    from[i] = begin;
    if (isTaken[i] === 0) continue;
    listedFor[i] = i;
    placeOf[i] = end;
    indices[end] = i;
    weights[end] = 1;
    end += 1;
    let points = 1;
    for (let step = 0; step < reach; step += 1) {
      const back = before[step]!;
      const there = findPoint(back, sheet, spread, i);
      if (there === 0) continue;
      const on = after[step]!;
      const opposite = findPoint(on, sheet, spread, i);
      if (opposite === 0) continue;
      points += 2;
      if (there > 1 || opposite > 1) resampled[i] = 1;
      add(i, back);
      add(i, on);
    }
    if (points < 3) {
      end = begin;
      listedFor[i] = -1;
      resampled[i] = 0;
      continue;
    }
    used[i] = points;
    for (let k = begin; k < end; k += 1) weights[k]! /= points;
  }
  from[count] = end;
  return { from, indices, weights, used, resampled };
}

/** The mean that is uniform at every station; NaN where there is none. */
export function uniformOf(
  { from, indices, weights, used }: UniformShares,
  values: ArrayLike<number>,
): Float64Array {
  const uniforms = new Float64Array(used.length).fill(NaN);
  for (let i = 0; i < used.length; i += 1) {
    if (used[i] === 0) continue;
    let uniform = 0;
    for (let k = from[i]!; k < from[i + 1]!; k += 1) uniform += weights[k]! * values[indices[k]!]!;
    uniforms[i] = uniform;
  }
  return uniforms;
}

/**
 * Standard uncertainty of the deviation of every station, its own reading being one of those averaged:
 * value − uniform = Σ aᵢ·mᵢ, u² = Σ aᵢ²·uᵢ². `us`: those of the values, same unit. NaN where there is no uniform.
 * Source: JCGM 100:2008, 5.1.2.
 */
export function deviationUncertainties(
  { from, indices, weights, used }: UniformShares,
  us: ArrayLike<number>,
): Float64Array {
  const found = new Float64Array(used.length).fill(NaN);
  for (let i = 0; i < used.length; i += 1) {
    if (used[i] === 0) continue;
    const begin = from[i]!;
    let squares = ((1 - weights[begin]!) * us[i]!) ** 2;
    for (let k = begin + 1; k < from[i + 1]!; k += 1) squares += (weights[k]! * us[indices[k]!]!) ** 2;
    found[i] = Math.sqrt(squares);
  }
  return found;
}

/** Stations are taped: within half a foot they are where they were meant to be. */
export const SAME_STATION_M = 0.1524;

/** A point lies between neighbours when they stand no farther apart than this many usual spacings. */
const BRIDGED_SPACINGS = 1.5;

/** The median distance from one station to the next, m; null with fewer than two stations apart. */
export function usualSpacing(positionsM: ArrayLike<number>): number | null {
  const steps = new Float64Array(Math.max(0, positionsM.length - 1));
  let apart = 0;
  for (let i = 1; i < positionsM.length; i += 1) {
    const step = positionsM[i]! - positionsM[i - 1]!;
    if (step > SAME_STATION_M) {
      steps[apart] = step;
      apart += 1;
    }
  }
  const sorted = steps.subarray(0, apart).sort();
  return sorted[Math.floor(apart / 2)] ?? null;
}

/**
 * How a sheet is averaged over points `pointsM` apart (a quarter of the chord): a point between
 * two stations is read off the line joining them when they stand at most half the chord, and one
 * and a half usual spacings, apart. Engineering judgement.
 */
export const spreadOver = (positionsM: ArrayLike<number>, pointsM: number): Spread => ({
  positionsM,
  spacingM: pointsM,
  sameM: SAME_STATION_M,
  bridgeM: Math.min(BRIDGED_SPACINGS * (usualSpacing(positionsM) ?? 0), 2 * pointsM) + SAME_STATION_M,
});

/** Stations one apart, with no point between them. */
const evenly = (count: number): Spread => ({
  positionsM: Array.from({ length: count }, (_, index) => index),
  spacingM: 1,
  sameM: 0,
  bridgeM: 0,
});

/** Where a segment begins and ends, m. */
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

/** A station at the beginning of a segment belongs to it, one at the end does not. */
export const isInSegment = ({ fromM, toM }: Segment, positionM: number): boolean =>
  positionM >= fromM - SAME_POSITION_M && positionM < toM - SAME_POSITION_M;

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
    const value = values[i] ?? NaN;
    if (!isInSegment(segment, positionsM[i]!) || !Number.isFinite(value)) continue;
    sum += value;
    used += 1;
  }
  return used === 0 ? null : { mean: sum / used, used };
}

export const deviationFromUniformMethod: Method = {
  id: 'deviation-from-uniform',
  name: 'Deviation from uniform, nine-station average',
  formula:
    'deviation(x) = m(x) − mean of m(x − 4s) … m(x + 4s). m: mid-chord offset; s: a quarter of the chord (15 ft 6 in for 62 ft, 7 ft 9 in for 31 ft). Where no station stands at a point, m is read off the straight line between the stations on either side.',
  validRange:
    'Stations at most half a chord apart, and at most one and a half times their usual spacing, where a point lies between two of them: nothing is carried across a missing station. Near an end or a gap fewer points are averaged, kept in pairs about the station, and their number is given; at least three are needed.',
  sources: [
    {
      text: '49 CFR 213.327(a): nine consecutive points, for track classes 6 and above',
      status: 'published',
    },
    {
      text: 'The straight line between neighbouring stations, for sheets not taken every quarter of the chord',
      status: 'engineering judgement',
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

import {
  deviationAt,
  SAME_STATION_M,
  spreadOver,
  takenOf,
  UNIFORM_STATIONS,
  uniformShares,
  usualSpacing,
  type UniformShares,
} from '../../track/deviation';
import { oncePerContext } from '../once-per-context';
import type { Context } from '../context';
import type { Taken } from '../reading-index';
import { along } from '../words';
import type { Column } from '../station-column';
import type { At } from './worst';

export type Deviations = {
  /** Of every station of the context; NaN where uniform cannot be told. */
  readonly values: Float64Array;
  /** Made when asked for: a long sheet has no room for one of each station beside its finding. */
  readonly taken: (index: number) => Taken | null;
  /** Spacing of the stations, m; null with fewer than two. */
  readonly stationsM: number | null;
  /** Spacing of the points averaged, m. */
  readonly pointsM: number;
  /** Stations for which a point lay between two stations. */
  readonly resampled: number;
};

/** Deviation of a column from uniform, uniform being the mean of points `pointsM` apart about the station. */
export function columnDeviations(context: Context, column: Column, pointsM: number): Deviations {
  const values = Float64Array.from(column.at, (taken) => taken?.value ?? NaN);
  const shares = sharesOf(context, values, pointsM);
  const deviations = new Float64Array(values.length).fill(NaN);
  let resampled = 0;
  for (let index = 0; index < values.length; index += 1) {
    const found = deviationAt(shares, values, index);
    if (found === null) continue;
    deviations[index] = found.deviation;
    if (found.resampled) resampled += 1;
  }
  return {
    values: deviations,
    taken: (index) => {
      const deviation = deviations[index] ?? NaN;
      return Number.isFinite(deviation) ? departing(column, shares, index, deviation) : null;
    },
    stationsM: placesOf(context).spacingM,
    pointsM,
    resampled,
  };
}

/** The station with the greatest deviation to either side, the earliest of equals. */
export function greatestDeviation({ values, taken }: Deviations): At | null {
  let [worst, size] = [-1, -1];
  for (let index = 0; index < values.length; index += 1) {
    const here = Math.abs(values[index]!);
    if (here > size) [worst, size] = [index, here];
  }
  const at = taken(worst);
  return at && { index: worst, taken: at };
}

type Known = { readonly pointsM: number; readonly isTaken: Uint8Array; readonly shares: UniformShares };

const knownShares = oncePerContext((): Known[] => []);

/** A sheet has mostly the same quantities at every station: their shares are found once. */
function sharesOf(context: Context, values: Float64Array, pointsM: number): UniformShares {
  const isTaken = takenOf(values);
  const known = knownShares(context);
  const before = known.find((each) => each.pointsM === pointsM && isSame(each.isTaken, isTaken));
  if (before !== undefined) return before.shares;
  const shares = uniformShares(isTaken, UNIFORM_STATIONS, spreadOver(placesOf(context).positionsM, pointsM));
  known.push({ pointsM, isTaken, shares });
  return shares;
}

function isSame(a: Uint8Array, b: Uint8Array): boolean {
  let index = 0;
  while (index < a.length && a[index] === b[index]) index += 1;
  return index === a.length;
}

/** The station's own reading is one of those averaged: value − uniform = Σ aᵢ·mᵢ, u² = Σ aᵢ²·uᵢ². */
function departing(
  { at }: Column,
  { from, indices, weights, used }: UniformShares,
  index: number,
  deviation: number,
): Taken {
  const taken = at[index]!;
  const begin = from[index]!;
  const readings: [string, ...string[]] = [taken.readings[0]];
  for (let r = 1; r < taken.readings.length; r += 1) readings.push(taken.readings[r]!);
  let squares = ((1 - weights[begin]!) * taken.u) ** 2;
  for (let k = begin + 1; k < from[index + 1]!; k += 1) {
    const other = at[indices[k]!];
    if (!other) continue;
    squares += (weights[k]! * other.u) ** 2;
    for (let r = 0; r < other.readings.length; r += 1) readings.push(other.readings[r]!);
  }
  return {
    value: deviation,
    u: Math.sqrt(squares),
    readings,
    remarks:
      used[index]! < UNIFORM_STATIONS
        ? [...taken.remarks, `Uniform is the mean of ${used[index]} points here, not nine.`]
        : taken.remarks,
  };
}

/** Where the stations stand, and how far apart they usually are. */
export const placesOf = oncePerContext(({ stations }: Context) => {
  const positionsM = Float64Array.from(stations, ({ positionM }) => positionM);
  return { positionsM, spacingM: usualSpacing(positionsM) };
});

/** Says when the stations are not as far apart as the points of the average, and what was done about it. */
export function spacingRemarks({ stationsM, pointsM, resampled }: Deviations): readonly string[] {
  if (stationsM === null) return [];
  return [
    ...(Math.abs(stationsM - pointsM) > SAME_STATION_M
      ? [
          `The average is over points ${along(pointsM)} apart (49 CFR 213.327(a)); the stations are ${along(stationsM)} apart.`,
        ]
      : []),
    ...(resampled > 0
      ? [
          `Resampled at ${resampled === 1 ? '1 station' : `${resampled} stations`}: points between two stations are read off the straight line joining them; nothing is carried across a missing station.`,
        ]
      : []),
  ];
}

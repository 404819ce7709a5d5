import {
  deviationUncertainties,
  SAME_STATION_M,
  spreadOver,
  takenOf,
  UNIFORM_STATIONS,
  uniformOf,
  uniformShares,
  usualSpacing,
  type UniformShares,
} from '../../track/deviation';
import { oncePerContext } from '../once-per-context';
import type { Context } from '../context';
import type { NonEmpty, Taken } from '../reading-index';
import { along } from '../words';
import type { Column } from '../station-column';
import type { At } from './worst';

export type Deviations = {
  /** Of every station of the context; NaN where uniform cannot be told. */
  readonly values: Float64Array;
  /** Made when asked for: a long sheet has no room for one of each station beside its finding. */
  readonly taken: (index: number) => Taken | null;
  /** Stations that have one. */
  readonly count: number;
  /** Spacing of the stations, m; null with fewer than two. */
  readonly stationsM: number | null;
  /** Spacing of the points averaged, m. */
  readonly pointsM: number;
  /** Stations for which a point lay between two stations. */
  readonly resampled: number;
};

/** Deviation of a column from uniform, uniform being the mean of points `pointsM` apart about the station. */
export function columnDeviations(context: Context, column: Column, pointsM: number): Deviations {
  const shares = sharesOf(context, column.values, pointsM);
  const values = uniformOf(shares, column.values);
  const us = deviationUncertainties(shares, column.us);
  let [count, resampled] = [0, 0];
  for (let index = 0; index < values.length; index += 1) {
    values[index] = column.values[index]! - values[index]!;
    if (shares.used[index]! > 0) count += 1;
    if (shares.resampled[index] === 1) resampled += 1;
  }
  return {
    values,
    taken: (index) =>
      index in shares.used && shares.used[index]! > 0
        ? {
            value: values[index]!,
            u: us[index]!,
            readings: readingsOfUniform(column, shares, index),
            remarks: remarksOfUniform(column.at[index]!, shares.used[index]!),
          }
        : null,
    count,
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
    if (here > size) {
      worst = index;
      size = here;
    }
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

/** Those of the station itself first, then of the others averaged. */
function readingsOfUniform(
  { at }: Column,
  { from, indices }: UniformShares,
  index: number,
): NonEmpty<string> {
  const [begin, end] = [from[index]!, from[index + 1]!];
  let count = 0;
  for (let k = begin; k < end; k += 1) count += at[indices[k]!]!.readings.length;
  // Made as long as it gets: grown one by one, the lists of a long sheet hold twice the room they need.
  const readings = new Array<string>(count);
  let next = 0;
  for (let k = begin; k < end; k += 1) {
    const own = at[indices[k]!]!.readings;
    for (let r = 0; r < own.length; r += 1) {
      readings[next] = own[r]!;
      next += 1;
    }
  }
  return readings as [string, ...string[]];
}

const remarksOfUniform = ({ remarks }: Taken, used: number): readonly string[] =>
  used < UNIFORM_STATIONS ? [...remarks, `Uniform is the mean of ${used} points here, not nine.`] : remarks;

/** Where the stations stand, and how far apart they usually are. */
export const placesOf = oncePerContext(({ stations }: Context) => {
  const positionsM = new Float64Array(stations.length);
  for (let index = 0; index < stations.length; index += 1) positionsM[index] = stations[index]!.positionM;
  return { positionsM, spacingM: usualSpacing(positionsM) };
});

/** Says when the stations are not as far apart as the points of the average, and what was done about it. */
export function spacingRemarks({ count, stationsM, pointsM, resampled }: Deviations): readonly string[] {
  if (count === 0 || stationsM === null) return [];
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

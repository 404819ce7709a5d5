import {
  eachDeviation,
  SAME_STATION_M,
  spreadOver,
  UNIFORM_STATIONS,
  usualSpacing,
  type Deviation,
  type Shares,
} from '../../track/deviation';
import { oncePerContext } from '../once-per-context';
import type { Context } from '../context';
import type { Taken } from '../reading-index';
import { along } from '../words';
import type { Column } from '../station-column';

export type Deviations = {
  /** One per station of the context; null where uniform cannot be told. */
  readonly at: readonly (Taken | null)[];
  /** Spacing of the stations, m; null with fewer than two. */
  readonly stationsM: number | null;
  /** Spacing of the points averaged, m. */
  readonly pointsM: number;
  /** Stations for which a point lay between two stations. */
  readonly resampled: number;
};

/** Deviation of a column from uniform, uniform being the mean of points `pointsM` apart about the station. */
export function deviationAt(context: Context, column: Column, pointsM: number): Deviations {
  const { positionsM, spacingM } = placesOf(context);
  const at = new Array<Taken | null>(column.at.length).fill(null);
  let resampled = 0;
  eachDeviation(
    column.at.map((taken) => taken?.value ?? NaN),
    UNIFORM_STATIONS,
    spreadOver(positionsM, pointsM),
    (index, deviation, shares) => {
      const taken = column.at[index];
      if (taken) at[index] = departing(column, deviation, shares, taken);
      if (deviation.resampled) resampled += 1;
    },
  );
  return { at, stationsM: spacingM, pointsM, resampled };
}

/** The station's own reading is one of those averaged: value − uniform = Σ aᵢ·mᵢ, u² = Σ aᵢ²·uᵢ². */
function departing(
  column: Column,
  { deviation, used }: Deviation,
  { count, indices, weights }: Shares,
  taken: Taken,
): Taken {
  const readings: [string, ...string[]] = [taken.readings[0]];
  for (let r = 1; r < taken.readings.length; r += 1) readings.push(taken.readings[r]!);
  let squares = ((1 - weights[0]!) * taken.u) ** 2;
  for (let k = 1; k < count; k += 1) {
    const from = column.at[indices[k]!];
    if (!from) continue;
    squares += (weights[k]! * from.u) ** 2;
    for (let r = 0; r < from.readings.length; r += 1) readings.push(from.readings[r]!);
  }
  return {
    value: deviation,
    u: Math.sqrt(squares),
    readings,
    remarks:
      used < UNIFORM_STATIONS
        ? [...taken.remarks, `Uniform is the mean of ${used} points here, not nine.`]
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

import {
  deviationsFromUniform,
  SAME_STATION_M,
  spreadOver,
  UNIFORM_STATIONS,
  usualSpacing,
  type Deviation,
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
  const found = deviationsFromUniform(
    column.at.map((taken) => taken?.value ?? NaN),
    UNIFORM_STATIONS,
    spreadOver(positionsM, pointsM),
  );
  return {
    at: found.map((deviation, index) => {
      const taken = column.at[index];
      return deviation && taken ? departing(column, deviation, taken) : null;
    }),
    stationsM: spacingM,
    pointsM,
    resampled: found.filter((deviation) => deviation?.resampled).length,
  };
}

/** The station's own reading is one of those averaged: value − uniform = Σ aᵢ·mᵢ, u² = Σ aᵢ²·uᵢ². */
function departing(column: Column, { deviation, shares, used }: Deviation, taken: Taken): Taken {
  const ids: string[] = [];
  let squares = 0;
  shares.forEach(({ index, weight }, which) => {
    const from = column.at[index];
    if (!from) return;
    squares += ((which === 0 ? 1 - weight : weight) * from.u) ** 2;
    for (const id of from.readings) ids.push(id);
  });
  return {
    value: deviation,
    u: Math.sqrt(squares),
    readings: [taken.readings[0], ...ids.slice(1)],
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

import { deviationsFromUniform, UNIFORM_STATIONS } from '../../track/deviation';
import type { Context } from '../context';
import type { Taken } from '../reading-index';
import { along } from '../words';
import type { Column } from '../station-column';

export type Deviations = {
  /** One per station of the context; null where uniform cannot be told. */
  readonly at: readonly (Taken | null)[];
  /** Spacing of the stations, m; null with fewer than two. */
  readonly spacingM: number | null;
  /** Where the sheet breaks because stations are not evenly spaced. */
  readonly breaks: number;
};

/** Stations are taped: within half a foot they count as evenly spaced. */
const EVEN_M = 0.1524;

/**
 * Deviation of a column from uniform, on each evenly spaced stretch of the sheet by itself. A
 * station missing from an even sheet leaves a gap and is not filled in.
 */
export function deviationAt(context: Context, column: Column): Deviations {
  const { stations } = context;
  const spacingM = usualSpacing(stations.map(({ positionM }) => positionM));
  const at: (Taken | null)[] = stations.map(() => null);
  let breaks = 0;
  let values: number[] = [];
  let indices: number[] = [];
  const close = (): void => {
    deviationsFromUniform(values).forEach((found, slot) => {
      const index = indices[slot] ?? -1;
      const taken = column.at[index];
      if (found === null || !taken) return;
      at[index] = {
        ...taken,
        value: found.deviation,
        // The station itself is one of those averaged: var = u²·(1 − 1/n) for equal u.
        u: taken.u * Math.sqrt(1 - 1 / found.used),
        readings: neighbours(column, indices, slot, found.used, taken),
        remarks:
          found.used < UNIFORM_STATIONS
            ? [...taken.remarks, `Uniform is the mean of ${found.used} stations here, not nine.`]
            : taken.remarks,
      };
    });
    values = [];
    indices = [];
  };
  stations.forEach(({ positionM }, index) => {
    const previous = stations[index - 1];
    if (previous !== undefined && spacingM !== null) {
      const steps = Math.round((positionM - previous.positionM) / spacingM);
      const even = Math.abs(positionM - previous.positionM - steps * spacingM) <= EVEN_M;
      if (!even || steps < 1) {
        close();
        breaks += 1;
      } else {
        // Beyond nine stations' reach one gap is like another.
        for (let gap = 1; gap < Math.min(steps, UNIFORM_STATIONS); gap += 1) {
          values.push(NaN);
          indices.push(-1);
        }
      }
    }
    values.push(column.at[index]?.value ?? NaN);
    indices.push(index);
  });
  close();
  return { at, spacingM, breaks };
}

/** Ids of the readings averaged: those within reach on both sides, as `deviationsFromUniform` pairs them. */
function neighbours(
  column: Column,
  indices: readonly number[],
  slot: number,
  used: number,
  own: Taken,
): Taken['readings'] {
  const ids: string[] = [];
  const reach = Math.floor(UNIFORM_STATIONS / 2);
  for (let step = 1; step <= reach && ids.length < used * 2; step += 1) {
    const before = column.at[indices[slot - step] ?? -1];
    const after = column.at[indices[slot + step] ?? -1];
    if (before && after) ids.push(...before.readings, ...after.readings);
  }
  return [own.readings[0], ...own.readings.slice(1), ...ids];
}

/** The median distance from one station to the next. */
function usualSpacing(positionsM: readonly number[]): number | null {
  const steps = positionsM
    .slice(1)
    .map((position, index) => position - (positionsM[index] ?? position))
    .filter((step) => step > EVEN_M)
    .sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)] ?? null;
}

export const unevenRemarks = ({ breaks }: Deviations): readonly string[] =>
  breaks === 0
    ? []
    : [
        `Stations are not evenly spaced throughout: uniform is found on ${breaks + 1} stretches by themselves.`,
      ];

/** Says when the stations are not as far apart as the rule has them for a chord. */
export function spacingRemarks({ spacingM }: Deviations, wantedM: number, wanted: string): readonly string[] {
  if (spacingM === null || Math.abs(spacingM - wantedM) <= EVEN_M) return [];
  return [
    `49 CFR 213.327(a) takes the average over stations ${wanted} apart for this chord; here they are ${along(spacingM)} apart.`,
  ];
}

import type { Context } from '../findings/context';
import { lineSegments } from '../findings/track/line-segments';
import { stationCurvatures } from '../findings/track/station-curvatures';
import { leastTies } from '../findings/track/ties';
import type { ChartLimits } from './track-chart-data';

/** What the chart draws besides readings: limits of the class in force, parts of the line, curvature. */
export function chartLimits(context: Context, from: string): ChartLimits {
  return {
    from,
    of: context.rules.trackLimits,
    parts: lineSegments(context) ?? [],
    leastTies: leastTies(context),
    curvatures: stationCurvatures(context).map((taken) => taken?.value ?? NaN),
  };
}

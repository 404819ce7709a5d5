import type { LoadedCase } from '~/app/case.server';
import { findingOptions } from '~/app/findings/case-findings.server';
import type { ChartLimits } from '~/lib/figures/track-chart-data';
import { lineSegments } from '~/lib/findings/track/line-segments';
import { buildContext } from '~/lib/findings/context';

/** The limits of the case's class of track, as the chart names and draws them, and the parts of the line. */
export function chartLimits(loaded: LoadedCase): ChartLimits {
  const context = buildContext(loaded.record, findingOptions(loaded));
  const { rules } = context;
  const { track, trackClass } = rules;
  return {
    from: track && trackClass ? `${trackClass.label}, ${track.name.split(',')[0] ?? track.name}` : '',
    of: rules.trackLimits,
    parts: lineSegments(context) ?? [],
  };
}

import type { LoadedCase } from '~/app/case.server';
import { findingOptions } from '~/app/findings/case-findings.server';
import { chartLimits as limitsOf } from '~/lib/figures/track-chart-limits';
import type { ChartLimits } from '~/lib/figures/track-chart-data';
import { buildContext } from '~/lib/findings/context';

/** The limits of the case's class of track, as the chart names and draws them, and the parts of the line. */
export function chartLimits(loaded: LoadedCase): ChartLimits {
  const context = buildContext(loaded.record, findingOptions(loaded));
  const { track, trackClass } = context.rules;
  return limitsOf(
    context,
    track && trackClass ? `${trackClass.label}, ${track.name.split(',')[0] ?? track.name}` : '',
  );
}

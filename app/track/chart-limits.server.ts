import type { LoadedCase } from '~/app/case.server';
import { findingOptions } from '~/app/findings/case-findings.server';
import type { ChartLimits } from '~/lib/figures/track-chart-data';
import { buildContext } from '~/lib/findings/context';

/** The limits of the case's class of track, as the chart names and draws them. */
export function chartLimits(loaded: LoadedCase): ChartLimits {
  const { rules } = buildContext(loaded.record, findingOptions(loaded));
  const { track, trackClass } = rules;
  return {
    from: track && trackClass ? `${trackClass.label}, ${track.name.split(',')[0] ?? track.name}` : '',
    of: rules.trackLimits,
  };
}

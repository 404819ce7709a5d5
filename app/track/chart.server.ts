import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { findingOptions } from '~/app/findings/case-findings.server';
import { toSvg } from '~/lib/figures/svg';
import { trackChart } from '~/lib/figures/track-chart';
import { trackChartData, type ChartLimits } from '~/lib/figures/track-chart-data';
import { buildContext } from '~/lib/findings/context';

const WIDTH = 1120;

/** The limits of the case's class of track, as the chart names and draws them. */
export function chartLimits(loaded: LoadedCase): ChartLimits {
  const { rules } = buildContext(loaded.record, findingOptions(loaded));
  const { track, trackClass } = rules;
  return {
    from: track && trackClass ? `${trackClass.label}, ${track.name.split(',')[0] ?? track.name}` : '',
    of: rules.trackLimits,
  };
}

/** The track chart as SVG; null while no station has a distance from the POD. */
export const trackChartSvg = (loaded: LoadedCase): string | null =>
  derived(loaded, 'track chart', () => {
    const data = trackChartData(loaded.record, chartLimits(loaded));
    return data.positionsM.length === 0 ? null : toSvg(trackChart(data, { width: WIDTH }));
  });

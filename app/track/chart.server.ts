import type { LoadedCase } from '~/app/case.server';
import { derived } from '~/app/derived.server';
import { figureRef, type FigureRef } from '~/app/figures/view.server';
import { FIGURE_WIDTHS, type FigureWidth } from '~/app/figures/widths';
import { systemOf } from '~/app/readings/take.server';
import { scaleOf } from '~/lib/figures/pieces/axis';
import { chartExtent, chartPlot, type TrackChartData } from '~/lib/figures/track-chart';
import { trackChartData } from '~/lib/figures/track-chart-data';
import { shownPlace } from '~/lib/figures/track-chart-window';
import { facingTravel } from '~/lib/case/facing';
import { standing } from '~/lib/case/current';
import { standingValues } from '~/lib/figures/standing-values';
import { toCanonical } from '~/lib/readings/convert';
import { chartLimits } from './chart-limits.server';

export const chartData = (loaded: LoadedCase): TrackChartData =>
  derived(loaded, 'track chart data', () => trackChartData(loaded.record, chartLimits(loaded)));

/** A stretch of the chart in whole feet or metres from the POD, as it stands in an address. */
export type Stretch = { readonly from: number; readonly to: number };

export const CHART_NAME = 'track-chart';
const WINDOWED = /^track-chart_(-?\d{1,6})_(-?\d{1,6})$/;

export const windowName = ({ from, to }: Stretch): string => `${CHART_NAME}_${from}_${to}`;

const metres = (loaded: LoadedCase, shown: number): number =>
  toCanonical(shown, systemOf(loaded.record.fields) === 'us' ? 'ft' : 'm', 'alongTrack');

/** The stretch a drawing's name asks for, in m; null for another drawing. */
export function windowOfName(loaded: LoadedCase, name: string): { fromM: number; toM: number } | null {
  const asked = WINDOWED.exec(name);
  if (!asked) return null;
  const [fromM, toM] = [metres(loaded, Number(asked[1])), metres(loaded, Number(asked[2]))];
  return toM > fromM ? { fromM, toM } : null;
}

/** The value of every line of the chart at one station, in words. */
export type ReadOut = {
  readonly station: string;
  readonly atM: number;
  readonly place: string;
  readonly values: readonly { readonly label: string; readonly value: string }[];
};

/** The chart read station by station; a station with nothing read has no values. */
export function readOuts(loaded: LoadedCase): readonly ReadOut[] {
  return derived(loaded, 'track chart read-outs', () => {
    const data = chartData(loaded);
    const names = stationNames(loaded);
    const along = scaleOf('alongTrack', data.system);
    return data.positionsM.map((atM, i) => ({
      station: names[i] ?? '',
      atM,
      place: `${shownPlace(atM, data.system)} ${along.unitLabel}`,
      values: data.panels.flatMap((panel) => {
        const scale = scaleOf(panel.scale, data.system);
        return panel.series.flatMap((series) => {
          const value = series.values[i] ?? NaN;
          if (!Number.isFinite(value)) return [];
          const shown = scale.toShown(value);
          const text = scale.unitLabel === 'in' ? scale.text(shown) : scale.text(Number(shown.toFixed(1)));
          const doubt = series.hollow?.[i] ? ', disturbed, repaired or not said' : '';
          const beyond = series.beyond?.[i] ? ', beyond the limit' : '';
          return [
            {
              label: `${panel.title}, ${series.label}`,
              value: `${text} ${scale.unitLabel}${doubt}${beyond}`,
            },
          ];
        });
      }),
    }));
  });
}

/** Names of the stations in the order of the chart. */
function stationNames({ record }: LoadedCase): readonly string[] {
  const facing = facingTravel(record);
  const read = standingValues(facing);
  return standing(facing, 'station')
    .flatMap(({ id, fields }) => {
      const at = read(id, 'stationPosition');
      return at === null ? [] : [{ name: String(fields.name ?? ''), at: at.value }];
    })
    .sort((a, b) => a.at - b.at)
    .map(({ name }) => name);
}

export type ChartView = {
  readonly figure: FigureRef;
  readonly shown: Stretch;
  readonly whole: Stretch;
  readonly zoomed: boolean;
  readonly unit: string;
  /** Shares of the picture's width between which the stretch is plotted, by drawing. */
  readonly plot: Readonly<Record<FigureWidth, readonly [number, number]>>;
  readonly fromM: number;
  readonly toM: number;
  /** The station read off, when one was asked for. */
  readonly readOut: ReadOut | null;
  readonly asked: string;
};

const wholeNumber = (text: string | null): number | null =>
  text !== null && /^\s*[-−]?\d{1,6}(\.\d+)?\s*$/.test(text)
    ? Math.round(Number(text.replace('−', '-')))
    : null;

/** The chart as the address asks for it: a stretch of it, and a station to read off. */
export function chartView(loaded: LoadedCase, search: URLSearchParams): ChartView | null {
  const data = chartData(loaded);
  if (data.positionsM.length === 0) return null;
  const [low, high] = chartExtent(data);
  const whole = { from: shownPlace(low, data.system), to: shownPlace(high, data.system) };
  const [from, to] = [wholeNumber(search.get('from')), wholeNumber(search.get('to'))];
  const wanted = { from: from ?? whole.from, to: to ?? whole.to };
  const zoomed = (from !== null || to !== null) && wanted.to > wanted.from;
  const shown = zoomed ? wanted : whole;
  const figure = figureRef(loaded, zoomed ? windowName(shown) : CHART_NAME);
  if (figure === null) return null;
  const asked = search.get('read')?.trim() ?? '';
  const share = (width: FigureWidth): readonly [number, number] => {
    const plot = chartPlot(FIGURE_WIDTHS[width]);
    return [plot.left / FIGURE_WIDTHS[width], (plot.left + plot.width) / FIGURE_WIDTHS[width]];
  };
  return {
    figure,
    shown,
    whole,
    zoomed,
    unit: scaleOf('alongTrack', data.system).unitLabel,
    plot: { wide: share('wide'), narrow: share('narrow') },
    fromM: zoomed ? metres(loaded, shown.from) : low,
    toM: zoomed ? metres(loaded, shown.to) : high,
    readOut: asked === '' ? null : (readOuts(loaded).find(({ station }) => station === asked) ?? null),
    asked,
  };
}

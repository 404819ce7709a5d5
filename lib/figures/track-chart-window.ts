import { fromCanonical, toCanonical } from '../readings/convert';
import type { UnitSystem } from '../readings/unit';
import type { Panel, Series } from './pieces/panel';
import { chartExtent, type LengthScale, type TrackChartData } from './track-chart';

const UNITS_PER_M = 96 / 0.0254;

/** Scales of the printed chart, largest first: ft to the inch, or 1 : n. */
const FEET_PER_INCH = [50, 100, 200, 500, 1000, 2000];
const RATIOS = [500, 1000, 2000, 5000, 10_000, 20_000];
/** Larger ones, for a short stretch that one of them still holds on a single page. */
const CLOSE_FEET = [10, 20];
const CLOSE_RATIOS = [100, 200];

/** Most pages one set of panels is spread over. */
const MOST_PAGES = 4;

/**
 * The stretch of the chart between two places (m from the POD, `fromM` below `toM`): the stations on
 * it and the nearest one on either side, so that lines run on to the edge.
 */
export function chartWindow(data: TrackChartData, fromM: number, toM: number): TrackChartData {
  const { positionsM } = data;
  let first = positionsM.findIndex((at) => at >= fromM);
  if (first < 0) first = positionsM.length;
  let last = first;
  while (last < positionsM.length && positionsM[last]! <= toM) last += 1;
  const cut = <T>(values: ArrayLike<T> | undefined): T[] | undefined =>
    values && Array.from(values).slice(first, last);
  const series = (each: Series): Series => ({
    ...each,
    values: cut(each.values) ?? [],
    hollow: cut(each.hollow),
    beyond: cut(each.beyond),
  });
  const panel = (each: Panel): Panel => ({
    ...each,
    series: each.series.map(series),
    limits: each.limits?.map((limit) => ({
      ...limit,
      value: typeof limit.value === 'number' ? limit.value : (cut(limit.value) ?? []),
    })),
  });
  return {
    ...data,
    positionsM: positionsM.slice(first, last),
    panels: data.panels.map(panel),
    marks: data.marks.filter((mark) => {
      const end = Number.isFinite(mark.toM) ? mark.toM : mark.fromM;
      return Math.max(mark.fromM, end) >= fromM && Math.min(mark.fromM, end) <= toM;
    }),
    vehicles: data.vehicles.filter(({ atM }) => atM >= fromM && atM <= toM),
    window: { fromM, toM },
  };
}

/**
 * The chart cut for paper: 1 in = 50 ft (1:500 in a metric case), or the next smaller of the listed
 * scales at which the plotted `width` (figure units, 96 to the inch) holds it on four stretches or
 * fewer; a short chart at the larger of 1 in = 10 or 20 ft (1:100, 1:200) that holds it on one. Stretches of equal length at one scale; the last one may run past the last station.
 */
export function paperStretches(
  data: TrackChartData,
  width: number,
): { readonly scale: LengthScale; readonly stretches: readonly TrackChartData[] } {
  const [low, high] = chartExtent(data);
  const us = data.system === 'us';
  const pages = ({ unitsPerM }: LengthScale): number => ((high - low) * unitsPerM) / width;
  const scales = (us ? FEET_PER_INCH : RATIOS).map(us ? feetScale : ratioScale);
  const scale =
    (us ? CLOSE_FEET : CLOSE_RATIOS).map(us ? feetScale : ratioScale).find((each) => pages(each) <= 1) ??
    scales.find((each) => pages(each) <= MOST_PAGES) ??
    scales.at(-1)!;
  const lengthM = width / scale.unitsPerM;
  const count = Math.max(1, Math.ceil((high - low) / lengthM - 1e-9));
  return {
    scale,
    stretches: Array.from({ length: count }, (_, i) =>
      chartWindow(data, low + i * lengthM, count === 1 ? high : low + (i + 1) * lengthM),
    ).filter(({ positionsM }) => count === 1 || positionsM.length > 0),
  };
}

const feetScale = (feet: number): LengthScale => ({
  unitsPerM: 96 / toCanonical(feet, 'ft', 'alongTrack'),
  label: `1 in = ${feet} ft (1:${feet * 12})`,
});

const ratioScale = (ratio: number): LengthScale => ({
  unitsPerM: UNITS_PER_M / ratio,
  label: `1:${ratio}`,
});

/** A place in whole feet or metres, as the axis of the chart counts. */
export const shownPlace = (atM: number, system: UnitSystem): number =>
  Math.round(fromCanonical(atM, system === 'us' ? 'ft' : 'm', 'alongTrack'));

import { scaleLinear } from 'd3-scale';
import type { UnitSystem } from '../../readings/unit';
import type { Ink, Shape, Stroke } from '../shapes';
import { fitText, textWidth } from '../text-width';
import { scaleOf, type Scale, type ScaleKind } from './axis';
import { area, box, LETTER, line, pen, words, type Point } from './draw';
import { marker, type MarkerShape } from './marker';

/** One series of a panel. Values in the canonical unit, one per position; NaN where there is none. */
export type Series = {
  readonly label: string;
  readonly ink: Ink;
  readonly marker: MarkerShape | null;
  readonly dash?: readonly number[];
  readonly style?: 'line' | 'bars' | 'step';
  readonly values: ArrayLike<number>;
  /** Where on the drawing its values stand, when not at the places the panel shares. */
  readonly places?: ArrayLike<number>;
  /** Read where the place was disturbed or repaired: shown hollow, joined by a dotted line. */
  readonly hollow?: readonly boolean[];
  /** Beyond its limit: ringed. */
  readonly beyond?: readonly boolean[];
};

/** A limit: one value, or one per position where it follows something (uniform alinement). */
export type PanelLimit = {
  readonly sense: 'max' | 'min';
  readonly value: number | ArrayLike<number>;
  readonly label: string;
};

export type Panel = {
  readonly title: string;
  readonly scale: ScaleKind;
  readonly series: readonly Series[];
  readonly limits?: readonly PanelLimit[];
  /** What the value would be by design: a thin line with its name. */
  readonly reference?: { readonly value: number; readonly label: string };
  readonly includeZero?: boolean;
  /** Which way is up: "outer rail high is up". */
  readonly note?: string;
};

export type PanelFrame = {
  /** Left edge of the plotted area, and its width. */
  readonly x: number;
  readonly width: number;
  /** Top of the panel, title line included. */
  readonly y: number;
  /** Height of the plotted area. */
  readonly height: number;
  /** Room right of the plot for the names of limits; 0 puts them into the key. */
  readonly margin: number;
};

const SMALL = 10;
/** A gauge or a level is never drawn so large that a sixteenth of an inch looks like a fault. */
const LEAST_SPAN: Partial<Record<ScaleKind, number>> = {
  crossLength: 25.4,
  count: 4,
  notch: 4,
  curvature: 1 / 1746,
};

const at = (value: number | ArrayLike<number>, i: number): number =>
  typeof value === 'number' ? value : (value[i] ?? NaN);

/** Lowest and highest canonical value to be shown; null when there is nothing at all. */
function extent(panel: Panel, count: number): readonly [number, number] | null {
  let low = Infinity;
  let high = -Infinity;
  const include = (value: number): void => {
    if (!Number.isFinite(value)) return;
    if (value < low) low = value;
    if (value > high) high = value;
  };
  for (const { values } of panel.series) for (let i = 0; i < values.length; i += 1) include(values[i] ?? NaN);
  if (low > high) return null;
  if (panel.reference) include(panel.reference.value);
  if (panel.includeZero) include(0);
  for (const { value } of panel.limits ?? []) {
    if (typeof value === 'number') include(value);
    else for (let i = 0; i < count; i += 1) include(value[i] ?? NaN);
  }
  const least = LEAST_SPAN[panel.scale] ?? 0;
  if (high - low < least) {
    const middle = (low + high) / 2;
    low = panel.scale === 'count' ? low : middle - least / 2;
    high = panel.scale === 'count' ? low + least : middle + least / 2;
  }
  const margin = (high - low) * 0.08 || 1;
  return [panel.scale === 'count' || (panel.includeZero && low === 0) ? low : low - margin, high + margin];
}

const HEAD_ROW = 16;

type HeadItem = { readonly width: number; readonly draw: (x: number, y: number) => readonly Shape[] };

const seriesItem = ({ label, ink, marker: sign, dash, style }: Series): HeadItem => ({
  width: 22 + textWidth(label, LETTER),
  draw: (x, y) => [
    ...(style === 'bars'
      ? [box(x + 6, y - 8, 8, 8, { fill: ink })]
      : [
          line([x, y - 4], [x + 18, y - 4], pen(ink, 1.6, dash)),
          ...(sign === null ? [] : marker(sign, x + 9, y - 4, ink, false)),
        ]),
    words(x + 22, y, label),
  ],
});

const headingOf = (panel: Panel, scale: Scale): string => `${panel.title}, ${scale.unitLabel}`;

/** Title, key and what the lines mean, set in rows no wider than the plot. */
function headItems(panel: Panel, scale: Scale, frame: Pick<PanelFrame, 'width' | 'margin'>): HeadItem[] {
  const heading = fitText(headingOf(panel, scale), frame.width, LETTER, 'bold');
  const limits = [...new Set((panel.limits ?? []).map((each) => each.label))].join(', ');
  const keyLine = (text: string, stroke: Stroke): HeadItem => ({
    width: 22 + textWidth(text, LETTER),
    draw: (x, y) => [
      line([x, y - 4], [x + 18, y - 4], stroke),
      words(x + 22, y, fitText(text, frame.width - 22, LETTER)),
    ],
  });
  const inKey = frame.margin === 0;
  return [
    { width: textWidth(heading, LETTER, 'bold') + 4, draw: (x, y) => [words(x, y, heading, { bold: true })] },
    ...panel.series.map(seriesItem),
    ...(inKey && limits !== '' ? [keyLine(limits, pen('limit', 1.1, [7, 3]))] : []),
    ...(inKey && panel.reference ? [keyLine(panel.reference.label, pen('faint', 0.8))] : []),
    ...(panel.note === undefined
      ? []
      : [
          {
            width: textWidth(panel.note, LETTER),
            draw: (x: number, y: number) => [words(x, y, panel.note!, { ink: 'faint' })],
          },
        ]),
  ];
}

function setHead(
  items: readonly HeadItem[],
  width: number,
): readonly { item: HeadItem; x: number; row: number }[] {
  let x = 0;
  let row = 0;
  return items.map((item) => {
    if (x > 0 && x + item.width > width) {
      x = 0;
      row += 1;
    }
    const placed = { item, x, row };
    x += item.width + 14;
    return placed;
  });
}

/** Height of title and key above the plotted area. */
export function panelHeadHeight(
  panel: Panel,
  frame: Pick<PanelFrame, 'width' | 'margin'>,
  system: UnitSystem,
): number {
  const placed = setHead(headItems(panel, scaleOf(panel.scale, system), frame), frame.width);
  return (placed[placed.length - 1]!.row + 1) * HEAD_ROW + 4;
}

/** Lines between neighbouring positions: whole ones, and those that touch a disturbed reading. */
function joined(
  series: Series,
  xs: ArrayLike<number>,
  y: (canonical: number) => number,
): { readonly sound: number[]; readonly doubtful: number[] } {
  const sound: number[] = [];
  const doubtful: number[] = [];
  for (let i = 0; i + 1 < xs.length; i += 1) {
    const [from, to] = [series.values[i] ?? NaN, series.values[i + 1] ?? NaN];
    if (!Number.isFinite(from) || !Number.isFinite(to)) {
      if (sound.length > 0) sound.push(NaN, NaN);
      continue;
    }
    if (series.hollow?.[i] || series.hollow?.[i + 1]) {
      if (sound.length > 0) sound.push(NaN, NaN);
      doubtful.push(xs[i]!, y(from), xs[i + 1]!, y(to), NaN, NaN);
      continue;
    }
    if (sound.length === 0 || !Number.isFinite(sound[sound.length - 1]!)) sound.push(xs[i]!, y(from));
    if (series.style === 'step') sound.push(xs[i + 1]!, y(from));
    sound.push(xs[i + 1]!, y(to));
  }
  return { sound, doubtful };
}

/** Closer together than this, whole readings are joined without a marker each. */
const MARKER_SPACING = 6;

function lineSeries(series: Series, xs: ArrayLike<number>, y: (canonical: number) => number): Shape[] {
  const { sound, doubtful } = joined(series, xs, y);
  const shapes: Shape[] = [];
  if (sound.length > 0)
    shapes.push({ type: 'polyline', points: sound, stroke: pen(series.ink, 1.6, series.dash) });
  if (doubtful.length > 0)
    shapes.push({ type: 'polyline', points: doubtful, stroke: pen(series.ink, 1, [1, 3]) });
  const every = xs.length < 2 || Math.abs(xs[xs.length - 1]! - xs[0]!) / (xs.length - 1) >= MARKER_SPACING;
  for (let i = 0; i < xs.length; i += 1) {
    const value = series.values[i] ?? NaN;
    if (!Number.isFinite(value)) continue;
    const hollow = series.hollow?.[i] ?? false;
    const lonely =
      !Number.isFinite(series.values[i - 1] ?? NaN) && !Number.isFinite(series.values[i + 1] ?? NaN);
    if (series.marker !== null && (every || hollow || lonely))
      shapes.push(...marker(series.marker, xs[i]!, y(value), series.ink, hollow, every ? 2.6 : 1.8));
    if (series.beyond?.[i])
      shapes.push({ type: 'circle', cx: xs[i]!, cy: y(value), r: 5.5, stroke: pen('limit', 1.3) });
  }
  return shapes;
}

function barSeries(
  all: readonly Series[],
  xs: ArrayLike<number>,
  y: (canonical: number) => number,
  room: number,
): Shape[] {
  const width = Math.max(1, Math.min(7, (room * 0.8) / all.length));
  return all.flatMap((series, k) => {
    const shapes: Shape[] = [];
    for (let i = 0; i < xs.length; i += 1) {
      const value = series.values[i] ?? NaN;
      if (!Number.isFinite(value)) continue;
      const left = xs[i]! + (k - all.length / 2) * width;
      const height = y(0) - y(value);
      // A count of none is a reading too: a tick on the line tells it from a place not looked at.
      if (height === 0) shapes.push(line([left, y(0) - 1.5], [left + width, y(0) - 1.5], pen(series.ink, 1)));
      else
        shapes.push(
          box(left + 0.5, y(value), Math.max(0.5, width - 1), height, {
            fill: series.hollow?.[i] ? 'paper' : series.ink,
            stroke: pen(series.ink, 0.9, series.hollow?.[i] ? [2, 1.5] : undefined),
          }),
        );
      if (series.beyond?.[i])
        shapes.push({ type: 'circle', cx: xs[i]!, cy: y(value), r: 5.5, stroke: pen('limit', 1.3) });
    }
    return shapes;
  });
}

/** The tightest of the limits to one side, where they are single values. */
const tightest = (limits: readonly PanelLimit[], sense: PanelLimit['sense']): number | null =>
  limits.reduce<number | null>((found, limit) => {
    if (limit.sense !== sense || typeof limit.value !== 'number') return found;
    if (found === null) return limit.value;
    return sense === 'max' ? Math.min(found, limit.value) : Math.max(found, limit.value);
  }, null);

/** What lies within the limits, shaded: a band across the panel, or one that follows a line. */
function bandShapes(
  limits: readonly PanelLimit[],
  { x, width, height }: PanelFrame,
  xs: ArrayLike<number>,
  y: (canonical: number) => number,
  top: number,
): Shape[] {
  const [max, min] = [tightest(limits, 'max'), tightest(limits, 'min')];
  if (max !== null || min !== null) {
    const upper = max === null ? top : y(max);
    const lower = min === null ? top + height : y(min);
    return [box(x, upper, width, lower - upper, { fill: 'shade', fillOpacity: 0.45 })];
  }
  const above = limits.find(({ sense, value }) => sense === 'max' && typeof value !== 'number');
  const below = limits.find(({ sense, value }) => sense === 'min' && typeof value !== 'number');
  if (above === undefined || below === undefined) return [];
  const upper: Point[] = [];
  const lower: Point[] = [];
  const shapes: Shape[] = [];
  const close = (): void => {
    if (upper.length > 1) shapes.push(area([...upper, ...lower.toReversed()], 'shade', undefined, 0.45));
    upper.length = 0;
    lower.length = 0;
  };
  for (let i = 0; i < xs.length; i += 1) {
    const [high, low] = [at(above.value, i), at(below.value, i)];
    if (Number.isFinite(high) && Number.isFinite(low)) {
      upper.push([xs[i]!, y(high)]);
      lower.push([xs[i]!, y(low)]);
    } else close();
  }
  close();
  return shapes;
}

function limitShapes(
  panel: Panel,
  frame: PanelFrame,
  xs: ArrayLike<number>,
  y: (canonical: number) => number,
  top: number,
): Shape[] {
  const { x, width, margin } = frame;
  const limits = panel.limits ?? [];
  const shapes: Shape[] = [];
  shapes.push(...bandShapes(limits, frame, xs, y, top));
  const labels: { y: number; text: string }[] = [];
  for (const limit of limits) {
    if (typeof limit.value === 'number') {
      const height_ = y(limit.value);
      shapes.push(line([x, height_], [x + width, height_], pen('limit', 1.1, [7, 3])));
      labels.push({ y: height_, text: limit.label });
    } else {
      const points: number[] = [];
      let last = NaN;
      for (let i = 0; i < xs.length; i += 1) {
        const value = y(at(limit.value, i));
        points.push(xs[i]!, value);
        if (Number.isFinite(value)) last = value;
      }
      shapes.push({ type: 'polyline', points, stroke: pen('limit', 1.1, [7, 3]) });
      if (Number.isFinite(last)) labels.push({ y: last, text: limit.label });
    }
  }
  if (panel.reference) {
    const level = y(panel.reference.value);
    shapes.push(line([x, level], [x + width, level], pen('faint', 0.8)));
    labels.push({ y: level, text: panel.reference.label });
  }
  return margin > 0 ? [...shapes, ...labelShapes(labels, frame, top, margin)] : shapes;
}

/** Names of limits, pushed apart so that none lies on another. */
function labelShapes(
  labels: { y: number; text: string }[],
  frame: PanelFrame,
  top: number,
  margin: number,
): Shape[] {
  const apart = 11;
  const sorted = [...labels].sort((a, b) => a.y - b.y);
  const lowest = top + frame.height + 2 - apart * (sorted.length - 1);
  let previous = -Infinity;
  return sorted.map((label, i) => {
    const placed = Math.min(Math.max(label.y + 3.5, previous + apart, top + 8), lowest + apart * i);
    previous = placed;
    const text = fitText(label.text, margin - 6, SMALL);
    return words(frame.x + frame.width + 6, placed, text, { size: SMALL });
  });
}

export type DrawnPanel = {
  readonly shapes: readonly Shape[];
  readonly scale: Scale;
};

/**
 * One panel of a chart: title with unit, key, scale, limits, series. `xs` are the places of the
 * values on the drawing. A panel with nothing to show says so and keeps its place.
 */
export function drawPanel(
  panel: Panel,
  frame: PanelFrame,
  xs: ArrayLike<number>,
  system: UnitSystem,
): DrawnPanel {
  const scale = scaleOf(panel.scale, system);
  const top = frame.y + panelHeadHeight(panel, frame, system);
  const bottom = top + frame.height;
  const right = frame.x + frame.width;
  const head = setHead(headItems(panel, scale, frame), frame.width).flatMap(({ item, x, row }) =>
    item.draw(frame.x + x, frame.y + 12 + row * HEAD_ROW),
  );
  const border = box(frame.x, top, frame.width, frame.height, { stroke: pen('faint', 0.8) });
  const range = extent(panel, xs.length);
  if (range === null) {
    const none = words(frame.x + frame.width / 2, top + frame.height / 2 + 4, 'Not measured', {
      anchor: 'middle',
      ink: 'faint',
    });
    return { shapes: [...head, border, none], scale };
  }

  const shown = range.map(scale.toShown) as [number, number];
  const linear = scaleLinear().domain(shown).range([bottom, top]);
  const y = (canonical: number): number => linear(scale.toShown(canonical));
  const ticks = scale.ticks(
    Math.min(...shown),
    Math.max(...shown),
    Math.max(2, Math.floor(frame.height / 22)),
  );
  const grid: Shape[] = ticks.flatMap((tick) => [
    line([frame.x, linear(tick)], [right, linear(tick)], pen('faint', tick === 0 ? 0.9 : 0.35)),
    words(frame.x - 5, linear(tick) + 3.8, scale.text(tick), { anchor: 'end' }),
  ]);
  const bars = panel.series.filter((series) => series.style === 'bars');
  const spacing = xs.length > 1 ? Math.abs(xs[xs.length - 1]! - xs[0]!) / (xs.length - 1) : frame.width / 4;
  return {
    scale,
    shapes: [
      ...head,
      ...limitShapes(panel, frame, xs, y, top),
      ...grid,
      border,
      ...barSeries(bars, xs, y, spacing),
      ...panel.series
        .filter((series) => series.style !== 'bars')
        .flatMap((series) => lineSeries(series, series.places ?? xs, y)),
    ],
  };
}

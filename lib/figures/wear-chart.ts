import { fromCanonical } from '../readings/convert';
import { formatMeasure } from '../readings/format';
import type { UnitSystem } from '../readings/unit';
import { wearLineAt, type WearHistory, type WithInterval } from '../wheel/wear-history';
import { distanceRunText, intervalText, reachText } from '../wheel/wear-words';
import { area, LETTER, line, lines, open, pen, words, type Point } from './pieces/draw';
import { placeLabels, type Rect } from './pieces/place-labels';
import { axisText, plotFrame } from './pieces/plot';
import type { Figure, Shape } from './shapes';
import { textWidth, wrapText } from './text-width';

export type WearChartData = {
  readonly system: UnitSystem;
  /** What is worn and of which wheel: "Flange thickness", "left wheel, axle 2". */
  readonly feature: string;
  readonly name: string;
  readonly history: WearHistory;
  /** What the limit of the history is called, with its citation; null without one. */
  readonly limit: string | null;
  /** Date of each point, in the order of `history.points`. */
  readonly dates: readonly string[];
};

const EDGE = 8;
const LEFT = 58;
const HEIGHT = 190;
const LINE = LETTER * 1.3;
/** Bars and ± : k = 2. */
const K = 2;
/** A limit further off than this many times the last distance is told in words, not drawn. */
const FURTHEST = 2.5;
const BAND_STEPS = 48;

const scaleOf = (system: UnitSystem) =>
  system === 'us'
    ? { unit: 'mi' as const, label: '1000 miles', rate: '100,000 miles', length: 'in' as const, places: 2 }
    : { unit: 'km' as const, label: '1000 km', rate: '100,000 km', length: 'mm' as const, places: 1 };

const thousands = (km: number, system: UnitSystem): number =>
  fromCanonical(km * 1000, scaleOf(system).unit, 'alongTrack') / 1000;

function rateText({ history, system }: WearChartData): string {
  const { rate, length, places } = scaleOf(system);
  const over: WithInterval = system === 'us' ? history.per100000Miles : history.per100000Km;
  const shown = (mm: number): string =>
    fromCanonical(mm, length, 'crossLength').toFixed(places).replace('-', '−');
  return `${shown(over.value)} ${length} per ${rate} (95 %: ${shown(over.low)} to ${shown(over.high)}; ${intervalText(history)}).`;
}

/**
 * A feature of one wheel against the distance it had run: dated readings with their uncertainty, the
 * fitted line with its 95 % band, the limit and where the line reaches it.
 */
export function wearChart(data: WearChartData, { width }: { readonly width: number }): Figure {
  const { history, system, limit, dates } = data;
  const { length, label } = scaleOf(system);
  const shown = (mm: number): number => fromCanonical(mm, length, 'crossLength');
  const { points, reach, limitMm } = history;
  const lastKm = points[points.length - 1]?.distanceRunKm ?? 1;
  const atKm = reach?.kind === 'reached' && reach.atKm > 0 ? reach.atKm : null;
  const drawReach = atKm !== null && atKm <= FURTHEST * lastKm;
  const toKm =
    Math.max(
      lastKm,
      drawReach ? Math.min(reach?.kind === 'reached' ? (reach.highKm ?? atKm) : 0, FURTHEST * lastKm) : 0,
    ) * 1.08;
  const ends = [0, toKm].map((km) => wearLineAt(history, km));
  const values = [
    ...points.flatMap(({ valueMm, uMm }) => [valueMm - K * uMm, valueMm + K * uMm]),
    ...ends.map(({ valueMm }) => valueMm),
    ...(limitMm === null ? [] : [limitMm]),
  ];
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const room = Math.max(0.5, high - low) * 0.1;
  const frame = { x: LEFT, y: 26, width: width - LEFT - EDGE - 8, height: HEIGHT };
  const plot = plotFrame(
    frame,
    { from: 0, to: thousands(toKm, system), ticks: Math.max(3, Math.floor(width / 90)), text: axisText },
    { from: shown(low - room), to: shown(high + room), ticks: 6, text: axisText },
    true,
  );
  const at = (km: number, mm: number): Point => {
    const [x, y] = plot.at(thousands(km, system), shown(mm));
    return [x, Math.min(Math.max(y, frame.y), frame.y + frame.height)];
  };
  const steps = Array.from({ length: BAND_STEPS + 1 }, (_, i) => (toKm * i) / BAND_STEPS);
  const edge = (side: 1 | -1): readonly Point[] =>
    steps.map((km) => {
      const { valueMm, halfMm } = wearLineAt(history, km);
      return at(km, valueMm + side * halfMm);
    });
  const [upper, lower] = [edge(1), edge(-1)];
  const fitted: readonly Point[] = [0, lastKm].map((km) => at(km, wearLineAt(history, km).valueMm));
  const beyond: readonly Point[] = [lastKm, toKm].map((km) => at(km, wearLineAt(history, km).valueMm));
  const limitLine: readonly Point[] = limitMm === null ? [] : [at(0, limitMm), at(toKm, limitMm)];

  const limitName = limit === null || limitMm === null ? [] : limitLabel(limit, at(0, limitMm), frame);
  const bars = points.map(({ distanceRunKm, valueMm, uMm }) => ({
    dot: at(distanceRunKm, valueMm),
    top: at(distanceRunKm, valueMm + K * uMm),
    bottom: at(distanceRunKm, valueMm - K * uMm),
  }));
  const rects = placeLabels(
    bars.map(({ top }, i) => ({ anchor: top, width: textWidth(dates[i] ?? '', LETTER), height: LETTER })),
    frame,
    [upper, lower, fitted, beyond, limitLine, ...bars.map(({ top, bottom }) => [top, bottom])].filter(
      (each) => each.length > 1,
    ),
    [
      ...bars.map(({ dot: [x, y] }) => ({ x: x - 5, y: y - 5, width: 10, height: 10 })),
      ...limitName.flatMap((shape) =>
        shape.type === 'text'
          ? [{ x: shape.x, y: shape.y - LETTER, width: textWidth(shape.text, LETTER), height: LETTER + 3 }]
          : [],
      ),
    ],
  );
  const cap = ([x, y]: Point): Shape => line([x - 4, y], [x + 4, y], pen('mark', 1.2));
  const reached = reachShapes(history, drawReach, toKm, at);
  const axisY = frame.y + HEIGHT + 31;
  const notes = [
    rateText(data),
    reachText(data.history, data.limit, data.system),
    'Bars: k = 2. Band: 95 % of the line. Broken beyond the last reading.',
  ].flatMap((text, i) =>
    wrapText(text, width - 2 * EDGE, LETTER, i === 0 ? 'bold' : 'normal').map((each) => ({ each, i })),
  );
  return {
    width,
    height: axisY + (notes.length + 1) * LINE,
    title: `${data.feature} over the distance run, ${data.name}`,
    description: `${points
      .map(
        ({ distanceRunKm, valueMm }, i) =>
          `${dates[i] ?? ''}: ${distanceRunText(distanceRunKm, system)}, ${formatMeasure(valueMm, { dimension: 'crossLength', system, form: 'decimal' })}`,
      )
      .join('; ')}. ${rateText(data)} ${reachText(data.history, data.limit, data.system)}`,
    shapes: [
      words(EDGE, LETTER + 3, `${data.feature}, ${length}`, { bold: true }),
      ...plot.shapes,
      area([...upper, ...[...lower].reverse()], 'shade', undefined, 0.75),
      open(upper, pen('wheel', 0.6, [2, 2])),
      open(lower, pen('wheel', 0.6, [2, 2])),
      ...(limitLine.length === 0 ? [] : [open(limitLine, pen('limit', 1.3, [7, 3]))]),
      ...limitName,
      open(fitted, pen('wheel', 1.8)),
      open(beyond, pen('wheel', 1.4, [5, 3])),
      ...reached,
      ...bars.flatMap(({ dot: [cx, cy], top, bottom }): Shape[] => [
        line(top, bottom, pen('mark', 1.2)),
        cap(top),
        cap(bottom),
        { type: 'circle', cx, cy, r: 3.4, fill: 'mark' },
      ]),
      ...rects.flatMap((rect, i) =>
        rect === null ? [] : [words(rect.x, rect.y + LETTER * 0.82, dates[i] ?? '')],
      ),
      words(LEFT + frame.width / 2, axisY, `Distance run, ${label}`, { anchor: 'middle' }),
      ...notes
        .map(({ each, i }, row) =>
          lines(EDGE, axisY + (row + 1.4) * LINE, [each], {
            bold: i === 0,
            ...(i === 2 ? { ink: 'faint' as const } : {}),
          }),
        )
        .flat(),
    ],
  };
}

/** The limit's name beside its line, on the side where the plot has more room. */
function limitLabel(limit: string, [x, y]: Point, frame: Rect): readonly Shape[] {
  const [text = ''] = wrapText(limit, frame.width - 8, LETTER);
  const above = y > frame.y + frame.height * 0.6;
  return [words(x + 4, above ? y - 4 : y + LETTER + 1, text, { ink: 'limit' })];
}

function reachShapes(
  { reach, limitMm }: WearHistory,
  drawn: boolean,
  toKm: number,
  at: (km: number, mm: number) => Point,
): readonly Shape[] {
  if (!drawn || reach?.kind !== 'reached' || limitMm === null) return [];
  const [cx, cy] = at(reach.atKm, limitMm);
  const diamond: Shape = area(
    [
      [cx, cy - 5],
      [cx + 5, cy],
      [cx, cy + 5],
      [cx - 5, cy],
    ],
    'limit',
  );
  if (reach.lowKm === null || reach.highKm === null) return [diamond];
  const [left] = at(Math.max(0, reach.lowKm), limitMm);
  const [right] = at(Math.min(toKm, reach.highKm), limitMm);
  const end = (x: number): Shape => line([x, cy - 5], [x, cy + 5], pen('limit', 1.6));
  return [
    line([left, cy], [right, cy], pen('limit', 2.4)),
    end(left),
    ...(reach.highKm <= toKm ? [end(right)] : []),
    diamond,
  ];
}

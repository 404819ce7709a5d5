import { ticks } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { fromCanonical, toCanonical } from '../readings/convert';
import type { UnitSystem } from '../readings/unit';
import { arrow } from './pieces/arrow';
import { scaleOf, type Scale } from './pieces/axis';
import { box, LETTER, line, lines, pen, words } from './pieces/draw';
import { drawPanel, panelHeadHeight, type Panel } from './pieces/panel';
import { marker } from './pieces/marker';
import { shiftApart } from './pieces/shift-labels';
import type { Figure, Shape } from './shapes';
import { textWidth, wrapText } from './text-width';

export type ChartMark = {
  readonly number: number;
  readonly fromM: number;
  /** NaN: a mark without a known end. */
  readonly toM: number;
  readonly rail: 'left' | 'right';
  readonly label: string;
  readonly isPod: boolean;
};

/** A derailed vehicle, by where its leading axle came to rest. */
export type ChartVehicle = { readonly label: string; readonly atM: number };

/** Everything the chart shows; positions ascending, in m from the POD in the direction of travel. */
export type TrackChartData = {
  readonly system: UnitSystem;
  readonly positionsM: readonly number[];
  readonly panels: readonly Panel[];
  readonly marks: readonly ChartMark[];
  readonly vehicles: readonly ChartVehicle[];
  /** The stretch shown, m from the POD; left out, all there is. See `chartWindow`. */
  readonly window?: { readonly fromM: number; readonly toM: number };
  /** Whose limits are drawn: "Class 3, 49 CFR 213"; '' when none. */
  readonly limitsFrom: string;
  /** Conditions a reader must know. */
  readonly remarks: readonly string[];
};

export type TrackChartOptions = {
  /** Full width of the figure. On paper the width that is there; the chart takes what its scale needs. */
  readonly width: number;
  /** Height of one panel's plotted area. */
  readonly panelHeight?: number;
  /** 'fit' fills the width; 'paper' draws at a stated scale, 96 units to the inch of paper. */
  readonly lengthScale?: 'fit' | 'paper' | LengthScale;
};

/** Scales offered on paper: ft to the inch, or 1 : n. */
const FEET_PER_INCH = [5, 10, 20, 30, 40, 50, 60, 80, 100, 120, 150, 200, 300, 400, 600, 1000];
const METRIC_SCALES = [50, 100, 200, 250, 400, 500, 750, 1000, 1250, 1500, 2000, 2500, 5000, 10000];
const UNITS_PER_INCH = 96;
const UNITS_PER_M = UNITS_PER_INCH / 0.0254;

export type LengthScale = { readonly unitsPerM: number; readonly label: string };

/** The largest listed scale at which `lengthM` fits into `width` figure units of paper. */
export function paperScale(lengthM: number, width: number, system: UnitSystem): LengthScale {
  if (system === 'us') {
    const fits = (feet: number): boolean =>
      (fromCanonical(lengthM, 'ft', 'alongTrack') / feet) * UNITS_PER_INCH <= width;
    const feet = FEET_PER_INCH.find(fits) ?? FEET_PER_INCH[FEET_PER_INCH.length - 1]!;
    return {
      unitsPerM: UNITS_PER_INCH / toCanonical(feet, 'ft', 'alongTrack'),
      label: `1 in = ${feet} ft (1:${feet * 12})`,
    };
  }
  const ratio =
    METRIC_SCALES.find((n) => (lengthM / n) * UNITS_PER_M <= width) ??
    METRIC_SCALES[METRIC_SCALES.length - 1]!;
  return { unitsPerM: UNITS_PER_M / ratio, label: `1:${ratio}` };
}

const NARROW = 600;
const AXIS_HEIGHT = 40;
const PANEL_GAP = 10;

type KeyItem = { readonly width: number; readonly draw: (x: number, y: number) => readonly Shape[] };

const HEAD_KEY: readonly KeyItem[] = [
  {
    width: 40 + textWidth('direction of travel', LETTER, 'bold'),
    draw: (x, y) => [
      ...arrow([x, y - 4], [x + 34, y - 4], { width: 1.6 }),
      words(x + 40, y, 'direction of travel', { bold: true }),
    ],
  },
  {
    width: 14 + textWidth('disturbed, repaired or not said', LETTER),
    draw: (x, y) => [
      ...marker('dot', x + 5, y - 4, 'ink', true),
      words(x + 14, y, 'disturbed, repaired or not said'),
    ],
  },
  {
    width: 18 + textWidth('beyond the limit', LETTER),
    draw: (x, y) => [
      { type: 'circle', cx: x + 6, cy: y - 4, r: 5.5, stroke: pen('limit', 1.3) },
      words(x + 18, y, 'beyond the limit'),
    ],
  },
  {
    width: 50 + textWidth('marks: left, right rail', LETTER),
    draw: (x, y) => [
      line([x, y - 4], [x + 20, y - 4], pen('mark', 3)),
      line([x + 24, y - 4], [x + 44, y - 4], pen('mark', 3, [4, 2])),
      words(x + 50, y, 'marks: left, right rail'),
    ],
  },
];

/** A wheel seen from the side. */
const axle = (x: number, y: number): readonly Shape[] => [
  { type: 'circle', cx: x, cy: y, r: 4.5, stroke: pen('ink', 1.4) },
  { type: 'circle', cx: x, cy: y, r: 1.2, fill: 'ink' },
];

const AXLE_WORDS = 'leading axle of a derailed vehicle, where it came to rest';

const AXLE_KEY: KeyItem = {
  width: 16 + textWidth(AXLE_WORDS, LETTER),
  draw: (x, y) => [...axle(x + 6, y - 4), words(x + 16, y, AXLE_WORDS)],
};

const HEAD_ROW = 18;

function headShapes(
  left: number,
  right: number,
  key: readonly KeyItem[],
): { readonly shapes: readonly Shape[]; readonly height: number } {
  const shapes: Shape[] = [];
  let x = left;
  let row = 0;
  for (const { width, draw } of key) {
    if (x > left && x + width > right) {
      x = left;
      row += 1;
    }
    shapes.push(...draw(x, 16 + row * HEAD_ROW));
    x += width + 20;
  }
  return { shapes, height: (row + 1) * HEAD_ROW + 8 };
}

const MARK_ROW = 18;

/** Marks as numbered bars on their own rows, so that none lies on another. */
function markShapes(
  marks: readonly ChartMark[],
  x: (m: number) => number,
  left: number,
  right: number,
  top: number,
): { readonly shapes: Shape[]; readonly height: number } {
  const rowEnds: number[] = [];
  const shapes: Shape[] = [];
  for (const mark of [...marks].sort((a, b) => a.fromM - b.fromM)) {
    if (!Number.isFinite(mark.fromM)) continue;
    const from = Math.min(Math.max(x(mark.fromM), left), right);
    const to = Number.isFinite(mark.toM) ? Math.min(Math.max(x(mark.toM), left), right) : from;
    const [low, high] = from < to ? [from, to] : [to, from];
    const badge = Math.min(Math.max(low - 8, left + 7), right - 7);
    const end = Math.max(high, badge + 8) + 6;
    let row = rowEnds.findIndex((each) => each <= badge - 8);
    if (row < 0) row = rowEnds.length;
    rowEnds[row] = end;
    const y = top + row * MARK_ROW + MARK_ROW / 2;
    shapes.push({
      type: 'group',
      label: `Mark ${mark.number}: ${mark.label}`,
      shapes: [
        line(
          [low, y],
          [Math.max(high, low + 1.5), y],
          pen('mark', 3, mark.rail === 'left' ? undefined : [4, 2]),
        ),
        line([low, y - 4], [low, y + 4], pen('mark', 1.4)),
        { type: 'circle', cx: badge, cy: y, r: 7, fill: 'paper', stroke: pen('mark', 1.2) },
        words(badge, y + 3.8, String(mark.number), {
          anchor: 'middle',
          bold: mark.isPod,
          size: mark.number > 9 ? 9 : LETTER,
        }),
      ],
    });
  }
  return { shapes, height: rowEnds.length * MARK_ROW };
}

const VEHICLE_ROW = 16;

/** Where each derailed vehicle's leading axle came to rest: a wheel on the axis with the vehicle's name. */
function vehicleShapes(
  vehicles: readonly ChartVehicle[],
  x: (m: number) => number,
  left: number,
  right: number,
  top: number,
): { readonly shapes: Shape[]; readonly height: number } {
  const rowEnds: number[] = [];
  const shapes = [...vehicles]
    .filter(({ atM }) => x(atM) >= left && x(atM) <= right)
    .sort((a, b) => a.atM - b.atM)
    .map(({ label, atM }): Shape => {
      const at = x(atM);
      const long = textWidth(label, LETTER);
      const after = at + 10 + long <= right;
      const start = after ? at - 6 : at - 12 - long;
      let row = rowEnds.findIndex((end) => end <= start);
      if (row < 0) row = rowEnds.length;
      rowEnds[row] = after ? at + 16 + long : at + 10;
      const y = top + row * VEHICLE_ROW + VEHICLE_ROW / 2;
      return {
        type: 'group',
        label: `Leading axle of ${label}`,
        shapes: [
          ...axle(at, y),
          words(after ? at + 9 : at - 9, y + 3.8, label, after ? {} : { anchor: 'end' }),
        ],
      };
    });
  return { shapes, height: rowEnds.length * VEHICLE_ROW };
}

function axisShapes(
  scale: Scale,
  x: (m: number) => number,
  domain: readonly [number, number],
  left: number,
  width: number,
  right: number,
  y: number,
  scaleLabel: string | null,
  toCanonicalM: (shown: number) => number,
): Shape[] {
  const shown = domain.map(scale.toShown) as [number, number];
  const marks = ticks(shown[0], shown[1], Math.max(3, Math.floor(width / 70)));
  const tickText = (tick: number): string => `${tick > 0 ? '+' : ''}${scale.text(tick)}`;
  const name = `Station, ${scale.unitLabel} from the POD`;
  return [
    ...marks.flatMap((tick) => {
      const at = x(toCanonicalM(tick));
      return [
        line([at, y], [at, y + 5], pen('ink', 1)),
        words(Math.min(at, right - textWidth(tickText(tick), LETTER) / 2), y + 17, tickText(tick), {
          anchor: 'middle',
        }),
      ];
    }),
    words(left, y + 33, name, { bold: true }),
    ...(scaleLabel === null ? [] : [words(left, y + 49, `Scale along the track ${scaleLabel}`)]),
  ];
}

/** What a panel shows, in words: the extremes of each series and how many stations have none. */
function panelWords(panel: Panel, data: TrackChartData): string {
  const scale = scaleOf(panel.scale, data.system);
  const along = scaleOf('alongTrack', data.system);
  const parts = panel.series.map((series) => {
    let low = -1;
    let high = -1;
    let missing = 0;
    data.positionsM.forEach((_, i) => {
      const value = series.values[i] ?? NaN;
      if (!Number.isFinite(value)) missing += 1;
      else {
        if (low < 0 || value < series.values[low]!) low = i;
        if (high < 0 || value > series.values[high]!) high = i;
      }
    });
    if (low < 0) return `${series.label} not measured`;
    const round = (value: number): string =>
      scale.unitLabel === 'in' ? scale.text(value) : scale.text(Number(value.toFixed(1)));
    const spot = (i: number): string =>
      `${round(scale.toShown(series.values[i]!))} at ${along.text(Math.round(along.toShown(data.positionsM[i]!)))} ${along.unitLabel}`;
    return `${series.label} from ${spot(low)} to ${spot(high)}${missing > 0 ? `, no reading at ${missing}` : ''}`;
  });
  return `${panel.title} (${scale.unitLabel}): ${parts.join('; ')}.`;
}

/** From the first to the last of stations, marks, derailed vehicles and the POD, with a little room. m. */
export function chartExtent({ positionsM, marks, vehicles }: TrackChartData): readonly [number, number] {
  const places = [
    0,
    ...positionsM,
    ...marks.flatMap((mark) => [mark.fromM, mark.toM]).filter(Number.isFinite),
    ...vehicles.map(({ atM }) => atM),
  ];
  const low = places.reduce((a, b) => Math.min(a, b));
  const high = places.reduce((a, b) => Math.max(a, b));
  const pad = Math.max((high - low) * 0.02, 0.5);
  return [low - pad, high + pad];
}

/** Where the plotted area of a chart drawn to fit `width` lies, figure units: what a cursor goes by. */
export const chartPlot = (width: number): { readonly left: number; readonly width: number } => {
  const narrow = width < NARROW;
  const left = narrow ? 44 : 54;
  return { left, width: width - left - (narrow ? 12 : 112) };
};

const EMPTY = { title: 'Track chart', width: 320, height: 60 };

/**
 * Track geometry against distance along the track, panels below each other on one axis, POD at 0
 * and the train moving to the right. Stations without a reading leave a gap. On paper the scale
 * along the track is one of a short list and is printed; place the figure at 0.75 pt per unit to
 * keep it.
 */
export function trackChart(
  data: TrackChartData,
  { width, panelHeight, lengthScale = 'fit' }: TrackChartOptions,
): Figure {
  const { positionsM, panels, marks } = data;
  if (positionsM.length === 0) {
    return {
      ...EMPTY,
      description: 'No track station has a distance from the POD yet.',
      shapes: [words(12, 34, 'No station has a distance from the POD yet.')],
    };
  }
  const narrow = width < NARROW;
  const height = panelHeight ?? (narrow ? 96 : 104);
  const margin = narrow ? 0 : 112;
  const { left, width: room } = chartPlot(width);

  const [low, high] = data.window ? [data.window.fromM, data.window.toM] : chartExtent(data);
  const paper =
    lengthScale === 'fit'
      ? null
      : lengthScale === 'paper'
        ? paperScale(high - low, room, data.system)
        : lengthScale;
  const plot = paper === null ? room : Math.min(room, (high - low) * paper.unitsPerM);
  const x = scaleLinear()
    .domain([low, paper === null ? high : low + plot / paper.unitsPerM])
    .range([left, left + plot]);
  const xs = positionsM.map((each) => x(each));

  const inView = data.vehicles.some(({ atM }) => x(atM) >= left && x(atM) <= left + plot);
  const head = headShapes(narrow ? 8 : left, width - 4, inView ? [...HEAD_KEY, AXLE_KEY] : HEAD_KEY);
  const drawnMarks = markShapes(marks, x, left, left + plot, head.height + 16);
  const drawnVehicles = vehicleShapes(
    data.vehicles,
    x,
    left,
    left + plot,
    head.height + 16 + drawnMarks.height,
  );
  const panelsTop = head.height + 16 + drawnMarks.height + drawnVehicles.height + 4;
  const podX = x(0);
  const podShown = podX >= left && podX <= left + plot;
  const podLine = (from: number, to: number): Shape =>
    line([podX, from], [podX, to], pen('mark', 1.4, [9, 3, 2, 3]));
  let axisY = panelsTop;
  const drawn = panels.map((panel): Shape => {
    const frame = { x: left, width: plot, y: axisY, height, margin };
    const plotTop = axisY + panelHeadHeight(panel, frame, data.system);
    axisY = plotTop + height + PANEL_GAP;
    const { shapes } = drawPanel(panel, frame, xs, data.system);
    return {
      type: 'group',
      label: panel.title,
      shapes: [...shapes, ...(podShown ? [podLine(plotTop, plotTop + height)] : [])],
    };
  });
  const along = scaleOf('alongTrack', data.system);
  const [podLabel] = shiftApart([podX], [34], left, left + plot) as [number];
  const notes = [
    data.limitsFrom === '' ? 'No limits are drawn.' : `Limits drawn: ${data.limitsFrom}.`,
    ...data.remarks,
  ];
  const noteLines = notes.flatMap((note) => wrapText(note, width - (narrow ? 16 : left + 8), LETTER));
  const remarksTop = axisY + AXIS_HEIGHT + (paper === null ? 8 : 24);

  return {
    width,
    height: remarksTop + noteLines.length * 14 + 4,
    title: 'Track chart',
    description: [
      `${positionsM.length} stations from ${along.text(Math.round(along.toShown(positionsM[0]!)))} to ${along.text(Math.round(along.toShown(positionsM[positionsM.length - 1]!)))} ${along.unitLabel} from the POD, travel from left to right.`,
      ...(paper === null ? [] : [`Scale along the track ${paper.label}.`]),
      ...panels.map((panel) => panelWords(panel, data)),
      ...notes,
    ].join(' '),
    shapes: [
      ...head.shapes,
      ...drawn,
      ...(podShown
        ? [
            podLine(head.height + 14, panelsTop),
            box(podLabel - 16, head.height, 32, 14, { fill: 'mark', radius: 2 }),
            words(podLabel, head.height + 11, 'POD', { anchor: 'middle', bold: true, ink: 'paper' }),
          ]
        : []),
      ...drawnMarks.shapes,
      ...drawnVehicles.shapes,
      line([left, axisY], [left + plot, axisY], pen('ink', 1)),
      ...axisShapes(
        along,
        x,
        x.domain() as [number, number],
        left,
        plot,
        width,
        axisY,
        paper?.label ?? null,
        (shown) => toCanonical(shown, data.system === 'us' ? 'ft' : 'm', 'alongTrack'),
      ),
      ...lines(narrow ? 8 : left, remarksTop + 10, noteLines, { ink: 'faint' }),
    ],
  };
}

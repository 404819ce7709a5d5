import type { DrawnFit, DrawnPlace } from '../findings/turnout/point-drawing';
import { formatMeasure, formatWithUncertainty } from '../readings/format';
import type { UnitSystem } from '../readings/unit';
import { scaleFor } from './outline-view';
import {
  CLEARANCE_NUMBERS,
  clearanceCurve,
  curveRange,
  DEPTH_NUMBERS,
  type CurveRange,
} from './pieces/clearance-curve';
import { area, box, LETTER, line, lines, pen, words } from './pieces/draw';
import { legend, type LegendItem } from './pieces/legend';
import { onPanel, POINT_PEN, pointPanel, RAIL_PEN, STANCE_PENS, type PointView } from './pieces/point-panel';
import { scaleBar } from './pieces/scale-bar';
import type { PointSectionData } from './point-section-data';
import type { Figure, Shape } from './shapes';
import { wrapText } from './text-width';

export type PointSectionLayout = {
  readonly width: number;
  /** `paper`: to a usual ratio at the size the figure is printed. */
  readonly lengthScale?: 'paper' | 'fit';
  /** Only these of the places, to the scale of all. */
  readonly only?: readonly DrawnPlace[];
};

const STANCES = ['square', 'yawed'] as const;

/** Line drawn before what is said of a stance. */
const SAMPLE = 28;
const EDGE = 8;
const LINE = LETTER * 1.3;
/** Between panels beside each other and below each other. */
const BETWEEN = 18;
const BELOW = 20;
/** A panel narrower than this cannot carry its words. */
const LEAST_PANEL = 296;
const MOST_PANEL = 380;
const CURVE = 78;
/** Larger than this a clearance looks like more than it is. */
const MOST_PX_PER_MM = 7;

/** What is seen of the sections, mm: from the gauge line to both sides, above the rail, below the flange. */
const FIELD_MM = 9;
const INSIDE_MM = { least: 25, most: 36, beyondEdge: 5 } as const;
const ABOVE_MM = 7;
const BELOW_TIP_MM = 4;
/** A point lower than this below the flange lies off the drawing. */
const MOST_BELOW_MM = 14;

/** Probabilities are given as the findings give them; nothing is certain. */
const chance = (share: number): string =>
  share < 0.005 ? '< 1 %' : share > 0.995 ? '> 99 %' : `${Math.round(share * 100)} %`;

const short = (mm: number, system: UnitSystem): string =>
  system === 'us'
    ? formatMeasure(mm, { dimension: 'crossLength', unit: 'in', form: 'decimal' })
    : formatMeasure(mm, { dimension: 'crossLength', unit: 'mm' });

const withU = ({ missMm, uMm }: DrawnFit, system: UnitSystem): string =>
  formatWithUncertainty(missMm, uMm, 'crossLength', system).replace(' (k = 2)', '');

/** The value as it stands before its uncertainty, with the same digits. */
const valueAlone = (fit: DrawnFit, system: UnitSystem): string => withU(fit, system).replace(/ ± \S+/, '');

/** "0.05 ± 0.09 in, negative 23 %". */
export const fitWords = (fit: DrawnFit, system: UnitSystem): string =>
  `${withU(fit, system)}, negative ${chance(fit.probabilityNegative)}`;

/** How a place is called: "1 ft behind the tip". */
export function placeTitle(
  { places, system }: Pick<PointSectionData, 'places' | 'system'>,
  { id, label, behindMm }: DrawnPlace,
): string {
  const behind = short(behindMm, system);
  switch (id) {
    case 'tip':
      return places.some((place) => place.id === 'chipFloor' && place.behindMm === 0)
        ? 'Tip, as it would be without its chip'
        : 'Tip';
    case 'chipFloor':
      return behindMm === 0 ? 'Floor of the chip, at the tip' : `Floor of the chip, ${behind} behind the tip`;
    case 'chipEnd':
      return `Where the chip ends, ${behind} behind the tip`;
    case 'behind':
      return `${label} behind the tip`;
  }
}

/** What is said below a section: the miss in both stances, and how steep the flange is where it is least. */
const stanceLines = (place: DrawnPlace, system: UnitSystem) => ({
  square: `square: ${fitWords(place.square, system)}`,
  yawed: `10 mrad: ${fitWords(place.yawed, system)}`,
});

const slopeWords = ({ square: { fit } }: DrawnPlace): string =>
  fit.least === null
    ? 'the flange passes over the top'
    : `flange slopes at ${formatMeasure(fit.least.slopeRad, { dimension: 'angle', unit: '°' })} there`;

/** How much of the section is shown: the flange, and the side of the point unless it lies far beyond its face. */
function seen(data: PointSectionData): { readonly insideMm: number; readonly downMm: number } {
  const { tipDepthMm } = data.square;
  const tops = data.places.map(({ topMm }) => topMm);
  const edges = data.places.map(({ point }) => (point.xMm.length === 0 ? 0 : Math.max(...point.xMm)));
  return {
    insideMm: Math.min(
      INSIDE_MM.most,
      Math.max(INSIDE_MM.least, ...edges.map((edge) => edge + INSIDE_MM.beyondEdge)),
    ),
    downMm: Math.min(tipDepthMm + MOST_BELOW_MM, Math.max(tipDepthMm, ...tops)) + BELOW_TIP_MM,
  };
}

type Grid = {
  readonly columns: number;
  readonly panelWidth: number;
  readonly pxPerMm: number;
  readonly ratio: string | null;
};

function gridOf(
  data: PointSectionData,
  { width, lengthScale = 'fit' }: PointSectionLayout,
  wideMm: number,
): Grid {
  const room = width - 2 * EDGE;
  const columns = Math.max(
    1,
    Math.min(data.places.length, Math.floor((room + BETWEEN) / (LEAST_PANEL + BETWEEN))),
  );
  const panelWidth = Math.min(MOST_PANEL, (room - (columns - 1) * BETWEEN) / columns);
  const { pxPerMm, ratio } = scaleFor(
    wideMm,
    1,
    { width: panelWidth - CURVE - DEPTH_NUMBERS, height: Infinity },
    lengthScale,
  );
  return ratio === null
    ? { columns, panelWidth, pxPerMm: Math.min(MOST_PX_PER_MM, pxPerMm), ratio }
    : { columns, panelWidth, pxPerMm, ratio };
}

type Panel = { readonly shapes: readonly Shape[]; readonly height: number };

function panelShapes(
  data: PointSectionData,
  place: DrawnPlace,
  at: { readonly x: number; readonly y: number; readonly width: number; readonly titleRows: number },
  size: { readonly pxPerMm: number; readonly insideMm: number; readonly downMm: number },
  range: CurveRange,
): Panel {
  const { system } = data;
  const { pxPerMm, insideMm, downMm } = size;
  const top = at.y + at.titleRows * LINE + 4;
  const frame = {
    x: at.x,
    y: top,
    width: (FIELD_MM + insideMm) * pxPerMm,
    height: (ABOVE_MM + downMm) * pxPerMm,
  };
  const view: PointView = { frame, pxPerMm, fieldMm: FIELD_MM, insideMm, aboveMm: ABOVE_MM, side: data.side };
  const [, railTop] = onPanel(view)(0, 0);
  const curve = {
    x: frame.x + frame.width + DEPTH_NUMBERS,
    y: top,
    width: CURVE,
    height: frame.height,
  };
  const axes = top + frame.height + CLEARANCE_NUMBERS + LETTER;
  const below = axes + LINE;
  const said = stanceLines(place, system);
  return {
    height: below + 2 * LINE + 4 - at.y,
    shapes: [
      ...lines(at.x, at.y + LETTER, wrapText(placeTitle(data, place), at.width, LETTER, 'bold'), {
        bold: true,
      }),
      ...pointPanel(data, place, view, valueAlone(place.square, system)),
      ...clearanceCurve(place, curve, range, { topPx: railTop, pxPerMm }, system),
      words(curve.x + curve.width, axes, `depth ↓, clearance →, ${system === 'us' ? 'in' : 'mm'}`, {
        anchor: 'end',
        ink: 'faint',
      }),
      ...STANCES.flatMap((stance, i) => [
        line([at.x, below + i * LINE - 4], [at.x + SAMPLE - 6, below + i * LINE - 4], STANCE_PENS[stance]),
        words(at.x + SAMPLE, below + i * LINE, said[stance]),
      ]),
      words(at.x + SAMPLE, below + 2 * LINE, slopeWords(place)),
    ],
  };
}

const sample =
  (stroke: typeof RAIL_PEN) =>
  (x: number, y: number): readonly Shape[] => [line([x, y - 4], [x + 24, y - 4], stroke)];

const legendItems = ({ outlines }: PointSectionData): readonly LegendItem[] => [
  {
    text: outlines === null ? 'face of the flange, wheelset square' : 'flange, wheelset square',
    sample: sample(STANCE_PENS.square),
  },
  { text: 'at an angle of attack of 10 mrad, seen along the rail', sample: sample(STANCE_PENS.yawed) },
  {
    text: 'stock rail',
    sample: (x, y) => [box(x, y - 8, 24, 8, { fill: 'shade' }), line([x, y - 8], [x + 24, y - 8], RAIL_PEN)],
  },
  {
    text: 'point',
    sample: (x, y) => [
      area(
        [
          [x + 6, y],
          [x + 6, y - 8],
          [x + 15, y - 8],
          [x + 18, y],
        ],
        'seriesB',
        POINT_PEN,
        0.16,
      ),
    ],
  },
  { text: 'gauge line of the stock rail', sample: sample(pen('faint', 0.7, [10, 3, 2, 3])) },
];

/** How the drawing is to be read, for the words that stand with it. */
export function pointSectionNotes({ side }: PointSectionData): readonly string[] {
  return [
    `Looking in the direction of travel: the ${side} point, the flange hard against the ${side} stock rail.`,
    'Beside each section the clearance at every height. Where it is below zero (shaded), the point stands outside the face of the flange (hatched). Dot: the smallest, dimensioned in the section with the wheelset square to the track.',
    'Negative: share of the draws with a clearance below zero. At the tip or a chip that is an edge that can be struck; farther back, where the point is thick, it is normal running for a steep flange.',
  ];
}

const simpleNote = ({ outlines }: PointSectionData): readonly string[] =>
  outlines === null
    ? ['From simple readings: straight flange face, upright stock rail, no outline of either.']
    : [];

function descriptionOf(data: PointSectionData, places: readonly DrawnPlace[]): string {
  return [
    ...simpleNote(data),
    ...places.map((place) => {
      const { square, yawed } = stanceLines(place, data.system);
      return `${placeTitle(data, place)}: ${square}; ${yawed}; ${slopeWords(place)}.`;
    }),
  ].join(' ');
}

/**
 * Sections across the track at a facing point, one for each distance from the tip that was read and for
 * the ends of a chip: stock rail, point, and the flange hard against the stock rail, square and at an angle
 * of attack; beside each the clearance at every height. All to one scale.
 */
export function pointSection(data: PointSectionData, layout: PointSectionLayout): Figure {
  const { width, only: places = data.places } = layout;
  const { system } = data;
  const { insideMm, downMm } = seen(data);
  const { columns, panelWidth, pxPerMm, ratio } = gridOf(data, layout, FIELD_MM + insideMm);
  const range = curveRange(data.places);
  const shapes: Shape[] = [];
  let y = EDGE;
  for (let from = 0; from < places.length; from += columns) {
    const row = places.slice(from, from + columns);
    const titleRows = Math.max(
      ...row.map((place) => wrapText(placeTitle(data, place), panelWidth, LETTER, 'bold').length),
    );
    const panels = row.map((place, i) =>
      panelShapes(
        data,
        place,
        { x: EDGE + i * (panelWidth + BETWEEN), y, width: panelWidth, titleRows },
        { pxPerMm, insideMm, downMm },
        range,
      ),
    );
    shapes.push(
      ...panels.map((panel, i) => ({
        type: 'group' as const,
        label: row[i] && placeTitle(data, row[i]),
        shapes: panel.shapes,
      })),
    );
    y += Math.max(...panels.map(({ height }) => height)) + BELOW;
  }
  const keys = legend(legendItems(data), EDGE, width - EDGE, y);
  const barY = keys.bottom + 16;
  const bar = scaleBar(EDGE, barY, pxPerMm, system, 150);
  const scaleText =
    ratio === null ? 'All sections to one scale.' : `All sections to the scale of ${ratio} as printed.`;
  const notes = [`± U (k = 2). ${scaleText}`, ...simpleNote(data)].flatMap((text) =>
    wrapText(text, width - 2 * EDGE, LETTER),
  );
  return {
    width,
    height: barY + (notes.length + 0.6) * LINE,
    title: `Flange, point and stock rail: ${data.name}`,
    description: descriptionOf(data, places),
    shapes: [
      ...shapes,
      ...keys.shapes,
      ...bar.shapes,
      ...notes.map((each, i) => words(EDGE, barY + (i + 1.2) * LINE, each)),
    ],
  };
}

/** The same in as many drawings as are needed for none to be higher than `mostHeight`, figure units. */
export function pointSectionPages(
  data: PointSectionData,
  layout: Omit<PointSectionLayout, 'only'>,
  mostHeight: number,
): readonly Figure[] {
  const pages: Figure[] = [];
  let from = 0;
  while (from < data.places.length) {
    let to = data.places.length;
    const drawn = (): Figure => pointSection(data, { ...layout, only: data.places.slice(from, to) });
    let figure = drawn();
    while (figure.height > mostHeight && to > from + 1) {
      to -= 1;
      figure = drawn();
    }
    pages.push(figure);
    from = to;
  }
  return pages;
}

import type { FlangeClearance } from '../contact/clearance';
import { NOMINAL_AMPLITUDE_MM } from '../contact/conicity';
import type { ContactSweep } from '../contact/sweep';
import { fromCanonical } from '../readings/convert';
import type { Result } from '../readings/result';
import type { UnitSystem } from '../readings/unit';
import { LETTER, line, open, pen, words, type Point } from './pieces/draw';
import { legend, type LegendItem } from './pieces/legend';
import { axisText, plotFrame, type PlotAxis } from './pieces/plot';
import type { Figure, Shape } from './shapes';
import { textWidth, wrapText } from './text-width';

export type ContactCurvesData = {
  readonly system: UnitSystem;
  readonly sweep: ContactSweep;
  /** Null where it could not be found. */
  readonly clearance: FlangeClearance | null;
  /** Equivalent conicity at an amplitude of 3 mm. */
  readonly conicity: Result<number>;
};

const EDGE = 8;
const LEFT = 52;
const LINE = LETTER * 1.3;
const HEIGHT = 118;
const HEAD = 20;
const RIGHT_WHEEL = pen('wheel', 1.7);
const LEFT_WHEEL = pen('seriesA', 1.7, [6, 2.5]);
const FLANGE = pen('limit', 1.1, [7, 3]);
const DEGREE = Math.PI / 180;

const span = (values: readonly number[], least: number): readonly [number, number] => {
  const [low, high] = [Math.min(0, ...values), Math.max(0, ...values)];
  const room = Math.max(least, high - low) * 0.06;
  return [low - room, high + room];
};

function conicityText({ conicity }: ContactCurvesData): string {
  const name = `Equivalent conicity at ${NOMINAL_AMPLITUDE_MM} mm`;
  return conicity.ok
    ? `${name}: ${conicity.value.toFixed(3)} (integration of EN 15302).`
    : `${name} could not be found. ${conicity.message}`;
}

function clearanceText({ clearance, system }: ContactCurvesData): string {
  if (clearance === null)
    return 'Flange contact was not found: see that both flanges and gauge faces are traced.';
  const size = (mm: number): string =>
    `${fromCanonical(mm, system === 'us' ? 'in' : 'mm', 'crossLength').toFixed(system === 'us' ? 3 : 1)} ${system === 'us' ? 'in' : 'mm'}`;
  return `Flange bears (contact at 45° or steeper) ${size(clearance.leftMm)} to the left and ${size(clearance.rightMm)} to the right of the middle.`;
}

/**
 * Rolling-radius difference and contact angles against the lateral shift of the wheelset, from a sweep,
 * with the shifts at which a flange begins to bear and the equivalent conicity in words.
 */
export function contactCurves(data: ContactCurvesData, { width }: { readonly width: number }): Figure {
  const { sweep, clearance, system } = data;
  const unit = system === 'us' ? 'in' : 'mm';
  const shown = (mm: number): number => fromCanonical(mm, unit, 'crossLength');
  const states = [...sweep.states].sort((a, b) => a.shiftMm - b.shiftMm);
  const shifts = states.map(({ shiftMm }) => shown(shiftMm));
  const difference = states.map(({ radiusDifferenceMm }) => shown(radiusDifferenceMm));
  const angles = (side: 'left' | 'right'): readonly number[] =>
    states.map((state) => state[side].points[0].contactAngleRad / DEGREE);
  const [left, right] = [angles('left'), angles('right')];
  const x: PlotAxis = {
    from: Math.min(...shifts, 0),
    to: Math.max(...shifts, shown(0.1)),
    ticks: Math.max(4, Math.floor(width / 90)),
    text: axisText,
  };
  const [lowR, highR] = span(difference, shown(1));
  const [lowA, highA] = span([...left, ...right], 5);
  const frame = (y: number) => ({ x: LEFT, y, width: width - LEFT - EDGE - 6, height: HEIGHT });
  const firstY = HEAD + 16;
  const secondY = firstY + HEIGHT + HEAD + 12;
  const first = plotFrame(frame(firstY), x, { from: lowR, to: highR, ticks: 5, text: axisText }, false);
  const second = plotFrame(
    frame(secondY),
    x,
    { from: lowA, to: highA, ticks: 5, text: (value) => `${axisText(value)}°` },
    true,
  );
  const bears =
    clearance === null
      ? []
      : (
          [
            ['left flange', -clearance.leftMm],
            ['right flange', clearance.rightMm],
          ] as const
        ).filter(([, mm]) => shown(mm) >= x.from && shown(mm) <= x.to);
  const marks = bears.flatMap(([name, mm]): Shape[] => {
    const [px] = first.at(shown(mm), 0);
    const wide = textWidth(name, LETTER) / 2;
    return [
      line([px, firstY - 3], [px, firstY + HEIGHT], FLANGE),
      line([px, secondY], [px, secondY + HEIGHT], FLANGE),
      words(Math.min(Math.max(px, LEFT + wide), width - EDGE - wide), firstY - 6, name, {
        anchor: 'middle',
        ink: 'limit',
      }),
    ];
  });
  const items: readonly LegendItem[] = [
    { text: 'left wheel', sample: (px, py) => [line([px, py - 4], [px + 24, py - 4], LEFT_WHEEL)] },
    { text: 'right wheel', sample: (px, py) => [line([px, py - 4], [px + 24, py - 4], RIGHT_WHEEL)] },
    ...(bears.length > 0
      ? [
          {
            text: 'flange begins to bear',
            sample: (px: number, py: number) => [line([px, py - 4], [px + 24, py - 4], FLANGE)],
          },
        ]
      : []),
  ];
  const axisY = secondY + HEIGHT + 30;
  const key = legend(items, EDGE, width - EDGE, axisY + 4);
  const notes = [conicityText(data), clearanceText(data)].flatMap((text) =>
    wrapText(text, width - 2 * EDGE, LETTER),
  );
  const plotted = (values: readonly number[], at: (px: number, py: number) => Point): readonly Point[] =>
    values.map((value, i) => at(shifts[i] ?? NaN, value));
  return {
    width,
    height: key.bottom + (notes.length + 0.6) * LINE,
    title: 'Rolling-radius difference and contact angle over lateral shift',
    description: [conicityText(data), clearanceText(data)].join(' '),
    shapes: [
      words(EDGE, LETTER + 2, `Rolling radius, right less left, ${unit}`, { bold: true }),
      ...first.shapes,
      open(plotted(difference, first.at), pen('ink', 1.8)),
      words(EDGE, secondY - 6, 'Contact angle', { bold: true }),
      ...second.shapes,
      open(plotted(left, second.at), LEFT_WHEEL),
      open(plotted(right, second.at), RIGHT_WHEEL),
      ...marks,
      words(LEFT + (width - LEFT - EDGE) / 2, axisY, `Lateral shift, ${unit}: left (−), right (+)`, {
        anchor: 'middle',
      }),
      ...key.shapes,
      ...notes.map((text, i) => words(EDGE, key.bottom + (i + 0.9) * LINE, text)),
    ],
  };
}

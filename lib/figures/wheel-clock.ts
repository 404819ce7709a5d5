import { fromCanonical } from '../readings/convert';
import { formatMeasure, formatWithUncertainty } from '../readings/format';
import type { UnitSystem } from '../readings/unit';
import { fitBackToBack, type BackToBackFit } from '../wheel/back-to-back';
import { arrow } from './pieces/arrow';
import { arc } from './pieces/curve';
import { area, LETTER, line, lines, open, pen, words, type Point } from './pieces/draw';
import type { Figure, Shape } from './shapes';
import { textWidth, wrapText } from './text-width';

export type ClockReading = {
  /** Clockwise from the chalk mark, rad. */
  readonly clockRad: number;
  readonly valueMm: number;
  /** Standard uncertainty, mm. */
  readonly uMm: number;
};

export type WheelClockData = {
  readonly system: UnitSystem;
  /** What the wheelset is called. */
  readonly name: string;
  readonly readings: readonly ClockReading[];
  /** Null when it was read at too few places to tell how it varies. */
  readonly fit: BackToBackFit | null;
};

/** Room the clock takes, letters included. */
const WIDE = 270;
const HIGH = 250;
const CENTRE: Point = [WIDE / 2, 128];
/** Radius at which the mean is drawn, and the furthest a deviation may reach from it. */
const MEAN_PX = 58;
const REACH_PX = 24;
/** Radius of the arc that shows how well the direction of the swing is known. */
const ARC_PX = MEAN_PX + REACH_PX + 4;

const at = (clockRad: number, radius: number): Point => [
  CENTRE[0] + radius * Math.sin(clockRad),
  CENTRE[1] - radius * Math.cos(clockRad),
];

/** Points of the drawn curve and of its band. */
const CURVE = Array.from({ length: 181 }, (_, i) => (i / 180) * 2 * Math.PI);
/** Bars, bands and ±. */
const K = 2;

/**
 * Standard uncertainty of the fitted curve at a place of the clock, mm: it is a sum of the readings, each
 * with the share it has in a fit where it alone is 1 and the others 0; root of the sum of squares times
 * the largest uncertainty of a reading, as the fit has it. Null where the readings carry no fit.
 */
function uOfCurve(readings: readonly ClockReading[]): ((clockRad: number) => number) | null {
  const shares = readings.map((_, i) =>
    fitBackToBack(
      readings.map(({ clockRad }, j) => ({ clockRad, backToBackMm: i === j ? 1 : 0 })),
      1,
    ),
  );
  const fits = shares.flatMap((share) => (share.kind === 'fitted' ? [share] : []));
  if (fits.length === 0 || fits.length < readings.length) return null;
  const u = Math.max(...readings.map(({ uMm }) => uMm));
  return (clockRad) =>
    u *
    Math.hypot(
      ...fits.map(
        ({ meanMm, amplitudeMm, phaseRad }) => meanMm + amplitudeMm * Math.cos(clockRad - phaseRad),
      ),
    );
}

/** Deviation from the mean in px per mm; never so large that less than a 1/16 in fills the picture. */
function pxPerMm({ readings, fit }: WheelClockData, middle: number): number {
  const u = uOfCurve(readings);
  const furthest = Math.max(
    1.6,
    (fit?.amplitudeMm ?? 0) + (fit === null || u === null ? 0 : K * Math.max(...CURVE.map(u))),
    ...readings.map(({ valueMm, uMm }) => Math.abs(valueMm - middle) + K * uMm),
  );
  return REACH_PX / furthest;
}

/** How far round the clock the widest place may lie: an arc with an end tick to each side. */
function phaseArc({ phaseRad, uPhaseRad }: BackToBackFit): readonly Shape[] {
  const half = Math.min(K * uPhaseRad, Math.PI);
  const [from, to] = [phaseRad - half, phaseRad + half];
  const end = (angle: number): Shape => line(at(angle, ARC_PX - 3), at(angle, ARC_PX + 3), pen('wheel', 1.2));
  // The clock starts at the top; arcs of the drawing start to the right.
  const turn = Math.PI / 2;
  return [open(arc(CENTRE, ARC_PX, from - turn, to - turn), pen('wheel', 1.2)), end(from), end(to)];
}

function label(reading: ClockReading, system: UnitSystem): Shape[] {
  const degrees = Math.round((reading.clockRad * 180) / Math.PI) % 360;
  // To the instrument's division, whose half-width is √3·u (JCGM 100:2008, 4.3.7): as it was entered.
  const halfWidth = Math.sqrt(3) * reading.uMm;
  const value = formatMeasure(reading.valueMm, {
    dimension: 'crossLength',
    system,
    withUnit: false,
    halfWidth,
  });
  const [x, y] = at(reading.clockRad, MEAN_PX + REACH_PX + 10);
  const side = Math.sin(reading.clockRad);
  const anchor = Math.abs(side) < 0.3 ? 'middle' : side > 0 ? 'start' : 'end';
  const width = Math.max(textWidth(value, LETTER, 'bold'), textWidth(`${degrees}°`, LETTER));
  const room = anchor === 'start' ? WIDE - 2 - width : anchor === 'end' ? 2 + width : x;
  const placed = anchor === 'start' ? Math.min(x, room) : anchor === 'end' ? Math.max(x, room) : x;
  const down = Math.cos(reading.clockRad) < -0.3 ? 10 : Math.cos(reading.clockRad) > 0.3 ? -14 : -3;
  return [
    words(placed, y + down, `${degrees}°`, { anchor, ink: 'faint' }),
    words(placed, y + down + 13, value, { anchor, bold: true }),
  ];
}

function summary(
  { fit, readings, system, name }: WheelClockData,
  scale: number,
): readonly { text: string; bold?: boolean }[] {
  const length = (value: number, u: number): string =>
    formatWithUncertainty(value, u, 'crossLength', system).replace(' (k = 2)', '');
  const exaggerated = Math.round(scale / (MEAN_PX / 460) / 10) * 10;
  const drawn = { text: `Deviations are drawn about ${exaggerated} times as large as the wheel.` };
  if (fit === null)
    return [
      { text: name, bold: true },
      {
        text: `Read at ${readings.length} place${readings.length === 1 ? '' : 's'}: how back-to-back varies round the wheel is not known. Three places 120° apart are needed.`,
      },
      ...(readings.length === 0 ? [] : [drawn]),
    ];
  const sure = fit.amplitudeMm > K * fit.uAmplitudeMm;
  return [
    { text: name, bold: true },
    { text: `Mean ${length(fit.meanMm, fit.uMeanMm)}`, bold: true },
    { text: `Swing ${length(fit.swingMm, fit.uSwingMm)}`, bold: true },
    { text: `Least ${length(fit.leastMm, fit.uLeastMm)}` },
    {
      text: sure
        ? `Widest at ${Math.round((fit.phaseRad * 180) / Math.PI) % 360}° ± ${Math.ceil((K * fit.uPhaseRad * 180) / Math.PI)}° (arrow and arc).`
        : 'The swing is no larger than its uncertainty: no direction is shown.',
    },
    {
      text:
        fit.residualMm === null
          ? 'Three readings: the curve passes through all of them.'
          : `Readings scatter ${formatMeasure(fit.residualMm, { dimension: 'crossLength', system, form: 'decimal' })} about the curve.`,
    },
    { text: 'Bars, band and ±: k = 2. Broken circle: the mean.' },
    drawn,
  ];
}

/**
 * Back-to-back round one wheelset, as looked at from outside with 0° at the top: readings with
 * their uncertainty as bars along the radius, the fitted first harmonic, and its numbers in words.
 */
export function wheelClock(data: WheelClockData, { width }: { readonly width: number }): Figure {
  const { readings, fit, system, name } = data;
  const known = readings.filter(
    ({ clockRad, valueMm }) => Number.isFinite(clockRad) && Number.isFinite(valueMm),
  );
  const middle =
    fit?.meanMm ??
    (known.length === 0 ? 0 : known.reduce((sum, each) => sum + each.valueMm, 0) / known.length);
  const scale = pxPerMm({ ...data, readings: known }, middle);
  const radius = (mm: number): number => MEAN_PX + (mm - middle) * scale;
  const beside = width >= WIDE + 170;
  const textX = beside ? WIDE + 12 : 8;
  const entries = summary({ ...data, readings: known }, scale).flatMap(({ text, bold }) =>
    wrapText(text, width - textX - 8, LETTER, bold ? 'bold' : 'normal').map((each) => ({ each, bold })),
  );
  const textTop = beside ? 28 : HIGH + 18;
  const shapes: Shape[] = [
    { type: 'circle', cx: CENTRE[0], cy: CENTRE[1], r: MEAN_PX, stroke: pen('faint', 1, [4, 3]) },
    { type: 'circle', cx: CENTRE[0], cy: CENTRE[1], r: 12, fill: 'shade', stroke: pen('wheel', 1.2) },
    ...known.map(({ clockRad }) =>
      line(at(clockRad, 12), at(clockRad, MEAN_PX - REACH_PX), pen('faint', 0.7, [2, 2])),
    ),
  ];
  if (fit !== null) {
    const curveMm = (angle: number): number => fit.meanMm + fit.amplitudeMm * Math.cos(angle - fit.phaseRad);
    const u = uOfCurve(known);
    if (u !== null) {
      const edge = (side: 1 | -1): readonly Point[] =>
        CURVE.map((angle) => at(angle, radius(curveMm(angle) + side * K * u(angle))));
      const [outer, inner] = [edge(1), edge(-1)];
      shapes.push(
        // One loop each way: what lies between them is filled.
        area([...outer, ...[...inner].reverse()], 'wheel', undefined, 0.16),
        open(outer, pen('wheel', 0.6, [2, 2])),
        open(inner, pen('wheel', 0.6, [2, 2])),
      );
    }
    shapes.push(
      open(
        CURVE.map((angle) => at(angle, radius(curveMm(angle)))),
        pen('wheel', 1.8),
      ),
    );
    if (fit.amplitudeMm > K * fit.uAmplitudeMm)
      shapes.push(
        ...arrow(at(fit.phaseRad, 14), at(fit.phaseRad, MEAN_PX - REACH_PX - 2), {
          ink: 'wheel',
          width: 1.8,
        }),
        ...phaseArc(fit),
      );
  }
  for (const reading of known) {
    const [low, high] = [
      radius(reading.valueMm - K * reading.uMm),
      radius(reading.valueMm + K * reading.uMm),
    ];
    const [cx, cy] = at(reading.clockRad, radius(reading.valueMm));
    const cap = (r: number): Shape => {
      const [x, y] = at(reading.clockRad, r);
      const [dx, dy] = [3.5 * Math.cos(reading.clockRad), 3.5 * Math.sin(reading.clockRad)];
      return line([x - dx, y - dy], [x + dx, y + dy], pen('mark', 1.2));
    };
    shapes.push(
      line(at(reading.clockRad, low), at(reading.clockRad, high), pen('mark', 1.2)),
      cap(low),
      cap(high),
      { type: 'circle', cx, cy, r: 3.4, fill: 'mark' },
      ...label(reading, system),
    );
  }
  const unit = system === 'us' ? 'in' : 'mm';
  return {
    width,
    height: Math.max(HIGH + 8, textTop + entries.length * LETTER * 1.3 + 4),
    title: `Back-to-back round the wheel, ${name}`,
    description: `Readings in ${unit}: ${
      known.length === 0
        ? 'none'
        : known
            .map(
              ({ clockRad, valueMm }) =>
                `${Math.round((clockRad * 180) / Math.PI)}° ${fromCanonical(valueMm, unit, 'crossLength').toFixed(unit === 'in' ? 3 : 1)}`,
            )
            .join(', ')
    }. ${summary({ ...data, readings: known }, scale)
      .slice(1)
      .map(({ text }) => text)
      .join(' ')}`,
    shapes: [
      words(8, 12, `back-to-back, ${unit}`, { ink: 'faint' }),
      ...shapes,
      ...entries.flatMap(({ each, bold }, i) => lines(textX, textTop + i * LETTER * 1.3, [each], { bold })),
    ],
  };
}

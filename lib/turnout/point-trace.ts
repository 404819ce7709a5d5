import { type Trace } from '../case/trace';
import { type Method } from '../findings/finding';
import { type Outline } from '../outline/outline';
import { outlineOfPairs } from '../outline/pairs';
import { placed, type Placing } from '../outline/placing';
import { ok, refuse, type Result } from '../readings/result';
import { combine, standardUncertaintyFromHalfWidth } from '../readings/uncertainty';
import { DEPTH_STEP_MM } from './flange-at-rail';
import { type PointSide } from './point-side';
import { registerPoint } from './register-point';

/** Depth below the highest part at which the gauge-side edge is taken, under the rounding of the top. 1/16 in. */
export const EDGE_DEPTH_MM = 1.5875;
/** Depth of the second thickness, and how far down the slope is taken: that of the gauge line, 5/8 in. */
export const LOWER_MM = 15.875;
/** A shorter stretch than this has no slope that could be relied on. 1/4 in. */
const LEAST_SLOPE_MM = 6.35;

/** Places either way that a mean of the gauge side is taken over. */
const EVEN_HALF = 3;

export type PointFeatureId = 'pointThickness' | 'pointThicknessLower' | 'pointSideSlope' | 'pointTracedDown';

export type PointFeatureEntry = {
  readonly id: PointFeatureId;
  readonly name: string;
  readonly dimension: 'crossLength' | 'angle';
  readonly meaning: string;
};

/** What is taken from the cross-section of a point, in the order it is listed. mm and rad. */
export const POINT_FEATURES: readonly PointFeatureEntry[] = [
  {
    id: 'pointThickness',
    name: 'Thickness at the top',
    dimension: 'crossLength',
    meaning: 'From the back edge to the gauge side, 1/16 in below the highest part.',
  },
  {
    id: 'pointThicknessLower',
    name: 'Thickness 5/8 in down',
    dimension: 'crossLength',
    meaning: 'From the back edge to the gauge side, 5/8 in below the highest part.',
  },
  {
    id: 'pointSideSlope',
    name: 'Slope of the gauge side',
    dimension: 'angle',
    meaning: 'Straight line through the gauge side from 1/16 in to 5/8 in below the highest part.',
  },
  {
    id: 'pointTracedDown',
    name: 'Gauge side traced down to',
    dimension: 'crossLength',
    meaning: 'Below the highest part. Farther down the side is taken to go on straight.',
  },
];

export type TracedPoint = {
  /** In the frame of `registerPoint`, corrected by hand where somebody did. */
  readonly outline: Outline;
  readonly placing: Placing;
  readonly remarks: readonly string[];
  /** Back edge to gauge-side edge. */
  readonly thicknessMm: number;
  /** Standard uncertainty of where the gauge side lies from the back edge. */
  readonly uMm: number;
  readonly side: PointSide;
  readonly features: Readonly<Record<PointFeatureId, Result<{ readonly value: number; readonly u: number }>>>;
};

/**
 * The cross-section of a point from its outline: where its gauge side lies at every 0.25 mm below its highest
 * part, and features with their standard uncertainty. Refuses what `registerPoint` refuses. Never throws.
 */
export function tracedPoint(
  trace: Pick<Trace, 'pointsMm' | 'mirrored' | 'hand' | 'uncertainty' | 'making'>,
): Result<TracedPoint> {
  const registered = registerPoint(outlineOfPairs(trace.pointsMm), trace);
  if (!registered.ok) return registered;
  const { hand } = trace;
  const outline =
    hand === null ? registered.value.outline : placed(registered.value.outline, { mirrored: false, ...hand });
  const placesMm = evened(gaugeSide(outline));
  const thicknessMm = at(placesMm, EDGE_DEPTH_MM);
  if (!(thicknessMm > 0)) {
    return refuse(
      'The gauge side lies behind the back edge. Trace from the back over the top to the gauge side, or say that the drawing is the other way round.',
    );
  }
  const uMm = uOfSide(trace, thicknessMm);
  return ok({
    outline,
    placing: registered.value.placing,
    remarks: [
      ...registered.value.remarks,
      ...(trace.making.by === 'pins'
        ? [
            'A steep gauge side lies somewhere between two pins: half of their distance is in its uncertainty.',
          ]
        : []),
      ...(hand === null ? [] : [`The line was moved by hand: ${hand.reason}`]),
    ],
    thicknessMm,
    uMm,
    side: { outMm: placesMm.map((place) => place - thicknessMm), share: 1 },
    features: featuresOf(placesMm, thicknessMm, uMm, trace.uncertainty.scale),
  });
}

/** Outermost place of the gauge side at 0, 0.25, 0.5 … mm below the highest part, down to the end of the line. */
function gaugeSide({ xMm, yMm }: Outline): Float64Array {
  const top = yMm.reduce((highest, y, i) => (y > yMm[highest]! ? i : highest), 0);
  const n = Math.floor(-yMm.at(-1)! / DEPTH_STEP_MM + 1e-9) + 1;
  const places = new Float64Array(Math.max(1, n)).fill(xMm[top]!);
  places.fill(-Infinity, Math.min(places.length, Math.ceil(Math.max(0, -yMm[top]!) / DEPTH_STEP_MM)));
  for (let i = top + 1; i < xMm.length; i += 1) {
    const [x0, y0, x1, y1] = [xMm[i - 1]!, -yMm[i - 1]!, xMm[i]!, -yMm[i]!];
    const first = Math.max(0, Math.ceil(Math.min(y0, y1) / DEPTH_STEP_MM - 1e-9));
    const last = Math.min(places.length - 1, Math.floor(Math.max(y0, y1) / DEPTH_STEP_MM + 1e-9));
    for (let k = first; k <= last; k += 1) {
      const x =
        y0 === y1
          ? Math.max(x0, x1)
          : x0 + (x1 - x0) * Math.min(1, Math.max(0, (k * DEPTH_STEP_MM - y0) / (y1 - y0)));
      places[k] = Math.max(places[k]!, x);
    }
  }
  return places;
}

/** The shiver of a hand taken out: a mean over up to 0.75 mm either way, as far as the top and the end leave room. */
const evened = (placesMm: Float64Array): Float64Array =>
  placesMm.map((_, k) => {
    const half = Math.min(EVEN_HALF, k, placesMm.length - 1 - k);
    let sum = 0;
    for (let j = k - half; j <= k + half; j += 1) sum += placesMm[j]!;
    return sum / (2 * half + 1);
  });

/** Between the places kept, straight. */
function at(placesMm: Float64Array, depthMm: number): number {
  const place = depthMm / DEPTH_STEP_MM;
  const before = Math.floor(place);
  const [here = NaN, next = here] = [placesMm[before], placesMm[before + 1]];
  return here + (next - here) * (place - before);
}

/** Back edge and gauge side both lie within what is known across the line; pins leave a steep side between two of them. */
function uOfSide(
  { uncertainty, making }: Pick<Trace, 'uncertainty' | 'making'>,
  thicknessMm: number,
): number {
  const { acrossMm, scale } = uncertainty;
  const between = making.by === 'pins' ? standardUncertaintyFromHalfWidth(making.pitchMm / 2) : 0;
  return combine(Math.SQRT2 * acrossMm, scale * thicknessMm, between);
}

function featuresOf(
  placesMm: Float64Array,
  thicknessMm: number,
  uMm: number,
  scale: number,
): TracedPoint['features'] {
  const downMm = (placesMm.length - 1) * DEPTH_STEP_MM;
  const lower = at(placesMm, LOWER_MM);
  const toMm = Math.min(downMm, LOWER_MM);
  return {
    pointThickness: ok({ value: thicknessMm, u: uMm }),
    pointThicknessLower: Number.isFinite(lower)
      ? ok({ value: lower, u: uMm })
      : refuse('The gauge side is not traced down to 5/8 in below the highest part.'),
    pointSideSlope:
      toMm - EDGE_DEPTH_MM < LEAST_SLOPE_MM
        ? refuse('The gauge side is traced over too short a height for its slope.')
        : ok(slopeOf(placesMm, toMm, uMm)),
    pointTracedDown: ok({ value: downMm, u: combine(uMm, scale * downMm) }),
  };
}

/** Slope of the straight line through the side, least squares; its ends taken to err against each other by u each. */
function slopeOf(placesMm: Float64Array, toMm: number, uMm: number) {
  const from = Math.ceil(EDGE_DEPTH_MM / DEPTH_STEP_MM);
  const to = Math.floor(toMm / DEPTH_STEP_MM);
  let [n, sz, sx, szz, szx] = [0, 0, 0, 0, 0];
  for (let k = from; k <= to; k += 1) {
    const [z, x] = [k * DEPTH_STEP_MM, placesMm[k]!];
    n += 1;
    sz += z;
    sx += x;
    szz += z * z;
    szx += z * x;
  }
  const lean = (n * szx - sz * sx) / (n * szz - sz * sz);
  const lengthMm = (to - from) * DEPTH_STEP_MM;
  return { value: Math.atan2(1, lean), u: (Math.SQRT2 * uMm) / lengthMm };
}

export const pointTraceMethod: Method = {
  id: 'point-trace',
  name: 'Cross-section of a switch point from its outline',
  formula:
    'Highest part at y = 0, back edge (place of the back nearest to the stock rail within 1/2 in of the top, each a mean over 3 mm of height) at x = 0; gauge side: outermost place of the line at every 0.25 mm below the highest part, a mean over 0.75 mm either way. Thickness: gauge side 1/16 in down. u = √(2 u_across² + (scale · thickness)² + (pitch/2)²/3), the last for pins only; of the slope √2 u over the height it is taken on.',
  validRange:
    'The outline of the point alone, from the back over the top at least 3/8 in down its gauge side, its upright square to the plane of the track.',
  sources: [
    { text: 'Plane geometry of the traced line', status: 'published' },
    { text: 'Depths at which edge, back and slope are taken', status: 'engineering judgement' },
    { text: 'JCGM 100:2008, 4.3.7: half-width to standard uncertainty', status: 'published' },
  ],
};

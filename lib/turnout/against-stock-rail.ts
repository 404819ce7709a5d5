import { placesAtHeight } from '../outline/at';
import { outlineOf, type Outline } from '../outline/outline';
import { resampled } from '../outline/resample';
import { smoothed } from '../outline/smooth';
import { ok, refuse, type Result } from '../readings/result';
import { BEARS_RAD, DEPTH_STEP_MM, depthsDownTo, type FlangeAtRail } from './flange-at-rail';

/** Gauge line: 5/8 in below the top of the rail, 49 CFR 213.53(a). */
export const GAUGE_LINE_MM = 15.875;

const STEP_MM = 0.25;
/** Half of the smoothing window: keeps the round of a flange tip, takes the shiver of a pencil out. */
const SMOOTH_MM = 1;
/** The wheel is brought up from this far off the rail, and no further than this beyond where it should touch. */
const APPROACH_MM = 15;
/** Part of the stock rail that a wheel can touch, mm from its gauge line. */
const HEAD_MM = 75;
/** On the face of a flange of any height. */
const FACE_HEIGHT_MM = 10;

/** The flange against its stock rail, and how the wheel's outline was moved to stand there. */
export type WheelAgainstRail = FlangeAtRail & {
  /** Added to x of the wheel's outline to have it in the rail's frame. */
  readonly shiftMm: number;
  /** The tread reference point stands this far above the top of the rail. */
  readonly liftMm: number;
  /** Gauge line in the rail's frame. */
  readonly gaugeLineMm: number;
};

/** A rail made ready: the height of its top over x in even steps, and its gauge line. */
type Head = { readonly fromMm: number; readonly heightMm: Float64Array; readonly gaugeLineMm: number };

/**
 * Stands a wheel on its stock rail and pushes it outward until the flange bears: until the place of
 * contact reaches 45° against the plane of the track. Both outlines in the frames of
 * `../outline/outline`; the rail upright (no cant), the axle level and square to the track.
 * Refuses, with what to do, outlines that do not reach far enough and pairs that never bear.
 * Plane geometry of rigid bodies.
 */
export function againstStockRail(wheel: Outline, rail: Outline): Result<WheelAgainstRail> {
  const head = headOf(rail);
  if (!head.ok) return head;
  const line = wheelLine(wheel);
  if (!line.ok) return line;
  return stand(line.value, head.value);
}

function headOf(rail: Outline): Result<Head> {
  const gaugeLineMm = Math.min(...placesAtHeight(rail, -GAUGE_LINE_MM));
  if (!Number.isFinite(gaugeLineMm)) {
    return refuse(
      'The outline of the stock rail does not reach down its gauge face to 5/8 in below the top. Trace it further down.',
    );
  }
  const fromMm = gaugeLineMm - 2;
  const heightMm = new Float64Array(Math.ceil(HEAD_MM / STEP_MM)).fill(-Infinity);
  for (let i = 1; i < rail.xMm.length; i += 1) {
    const [x0, y0, x1, y1] = [rail.xMm[i - 1]!, rail.yMm[i - 1]!, rail.xMm[i]!, rail.yMm[i]!];
    const [low, high] = [Math.min(x0, x1), Math.max(x0, x1)];
    const first = Math.max(0, Math.ceil((low - fromMm) / STEP_MM));
    const last = Math.min(heightMm.length - 1, Math.floor((high - fromMm) / STEP_MM));
    for (let k = first; k <= last; k += 1) {
      const share = x1 === x0 ? 1 : (fromMm + k * STEP_MM - x0) / (x1 - x0);
      heightMm[k] = Math.max(heightMm[k]!, y0 + (y1 - y0) * share);
    }
  }
  return ok({ fromMm, heightMm, gaugeLineMm });
}

/** The wheel from the tip of its flange outward: place, depth below the tread reference, steepness. */
type Line = {
  readonly xMm: Float64Array;
  readonly yMm: Float64Array;
  readonly angleRad: Float64Array;
  readonly tipMm: number;
};

function wheelLine(wheel: Outline): Result<Line> {
  const whole = smoothed(resampled(wheel, STEP_MM), SMOOTH_MM);
  let tip = 0;
  for (let i = 1; i < whole.yMm.length; i += 1) if (whole.yMm[i]! > whole.yMm[tip]!) tip = i;
  const xMm = whole.xMm.slice(tip);
  const yMm = whole.yMm.slice(tip);
  if (xMm.length < 2 || !(Math.max(...xMm) - xMm[0]! > 40)) {
    return refuse('The outline of the wheel does not run from the tip of the flange out over the tread.');
  }
  return ok({
    xMm,
    yMm,
    angleRad: whole.headingRad.slice(tip).map((heading) => Math.abs(heading)),
    tipMm: yMm[0]!,
  });
}

/** How high the wheel stands with its outline moved by `shiftMm`, and the point of it that touches. */
function rest({ xMm, yMm }: Line, { fromMm, heightMm }: Head, shiftMm: number): readonly [number, number] {
  let highest = -Infinity;
  let touches = -1;
  for (let i = 0; i < xMm.length; i += 1) {
    const place = (xMm[i]! + shiftMm - fromMm) / STEP_MM;
    const before = Math.floor(place);
    if (before < 0 || before + 1 >= heightMm.length) continue;
    const [a, b] = [heightMm[before]!, heightMm[before + 1]!];
    const height = Number.isFinite(a) && Number.isFinite(b) ? a + (b - a) * (place - before) : Math.max(a, b);
    const stands = yMm[i]! + height;
    if (stands > highest) [highest, touches] = [stands, i];
  }
  return [highest, touches];
}

function stand(line: Line, head: Head): Result<WheelAgainstRail> {
  const face = Math.max(...placesAtHeight(line, FACE_HEIGHT_MM));
  const nearly = head.gaugeLineMm - face;
  const bears = (shiftMm: number): boolean => {
    const [, touches] = rest(line, head, shiftMm);
    return touches >= 0 && line.angleRad[touches]! >= BEARS_RAD;
  };
  if (!Number.isFinite(face) || bears(nearly - APPROACH_MM)) return refuse(NO_FACE);
  let free = nearly - APPROACH_MM;
  while (free < nearly + APPROACH_MM && !bears(free + STEP_MM)) free += STEP_MM;
  if (free >= nearly + APPROACH_MM) return refuse(NO_FACE);
  let [low, high] = [free, free + STEP_MM];
  while (high - low > 1e-3) {
    const middle = (low + high) / 2;
    if (bears(middle)) high = middle;
    else low = middle;
  }
  const [liftMm] = rest(line, head, low);
  const [, touches] = rest(line, head, high);
  return ok(seenFromRail(line, head, { shiftMm: low, liftMm, touches }));
}

const NO_FACE =
  'This wheel never bears with its flange on this stock rail. Check that the outline of the wheel includes the flange and that neither is mirrored.';

function seenFromRail(
  line: Line,
  head: Head,
  at: { readonly shiftMm: number; readonly liftMm: number; readonly touches: number },
): WheelAgainstRail {
  const { gaugeLineMm, fromMm, heightMm } = head;
  const tipDepthMm = line.tipMm - at.liftMm;
  const n = depthsDownTo(tipDepthMm);
  const faceMm = new Float64Array(n);
  let i = 0;
  let outermost = line.xMm[0]!;
  for (let k = n - 1; k >= 0; k -= 1) {
    const heightOnWheel = k * DEPTH_STEP_MM + at.liftMm;
    while (i + 1 < line.xMm.length && line.yMm[i + 1]! >= heightOnWheel) {
      i += 1;
      outermost = Math.max(outermost, line.xMm[i]!);
    }
    faceMm[k] = gaugeLineMm - at.shiftMm - Math.max(outermost, crossing(line, i, heightOnWheel));
  }
  const railMm = new Float64Array(n);
  for (let k = 0; k < n; k += 1) {
    const depth = k * DEPTH_STEP_MM;
    const first = heightMm.findIndex((height) => height >= -depth);
    railMm[k] = first < 0 ? NaN : gaugeLineMm - (fromMm + first * STEP_MM);
  }
  return {
    tipDepthMm,
    faceMm,
    railMm,
    bearsAtMm: Math.max(0, line.yMm[at.touches]! - at.liftMm),
    shiftMm: at.shiftMm,
    liftMm: at.liftMm,
    gaugeLineMm,
  };
}

/** Where the line passes a height between a point and the next. */
function crossing({ xMm, yMm }: Line, i: number, heightMm: number): number {
  const [x0, y0] = [xMm[i]!, yMm[i]!];
  const [x1 = x0, y1 = y0] = [xMm[i + 1], yMm[i + 1]];
  return y1 < heightMm && y0 >= heightMm && y0 > y1 ? x0 + ((x1 - x0) * (y0 - heightMm)) / (y0 - y1) : x0;
}

/**
 * Wheel and stock rail where they stand, in the frame of `FlangeAtRail`: x from the gauge line towards the
 * middle of the track, y downward from the top of the stock rail.
 */
export function standingOutlines(
  wheel: Outline,
  rail: Outline,
  { shiftMm, liftMm, gaugeLineMm }: WheelAgainstRail,
): { readonly wheel: Outline; readonly rail: Outline } {
  return {
    wheel: outlineOf(
      wheel.xMm.map((x) => gaugeLineMm - (x + shiftMm)),
      wheel.yMm.map((y) => y - liftMm),
    ),
    rail: outlineOf(
      rail.xMm.map((x) => gaugeLineMm - x),
      rail.yMm.map((y) => -y),
    ),
  };
}

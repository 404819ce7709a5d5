/** Between the depths that a flange is kept at, mm. */
export const DEPTH_STEP_MM = 0.25;

/** The flange bears from this contact angle on: in the throat it is less, on a flange face more. */
export const BEARS_RAD = Math.PI / 4;

/**
 * The field-side face of a flange beside a stock rail, the tread on top of the rail and the flange hard
 * against it. Everything is counted from the gauge line of the stock rail (5/8 in below its top),
 * positive towards the middle of the track, and from the top of the stock rail, positive downward. mm.
 */
export type FlangeAtRail = {
  /** Lowest place of the flange. */
  readonly tipDepthMm: number;
  /** Where the face lies at the depths 0, 0.25, 0.5 … down to the tip; never nearer to the rail further down. */
  readonly faceMm: Float64Array;
  /** Where the gauge side of the stock rail lies at the same depths. */
  readonly railMm: Float64Array;
  /** Depth at which the flange bears on the stock rail. */
  readonly bearsAtMm: number;
};

/** Where the face lies at a depth, mm from the gauge line; NaN above the top of the rail and below the tip. */
export function faceAt({ faceMm, tipDepthMm }: FlangeAtRail, depthMm: number): number {
  if (!(depthMm >= 0 && depthMm <= tipDepthMm)) return NaN;
  const last = faceMm.length - 1;
  const place = Math.min(depthMm / DEPTH_STEP_MM, last);
  const before = Math.min(Math.floor(place), Math.max(0, last - 1));
  const [here = NaN, next = here] = [faceMm[before], faceMm[before + 1]];
  return here + (next - here) * (place - before);
}

/** Half of the height over which the slope is taken, mm: finer than the rounding of any flange tip. */
const SLOPE_HALF_MM = 0.5;

/** Slope of the face at a depth, rad against the plane of the track: π/2 upright, 0 at the very tip. */
export function slopeAt(flange: FlangeAtRail, depthMm: number): number {
  if (!(depthMm >= 0 && depthMm <= flange.tipDepthMm)) return NaN;
  const above = Math.max(0, depthMm - SLOPE_HALF_MM);
  const below = Math.min(flange.tipDepthMm, depthMm + SLOPE_HALF_MM);
  return Math.atan2(below - above, faceAt(flange, below) - faceAt(flange, above));
}

/** Number of depths down to the tip. */
export const depthsDownTo = (tipDepthMm: number): number =>
  Math.max(1, Math.floor(tipDepthMm / DEPTH_STEP_MM + 1e-9) + 1);

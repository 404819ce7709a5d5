import type { Method } from '../findings/finding';
import { DEPTH_STEP_MM, depthsDownTo, type FlangeAtRail } from '../turnout/flange-at-rail';

/** Flange thickness is read 3/8 in above the tread; there the face is taken to touch the stock rail. */
const FACE_TOUCHES_MM = 9.525;

/** Radius of the flange tip. A blunter tip stands nearer the point, so this is on the safe side. */
const TIP_RADIUS_MM = 12;

/**
 * How far the flange face has drawn back from the gauge face of the stock rail at a depth below
 * the tread, flange hard against the rail; mm towards the middle of the track.
 *
 * Model, without a trace of the wheel: a straight face at `faceAngleRad` from the point that
 * touches the rail (3/8 in below the tread) down to a flange tip rounded to 12 mm.
 * `depthMm` 0 to `flangeHeightMm`, NaN beyond; `faceAngleRad` over 0 to π/2.
 * Source: engineering judgement, from the outline of new wheels.
 */
export function flangeFaceRetreatMm(depthMm: number, flangeHeightMm: number, faceAngleRad: number): number {
  if (!(depthMm <= flangeHeightMm)) return NaN;
  const roundingFrom = roundingDepthMm(flangeHeightMm, faceAngleRad);
  if (depthMm <= roundingFrom) return Math.max(0, (depthMm - FACE_TOUCHES_MM) / Math.tan(faceAngleRad));
  const centreDepth = flangeHeightMm - TIP_RADIUS_MM;
  const centreRetreat =
    (roundingFrom - FACE_TOUCHES_MM) / Math.tan(faceAngleRad) + TIP_RADIUS_MM * Math.sin(faceAngleRad);
  const below = depthMm - centreDepth;
  return Math.max(0, centreRetreat - Math.sqrt(TIP_RADIUS_MM * TIP_RADIUS_MM - below * below));
}

/**
 * Slope of the flange (rad from horizontal) at a depth below the tread, in the same model: the
 * face angle, falling to zero round the tip. Shallow means the flange can ride up on what it meets.
 */
export function flangeSlopeRad(depthMm: number, flangeHeightMm: number, faceAngleRad: number): number {
  if (!(depthMm <= flangeHeightMm)) return NaN;
  if (depthMm <= roundingDepthMm(flangeHeightMm, faceAngleRad)) return faceAngleRad;
  return Math.acos((depthMm - (flangeHeightMm - TIP_RADIUS_MM)) / TIP_RADIUS_MM);
}

function roundingDepthMm(flangeHeightMm: number, faceAngleRad: number): number {
  return flangeHeightMm - TIP_RADIUS_MM + TIP_RADIUS_MM * Math.cos(faceAngleRad);
}

/** The flange of the same model beside a stock rail whose gauge side is upright where the flange bears. mm and rad. */
export function simpleFlangeAtRail(flangeHeightMm: number, faceAngleRad: number): FlangeAtRail {
  const n = depthsDownTo(flangeHeightMm);
  const faceMm = Float64Array.from({ length: n }, (_, k) =>
    flangeFaceRetreatMm(k * DEPTH_STEP_MM, flangeHeightMm, faceAngleRad),
  );
  return { tipDepthMm: flangeHeightMm, faceMm, railMm: new Float64Array(n), bearsAtMm: FACE_TOUCHES_MM };
}

/** A closed point read without a trace. All mm; no chip is a chip of depth 0. */
export type PointReadings = {
  /** Between the back of the point and the gauge face of the stock rail, at the tip. */
  readonly gapMm: number;
  /** Point, back to gauge side, at the tip. */
  readonly tipThicknessMm: number;
  /** Top of the tip below the top of the stock rail. */
  readonly tipDepthMm: number;
  /** Floor of the chip below the top of the tip, and how far behind the tip it ends. */
  readonly chipDepthMm: number;
  readonly chipLengthMm: number;
};

/** The wheelset that meets it. mm and rad. */
export type WheelAtPoint = {
  readonly flangeThicknessMm: number;
  /** Tip of the flange below the running band of the tread. */
  readonly flangeHeightMm: number;
  readonly faceAngleRad: number;
  readonly oppositeFlangeThicknessMm: number;
  readonly backToBackMm: number;
  readonly gaugeMm: number;
};

/** Flange against one edge of the point: how far it reaches below it and how far it passes to the side. */
export type EdgeClearance = {
  /** Flange tip below the edge; zero or less: the flange passes over it. */
  readonly reachMm: number;
  /**
   * Flange face clear of the gauge-side edge, flange hard against the stock rail; negative: the
   * edge stands outside the face. null when the flange passes over it.
   */
  readonly lateralMm: number | null;
  /** Slope of the flange where it meets the edge; null when it passes over. */
  readonly slopeRad: number | null;
};

export type PointClearance = {
  readonly tip: EdgeClearance;
  /** Floor of the chip; null without one. */
  readonly chip: EdgeClearance | null;
  /** How far behind the tip full height is met again: the length of the chip. */
  readonly fullHeightFromTipMm: number;
  /** Side play of the wheelset between the rails. */
  readonly playMm: number;
  /** Lateral clearance at the tip with the other flange hard against its rail instead. */
  readonly farthestLateralMm: number | null;
};

/**
 * Clearance of a flange to the tip of a facing point, from simple readings: vertical reach and
 * lateral clearance apart, at the tip and at the floor of a chip.
 *
 * The flange is hard against the stock rail, the wheelset square to the track, the running band on
 * top of the stock rail. The gauge-side edge of the point is gap + tip thickness from the gauge
 * face of the stock rail; where the chip ends it is taken no thicker than at the tip.
 * Back-to-back enters through the play, gauge − back-to-back − both flanges.
 * Not modelled: angle of attack, a stock rail bent or undercut to shield the tip (read the gap and
 * thickness as what stands out of the gauge line), widening of the point behind the tip.
 * Source: plane geometry with the flange of `flangeFaceRetreatMm`.
 */
export function pointClearance(point: PointReadings, wheel: WheelAtPoint): PointClearance {
  const edgeMm = point.gapMm + point.tipThicknessMm;
  const tip = edgeClearance(point.tipDepthMm, edgeMm, wheel);
  const playMm =
    wheel.gaugeMm - wheel.backToBackMm - wheel.flangeThicknessMm - wheel.oppositeFlangeThicknessMm;
  return {
    tip,
    chip: point.chipDepthMm > 0 ? edgeClearance(point.tipDepthMm + point.chipDepthMm, edgeMm, wheel) : null,
    fullHeightFromTipMm: point.chipDepthMm > 0 ? point.chipLengthMm : 0,
    playMm,
    farthestLateralMm: tip.lateralMm === null ? null : tip.lateralMm + Math.max(0, playMm),
  };
}

function edgeClearance(depthMm: number, edgeMm: number, wheel: WheelAtPoint): EdgeClearance {
  const reachMm = wheel.flangeHeightMm - depthMm;
  if (!(reachMm > 0)) return { reachMm, lateralMm: null, slopeRad: null };
  return {
    reachMm,
    lateralMm: flangeFaceRetreatMm(depthMm, wheel.flangeHeightMm, wheel.faceAngleRad) - edgeMm,
    slopeRad: flangeSlopeRad(depthMm, wheel.flangeHeightMm, wheel.faceAngleRad),
  };
}

/**
 * One number for an edge: by how much the flange misses it, mm. Over the top when it does not
 * reach, to the side when it does; negative when it reaches and the edge stands outside the face.
 */
export function edgeMarginMm(edge: EdgeClearance): number {
  return edge.lateralMm === null ? -edge.reachMm : edge.lateralMm;
}

export const pointClearanceMethod: Method = {
  id: 'point-clearance',
  name: 'Flange and switch point, from simple readings',
  formula:
    'reach = flange height − depth of the edge p below the stock rail; c(z) = r(z) − [gap + thickness + (z − p)/tan β] for every depth z from p to the flange tip, the smallest c counts. r: how far the flange face has drawn back, (z − 3/8 in)/tan δ on the face and a 12-mm round at the tip; δ: flange face angle, β: slope of the gauge side of the point. The edge can be struck or ridden only where reach > 0 and c < 0, or c < 3 mm where the flange is flatter than 60°. Play = gauge − back-to-back − both flange thicknesses.',
  validRange:
    'Facing movement, flange against the stock rail, wheelset square to the track, at the tip and the edges of a chip. Angle of attack and undercut or bent stock rails are not in it. A flange touching the point farther back, where it is thick, is normal running.',
  sources: [
    { text: 'Plane geometry of flange, stock rail and point', status: 'published' },
    {
      text: 'Straight flange face and 12-mm flange tip in place of a trace',
      status: 'engineering judgement',
    },
  ],
};

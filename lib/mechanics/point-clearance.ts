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
    flangeFaceRetreatMm(Math.min(flangeHeightMm, k * DEPTH_STEP_MM), flangeHeightMm, faceAngleRad),
  );
  return { tipDepthMm: flangeHeightMm, faceMm, railMm: new Float64Array(n), bearsAtMm: FACE_TOUCHES_MM };
}

/** A flange and one edge of a point, read without an outline of either. mm and rad. */
export type ReadAtPoint = {
  /** Tip of the flange below the running band of the tread. */
  readonly flangeHeightMm: number;
  readonly faceRad: number;
  /** Gap and thickness: the edge from the gauge line of the stock rail. */
  readonly edgeMm: number;
  /** Edge below the top of the stock rail. */
  readonly depthMm: number;
  /** Slope of the gauge side of the point, which goes straight down from the edge. */
  readonly sideRad: number;
};

/**
 * By how much the flange misses an edge of the point, mm: over the top where it does not reach, else to the
 * side at the height where the clearance is smallest; negative: the point stands outside the face.
 *
 * c(z) = r(z) − edge − (z − p)/tan β, r of `flangeFaceRetreatMm`, is smallest at one of: the edge p; where the
 * face touches the rail (3/8 in), if that lies below the edge; and, where the face is steeper than the side,
 * where the rounding of the tip has the slope of the side, h − R + R·cos β. The same fit as
 * `../turnout/point-fit` of `simpleFlangeAtRail`, in closed form.
 * Source: plane geometry.
 */
export function leastMissMm({ flangeHeightMm, faceRad, edgeMm, depthMm, sideRad }: ReadAtPoint): number {
  if (!(depthMm < flangeHeightMm)) return depthMm - flangeHeightMm;
  const lean = 1 / Math.tan(sideRad);
  const top = Math.max(0, depthMm);
  const at = (heightMm: number): number => {
    const z = Math.min(flangeHeightMm, Math.max(top, heightMm));
    return flangeFaceRetreatMm(z, flangeHeightMm, faceRad) - edgeMm - (z - depthMm) * lean;
  };
  const alike = flangeHeightMm - TIP_RADIUS_MM + TIP_RADIUS_MM * Math.cos(sideRad);
  return Math.min(at(top), at(FACE_TOUCHES_MM), at(alike), at(flangeHeightMm));
}

export const pointClearanceMethod: Method = {
  id: 'point-clearance',
  name: 'Flange and switch point, from simple readings',
  formula:
    'reach = flange height − depth of the edge p below the stock rail; c(z) = r(z) − [gap + thickness + (z − p)/tan β] for every depth z from p to the flange tip, the smallest c counts. r: how far the flange face has drawn back, (z − 3/8 in)/tan δ on the face and a 12-mm round at the tip; δ: flange face angle, β: slope of the gauge side of the point. The edge can be struck or ridden only where reach > 0 and c < 0, or c < 3 mm where the flange is flatter than 60°.',
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

import { type Method } from '../findings/finding';
import { BEARS_RAD, DEPTH_STEP_MM, faceAt, slopeAt, type FlangeAtRail } from './flange-at-rail';
import { type PointSection } from './point-section';
import { sideOutMm } from './point-side';

/** Flatter than this a flange is lifted by what it meets rather than pushed aside. */
export const SHALLOW_RAD = Math.PI / 3;

/** A flange passing nearer than this is within reach of a point that moves under load. */
export const CLOSE_MM = 3;

export type Clearance = {
  readonly depthMm: number;
  /** Between the flange's face and the gauge side of the point; negative: the point stands outside the face. */
  readonly clearanceMm: number;
};

export type PointFit = {
  /** Flange tip below the top of the point; zero or less: the flange passes over it. */
  readonly reachMm: number;
  /** The smallest clearance of all heights, and the slope of the flange there; null when the flange passes over. */
  readonly least: (Clearance & { readonly slopeRad: number }) | null;
};

type Section = Omit<PointSection, 'behindMm'>;

const clearanceAt = (
  flange: FlangeAtRail,
  { gapMm, thicknessMm, depthMm, side, cutMm }: Section,
  lean: number,
  at: number,
): number => faceAt(flange, at) - (gapMm + thicknessMm + sideOutMm(side, at - depthMm, lean, cutMm));

/**
 * Where a flange is first held against a point, mm below the top of the stock rail: at the top of the point,
 * but no higher than its face reaches. Above that it curves over into the tread, which is lifted by a point
 * that stands so high, and not pushed aside.
 */
function fromDepthMm(flange: FlangeAtRail, { depthMm }: Section): number {
  let from = flange.bearsAtMm;
  while (from > Math.max(0, depthMm)) {
    const above = Math.max(0, from - DEPTH_STEP_MM);
    if (!(slopeAt(flange, above) >= BEARS_RAD)) break;
    from = above;
  }
  return Math.max(from, depthMm);
}

/**
 * A flange beside one section of a point: the smallest clearance of all heights where both exist (every
 * 0.25 mm, from the top of the point down to the tip of the flange, on the face of the flange only). The
 * point's gauge side is that of its outline where it has one; else it runs from the top edge, gap + thickness
 * from the gauge line of the stock rail, down at `faceRad` against the plane of the track (0 exclusive to
 * π/2). Plane geometry.
 */
export function pointFit(flange: FlangeAtRail, section: Section, faceRad: number): PointFit {
  const reachMm = flange.tipDepthMm - section.depthMm;
  if (!(reachMm > 0)) return { reachMm, least: null };
  const lean = 1 / Math.tan(faceRad);
  let depthMm = flange.tipDepthMm;
  let clearanceMm = clearanceAt(flange, section, lean, depthMm);
  for (let at = fromDepthMm(flange, section); at < flange.tipDepthMm; at += DEPTH_STEP_MM) {
    const here = clearanceAt(flange, section, lean, at);
    if (here < clearanceMm) [depthMm, clearanceMm] = [at, here];
  }
  return { reachMm, least: { depthMm, clearanceMm, slopeRad: slopeAt(flange, depthMm) } };
}

/** The clearance at every height where flange and point both exist, from the top of the point down, on the face of the flange; none when the flange passes over. */
export function clearances(flange: FlangeAtRail, section: Section, faceRad: number): readonly Clearance[] {
  const lean = 1 / Math.tan(faceRad);
  const top = fromDepthMm(flange, section);
  const steps = Math.max(0, Math.ceil((flange.tipDepthMm - top) / DEPTH_STEP_MM));
  return Array.from({ length: steps === 0 ? 0 : steps + 1 }, (_, i) => {
    const depthMm = Math.min(flange.tipDepthMm, top + i * DEPTH_STEP_MM);
    return { depthMm, clearanceMm: clearanceAt(flange, section, lean, depthMm) };
  });
}

/** By how much the flange misses, mm: over the top where it does not reach, else to the side; negative: it meets the point. */
export const missMm = ({ reachMm, least }: PointFit): number =>
  least === null ? -reachMm : least.clearanceMm;

/** Whether a tip, or an edge of a chip, could be struck or ridden: within reach, and outside the face or close to it where it is shallow. */
export const couldBeStruck = ({ least }: PointFit): boolean =>
  least !== null && (least.clearanceMm < 0 || (least.clearanceMm < CLOSE_MM && least.slopeRad < SHALLOW_RAD));

export const pointFitMethod: Method = {
  id: 'point-fit',
  name: 'Flange against switch point, at every height',
  formula:
    'c(z) = x(z) − [gap + thickness + s(z − p)] for every depth z from the top of the point p, or from where the flange becomes steeper than 45° if the point stands higher, to the tip of the flange; x: face of the flange from the gauge line of the stock rail, tread on the rail and flange bearing on it (contact at 45°); s: how much farther out than the edge the gauge side of the point stands, as its outline shows it where it was traced, between two outlines a mean at equal depth below the top, else (z − p)/tan β with the slope β of the side. The smallest c is given; negative: the point stands outside the face. Where the flange does not reach the point: how far it passes over it. Could be struck or ridden: within reach and either c < 0, or c < 3 mm where the flange is flatter than 60°.',
  validRange:
    'Rigid bodies in one plane across the track, rail upright, axle level and square to the track. Thickness is taken at the top of the point; of an outline 1/16 in below its highest part. What is uncertain across an outline moves its gauge side as a whole, and its height not at all: a simplification. At the tip and at the edges of a chip only: a flange touching the point farther back, where it is thick, is normal running.',
  sources: [
    { text: 'Plane geometry of flange, stock rail and point', status: 'published' },
    {
      text: 'Flange bears at 45°; 3 mm for movement of the point; 60° as shallow (single-wheel climb limit 0.66 at μ = 0.5)',
      status: 'engineering judgement',
    },
  ],
};

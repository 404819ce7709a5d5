import { outlineOf, type Outline } from '../outline/outline';
import { DEPTH_STEP_MM } from './flange-at-rail';
import type { PointSection } from './point-section';
import { sideOutMm } from './point-side';

/**
 * The line of a point's cross-section in the frame of `FlangeAtRail`: x from the gauge line of the stock
 * rail towards the middle of the track, y downward from the top of the stock rail, mm. From the foot of its
 * back over the top to the foot of its gauge side, both cut off at `downToMm`: the back upright at the gap,
 * the top level, the gauge side at every 0.25 mm as `pointFit` takes it, from its outline or straight at
 * `faceRad` against the plane of the track (0 exclusive to π/2). A point whose top lies below `downToMm` has
 * no line: empty. Plane geometry.
 */
export function pointOutline(section: PointSection, faceRad: number, downToMm: number): Outline {
  const { gapMm, thicknessMm, depthMm, side, cutMm } = section;
  if (!(downToMm > depthMm)) return outlineOf([], []);
  const lean = 1 / Math.tan(faceRad);
  const steps = side === undefined ? 1 : Math.ceil((downToMm - depthMm) / DEPTH_STEP_MM);
  const below = Array.from({ length: steps + 1 }, (_, i) => ((downToMm - depthMm) * i) / steps);
  return outlineOf(
    [gapMm, gapMm, ...below.map((down) => gapMm + thicknessMm + sideOutMm(side, down, lean, cutMm))],
    [downToMm, depthMm, ...below.map((down) => depthMm + down)],
  );
}

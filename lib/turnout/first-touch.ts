import { type FlangeAtRail } from './flange-at-rail';
import { pointFit } from './point-fit';
import { chippedAt, type Chip, type PointSection } from './point-section';

/** Between the sections that are looked at, mm. */
const STEP_MM = 5;

export type FirstTouch = {
  readonly behindMm: number;
  readonly depthMm: number;
  /** Slope of the flange where it touches. */
  readonly slopeRad: number;
};

/**
 * The first place behind the tip, in steps of 5 mm, where a flange hard against the stock rail meets the
 * point; null where it meets it nowhere as far back as the point was read.
 */
export function firstTouch(
  flange: FlangeAtRail,
  sections: readonly PointSection[],
  chip: Chip | null,
  faceRad: number,
): FirstTouch | null {
  const last = sections.at(-1)?.behindMm ?? 0;
  for (let behindMm = 0; behindMm <= last; behindMm += STEP_MM) {
    const section = chippedAt(sections, chip, behindMm);
    if (section === null) continue;
    const { least } = pointFit(flange, section, faceRad);
    if (least !== null && least.clearanceMm <= 0)
      return { behindMm, depthMm: least.depthMm, slopeRad: least.slopeRad };
  }
  return null;
}

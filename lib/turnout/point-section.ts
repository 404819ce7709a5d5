import { sideBetween, type PointSide } from './point-side';

/** A cross-section through stock rail and point, mm. */
export type PointSection = {
  /** Behind the tip. */
  readonly behindMm: number;
  /** Between the back of the point and the gauge line of the stock rail. */
  readonly gapMm: number;
  /** Back to gauge-side edge, at the top of the point. */
  readonly thicknessMm: number;
  /** Top of the point below the top of the stock rail. */
  readonly depthMm: number;
  /** Its gauge side as an outline shows it; without one it is straight. */
  readonly side?: PointSide;
  /** Metal gone from the top, where `depthMm` is the floor of a chip: `side` is counted from the top before. */
  readonly cutMm?: number;
};

/** A piece gone from the top of the point, mm. */
export type Chip = {
  /** Begins this far behind the tip. */
  readonly fromMm: number;
  readonly lengthMm: number;
  /** Floor below the top the point would have there. */
  readonly depthMm: number;
};

/**
 * The point at a distance behind its tip: straight between the sections read on either side of it, null
 * beyond the last. `sections` in order from the tip.
 */
export function sectionAt(sections: readonly PointSection[], behindMm: number): PointSection | null {
  const next = sections.findIndex((section) => section.behindMm >= behindMm);
  const after = sections[next];
  if (after === undefined) return null;
  if (after.behindMm === behindMm) return after;
  const before = sections[next - 1];
  if (before === undefined) return null;
  return sectionBetween(before, after, behindMm);
}

/**
 * The point between two sections: gap, thickness and depth straight from one to the other, and the gauge
 * sides at equal depth below its top.
 */
export function sectionBetween(before: PointSection, after: PointSection, behindMm: number): PointSection {
  const share = (behindMm - before.behindMm) / (after.behindMm - before.behindMm);
  const between = (a: number, b: number): number => a + (b - a) * share;
  const side = sideBetween(before.side, after.side, share);
  return {
    behindMm,
    gapMm: between(before.gapMm, after.gapMm),
    thicknessMm: between(before.thicknessMm, after.thicknessMm),
    depthMm: between(before.depthMm, after.depthMm),
    ...(side === undefined ? {} : { side }),
  };
}

/** The same section with its top lowered to the floor of a chip. */
export const lowered = (section: PointSection, chipDepthMm: number): PointSection => ({
  ...section,
  depthMm: section.depthMm + chipDepthMm,
  ...(section.side === undefined ? {} : { cutMm: chipDepthMm }),
});

/** The same with the top of the point lowered where the chip is. */
export function chippedAt(
  sections: readonly PointSection[],
  chip: Chip | null,
  behindMm: number,
): PointSection | null {
  const whole = sectionAt(sections, behindMm);
  const inChip = chip !== null && behindMm >= chip.fromMm && behindMm < chip.fromMm + chip.lengthMm;
  return whole === null || !inChip ? whole : lowered(whole, chip.depthMm);
}

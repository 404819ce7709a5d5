import { type FlangeAtRail } from './flange-at-rail';
import { pointFit } from './point-fit';
import { chippedAt, type Chip, type PointSection } from './point-section';

/** Between the sections that are looked at first, and how finely the place is then found, mm. */
const STEP_MM = 50;
const FINE_MM = 0.5;

export type FirstTouch = {
  readonly behindMm: number;
  readonly depthMm: number;
  /** Slope of the flange where it touches. */
  readonly slopeRad: number;
};

/**
 * The first place behind the tip where a flange hard against the stock rail meets the point: looked for
 * every 50 mm and at the ends of a chip, then by halving to 0.5 mm; null where it meets it nowhere as far
 * back as the point was read.
 */
export function firstTouch(
  flange: FlangeAtRail,
  sections: readonly PointSection[],
  chip: Chip | null,
  faceRad: number,
): FirstTouch | null {
  const touchAt = (behindMm: number): FirstTouch | null => {
    const section = chippedAt(sections, chip, behindMm);
    const least = section && pointFit(flange, section, faceRad).least;
    return least && least.clearanceMm <= 0
      ? { behindMm, depthMm: least.depthMm, slopeRad: least.slopeRad }
      : null;
  };
  const last = sections.at(-1)?.behindMm ?? 0;
  const ends = chip === null ? [] : [chip.fromMm, chip.fromMm + chip.lengthMm];
  const places = [
    ...Array.from({ length: Math.floor(last / STEP_MM) + 1 }, (_, i) => i * STEP_MM),
    ...ends.filter((end) => end > 0 && end <= last),
    last,
  ].sort((a, b) => a - b);
  let free = 0;
  for (const place of places) {
    let touch = touchAt(place);
    if (touch === null) {
      free = place;
      continue;
    }
    let low = free;
    // The end of a chip is a step: nothing lies between it and the section before it.
    while (touch.behindMm - low > FINE_MM && !ends.includes(touch.behindMm)) {
      const middle: number = (low + touch.behindMm) / 2;
      const found = touchAt(middle);
      if (found === null) low = middle;
      else touch = found;
    }
    return touch;
  }
  return null;
}

import { reversed } from '../outline/arc';
import { fitLine } from '../outline/fit';
import { type Outline } from '../outline/outline';
import { placed } from '../outline/placing';
import { resampled } from '../outline/resample';
import { smoothed } from '../outline/smooth';

/** Points of the even line that shapes are looked for on. */
export const STEP_MM = 0.5;

/** Window within which the direction of the line is looked at: wide against pencil noise, narrow against a fillet. */
export const DIRECTION_HALF_WINDOW_MM = 3;

/** Tread slope taken until the upright is known: new wheels are coned 1:20 or 1:40. */
const ROUGH_TREAD_SLOPE = 1 / 20;

const DEGREE = Math.PI / 180;

/** What marks a wheel: the line turns one way round the flange's tip, the other way in the root, then runs straight along the tread. */
const ROOT = { longestMm: 45, leastRad: 30 * DEGREE, mostRad: 110 * DEGREE };
const TIP = { longestMm: 60, leastRad: 40 * DEGREE };
const TREAD = { steadyRad: 25 * DEGREE, shortestMm: 15, longestMm: 60, settleMm: 10, rootMm: 10 };

/** How a wheel lies in a line. */
export type WheelLay = {
  readonly mirrored: boolean;
  /** The points are to be turned end for end before the line is placed, so that they run from the flange to the field side. */
  readonly endForEnd: boolean;
  /** To be turned by this much, after mirroring, for the tread to lie as it does on a wheel; good to a few degrees. */
  readonly angleRad: number;
};

/**
 * Finds how a wheel lies in a line, whichever way it is turned, mirrored or ordered, by how the
 * direction of the line changes along it. Null when there is no flange with a tread beside it.
 */
export function wheelLay(outline: Outline): WheelLay | null {
  const even = resampled(outline, STEP_MM);
  const { headingRad } = smoothed(even, DIRECTION_HALF_WINDOW_MM);
  const backward = headingRad.slice().reverse();
  let best: { readonly found: Turns; readonly mirrored: boolean; readonly endForEnd: boolean } | null = null;
  for (const mirrored of [false, true]) {
    for (const turned of [false, true]) {
      // Seen in a mirror the line turns the other way; from its other end too.
      const along = turned ? backward : headingRad;
      const found = turnsOf(mirrored ? along.map((angle) => -angle) : along, even.stepMm);
      if (found !== null && (best === null || found.score > best.found.score)) {
        best = { found, mirrored, endForEnd: turned !== mirrored };
      }
    }
  }
  if (best === null) return null;
  const { mirrored, endForEnd, found } = best;
  const line = inOrder(even, { mirrored, endForEnd, angleRad: 0 });
  // Its beginning is still part of the root.
  const tread = fitLine(line, found.treadFrom + Math.round(TREAD.rootMm / even.stepMm), found.treadTo);
  if (tread === null) return null;
  const turn = -Math.atan(ROUGH_TREAD_SLOPE) - tread.headingRad;
  return { mirrored, endForEnd, angleRad: Math.atan2(Math.sin(turn), Math.cos(turn)) };
}

/** The line mirrored and turned as the lay says, its points from the flange's back to the field side. */
export function inOrder(outline: Outline, { mirrored, endForEnd, angleRad }: WheelLay): Outline {
  return placed(endForEnd ? reversed(outline) : outline, { mirrored, angleRad, dxMm: 0, dyMm: 0 });
}

type Turns = { readonly treadFrom: number; readonly treadTo: number; readonly score: number };

function turnsOf(heading: Float64Array, stepMm: number): Turns | null {
  const n = heading.length;
  const steps = (mm: number): number => Math.round(mm / stepMm);
  let best: Turns | null = null;
  for (let to = 1; to < n; to += 1) {
    let from = to;
    for (let i = Math.max(0, to - steps(ROOT.longestMm)); i < to; i += 1) {
      if (heading[i]! < heading[from]!) from = i;
    }
    const rise = heading[to]! - heading[from]!;
    if (rise < ROOT.leastRad || rise > ROOT.mostRad) continue;
    let fall = 0;
    for (let i = Math.max(0, from - steps(TIP.longestMm)); i < from; i += 1) {
      fall = Math.max(fall, heading[i]! - heading[from]!);
    }
    if (fall < TIP.leastRad) continue;
    const settled = Math.min(n, to + steps(TREAD.settleMm));
    let mean = 0;
    for (let i = to; i < settled; i += 1) mean += heading[i]! / (settled - to);
    let end = to;
    const last = Math.min(n, to + steps(TREAD.longestMm));
    while (end < last && Math.abs(heading[end]! - mean) < TREAD.steadyRad) end += 1;
    const straightMm = (end - to) * stepMm;
    if (straightMm < TREAD.shortestMm) continue;
    const score = straightMm + (Math.min(fall, Math.PI) + rise) / DEGREE / 4;
    if (best === null || score > best.score) best = { treadFrom: to, treadTo: end, score };
  }
  return best;
}

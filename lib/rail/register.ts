import { type HandPlacing } from '../case/trace';
import { ok, refuse, type Result } from '../readings/result';
import { arcLengths, extentMm, reversed } from '../outline/arc';
import { checkOutline } from '../outline/check';
import { type Outline } from '../outline/outline';
import { afterwards, placed, type Placing } from '../outline/placing';
import { resampled } from '../outline/resample';
import { smoothed } from '../outline/smooth';
import { layingStep, matches, type Laying, type Match, type Pose } from './laying';
import { everyNth, roughSectionOf, sectionLineOf, type SectionLine, type Zone } from './section-line';

/** What of the rail the trace shows, which decides what can be found from it. */
export type TracedParts =
  /** Web, base or both undersides: placed by them, everything can be found. */
  | 'section'
  /** Only the head: placed by its field side and the underside at its lower corners. */
  | 'head'
  /** Not even a lower corner: the height of the new top is not known. */
  | 'top'
  /** No new section to lay it on: placed by its ends. */
  | 'ends';

export type RegisteredRail = {
  readonly placing: Placing;
  /** The trace in the frame of the section, from the gauge side over the top to the field side. */
  readonly outline: Outline;
  readonly parts: TracedParts;
  /** Top of the new section in this frame, mm: how far the top has worn down. Null when nothing unworn tells. */
  readonly newTopMm: number | null;
  /** Standard deviation of the points about the unworn parts, mm; 0 when there are none to tell. */
  readonly scatterMm: number;
  readonly remarks: readonly string[];
};

/** Points of the trace that are laid on the section, this far apart. */
const STEP_MM = 1;

const UNWORN: Readonly<Record<Zone, number>> = { below: 1, fieldSide: 1, gaugeSide: 0, top: 0 };
/** With no lower corner in the trace the top decides the height, and only that: worn flat, it says nothing of the upright. */
const HEAD_TOP: Readonly<Record<Zone, number>> = { below: 0, fieldSide: 1, gaugeSide: 0, top: 0.003 };
/** First looks count everything, the worn parts little. */
const FIRST: Readonly<Record<Zone, number>> = { below: 1, fieldSide: 1, gaugeSide: 0.15, top: 0.15 };

/** Turns tried about the line from end to end, and losses of the top; one of them is near enough to be drawn in. */
const FIRST_TURNS_RAD = [-60, -45, -30, -15, 0, 15, 30, 45, 60].map((degrees) => (degrees * Math.PI) / 180);
const FIRST_LOSSES_MM = [0, 6, 14];
/** Distances beyond which a point does not count, closing in; mm. */
const FIRST_TOLERANCES_MM = [25, 18, 14, 10, 8, 6, 5, 4, 4];
const CLOSING_IN_MM = [8, 6, 5, 4, 4, 3, 3];

/** Sizes a trace of a rail can have, mm: half a head to a whole section with room. */
const LEAST_ACROSS_MM = 35;
const MOST_ACROSS_MM = 330;

/**
 * Places a trace of a rail in the frame of its section: upright axis and height from the parts that do not
 * wear (web, underside of the head, base, field side), by least squares against the new section, with
 * Tukey's biweight (c = 4.685 σ, σ from the median distance) so that a slip of the pencil does not count;
 * y = 0 is then put at the top of the head as it now is.
 *
 * `outline`: mm, in the drawing's own frame, in either order. `mirrored`: the drawing shows the gauge side
 * on the right. `reference`: the new section in the frame of `../outline/outline`, or null. `hand`: the
 * user's correction, applied in the frame of the result.
 * Refuses what cannot be a rail, saying why. Never throws.
 * Source of the weights: J. W. Tukey's biweight as in P. J. Huber, "Robust Statistics" (1981).
 */
export function registerRail(
  outline: Outline,
  {
    mirrored,
    reference,
    hand = null,
  }: {
    readonly mirrored: boolean;
    readonly reference: Outline | null;
    readonly hand?: HandPlacing | null;
  },
): Result<RegisteredRail> {
  const laid = layRail(outline, { mirrored, reference });
  return laid.ok ? ok(settled(laid.value, laid.value.line, hand).rail) : laid;
}

/** A trace made ready and near its place, from which it, or another draw of its noise, settles. */
export type LaidRail = {
  readonly mirrored: boolean;
  /** Mirrored if need be, from the gauge side over the top to the field side. */
  readonly line: Outline;
  /** Null without a new section to lay it on. */
  readonly near: Near | null;
};

type Near = {
  readonly section: SectionLine;
  readonly pose: Pose;
  /** The pose is one settled on another draw of the same noise: no closing in from afar. */
  readonly close: boolean;
};

/** The first half of `registerRail`. */
export function layRail(
  outline: Outline,
  { mirrored, reference }: { readonly mirrored: boolean; readonly reference: Outline | null },
): Result<LaidRail> {
  const checked = checkOutline(outline);
  if (!checked.ok) return checked;
  const sized = checkSize(outline);
  if (!sized.ok) return sized;
  const line = overTheTop(placed(outline, { mirrored, angleRad: 0, dxMm: 0, dyMm: 0 }));
  if (line === null) {
    return refuse(
      'The line is straight: trace the rail from its gauge side over the head to its field side.',
    );
  }
  if (reference === null) return ok({ mirrored, line, near: null });
  const pose = firstPose(everyThird(resampled(line, STEP_MM)), roughSectionOf(reference));
  if (pose === null) {
    return refuse(
      'The line does not fit the rail section it is laid on. Check the scale, the section chosen, and that it runs from the gauge side over the head to the field side.',
    );
  }
  return ok({ mirrored, line, near: { section: sectionLineOf(reference), pose, close: false } });
}

/**
 * The second half of `registerRail`: `line` (the laid one, or a draw of its noise) settled from near its
 * place by the parts that do not wear, then moved by hand if the user did. `near` is where the next draw
 * may start from.
 */
export function settled(
  { mirrored, near }: LaidRail,
  line: Outline,
  hand: Omit<HandPlacing, 'reason'> | null,
): { readonly rail: RegisteredRail; readonly near: Near | null } {
  if (near === null) return { rail: framed(line, mirrored, poseByEnds(line), 'ends', 0, hand), near };
  const { section } = near;
  const coarse = resampled(line, STEP_MM);
  let pose = near.pose;
  const parts = partsTraced(matches(coarse, section, pose), coarse.stepMm);
  const weights = parts === 'top' ? HEAD_TOP : UNWORN;
  for (const toleranceMm of near.close ? [] : CLOSING_IN_MM)
    pose = layingStep(coarse, section, pose, { weights, toleranceMm });
  const scatterMm = scatterOf(matches(coarse, section, pose), weights);
  const toleranceMm = Math.min(4, Math.max(0.3, TUKEY * scatterMm));
  const laying: Laying = { weights, toleranceMm };
  for (let round = 0; round < SETTLING_ROUNDS; round += 1) {
    const next = layingStep(coarse, section, pose, laying);
    const moved = Math.hypot(next.dxMm - pose.dxMm, next.dyMm - pose.dyMm);
    pose = next;
    if (moved < (near.close ? 1e-3 : 1e-5)) break;
  }
  return {
    rail: framed(line, mirrored, pose, parts, scatterMm, hand),
    near: { section, pose, close: true },
  };
}

const SETTLING_ROUNDS = 15;
const TUKEY = 4.685;

/** The top is looked for on the line smoothed over this window, so that one shaken point is not the top; a wider one when the points scatter. */
const TOP_STEP_MM = 0.5;
const TOP_HALF_WINDOW_MM = { clean: 4, scattered: 10 };
const SCATTERED_MM = 0.1;

/** y = 0 at the top as it now is, before and after the correction by hand; the new section stays where it was found. */
function framed(
  line: Outline,
  mirrored: boolean,
  pose: Pose,
  parts: TracedParts,
  scatterMm: number,
  hand: Omit<HandPlacing, 'reason'> | null,
): RegisteredRail {
  const window = scatterMm > SCATTERED_MM ? TOP_HALF_WINDOW_MM.scattered : TOP_HALF_WINDOW_MM.clean;
  const found: Placing = { mirrored: false, ...pose };
  const top = topUnder(line, found, window);
  const atTop: Placing = { ...found, dyMm: found.dyMm - top };
  const moved = hand === null ? atTop : afterwards(atTop, hand);
  const movedTop = hand === null ? 0 : topUnder(line, moved, window);
  const placing: Placing = { ...moved, dyMm: moved.dyMm - movedTop };
  return {
    placing: { ...placing, mirrored },
    outline: placed(line, placing),
    parts,
    newTopMm: parts === 'section' || parts === 'head' ? -top - movedTop : null,
    scatterMm,
    remarks: REMARKS[parts],
  };
}

function topUnder(line: Outline, placing: Placing, halfWindowMm: number): number {
  const here = placed(line, placing);
  // At a sharp edge the smoothed line swings above the points: the top is never above them.
  return Math.min(topOf(here), topOf(smoothed(resampled(here, TOP_STEP_MM), halfWindowMm)));
}

const REMARKS: Readonly<Record<TracedParts, readonly string[]>> = {
  section: [],
  head: [
    'Only the head is traced: it is placed by its field side and the underside at its lower corners. Trace down the web for a surer upright.',
  ],
  top: [
    'The trace does not reach the underside of the head: it is placed by its field side and its worn top, so that the loss of the top cannot be found.',
  ],
  ends: ['No new rail section is chosen: the trace is placed by its two ends alone.'],
};

function checkSize(outline: Outline): Result<Outline> {
  const { from, to } = extentMm(outline);
  const across = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm);
  if (across < LEAST_ACROSS_MM) {
    return refuse(
      `The line is only ${across.toFixed(1)} mm across; a rail head is about 70 mm (2 3/4 in) wide. Check the scale and the unit.`,
    );
  }
  if (across > MOST_ACROSS_MM) {
    return refuse(
      `The line is ${across.toFixed(0)} mm across; a whole rail is at most about 250 mm (10 in). Check the scale and the unit.`,
    );
  }
  return ok(outline);
}

/** Walked from the gauge side over the top, a rail is walked clockwise. Null when the line encloses nothing. */
function overTheTop(line: Outline): Outline | null {
  const { xMm, yMm } = line;
  let area = 0;
  for (let i = 0; i < xMm.length; i += 1) {
    const j = (i + 1) % xMm.length;
    area += (xMm[i]! * yMm[j]! - xMm[j]! * yMm[i]!) / 2;
  }
  const length = arcLengths(line).at(-1) ?? 0;
  if (Math.abs(area) < 1e-3 * length * length) return null;
  return area > 0 ? reversed(line) : line;
}

/** The pose from which the trace best fits the section, of a number of first guesses; null when none fits. */
function firstPose(line: Outline, section: SectionLine): Pose | null {
  const n = line.xMm.length;
  const level = -Math.atan2(line.yMm[n - 1]! - line.yMm[0]!, line.xMm[n - 1]! - line.xMm[0]!);
  let best: { readonly pose: Pose; readonly misfit: number } | null = null;
  for (const turn of FIRST_TURNS_RAD) {
    const angleRad = level + turn;
    const turned = placed(line, { mirrored: false, angleRad, dxMm: 0, dyMm: 0 });
    const top = topOf(turned);
    const middle = middleOfHead(turned, top);
    for (const loss of FIRST_LOSSES_MM) {
      let pose: Pose = { angleRad, dxMm: -middle, dyMm: -top - loss };
      for (const toleranceMm of FIRST_TOLERANCES_MM) {
        pose = layingStep(line, section, pose, { weights: FIRST, toleranceMm });
      }
      const misfit = misfitOf(matches(line, section, pose));
      if (best === null || misfit < best.misfit) best = { pose, misfit };
    }
  }
  return best !== null && best.misfit < MISFIT_LIMIT_MM ? best.pose : null;
}

const everyThird = (line: Outline): Outline => everyNth(line, 3);
const topOf = ({ yMm }: Outline): number => yMm.reduce((top, y) => Math.max(top, y), -Infinity);

function middleOfHead({ xMm, yMm }: Outline, top: number): number {
  let [left, right] = [Infinity, -Infinity];
  for (let i = 0; i < xMm.length; i += 1) {
    if (yMm[i]! < top - HEAD_MM) continue;
    left = Math.min(left, xMm[i]!);
    right = Math.max(right, xMm[i]!);
  }
  return (left + right) / 2;
}

const HEAD_MM = 40;

/** A worn top and gauge side may lie inside the section; nothing lies outside it, and the rest lies on it. */
const INSIDE: Readonly<Record<Zone, number>> = { below: 1, fieldSide: 1, gaugeSide: 0.1, top: 0.15 };
const MISFIT_CAP_MM = 6;
const MISFIT_LIMIT_MM = 2;

/** Mean distance from the section, mm, of what should lie on it; wear counts little, up to a cap. */
function misfitOf(found: readonly (Match | null)[]): number {
  let sum = 0;
  for (const match of found) {
    if (match === null) sum += MISFIT_CAP_MM;
    else {
      const factor = match.outMm > 0 ? 1 : INSIDE[match.zone];
      sum += Math.min(MISFIT_CAP_MM, Math.abs(match.outMm) * factor);
    }
  }
  return sum / found.length;
}

/** Distance from the section within which a point is taken to show that part of it. */
const SHOWN_WITHIN_MM = 3;
const SECTION_MM = 25;
const CORNER_MM = 2.5;

function partsTraced(found: readonly (Match | null)[], stepMm: number): TracedParts {
  const below =
    stepMm *
    found.filter((match) => match?.zone === 'below' && Math.abs(match.outMm) < SHOWN_WITHIN_MM).length;
  if (below >= SECTION_MM) return 'section';
  return below >= CORNER_MM ? 'head' : 'top';
}

/** Standard deviation of the points that count, from their median distance. */
function scatterOf(found: readonly (Match | null)[], weights: Readonly<Record<Zone, number>>): number {
  const distances = found
    .flatMap((match) => (match !== null && weights[match.zone] > 0 ? [Math.abs(match.outMm)] : []))
    .sort((a, b) => a - b);
  return 1.4826 * (distances[Math.floor(distances.length / 2)] ?? 1);
}

function poseByEnds(line: Outline): Pose {
  const n = line.xMm.length;
  const angleRad = -Math.atan2(line.yMm[n - 1]! - line.yMm[0]!, line.xMm[n - 1]! - line.xMm[0]!);
  const turned = placed(line, { mirrored: false, angleRad, dxMm: 0, dyMm: 0 });
  return { angleRad, dxMm: -middleOfHead(turned, topOf(turned)), dyMm: 0 };
}

import { type Method } from '../findings/finding';
import { type PointMm } from '../outline/outline';
import { ok, refuse, type Result } from '../readings/result';
import { bearings, standsPerRoll, type Bearing, type Pose } from './bearing';
import { headPart, type HeadPart } from './head-part';
import { DATUM_FROM_BACK_MM, sidePointInRail, type ContactSetup, type ContactSide, type Side } from './setup';

export type ContactPoint = {
  /** In the track's frame: x to the right, y up, origin midway between the rails at their top. */
  readonly at: PointMm;
  /** In the wheel's and in the rail's own frame. */
  readonly onWheel: PointMm;
  readonly onRail: PointMm;
  /** Of the common tangent against the plane of the track, rad; positive where the flange bears on the gauge side. */
  readonly contactAngleRad: number;
  readonly rollingRadiusMm: number;
  /** Open distance across the tangent, mm: 0 at the point that bears, up to the tolerance at a second one. */
  readonly gapMm: number;
  readonly part: HeadPart;
  /** The outline of wheel or rail ends here: the place is not sure, it ought to be traced further. */
  readonly atEnd: boolean;
};

/** The point that bears first; the second of a two-point contact after it. */
export type SideContact = {
  readonly points: readonly [ContactPoint] | readonly [ContactPoint, ContactPoint];
  /** Height of this wheel's tread reference point above the top of the rails, mm. */
  readonly datumHeightMm: number;
};

export type ContactState = {
  /** Of the middle of the axle at tread level, mm, positive to the right. */
  readonly shiftMm: number;
  /** Positive with the right wheel higher, rad. */
  readonly rollRad: number;
  /** Height of the middle of the axle at tread level above the top of the rails, mm. */
  readonly heightMm: number;
  readonly left: SideContact;
  readonly right: SideContact;
  /** Rolling radius right less left, of the points that bear first, mm. */
  readonly radiusDifferenceMm: number;
};

export type RollTreatment = 'solved' | 'neglected';

export type ContactOptions = {
  /**
   * `solved` (when not given): rolled until both wheels touch. `neglected`: each wheel is let down on its
   * rail by itself, as for the radius-difference function of the equivalent conicity.
   */
  readonly roll?: RollTreatment;
  /** Greatest open distance across the tangent at which a second place counts as touching, mm; 0.05 when not given. */
  readonly twoPointToleranceMm?: number;
};

/**
 * About how far wheel and rail approach each other under an ordinary wheel load by flattening in the
 * contact (Hertz): a gap smaller than this closes under load. Engineering judgement.
 */
export const TWO_POINT_TOLERANCE_MM = 0.05;

/** Two places nearer than this along the wheel are one contact patch. */
const PATCH_MM = 3;

/** A wheel standing with its flange on top of the head rolls the axle by about 0.02 rad. */
const MOST_ROLL_RAD = 0.1;

const HEIGHT_TOLERANCE_MM = 1e-7;

/**
 * Where both wheels touch when the wheelset has moved `shiftMm` to the right. No wheel enters its rail,
 * and both touch: the roll φ is found where the heights at which left and right wheel come to stand
 * agree, by Newton's method within a bracket. Yaw is zero: plane contact geometry. Refuses when a wheel
 * is no longer over its rail.
 */
export function contactAt(
  setup: ContactSetup,
  shiftMm: number,
  options: ContactOptions = {},
): Result<ContactState> {
  if (!Number.isFinite(shiftMm)) return refuse('Enter the lateral shift in mm.');
  const solved = options.roll === 'neglected' ? unrolled(setup, shiftMm) : rolled(setup, shiftMm);
  if (!solved.ok) return solved;
  const { left: leftHeightMm, right: rightHeightMm, rollRad } = solved.value;
  const tolerance = options.twoPointToleranceMm ?? TWO_POINT_TOLERANCE_MM;
  const left = sideContact(setup, 'left', shiftMm, rollRad, leftHeightMm, tolerance);
  const right = sideContact(setup, 'right', shiftMm, rollRad, rightHeightMm, tolerance);
  return ok({
    shiftMm,
    rollRad,
    heightMm: (leftHeightMm + rightHeightMm) / 2,
    left,
    right,
    radiusDifferenceMm: right.points[0].rollingRadiusMm - left.points[0].rollingRadiusMm,
  });
}

type Stand = { readonly left: number; readonly right: number; readonly rollRad: number };

const scratch = (side: ContactSide): Float64Array => new Float64Array(side.wheel.xMm.length);

const pose = (side: Side, shiftMm: number, rollRad: number): Pose =>
  side === 'right' ? { shiftMm, rollRad } : { shiftMm: -shiftMm, rollRad: -rollRad };

function standing(setup: ContactSetup, side: Side, at: Pose, room: Float64Array): Bearing | undefined {
  return bearings(setup[side].wheel, setup[side].rail, at, 0, room)[0];
}

const dropped = (side: Side, shiftMm: number): Result<never> =>
  refuse(
    `With the wheelset ${Math.abs(shiftMm).toFixed(1)} mm to the ${shiftMm < 0 ? 'left' : 'right'} the ${side} wheel is not over its rail: it has dropped in or off. Enter a smaller shift.`,
  );

function unrolled(setup: ContactSetup, shiftMm: number): Result<Stand> {
  const left = standing(setup, 'left', pose('left', shiftMm, 0), scratch(setup.left));
  if (left === undefined) return dropped('left', shiftMm);
  const right = standing(setup, 'right', pose('right', shiftMm, 0), scratch(setup.right));
  if (right === undefined) return dropped('right', shiftMm);
  return ok({ left: left.standsAtMm, right: right.standsAtMm, rollRad: 0 });
}

function rolled(setup: ContactSetup, shiftMm: number): Result<Stand> {
  const leftRoom = scratch(setup.left);
  const rightRoom = scratch(setup.right);
  let [low, high] = [-MOST_ROLL_RAD, MOST_ROLL_RAD];
  let rollRad = 0;
  for (let step = 0; step < 80; step += 1) {
    const leftPose = pose('left', shiftMm, rollRad);
    const rightPose = pose('right', shiftMm, rollRad);
    const left = standing(setup, 'left', leftPose, leftRoom);
    if (left === undefined) return dropped('left', shiftMm);
    const right = standing(setup, 'right', rightPose, rightRoom);
    if (right === undefined) return dropped('right', shiftMm);
    // Rolling the right wheel up lets the middle of the axle down on the right and lifts it on the left.
    const difference = right.standsAtMm - left.standsAtMm;
    if (difference > 0) low = rollRad;
    else high = rollRad;
    const slope = standsPerRoll(right, rightPose) + standsPerRoll(left, leftPose);
    const newton = rollRad - difference / slope;
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    const done = Math.abs(difference) < HEIGHT_TOLERANCE_MM || high - low < 1e-13;
    if (done) return ok({ left: left.standsAtMm, right: right.standsAtMm, rollRad });
    rollRad = next;
  }
  return refuse(
    'The wheelset finds no stand with both wheels on their rails. Check gauge, back-to-back and outlines.',
  );
}

function sideContact(
  setup: ContactSetup,
  side: Side,
  shiftMm: number,
  rollRad: number,
  heightMm: number,
  toleranceMm: number,
): SideContact {
  const own = setup[side];
  const at = pose(side, shiftMm, rollRad);
  const within = toleranceMm / STEEPEST_COS;
  const found = bearings(own.wheel, own.rail, at, within, scratch(own));
  const first = found[0]!;
  const second = found.find(
    (other) =>
      Math.hypot(other.wheelXMm - first.wheelXMm, other.wheelYMm - first.wheelYMm) >= PATCH_MM &&
      (first.standsAtMm - other.standsAtMm) * Math.cos(other.angleRad) <= toleranceMm,
  );
  const point = (bearing: Bearing): ContactPoint =>
    contactPoint(setup, side, bearing, heightMm, first.standsAtMm);
  const datumX = setup.backToBackMm / 2 + DATUM_FROM_BACK_MM;
  const datumY = setup.rollingRadiusMm - own.rollingRadiusMm;
  return {
    points: second === undefined ? [point(first)] : [point(first), point(second)],
    datumHeightMm: heightMm + datumX * Math.sin(at.rollRad) + datumY * Math.cos(at.rollRad),
  };
}

/** Of 85°: a gap across a face this steep is a twelfth of its height. */
const STEEPEST_COS = 0.087;

function contactPoint(
  setup: ContactSetup,
  side: Side,
  bearing: Bearing,
  heightMm: number,
  standsAtMm: number,
): ContactPoint {
  const own = setup[side];
  const gapUpMm = standsAtMm - bearing.standsAtMm;
  const railY = heightMm + bearing.aboveReferenceMm - gapUpMm;
  const onRail = sidePointInRail({ xMm: bearing.xMm, yMm: railY }, own.railPlacing);
  const onWheel = {
    xMm: bearing.wheelXMm - setup.backToBackMm / 2,
    yMm: setup.rollingRadiusMm - own.rollingRadiusMm - bearing.wheelYMm,
  };
  return {
    at: { xMm: side === 'right' ? bearing.xMm : -bearing.xMm, yMm: railY },
    onWheel,
    onRail,
    contactAngleRad: bearing.angleRad,
    rollingRadiusMm: own.rollingRadiusMm + onWheel.yMm,
    gapMm: gapUpMm * Math.cos(bearing.angleRad),
    part: headPart(onRail.xMm, own.halfHeadMm),
    atEnd: bearing.atEnd,
  };
}

export const contactMethod: Method = {
  id: 'contact-geometry',
  name: 'Contact of a wheelset with a pair of rails',
  formula:
    'Wheel point (x, y) of one side, moved by s and rolled by ψ about the middle of the axle at tread level: X = s + x·cos ψ − y·sin ψ, Y = z + x·sin ψ + y·cos ψ. The wheel stands at z = max over its points of rail(X) − x·sin ψ − y·cos ψ; the roll is the one at which left and right stand at the same z. Contact angle: direction of the parabola fitted to the wheel within 0.5 mm along its line, 2 mm where the line shivers.',
  validRange:
    'Rigid wheels and rails in one plane across the track; no yaw. A second place counts as touching when its gap is at most 0.05 mm. Places on an end of an outline are marked.',
  sources: [
    { text: 'Plane geometry of rigid outlines', status: 'published' },
    { text: 'EN 15302:2021, clause 8 (contact positions and contact functions)', status: 'from memory' },
    { text: 'Savitzky and Golay, 1964 (fit of the direction)', status: 'published' },
    {
      text: 'The tolerance of 0.05 mm for a second contact, about the flattening under an ordinary wheel load',
      status: 'engineering judgement',
    },
  ],
};

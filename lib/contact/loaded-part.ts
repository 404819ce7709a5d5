import { type ContactSetup, type Side } from './setup';
import { type HeadPart } from './head-part';
import { type ContactSweep, contactSweep, shiftsBetween } from './sweep';
import { ok, refuse, type Result } from '../readings/result';
import { flangeClearance } from './clearance';

export type LoadedPart = {
  /** Share of the shifts at which each part bears, 0 to 1; the place that bears first counts. */
  readonly shares: Readonly<Record<HeadPart, number>>;
  /** Range of the place of contact over the shifts, mm from the axis of the rail section, field side positive. */
  readonly fromXMm: number;
  readonly toXMm: number;
  /** Mean and standard deviation of that place. */
  readonly meanXMm: number;
  readonly spreadXMm: number;
  /** Shifts at which this side touches at two places, share 0 to 1. */
  readonly twoPoint: number;
  /** A place on the end of an outline was met: the trace ought to go further. */
  readonly atEnd: boolean;
};

/** Which part of the head of one side bears over a sweep, every shift counting the same. */
export function loadedPart(sweep: ContactSweep, side: Side): Result<LoadedPart> {
  const contacts = sweep.states.map((state) => state[side]);
  const n = contacts.length;
  if (n === 0) return refuse('The wheelset stands on its rails at none of the shifts: enter smaller shifts.');
  const share = (holds: (contact: (typeof contacts)[number]) => boolean): number =>
    contacts.filter(holds).length / n;
  const of = (part: HeadPart): number => share(({ points }) => points[0].part === part);
  const places = contacts.map(({ points }) => points[0].onRail.xMm);
  const meanXMm = places.reduce((sum, x) => sum + x, 0) / n;
  return ok({
    shares: {
      gaugeFace: of('gaugeFace'),
      gaugeCorner: of('gaugeCorner'),
      crown: of('crown'),
      fieldSide: of('fieldSide'),
    },
    fromXMm: places.reduce((a, b) => Math.min(a, b), Infinity),
    toXMm: places.reduce((a, b) => Math.max(a, b), -Infinity),
    meanXMm,
    spreadXMm: Math.sqrt(places.reduce((sum, x) => sum + (x - meanXMm) ** 2, 0) / n),
    twoPoint: share(({ points }) => points.length === 2),
    atEnd: contacts.some(({ points }) => points.some(({ atEnd }) => atEnd)),
  });
}

const STEP_MM = 0.1;

/** The shifts a wheelset is likely to take: from flange contact on one side to flange contact on the other. */
export function likelySweep(setup: ContactSetup): Result<ContactSweep> {
  const clearance = flangeClearance(setup);
  if (!clearance.ok) return clearance;
  const { leftMm, rightMm } = clearance.value;
  return ok(contactSweep(setup, shiftsBetween(-leftMm, rightMm, STEP_MM)));
}

const LIKELY_STEP_MM = 0.25;

/**
 * The shifts a wheelset takes that runs against the rail of one side, or has just left the middle: from the
 * middle of the track to flange contact on that side, in steps of 0.25 mm. Engineering judgement: on a curve
 * the leading axle of a truck runs at its outer rail.
 */
export function likelyShifts(setup: ContactSetup, flanging: Side): Result<Float64Array> {
  const clearance = flangeClearance(setup);
  if (!clearance.ok) return clearance;
  return ok(
    flanging === 'right'
      ? shiftsBetween(0, clearance.value.rightMm, LIKELY_STEP_MM)
      : shiftsBetween(-clearance.value.leftMm, 0, LIKELY_STEP_MM),
  );
}

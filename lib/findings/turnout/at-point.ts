import type { Entity } from '../../case/record';
import { degrees } from '../../readings/quantities/build';
import { propagate, type Input } from '../../readings/propagate';
import type { FlangeAtRail } from '../../turnout/flange-at-rail';
import { missMm, type PointFit } from '../../turnout/point-fit';
import { yawed } from '../../turnout/yawed';
import type { Context } from '../context';
import { draw, DRAWS, type Drawn } from '../draw';
import type { Taken } from '../reading-index';
import { across, degreesText } from '../words';
import { outlinesOfPoint } from './outlines-of-point';
import { placesOnPoint, type PlaceOnPoint } from './places-on-point';
import { chipTaken, sectionsTaken, type ChipTaken, type SectionTaken } from './point-readings';
import { sideOfPoint, wheelAtPoint, type WheelAtPoint } from './wheel-at-point';

/** Slope of a point's gauge side nobody measured. */
const FACE = { value: degrees(80), u: degrees(3) };
const FACE_REMARK = `The gauge side of the point is taken to slope at ${degreesText(FACE.value)}, give or take ${degreesText(FACE.u)}: engineering judgement.`;

/** What the form of the gauge side comes from. */
function sideRemarks(sections: readonly SectionTaken[], read: Taken | null): readonly string[] {
  const traced = sections.filter(({ side }) => side !== undefined);
  if (traced.length === 0) {
    return [
      'No outline of the point was used: its gauge side is straight.',
      read === null ? FACE_REMARK : '',
    ];
  }
  const where = traced.map(({ behindMm }) =>
    behindMm === 0 ? 'the tip' : `${across(behindMm)} behind the tip`,
  );
  return [
    `Gauge side of the point from its outline at ${where.join(' and ')}${traced.length > 1 ? ', between them a mean at equal depth below the top' : ''}.`,
    'Beyond and below the outlines the gauge side is straight.',
    read === null ? FACE_REMARK : '',
  ];
}

/** A truck that steers badly through a turnout; and the rolling radius, on which little depends. */
export const YAW_RAD = 0.01;
export const ROLLING_RADIUS_MM = 457.2;

/** How the wheelset stands: square to the track, or at the angle of attack of `YAW_RAD`. */
export type Stance = 'square' | 'yawed';

/** What is known at one facing point: the flange that meets it and the places where it is looked at. */
export type AtPoint = {
  readonly context: Context;
  readonly wheel: WheelAtPoint;
  readonly face: { readonly read: Taken | null; readonly assumed: readonly Input[] };
  readonly faceRad: number;
  /** Tip, and floor and end of a chip: what a flange can strike or ride. */
  readonly places: readonly PlaceOnPoint[];
  /** The point at the distances behind the tip where it was read. */
  readonly behind: readonly PlaceOnPoint[];
  readonly sections: readonly SectionTaken[];
  readonly chip: ChipTaken | null;
  readonly remarks: readonly string[];
  readonly turn: (flange: FlangeAtRail) => FlangeAtRail;
};

export type AtPointOrMissing = AtPoint | { readonly missing: readonly string[] };

const known = new WeakMap<Context, Map<string, AtPointOrMissing>>();

/** Wheel and point at one turnout, or what is missing to hold one against the other. */
export function atPoint(context: Context, turnout: Entity): AtPointOrMissing {
  const of = known.get(context) ?? new Map<string, AtPointOrMissing>();
  known.set(context, of);
  const at = of.get(turnout.id) ?? gathered(context, turnout);
  of.set(turnout.id, at);
  return at;
}

function gathered(context: Context, turnout: Entity): AtPointOrMissing {
  const side = sideOfPoint(context, turnout);
  if (side === null) return { missing: ['which point was read, left or right'] };
  const wheel = wheelAtPoint(context, side, turnout);
  const sections = sectionsTaken(context, turnout);
  const missing = [
    ...(sections[0]?.behindMm === 0 ? [] : missingAtTip(context, turnout)),
    ...('missing' in wheel ? wheel.missing : []),
  ];
  if ('missing' in wheel || missing.length > 0) return { missing };
  const read = context.read.take('turnout', turnout.id, 'pointFaceAngle');
  const chip = chipTaken(context, turnout);
  return {
    context,
    wheel,
    face: { read, assumed: read === null ? [{ key: 'slope of the point’s side', ...FACE }] : [] },
    faceRad: read?.value ?? FACE.value,
    ...placesOnPoint(sections, chip),
    sections,
    chip,
    remarks: [...wheel.remarks, ...sideRemarks(sections, read)],
    turn: turnedOnce(),
  };
}

function missingAtTip(context: Context, turnout: Entity): readonly string[] {
  const traced = outlinesOfPoint(context, turnout).some(({ behindMm }) => behindMm === 0);
  const named = {
    pointGap: 'gap between point and stock rail at the tip',
    ...(traced ? {} : { tipThickness: 'thickness of the tip, or its outline' }),
    tipDepth: 'depth of the tip below the stock rail',
  };
  return Object.entries(named).flatMap(([quantity, words]) =>
    context.read.take('turnout', turnout.id, quantity) === null ? [words] : [],
  );
}

/** The same flanges come again and again in the draws of every place; each is turned once. */
function turnedOnce(): AtPoint['turn'] {
  const turned = new WeakMap<FlangeAtRail, FlangeAtRail>();
  return (flange) => {
    const found = turned.get(flange) ?? yawed(flange, YAW_RAD, ROLLING_RADIUS_MM);
    turned.set(flange, found);
    return found;
  };
}

/** The smallest miss of several fits, mm. */
export const missOf = (fits: readonly PointFit[]): number => Math.min(...fits.map(missMm));

/** By how much the flange misses the nearest of some places, with its draws. */
export const missDrawn = (at: AtPoint, places: readonly PlaceOnPoint[], stance: Stance): Drawn => {
  const { inputs, fitsOf } = fitting(at, places, stance);
  return draw((values) => missOf(fitsOf(values)), inputs, at.context.seed, at.face.assumed);
};

/** Share of the draws for which something holds of the fits at some places. */
export function shareOfDraws(
  at: AtPoint,
  places: readonly PlaceOnPoint[],
  holds: (fits: readonly PointFit[]) => boolean,
): number {
  const { inputs, fitsOf } = fitting(at, places, 'square');
  return (
    propagate(
      (values) => (holds(fitsOf(values)) ? 1 : 0),
      [
        ...inputs.map(({ value, u, readings }) => ({ key: readings.join('+'), value, u })),
        ...at.face.assumed,
      ],
      DRAWS,
      at.context.seed,
    ).mean ?? NaN
  );
}

/** What is drawn at some places, and the fits for drawn values; one reading used twice errs the same way twice. */
function fitting({ wheel, face, turn }: AtPoint, places: readonly PlaceOnPoint[], stance: Stance) {
  const [first, ...more] = wheel.inputs;
  const inputs: readonly [Taken, ...Taken[]] = [
    first,
    ...more,
    ...places.flatMap((place) => place.inputs),
    ...(face.read === null ? [] : [face.read]),
  ];
  const faceAt = inputs.length - (face.read === null ? 0 : 1);
  const fitsOf = (values: ArrayLike<number>): readonly PointFit[] => {
    const stands = wheel.flange(values, 0);
    const flange = stance === 'yawed' ? turn(stands) : stands;
    let from = wheel.inputs.length;
    return places.map((place) => {
      const fit = place.fit(flange, values, from, values[faceAt] ?? NaN);
      from += place.inputs.length;
      return fit;
    });
  };
  return { inputs, fitsOf };
}

/** The flange as its readings say, in either stance. */
export function nominalFlange({ wheel, turn }: AtPoint, stance: Stance): FlangeAtRail {
  const stands = wheel.flange(
    wheel.inputs.map(({ value }) => value),
    0,
  );
  return stance === 'yawed' ? turn(stands) : stands;
}

/** The fit at a place as the readings say. */
export const nominalFit = (at: AtPoint, place: PlaceOnPoint, stance: Stance): PointFit =>
  place.fit(
    nominalFlange(at, stance),
    place.inputs.map(({ value }) => value),
    0,
    at.faceRad,
  );

import { pointClearanceMethod } from '../../mechanics/point-clearance';
import { degrees } from '../../readings/quantities/build';
import { propagate, type Input } from '../../readings/propagate';
import { firstTouch } from '../../turnout/first-touch';
import type { FlangeAtRail } from '../../turnout/flange-at-rail';
import {
  CLOSE_MM,
  couldBeStruck,
  missMm,
  pointFitMethod,
  SHALLOW_RAD,
  type PointFit,
} from '../../turnout/point-fit';
import { yawed, yawMethod } from '../../turnout/yawed';
import type { Entity } from '../../case/record';
import { distinct, measured, notMeasured, outOfRange, type Heading } from '../build';
import type { Context } from '../context';
import { draw, DRAWS, notBelowZero, type Drawn } from '../draw';
import type { Finding, Method, Source } from '../finding';
import type { Taken } from '../reading-index';
import { across, degreesText, percent } from '../words';
import { facingTurnouts, pointPlace } from './near-pod';
import { placesOnPoint, type PlaceOnPoint } from './places-on-point';
import { chipTaken, sectionsTaken, type ChipTaken, type SectionTaken } from './point-readings';
import { sideOfPoint, wheelAtPoint, type WheelAtPoint } from './wheel-at-point';

const CLEAR: Source = { text: 'Clearance of zero: the flange touches the edge', status: 'published' };

/** Slope of a point's gauge side nobody measured. */
const FACE = { value: degrees(80), u: degrees(3) };
const FACE_REMARK = `The gauge side of the point is taken to slope at ${degreesText(FACE.value)}, give or take ${degreesText(FACE.u)}: engineering judgement.`;

/** A truck that steers badly through a turnout; and the rolling radius, on which little depends. */
const YAW_RAD = 0.01;
const ROLLING_RADIUS_MM = 457.2;

const TITLES: Readonly<Record<PlaceOnPoint['id'], readonly [what: string, title: string]>> = {
  tip: ['pointClearanceTip', 'Clearance of the flange to the tip of the point'],
  chipFloor: ['pointClearanceChip', 'Clearance of the flange to the floor of the chip'],
  chipEnd: ['pointClearanceChipEnd', 'Clearance of the flange to the point where the chip ends'],
};
const LEAST = ['pointClearanceLeast', 'Smallest clearance of the flange to tip or chip'] as const;
const YAWED = [
  'pointClearanceYawed',
  'Smallest clearance to tip or chip at an angle of attack of 10 mrad',
] as const;
const TOUCH = ['pointFirstTouch', 'First touch of the flange behind the tip'] as const;

/** What is known at one facing point: the flange that meets it and the places it can strike. */
type AtPoint = {
  readonly context: Context;
  readonly wheel: WheelAtPoint;
  readonly face: { readonly read: Taken | null; readonly assumed: readonly Input[] };
  readonly places: readonly PlaceOnPoint[];
  readonly sections: readonly SectionTaken[];
  readonly chip: ChipTaken | null;
  readonly heading: (
    named: readonly [string, string],
    method: Method,
    remarks?: readonly string[],
  ) => Heading;
};

/**
 * The first derailed axle's flange beside every facing point: to the tip, to the floor and the end of a
 * chip, the smallest of these, the same at an angle of attack, and where the flange first touches the point.
 */
export const pointClearanceFindings = (context: Context): readonly Finding[] =>
  facingTurnouts(context).flatMap((turnout) => ofTurnout(context, turnout));

function ofTurnout(context: Context, turnout: Entity): readonly Finding[] {
  const side = sideOfPoint(context, turnout);
  const { remark } = pointPlace(context, turnout);
  const subject = { kind: 'turnout', id: turnout.id } as const;
  const bare = (named: readonly [string, string], method: Method, remarks: readonly string[]): Heading => ({
    part: 'turnout',
    method,
    what: named[0],
    title: named[1],
    subject,
    remarks: distinct([remark, ...remarks]),
  });
  if (side === null) {
    return [notMeasured(bare(TITLES.tip, pointFitMethod, []), ['which point was read, left or right'])];
  }
  const wheel = wheelAtPoint(context, side);
  const sections = sectionsTaken(context, turnout);
  const missing = [...missingAtTip(context, turnout), ...('missing' in wheel ? wheel.missing : [])];
  if ('missing' in wheel || missing.length > 0) {
    return [notMeasured(bare(TITLES.tip, pointFitMethod, []), missing)];
  }
  const read = context.read.take('turnout', turnout.id, 'pointFaceAngle');
  const chip = chipTaken(context, turnout);
  const at: AtPoint = {
    context,
    wheel,
    face: { read, assumed: read === null ? [{ key: 'slope of the point’s side', ...FACE }] : [] },
    places: placesOnPoint(sections, chip),
    sections,
    chip,
    heading: (named, method, remarks = []) =>
      bare(named, method, [...wheel.remarks, read === null ? FACE_REMARK : '', ...remarks]),
  };
  return [
    ...at.places.map((place) => placeFinding(at, place)),
    leastFinding(at),
    yawedFinding(at),
    ...touchFinding(at),
  ];
}

function missingAtTip(context: Context, turnout: Entity): readonly string[] {
  const named = {
    pointGap: 'gap between point and stock rail at the tip',
    tipThickness: 'thickness of the tip',
    tipDepth: 'depth of the tip below the stock rail',
  };
  return Object.entries(named).flatMap(([quantity, words]) =>
    context.read.take('turnout', turnout.id, quantity) === null ? [words] : [],
  );
}

/** Draws a number from the flange, the side's slope and fits at places; one reading used twice errs the same way twice. */
function drawn(
  { wheel, face, context }: AtPoint,
  places: readonly PlaceOnPoint[],
  of: (fits: (flange: FlangeAtRail) => readonly PointFit[], flange: FlangeAtRail) => number,
): Drawn & { readonly share: (of: (fits: readonly PointFit[]) => boolean) => number } {
  const [first, ...more] = wheel.inputs;
  const inputs: readonly [Taken, ...Taken[]] = [
    first,
    ...more,
    ...places.flatMap((place) => place.inputs),
    ...(face.read === null ? [] : [face.read]),
  ];
  const faceAt = inputs.length - (face.read === null ? 0 : 1);
  const fitsOf =
    (values: ArrayLike<number>) =>
    (flange: FlangeAtRail): readonly PointFit[] => {
      let from = wheel.inputs.length;
      return places.map((place) => {
        const fit = place.fit(flange, values, from, values[faceAt] ?? NaN);
        from += place.inputs.length;
        return fit;
      });
    };
  const formula = (values: ArrayLike<number>): number => of(fitsOf(values), wheel.flange(values, 0));
  return {
    ...draw(formula, inputs, context.seed, face.assumed),
    share: (holds) =>
      propagate(
        (values) => (holds(fitsOf(values)(wheel.flange(values, 0))) ? 1 : 0),
        [...inputs.map(({ value, u, readings }) => ({ key: readings.join('+'), value, u })), ...face.assumed],
        DRAWS,
        context.seed,
      ).mean ?? NaN,
  };
}

const methodOf = ({ wheel }: AtPoint): Method =>
  wheel.outlines === null ? pointClearanceMethod : pointFitMethod;

function placeFinding(at: AtPoint, place: PlaceOnPoint): Finding {
  const found = drawn(at, [place], (fits, flange) => missOf(fits(flange)));
  const [nominal] = nominalFits(at, [place]);
  const [, title] = TITLES[place.id];
  return measured(
    at.heading(TITLES[place.id], methodOf(at), [
      ...place.remarks,
      nominal === undefined ? '' : fitRemark(nominal),
    ]),
    'crossLength',
    found.taken,
    [notBelowZero(title.replace('Clearance of the flange to', 'Flange clear of'), found, CLEAR)],
  );
}

function leastFinding(at: AtPoint): Finding {
  const found = drawn(at, at.places, (fits, flange) => missOf(fits(flange)));
  const nominal = nominalFits(at, at.places);
  const least = nominal.reduce((a, b, i) => (missMm(b) < missMm(nominal[a] ?? b) ? i : a), 0);
  const where = at.places[least];
  return measured(
    at.heading(LEAST, methodOf(at), [
      where === undefined ? '' : `Smallest ${WHERE[where.id]}, ${across(where.behindMm)} behind the tip.`,
      `In ${percent(found.share((fits) => fits.some(couldBeStruck)))} of the draws tip or chip could be struck or ridden: within reach, and outside the face or within ${across(CLOSE_MM)} of it where the flange is flatter than ${degreesText(SHALLOW_RAD)}.`,
    ]),
    'crossLength',
    found.taken,
    [notBelowZero('Flange clear of tip and chip', found, CLEAR)],
  );
}

const WHERE: Readonly<Record<PlaceOnPoint['id'], string>> = {
  tip: 'at the tip',
  chipFloor: 'at the floor of the chip',
  chipEnd: 'where the chip ends',
};

function yawedFinding(at: AtPoint): Finding {
  // Shaken lines come again and again in the draws; each is turned once.
  const turned = new WeakMap<FlangeAtRail, FlangeAtRail>();
  const turn = (flange: FlangeAtRail): FlangeAtRail => {
    const known = turned.get(flange) ?? yawed(flange, YAW_RAD, ROLLING_RADIUS_MM);
    turned.set(flange, known);
    return known;
  };
  const found = drawn(at, at.places, (fits, flange) => missOf(fits(turn(flange))));
  return measured(
    at.heading(YAWED, yawMethod, [
      `Rolling radius taken as ${across(ROLLING_RADIUS_MM)}; little depends on it. 10 mrad: a truck that steers badly, engineering judgement.`,
    ]),
    'crossLength',
    found.taken,
    [notBelowZero('Flange clear of tip and chip', found, CLEAR)],
  );
}

/** Where the flange first meets the point; nothing when the point was read at its tip only. */
function touchFinding(at: AtPoint): readonly Finding[] {
  const { sections, chip, context, wheel, face } = at;
  const [first, ...more] = wheel.inputs;
  const last = sections.at(-1);
  if (last === undefined || last.behindMm === 0) return [];
  const inputs: readonly [Taken, ...Taken[]] = [
    first,
    ...more,
    ...sections.flatMap(({ gap, thickness, depth }) => [gap, thickness, depth]),
    ...(face.read === null ? [] : [face.read]),
  ];
  const from = wheel.inputs.length;
  const touch = (values: ArrayLike<number>) =>
    firstTouch(
      wheel.flange(values, 0),
      sections.map(({ behindMm }, i) => ({
        behindMm,
        gapMm: values[from + 3 * i] ?? NaN,
        thicknessMm: values[from + 3 * i + 1] ?? NaN,
        depthMm: values[from + 3 * i + 2] ?? NaN,
      })),
      chip?.chip ?? null,
      values[from + 3 * sections.length] ?? NaN,
    );
  const found = draw((values) => touch(values)?.behindMm ?? NaN, inputs, context.seed, face.assumed);
  const nominal = touch([...inputs.map(({ value }) => value), ...face.assumed.map(({ value }) => value)]);
  if (nominal === null) {
    return [
      outOfRange(
        at.heading(TOUCH, pointFitMethod),
        { ...found.taken, value: 0 },
        `a flange against the stock rail meets the point nowhere in the ${across(last.behindMm)} that were read`,
      ),
    ];
  }
  const met = Array.from(found.draws).filter(Number.isFinite);
  const u = Math.sqrt(met.reduce((sum, place) => sum + (place - nominal.behindMm) ** 2, 0) / met.length);
  return [
    measured(
      at.heading(TOUCH, pointFitMethod, [
        `The flange slopes at ${degreesText(nominal.slopeRad)} where it touches, ${across(nominal.depthMm)} below the top of the stock rail.`,
        nominal.slopeRad >= SHALLOW_RAD
          ? 'A steep flange touching the point where it has become thick is normal running.'
          : 'The flange is shallow there: it is lifted rather than pushed aside.',
        found.outOfRange > 0
          ? `In ${percent(found.outOfRange)} of the draws it touches nowhere as far back as was read.`
          : '',
      ]),
      'crossLength',
      { ...found.taken, value: nominal.behindMm, u },
    ),
  ];
}

const missOf = (fits: readonly PointFit[]): number => Math.min(...fits.map(missMm));

function nominalFits({ wheel, face }: AtPoint, places: readonly PlaceOnPoint[]): readonly PointFit[] {
  const flange = wheel.flange(
    wheel.inputs.map(({ value }) => value),
    0,
  );
  return places.map((place) =>
    place.fit(
      flange,
      place.inputs.map(({ value }) => value),
      0,
      face.read?.value ?? FACE.value,
    ),
  );
}

const fitRemark = ({ reachMm, least }: PointFit): string =>
  least === null
    ? `The flange passes over it by ${across(-reachMm)}.`
    : `The flange reaches ${across(reachMm)} below it; smallest ${across(least.depthMm)} below the top of the stock rail, where the flange slopes at ${degreesText(least.slopeRad)}.`;

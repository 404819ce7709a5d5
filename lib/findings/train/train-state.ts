import type { Entity } from '../../case/record';
import type { LocomotiveRating } from '../../mechanics/locomotive-force';
import { DRAG_FACTORS } from '../../mechanics/resistance';
import type { Context } from '../context';
import { oncePerContext } from '../once-per-context';
import type { RecorderAtPod } from '../recorder-at-pod';
import type { NonEmpty, Taken } from '../reading-index';
import { curveAtPod } from '../track/curving';
import { lineProfile, takenOnLine } from './line-profile';
import { madeUpTrain, type MadeUp } from './make-up';

/** One vehicle as it stood when the first derailed one reached the POD. */
export type VehicleState = {
  readonly entity: Entity;
  readonly massKg: number;
  readonly lengthM: number;
  /** NaN when not known. */
  readonly truckCentresM: number;
  readonly axles: number;
  readonly dragFactor: number;
  readonly empty: boolean;
  readonly locomotive: boolean;
  /** Null for cars, and for a locomotive that neither pulls nor brakes. */
  readonly rating: LocomotiveRating | null;
  /** Notches of a locomotive worked by itself; null for one that does as the recording one. */
  readonly own: OwnHandling | null;
  /** Its middle from the POD, m, ahead positive; NaN when no first derailed vehicle is marked. */
  readonly atPodM: number;
  readonly grade: Pick<Taken, 'value' | 'u'>;
  /** Its grade is that of the line’s profile. */
  readonly gradeOnLine: boolean;
  /** What is known of the curve under it: lowest and highest, 1/m; of the hand of the curve at the POD positive. */
  readonly curvature: readonly [low: number, high: number];
  /** Its curvature is that of the line’s profile. */
  readonly curvatureOnLine: boolean;
};

/** Throttle 0 to 8, and the share of full dynamic brake. */
export type OwnHandling = { readonly throttle: number; readonly dynamicBrakeShare: number };

export type TrainState = {
  readonly kind: 'known';
  readonly vehicles: readonly VehicleState[];
  /** Index of the first derailed vehicle; null when none is marked. */
  readonly first: number | null;
  readonly speed: Taken;
  readonly recorder: RecorderAtPod;
  readonly readings: NonEmpty<string>;
  readonly remarks: readonly string[];
};

export type UnknownTrain = { readonly kind: 'unknown'; readonly missing: readonly string[] };

const DEFAULT_AXLES = { locomotive: 4, car: 4 } as const;

const dragOf = (type: unknown): number =>
  type === 'intermodal' ? DRAG_FACTORS.containers : DRAG_FACTORS.conventional;

/** What in-train forces are computed from, or the words for what is missing. */
export const trainState = oncePerContext((context: Context): TrainState | UnknownTrain => {
  const train = madeUpTrain(context);
  const { recorder, speedAtPod: speed, read } = context;
  if (train.length < 2) return { kind: 'unknown', missing: ['the consist'] };
  const missing: string[] = [];
  const readings = new Set<string>();
  const take = (id: string, quantity: string): Taken | null => {
    const taken = read.take('vehicle', id, quantity);
    for (const reading of taken?.readings ?? []) readings.add(reading);
    return taken;
  };
  const lacking = (what: string, count: number): void => {
    if (count > 0) missing.push(`${what} of ${count} of ${train.length} vehicles`);
  };
  lacking('gross weight', train.filter(({ massKg }) => Number.isNaN(massKg)).length);
  lacking('length over pulling faces', train.filter(({ lengthM }) => Number.isNaN(lengthM)).length);
  if (speed === null) missing.push('speed at the POD');
  if (recorder === null) missing.push('handling at the POD from an event recorder');
  else missing.push(...missingRating(context, train, recorder));

  const remarks: string[] = [];
  const firstId = context.first.vehicle?.entity.id;
  const first = train.findIndex(({ entity }) => entity.id === firstId);
  const places = placesOf(train, first);
  const grades = gradesUnder(context, train, places, take, remarks, readings);
  const ungraded = grades.filter(({ taken }) => taken === null).length;
  if (ungraded > 0)
    missing.push(
      `grade at the POD, in the profile of the line, or under ${ungraded} of ${train.length} vehicles`,
    );
  if (recorder !== null && Number.isFinite(recorder.tractiveEffortKn))
    remarks.push('Tractive effort of the recording locomotive taken for every locomotive worked with it.');
  if (missing.length > 0 || speed === null || recorder === null) return { kind: 'unknown', missing };
  remarks.push(...controlRemarks(context, train));

  const curves = curvesUnder(context, train, places, first, take, remarks, readings);
  const vehicles = train.map(({ entity, massKg, lengthM, load, locomotive }, i): VehicleState => ({
    entity,
    massKg,
    lengthM,
    truckCentresM: take(entity.id, 'truckCentres')?.value ?? NaN,
    axles: take(entity.id, 'axleCount')?.value ?? (locomotive ? DEFAULT_AXLES.locomotive : DEFAULT_AXLES.car),
    dragFactor: dragOf(entity.fields.type),
    empty: load === 'empty',
    locomotive,
    rating:
      locomotive && controlOf(context, entity.id) !== 'isolated' ? ratingOf(take, entity.id, massKg) : null,
    own: locomotive ? ownHandling(context, entity.id, take) : null,
    atPodM: places[i] ?? NaN,
    grade: grades[i]?.taken ?? { value: NaN, u: NaN },
    gradeOnLine: grades[i]?.onLine ?? false,
    curvature: curves[i]?.range ?? [0, 0],
    curvatureOnLine: curves[i]?.onLine ?? false,
  }));
  for (const { entity } of train) {
    take(entity.id, 'grossWeight');
    take(entity.id, 'lengthOverPullingFaces');
  }
  for (const reading of speed.readings) readings.add(reading);
  return {
    kind: 'known',
    vehicles,
    first: first < 0 ? null : first,
    speed,
    recorder,
    readings: [recorder.runId, ...[...readings].filter((id) => id !== recorder.runId)],
    remarks,
  };
});

function ratingOf(
  take: (id: string, quantity: string) => Taken | null,
  id: string,
  massKg: number,
): LocomotiveRating {
  return {
    massKg,
    ratedKn: take(id, 'tractiveEffortRated')?.value ?? NaN,
    ratedSpeedMs: take(id, 'tractiveEffortSpeed')?.value ?? NaN,
    dynamicBrakeKn: take(id, 'dynamicBrakeFull')?.value ?? NaN,
  };
}

type Control = 'asRecorded' | 'byItself' | 'isolated';

const controlOf = (context: Context, id: string): Control => {
  const said = context.read.state('vehicle', id, 'locomotiveControl')?.state;
  return said === 'byItself' || said === 'isolated' ? said : 'asRecorded';
};

const NOTCHES = 8;

function ownHandling(
  context: Context,
  id: string,
  take: (id: string, quantity: string) => Taken | null,
): OwnHandling | null {
  if (controlOf(context, id) !== 'byItself') return null;
  return {
    throttle: take(id, 'ownThrottle')?.value ?? 0,
    dynamicBrakeShare: (take(id, 'ownDynamicBrake')?.value ?? 0) / NOTCHES,
  };
}

/** What is taken of locomotives the recorder did not ride on. */
function controlRemarks(context: Context, train: readonly MadeUp[]): readonly string[] {
  const locomotives = train.filter(({ locomotive }) => locomotive);
  if (locomotives.length < 2) return [];
  const of = (control: Control): number =>
    locomotives.filter(({ entity }) => controlOf(context, entity.id) === control).length;
  const [own, idle] = [of('byItself'), of('isolated')];
  return [
    `${locomotives.length === 2 ? 'Both' : `All ${locomotives.length}`} locomotives count where they stand in the train; ${own + idle === 0 ? 'each' : `${of('asRecorded')} of them`} taken in the notch of the recording one${own > 0 ? `, ${own} in its own notch as entered` : ''}${idle > 0 ? `, ${idle} as a car` : ''}.`,
  ];
}

/** Ratings the handling at the POD asks for, of every locomotive. */
function missingRating(
  context: Context,
  train: readonly MadeUp[],
  recorder: RecorderAtPod,
): readonly string[] {
  const all = train.filter(({ locomotive }) => locomotive);
  if (all.length === 0) return ['a vehicle of the consist whose type is locomotive'];
  const { read } = context;
  const own = all.filter(({ entity }) => controlOf(context, entity.id) === 'byItself');
  const unsaid = own.filter(
    ({ entity }) =>
      read.take('vehicle', entity.id, 'ownThrottle') === null &&
      read.take('vehicle', entity.id, 'ownDynamicBrake') === null,
  ).length;
  const led = all.filter(({ entity }) => controlOf(context, entity.id) === 'asRecorded');
  const { throttle, dynamicBrakeShare, tractiveEffortKn } = recorder;
  const handled = Number.isFinite(tractiveEffortKn) ? null : ratingsFor({ throttle, dynamicBrakeShare }, led);
  if (led.length > 0 && handled !== null && Number.isNaN(throttle) && Number.isNaN(dynamicBrakeShare))
    return ['throttle, dynamic brake or tractive effort in the recorder run'];
  const wanted = [
    ...(handled ?? []),
    ...own.flatMap((each) =>
      ratingsFor(
        {
          throttle: read.take('vehicle', each.entity.id, 'ownThrottle')?.value ?? 0,
          dynamicBrakeShare: read.take('vehicle', each.entity.id, 'ownDynamicBrake')?.value ?? 0,
        },
        [each],
      ),
    ),
  ];
  const words: Readonly<Record<string, string>> = {
    dynamicBrakeFull: 'largest dynamic-brake force',
    tractiveEffortRated: 'continuous tractive effort',
    tractiveEffortSpeed: 'speed of the continuous tractive effort',
  };
  return [
    ...(unsaid === 0
      ? []
      : [`notch at the POD of ${unsaid} locomotive${unsaid === 1 ? '' : 's'} worked by itself`]),
    ...Object.keys(words).flatMap((quantity) => {
      const without = new Set(
        wanted
          .filter((each) => each.quantity === quantity)
          .map(({ id }) => id)
          .filter((id) => read.take('vehicle', id, quantity) === null),
      ).size;
      return without === 0 ? [] : [`${words[quantity]} of ${without} of ${all.length} locomotives`];
    }),
  ];
}

/** Which ratings a handling asks for, of which locomotives. */
function ratingsFor({ throttle, dynamicBrakeShare }: OwnHandling, of: readonly MadeUp[]) {
  const wanted =
    dynamicBrakeShare > 0
      ? ['dynamicBrakeFull']
      : throttle > 0
        ? ['tractiveEffortRated', 'tractiveEffortSpeed']
        : [];
  return wanted.flatMap((quantity) => of.map(({ entity: { id } }) => ({ quantity, id })));
}

/** Middle of each vehicle from the POD, m, ahead positive, the leading end of the first derailed one at it. */
function placesOf(train: readonly MadeUp[], first: number): readonly number[] {
  let behind = 0;
  const fronts = train.map(({ lengthM }) => {
    const here = behind;
    behind += lengthM;
    return here;
  });
  const pod = fronts[first] ?? NaN;
  return train.map(({ lengthM }, i) => pod - fronts[i]! - lengthM / 2);
}

const counted = (count: number, of: number): string =>
  count === of ? 'the whole train' : `${count} of ${of} vehicles`;

/** Grade under every vehicle: as entered for it, else from the profile of the line, else that at the POD. */
function gradesUnder(
  context: Context,
  train: readonly MadeUp[],
  places: readonly number[],
  take: (id: string, quantity: string) => Taken | null,
  remarks: string[],
  readings: Set<string>,
): readonly { readonly taken: Taken | null; readonly onLine: boolean }[] {
  const { grade: profile, unplaced } = lineProfile(context);
  const atPod = context.read.take('case', context.record.id, 'gradeAtPod');
  const from = { vehicle: 0, profile: 0, pod: 0 };
  const found = train.map(({ entity }, i) => {
    const own = take(entity.id, 'gradeUnderVehicle');
    const onLine = own === null ? takenOnLine(profile, places[i] ?? NaN) : null;
    const taken = own ?? onLine ?? atPod;
    if (taken !== null) from[own !== null ? 'vehicle' : onLine !== null ? 'profile' : 'pod'] += 1;
    for (const reading of taken?.readings ?? []) readings.add(reading);
    return { taken, onLine: onLine !== null };
  });
  const of = train.length;
  if (from.profile > 0)
    remarks.push(
      `Grade from the profile of the line for ${counted(from.profile, of)}${from.vehicle > 0 ? `; as entered for the vehicle for ${from.vehicle}` : ''}.`,
    );
  if (from.pod > 0)
    remarks.push(
      `Grade at the POD taken for ${counted(from.pod, of)}${profile === null ? '' : ', where the profile of the line does not reach'}.`,
    );
  if (unplaced > 0)
    remarks.push(
      `${unplaced} row${unplaced === 1 ? '' : 's'} of the line’s profile without a distance left out.`,
    );
  return found;
}

/**
 * Curvature under every vehicle: as entered for it, else from the profile of the line, else that
 * measured at the POD for the first derailed one and its neighbours, else anywhere between tangent and it.
 */
function curvesUnder(
  context: Context,
  train: readonly MadeUp[],
  places: readonly number[],
  first: number,
  take: (id: string, quantity: string) => Taken | null,
  remarks: string[],
  readings: Set<string>,
): readonly { readonly range: readonly [number, number]; readonly onLine: boolean }[] {
  const atPod = context.alignment === 'tangent' ? null : curveAtPod(context).curvature;
  const measured = Math.abs(atPod?.value ?? 0);
  const { curvature: profile } = lineProfile(context);
  const from = { vehicle: 0, profile: 0, assumed: 0 };
  const curves = train.map(({ entity }, i) => {
    const known = (value: number, onLine = false) => ({ range: [value, value] as const, onLine });
    const own = take(entity.id, 'curvatureUnderVehicle');
    if (own !== null) {
      from.vehicle += 1;
      return known(own.value);
    }
    const onLine = takenOnLine(profile, places[i] ?? NaN);
    if (onLine !== null) {
      from.profile += 1;
      for (const reading of onLine.readings) readings.add(reading);
      return known(onLine.value, true);
    }
    if (Math.abs(i - first) <= 1 && first >= 0) return known(measured);
    from.assumed += 1;
    return { range: [0, measured] as const, onLine: false };
  });
  if (from.profile > 0)
    remarks.push(
      `Curvature from the profile of the line for ${counted(from.profile, train.length)}, the curve at the POD too, so that neighbours stand on one line${from.vehicle > 0 ? `; as entered for the vehicle for ${from.vehicle}` : ''}.`,
    );
  if (from.assumed > 0 && measured > 0)
    remarks.push(
      `Curvature under ${counted(from.assumed, train.length)} not known: drawn between tangent and the curve at the POD.${from.profile + from.vehicle > 0 ? '' : ' The first derailed vehicle and its neighbours are taken to stand on the curve at the POD.'}`,
    );
  return curves;
}

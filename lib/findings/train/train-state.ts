import type { Entity } from '../../case/record';
import type { LocomotiveRating } from '../../mechanics/locomotive-force';
import { DRAG_FACTORS } from '../../mechanics/resistance';
import type { Context } from '../context';
import { oncePerContext } from '../once-per-context';
import type { RecorderAtPod } from '../recorder-at-pod';
import type { NonEmpty, Taken } from '../reading-index';
import { curveAtPod } from '../track/curving';
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
  readonly rating: LocomotiveRating | null;
  readonly grade: Pick<Taken, 'value' | 'u'>;
  /** What is known of the curve under it: lowest and highest, 1/m, without sign. */
  readonly curvature: readonly [low: number, high: number];
};

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
  const atPod = read.take('case', context.record.id, 'gradeAtPod');
  const grades = train.map(({ entity }) => take(entity.id, 'gradeUnderVehicle') ?? atPod);
  const ungraded = grades.filter((each) => each === null).length;
  if (ungraded > 0) missing.push(`grade at the POD, or under ${ungraded} of ${train.length} vehicles`);
  const own = train.filter(
    ({ entity }) => read.take('vehicle', entity.id, 'gradeUnderVehicle') !== null,
  ).length;
  if (own < train.length && atPod !== null) {
    for (const reading of atPod.readings) readings.add(reading);
    remarks.push(
      `Grade at the POD taken for ${own === 0 ? 'the whole train' : `the ${train.length - own} vehicles without their own`}.`,
    );
  }
  if (recorder !== null && Number.isFinite(recorder.tractiveEffortKn))
    remarks.push('Tractive effort of the recording locomotive taken for every locomotive.');
  if (missing.length > 0 || speed === null || recorder === null) return { kind: 'unknown', missing };

  const firstId = context.first.vehicle?.entity.id;
  const first = train.findIndex(({ entity }) => entity.id === firstId);
  const curves = curvesUnder(context, train, first, take, remarks);
  const vehicles = train.map(({ entity, massKg, lengthM, load, locomotive }, i): VehicleState => ({
    entity,
    massKg,
    lengthM,
    truckCentresM: take(entity.id, 'truckCentres')?.value ?? NaN,
    axles: take(entity.id, 'axleCount')?.value ?? (locomotive ? DEFAULT_AXLES.locomotive : DEFAULT_AXLES.car),
    dragFactor: dragOf(entity.fields.type),
    empty: load === 'empty',
    locomotive,
    rating: locomotive ? ratingOf(take, entity.id, massKg) : null,
    grade: grades[i] ?? { value: NaN, u: NaN },
    curvature: curves[i] ?? [0, 0],
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

/** Ratings the handling at the POD asks for, of every locomotive. */
function missingRating(
  context: Context,
  train: readonly MadeUp[],
  recorder: RecorderAtPod,
): readonly string[] {
  const locomotives = train.filter(({ locomotive }) => locomotive);
  if (locomotives.length === 0) return ['a vehicle of the consist whose type is locomotive'];
  const { throttle, dynamicBrakeShare, tractiveEffortKn } = recorder;
  if (Number.isFinite(tractiveEffortKn)) return [];
  if (Number.isNaN(throttle) && Number.isNaN(dynamicBrakeShare))
    return ['throttle, dynamic brake or tractive effort in the recorder run'];
  const wanted =
    dynamicBrakeShare > 0
      ? ['dynamicBrakeFull']
      : throttle > 0
        ? ['tractiveEffortRated', 'tractiveEffortSpeed']
        : [];
  const words: Readonly<Record<string, string>> = {
    dynamicBrakeFull: 'largest dynamic-brake force',
    tractiveEffortRated: 'continuous tractive effort',
    tractiveEffortSpeed: 'speed of the continuous tractive effort',
  };
  return wanted.flatMap((quantity) => {
    const without = locomotives.filter(
      ({ entity }) => context.read.take('vehicle', entity.id, quantity) === null,
    ).length;
    return without === 0 ? [] : [`${words[quantity]} of ${without} of ${locomotives.length} locomotives`];
  });
}

function curvesUnder(
  context: Context,
  train: readonly MadeUp[],
  first: number,
  take: (id: string, quantity: string) => Taken | null,
  remarks: string[],
): readonly (readonly [number, number])[] {
  const atPod = context.alignment === 'tangent' ? null : curveAtPod(context).curvature;
  const measured = Math.abs(atPod?.value ?? 0);
  let assumed = 0;
  const curves = train.map(({ entity }, i): readonly [number, number] => {
    const own = take(entity.id, 'curvatureUnderVehicle');
    if (own !== null) return [Math.abs(own.value), Math.abs(own.value)];
    if (Math.abs(i - first) <= 1 && first >= 0) return [measured, measured];
    assumed += 1;
    return [0, measured];
  });
  if (assumed > 0 && measured > 0)
    remarks.push(
      `Curvature under ${assumed} vehicles not entered: drawn between tangent and the curve at the POD. The first derailed vehicle and its neighbours are taken to stand on the curve at the POD.`,
    );
  return curves;
}

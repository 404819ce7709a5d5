import { nameOfEntity } from '../../case/name-of';
import { distanceToGo, firstEmergency, type RunSamples } from '../../case/recorder-moments';
import { gearOf, kindOfGear, type GearAt } from '../../mechanics/draft-gear';
import {
  FOLLOW_S,
  type Assumption,
  type DrivenVehicle,
  type Handling,
  type Vents,
} from '../../mechanics/train-drive';
import { BRAKING_RATIOS, SHOE_FRICTION } from '../../mechanics/train-brake';
import { simulateTrain, trainSimulationMethod, type Simulated } from '../../mechanics/train-simulation';
import { formatMeasure } from '../../readings/format';
import { measured, notMeasured, type Heading } from '../build';
import type { Context } from '../context';
import type { Finding } from '../finding';
import type { NonEmpty } from '../reading-index';
import { RECORDED_SPEED_U } from '../recorder-at-pod';
import { forceText } from '../words';
import { lineProfile } from './line-profile';
import { lineUnderTrain } from './line-under-train';
import { trainState, type TrainState, type VehicleState } from './train-state';

/** A force with its range: the nominal run, and what moving each assumption to its ends does, as root sum of squares. */
export type RangedForce = {
  readonly value: number;
  readonly u: number;
  readonly low: number;
  readonly high: number;
};

/** Histories of one coupling, kN, draft positive: nominal, and the ends of the range. */
export type ForceHistory = {
  readonly nominal: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
};

export type SimulatedForces = {
  readonly kind: 'simulated';
  readonly runId: string;
  /** Counted from the POD, s. */
  readonly timesS: Float64Array;
  readonly ahead: ForceHistory | null;
  readonly behind: ForceHistory | null;
  readonly aheadAtPod: RangedForce | null;
  readonly behindAtPod: RangedForce | null;
  /** In the half minute before the POD, of either coupler of the first derailed vehicle. */
  readonly draftMost: RangedForce;
  readonly buffMost: RangedForce;
  /** In the whole train and run: the coupling behind that vehicle. */
  readonly trainDraft: RangedForce & { readonly vehicle: string };
  readonly trainBuff: RangedForce & { readonly vehicle: string };
  readonly unexplainedMs2: number;
  readonly speedOffMs: number;
  readonly unclosed: number;
  readonly steps: number;
  readonly gear: string;
  readonly readings: NonEmpty<string>;
  readonly remarks: readonly string[];
};

export type NotSimulated = { readonly kind: 'notSimulated'; readonly missing: readonly string[] };

const BEFORE_S = 300;
const AFTER_S = 5;
const WATCHED_S = 30;
/** Forces are noted about this often, and at the POD itself. */
const ABOUT_EVERY_S = 0.5;
/** The answer to the quantity `endOfTrainDevice` that says so. */
const REAR_VENTS = 'vents';
/** Sums of steps differ by less. */
const SAME_MOMENT_S = 1e-6;
/** Slower than this at the start, the train is starting and not running. */
const RUNNING_MS = 0.5;
const PIPE_BEFORE_S = 120;

const middle = ([low, high]: readonly [number, number]): number => (low + high) / 2;

const NOMINAL: Assumption = {
  power: 0.5,
  adhesion: 0.3,
  dynamicBrake: 1,
  rolling: 1.05,
  curve: 0.925,
  shoeFriction: middle(SHOE_FRICTION),
  braking: 1,
};

type Moved = { readonly assumed?: Partial<Assumption>; readonly gear?: GearAt };

/** Each assumption at both ends of its range; those of the draft gear last. */
const MOVED: readonly (readonly [Moved, Moved])[] = [
  [{ assumed: { power: 0 } }, { assumed: { power: 1 } }],
  [{ assumed: { dynamicBrake: 0.85 } }, { assumed: { dynamicBrake: 1.15 } }],
  [{ assumed: { rolling: 0.8, curve: 0.6 } }, { assumed: { rolling: 1.3, curve: 1.25 } }],
  [
    { assumed: { shoeFriction: SHOE_FRICTION[0], braking: 0.79 } },
    { assumed: { shoeFriction: SHOE_FRICTION[1], braking: 1.21 } },
  ],
  [{ gear: { slack: 0.5 } }, { gear: { slack: 1.5 } }],
  [{ gear: { cubic: 'least' } }, { gear: { cubic: 'most' } }],
  [{ gear: { friction: 'least' } }, { gear: { friction: 'most' } }],
];

type Window = { readonly from: number; readonly to: number };

/** The longest unbroken stretch that ends just after the POD: every sample with time and speed, the clock forward. */
function windowOf({ time, speed }: RunSamples, pod: number): Window | null {
  if (time === undefined || speed === undefined) return null;
  const sound = (i: number): boolean => Number.isFinite(speed[i]) && Number.isFinite(time[i]);
  let from = pod;
  while (
    from > 0 &&
    sound(from - 1) &&
    time[from - 1]! < time[from]! &&
    time[pod]! - time[from - 1]! <= BEFORE_S &&
    speed[from - 1]! > RUNNING_MS
  )
    from -= 1;
  let to = pod;
  while (
    to + 1 < time.length &&
    sound(to + 1) &&
    time[to + 1]! > time[to]! &&
    time[to]! - time[pod]! < AFTER_S
  )
    to += 1;
  return to > from + 1 ? { from, to } : null;
}

/** How far the pipe lies below the highest of the two minutes before, at every sample of the stretch. */
function reductions({ time, brakePipe }: RunSamples, { from, to }: Window): Float64Array {
  const out = new Float64Array(to - from + 1);
  if (time === undefined || brakePipe === undefined) return out;
  for (let i = from; i <= to; i += 1) {
    let highest = brakePipe[i]!;
    for (let j = i; j >= 0 && time[i]! - time[j]! <= PIPE_BEFORE_S; j -= 1)
      if (brakePipe[j]! > highest) highest = brakePipe[j]!;
    const reduction = highest - brakePipe[i]!;
    out[i - from] = Number.isFinite(reduction) ? reduction : 0;
  }
  return out;
}

const NOTCHES = 8;

function handlingOf(samples: RunSamples, window: Window): Handling {
  const { from, to } = window;
  const part = (values: Float64Array | undefined, fallback: number): Float64Array =>
    values === undefined ? new Float64Array(to - from + 1).fill(fallback) : values.slice(from, to + 1);
  const whole = (values: Float64Array): Float64Array =>
    values.map((each) => (Number.isFinite(each) ? each : 0));
  const start = samples.time![from]!;
  const emergency = firstEmergency(samples);
  const notch = whole(part(samples.dynamicBrakeNotch, 0)).map((each) => each / NOTCHES);
  return {
    timeS: part(samples.time, NaN).map((each) => each - start),
    speedMs: part(samples.speed, NaN),
    throttle: whole(part(samples.throttle, 0)),
    dynamicBrakeShare:
      samples.dynamicBrakeShare === undefined ? notch : whole(part(samples.dynamicBrakeShare, 0)),
    tractiveEffortKn: part(samples.tractiveEffort, NaN),
    locomotiveCylinderKpa: part(samples.brakeCylinder, NaN),
    reductionKpa: reductions(samples, window),
    emergencyS: emergency === null ? Infinity : samples.time![emergency]! - start,
  };
}

/** Ratings that the handling of the whole stretch asks for and that nobody entered. */
function ratingsMissing({ vehicles }: TrainState, handling: Handling): readonly string[] {
  const locomotives = vehicles.flatMap(({ rating, own }) => (own === null ? (rating ?? []) : []));
  const unrecorded = handling.tractiveEffortKn.some(Number.isNaN);
  const pulls = unrecorded && handling.throttle.some((each) => each > 0);
  const brakes = unrecorded && handling.dynamicBrakeShare.some((each) => each > 0);
  return [
    ...(pulls && locomotives.some(({ ratedKn, ratedSpeedMs }) => Number.isNaN(ratedKn * ratedSpeedMs))
      ? ['continuous tractive effort of every locomotive, and its speed']
      : []),
    ...(brakes && locomotives.some(({ dynamicBrakeKn }) => Number.isNaN(dynamicBrakeKn))
      ? ['largest dynamic-brake force of every locomotive']
      : []),
  ];
}

const known = (value: number): number => (Number.isNaN(value) ? 0 : value);

const drivenVehicles = ({ vehicles }: TrainState): readonly DrivenVehicle[] =>
  vehicles.map(
    ({
      massKg,
      axles,
      lengthM,
      dragFactor,
      empty,
      rating,
      own,
      atPodM,
      grade,
      curvature,
    }): DrivenVehicle => ({
      massKg,
      axles,
      lengthM,
      dragFactor,
      brakingRatio: middle(empty ? BRAKING_RATIOS.empty : BRAKING_RATIOS.loaded),
      rating:
        rating === null
          ? null
          : {
              massKg: rating.massKg,
              ratedKn: known(rating.ratedKn),
              ratedSpeedMs: known(rating.ratedSpeedMs),
              dynamicBrakeKn: known(rating.dynamicBrakeKn),
            },
      own,
      atPodM,
      grade: grade.value,
      curvaturePerM: middle(curvature),
    }),
  );

/**
 * Where the brake pipe is vented: at the recording locomotive, and at every locomotive worked with it
 * that stands apart from it, with a car between; in emergency also at the rear, where a device there does so.
 */
function ventsOf(vehicles: readonly VehicleState[], recording: number, rearVents: boolean): Vents {
  const apart = vehicles.flatMap(({ locomotive, rating, own }, i) => {
    if (!locomotive || rating === null || own !== null || i === recording) return [];
    const between = vehicles.slice(Math.min(i, recording) + 1, Math.max(i, recording));
    return between.every((each) => each.locomotive) ? [] : [i];
  });
  return { service: [recording, ...apart], alsoInEmergency: rearVents ? [vehicles.length - 1] : [] };
}

/** A number of the nominal run and of every moved pair, with what the moves do to it. */
function ranged(runs: readonly Simulated[], of: (run: Simulated) => number): RangedForce {
  const [nominal, ...moved] = runs.map(of);
  const value = nominal ?? NaN;
  let squares = 0;
  for (let i = 0; i + 1 < moved.length; i += 2) squares += ((moved[i + 1]! - moved[i]!) / 2) ** 2;
  const half = Math.sqrt(squares);
  // Ends of uniform ranges, so that half the range is √3 standard uncertainties.
  return { value, u: half / Math.sqrt(3), low: value - half, high: value + half };
}

function history(runs: readonly Simulated[], coupling: number): ForceHistory {
  const count = Math.min(...runs.map(({ timesS }) => timesS.length));
  const nominal = new Float64Array(count);
  const low = new Float64Array(count);
  const high = new Float64Array(count);
  for (let t = 0; t < count; t += 1) {
    const at = ranged(runs, ({ forcesKn }) => forcesKn[t]![coupling]!);
    nominal[t] = at.value;
    low[t] = at.low;
    high[t] = at.high;
  }
  return { nominal, low, high };
}

/**
 * Force histories at the first derailed vehicle, from the recorder run in which the POD is placed:
 * one nominal run and one for each end of each assumption. Says what is missing where it cannot.
 */
export function simulatedForces(context: Context, samples: RunSamples): SimulatedForces | NotSimulated {
  const state = trainState(context);
  if (state.kind === 'unknown') return { kind: 'notSimulated', missing: state.missing };
  const { first, recorder } = state;
  if (first === null) return { kind: 'notSimulated', missing: ['which vehicle was the first to derail'] };
  const window = windowOf(samples, recorder.index);
  const toGo = window === null ? null : distanceToGo(samples, window.to);
  if (window === null || toGo === null)
    return { kind: 'notSimulated', missing: ['an unbroken stretch of the recorder run before the POD'] };
  const handling = handlingOf(samples, window);
  const missing = ratingsMissing(state, handling);
  if (missing.length > 0) return { kind: 'notSimulated', missing };

  const chosen = context.read.state('case', context.record.id, 'draftGear');
  const gear = kindOfGear(chosen?.state ?? null);
  const runVehicle = context.record.recorderRuns.find(({ id }) => id === recorder.runId)?.vehicleId;
  const recording = Math.max(
    0,
    state.vehicles.findIndex(({ entity }) => entity.id === runVehicle),
  );
  const podS = samples.time![recorder.index]! - samples.time![window.from]!;
  const everyS = podS > 0 ? podS / Math.ceil(podS / ABOUT_EVERY_S) : ABOUT_EVERY_S;
  const vehicles = drivenVehicles(state);
  const rear = context.read.state('case', context.record.id, 'endOfTrainDevice');
  const vents = ventsOf(state.vehicles, recording, rear?.state === REAR_VENTS);
  const line = lineUnderTrain(state.vehicles, lineProfile(context));
  const simulate = (moved: Moved): Simulated =>
    simulateTrain({
      vehicles,
      handling,
      assumption: { ...NOMINAL, ...moved.assumed },
      gear: gearOf(gear, moved.gear),
      recording,
      vents,
      line,
      runToPodM: toGo[window.from]! - toGo[recorder.index]!,
      durationS: handling.timeS.at(-1)!,
      everyS,
    });
  const runs = [{}, ...MOVED.flat()].map(simulate);
  const nominal = runs[0]!;
  const timesS = nominal.timesS.map((time) => time - podS);
  // Not a moment after it: from the POD on, what the derailment did to the brake pipe is in the recording.
  const podAt = timesS.findLastIndex((time) => time <= SAME_MOMENT_S);
  const sides = [first - 1, first].filter((k) => k >= 0 && k < vehicles.length - 1);
  const extreme = (pick: (...values: number[]) => number) => (run: Simulated) =>
    pick(
      ...run.forcesKn
        .filter((_, t) => timesS[t]! <= SAME_MOMENT_S && timesS[t]! >= -WATCHED_S)
        .flatMap((forces) => sides.map((k) => forces[k]!)),
    );
  const named = (k: number): string => nameOfEntity(context.record, 'vehicle', state.vehicles[k]!.entity);
  const most = nominal.mostKn.reduce((best, each, k) => (each > nominal.mostKn[best]! ? k : best), 0);
  const least = nominal.leastKn.reduce((best, each, k) => (each < nominal.leastKn[best]! ? k : best), 0);
  const atPod = (k: number): RangedForce | null =>
    sides.includes(k) && podAt >= 0 ? ranged(runs, ({ forcesKn }) => forcesKn[podAt]![k]!) : null;
  return {
    kind: 'simulated',
    runId: recorder.runId,
    timesS,
    ahead: sides.includes(first - 1) ? history(runs, first - 1) : null,
    behind: sides.includes(first) ? history(runs, first) : null,
    aheadAtPod: atPod(first - 1),
    behindAtPod: atPod(first),
    draftMost: ranged(runs, extreme(Math.max)),
    buffMost: ranged(runs, extreme(Math.min)),
    trainDraft: { ...ranged(runs, ({ mostKn }) => mostKn[most]!), vehicle: named(most) },
    trainBuff: { ...ranged(runs, ({ leastKn }) => leastKn[least]!), vehicle: named(least) },
    unexplainedMs2: nominal.unexplainedMs2,
    speedOffMs: nominal.speedOffMs,
    unclosed: Math.max(...runs.map(({ energy }) => energy.unclosed)),
    steps: nominal.steps,
    gear: gear.label,
    readings: [
      state.readings[0],
      ...state.readings.slice(1),
      ...(chosen?.readings ?? []),
      ...(rear?.readings ?? []),
    ],
    remarks: [
      chosen === null
        ? `Kind of draft gear not entered: ${gear.label.toLowerCase()} taken.`
        : `Draft gear: ${gear.label.toLowerCase()}.`,
      ...(vents.service.length < 2
        ? []
        : [
            `Brake pipe taken as vented at ${vents.service.length} places: the recording locomotive and those worked with it farther back.`,
          ]),
      ...rearRemarks(rear?.state ?? null, handling),
      ...state.remarks,
    ],
  };
}

/** What was taken of the rear, where the train was put into emergency in the stretch looked at. */
const rearRemarks = (rear: string | null, { emergencyS, timeS }: Handling): readonly string[] => {
  if (!(emergencyS <= timeS.at(-1)!)) return [];
  if (rear === REAR_VENTS) return ['In emergency the brake pipe is taken as vented at the rear too.'];
  return rear === null
    ? ['End-of-train device not entered: the brake pipe is taken as not vented at the rear in emergency.']
    : [];
};

const STANDARD_GRAVITY = 9.80665;

/** The simulation as findings, each with its range. */
export function simulatedFindings(outcome: SimulatedForces | NotSimulated): readonly Finding[] {
  const head = (what: string, title: string, remarks: readonly string[] = []): Heading => ({
    part: 'train',
    what,
    title,
    subject: null,
    method: trainSimulationMethod,
    remarks,
  });
  const TITLES = {
    ahead: 'Coupler force ahead of the first derailed vehicle at the POD, simulated, draft positive',
    behind: 'Coupler force behind the first derailed vehicle at the POD, simulated, draft positive',
  };
  if (outcome.kind === 'notSimulated')
    return [notMeasured(head('simulatedAhead', TITLES.ahead), outcome.missing)];
  const { readings, remarks } = outcome;
  // What was assumed for all of them is said with the first.
  const said = outcome.aheadAtPod ?? outcome.behindAtPod ?? outcome.draftMost;
  const force = (what: string, title: string, found: RangedForce, ...more: readonly string[]): Finding =>
    measured(
      head(what, title, [
        ...more,
        `Range of what was assumed: ${forceText(found.low)} to ${forceText(found.high)}.`,
      ]),
      'force',
      { value: found.value, u: found.u, readings, remarks: found === said ? remarks : [] },
    );
  return [
    ...(outcome.aheadAtPod === null ? [] : [force('simulatedAhead', TITLES.ahead, outcome.aheadAtPod)]),
    ...(outcome.behindAtPod === null ? [] : [force('simulatedBehind', TITLES.behind, outcome.behindAtPod)]),
    force(
      'simulatedDraft',
      'Greatest force at the first derailed vehicle in the half minute before the POD, simulated, draft positive',
      outcome.draftMost,
    ),
    force(
      'simulatedBuff',
      'Least force at the first derailed vehicle in the half minute before the POD, simulated, buff negative',
      outcome.buffMost,
    ),
    force(
      'simulatedTrainDraft',
      'Greatest coupler force in the train, simulated, draft positive',
      outcome.trainDraft,
      `Behind ${outcome.trainDraft.vehicle}.`,
    ),
    force(
      'simulatedTrainBuff',
      'Least coupler force in the train, simulated, buff negative',
      outcome.trainBuff,
      `Behind ${outcome.trainBuff.vehicle}.`,
    ),
    measured(
      head(
        'simulatedUnexplained',
        'Acceleration the simulation leaves unexplained, share of gravity, root mean square',
        [
          'One hundredth is a grade of one per cent: a large value says that handling, ratings or grade do not fit the recorded speed.',
          `Simulated and recorded speed differ by ${formatMeasure(outcome.speedOffMs, { dimension: 'speed', unit: 'mph' })} (${formatMeasure(outcome.speedOffMs, { dimension: 'speed', unit: 'km/h' })}), root mean square.`,
          `Energy of the simulated train closed within ${(outcome.unclosed * 100).toPrecision(1)} %.`,
        ],
      ),
      'ratio',
      {
        value: outcome.unexplainedMs2 / STANDARD_GRAVITY,
        u: RECORDED_SPEED_U / FOLLOW_S / STANDARD_GRAVITY,
        readings,
        remarks: [],
      },
    ),
  ];
}

import { dynamicBrakeKn, tractiveEffortKn, type LocomotiveRating } from './locomotive-force';
import type { OutsideForces } from './mass-chain';
import { vehicleResistance } from './resistance';
import { brakeForceKn, cylinderPressureKpa, PROPAGATION_MS } from './train-brake';

const STANDARD_GRAVITY = 9.80665;
const N_PER_KN = 1000;

export type DrivenVehicle = {
  readonly massKg: number;
  readonly axles: number;
  readonly lengthM: number;
  readonly dragFactor: number;
  /** Shoe force at full service over weight. */
  readonly brakingRatio: number;
  /** Null for cars. */
  readonly rating: LocomotiveRating | null;
  /** Handling of a locomotive worked by itself, all through the run; null for one that does as the recording one. */
  readonly own: { readonly throttle: number; readonly dynamicBrakeShare: number } | null;
  /** Where its middle is when the first derailed vehicle reaches the POD, m, ahead positive, and the track there. */
  readonly atPodM: number;
  readonly grade: number;
  readonly curvaturePerM: number;
};

/** What the recorder says, sample by sample, on the time of the simulation: 0 at its start. */
export type Handling = {
  readonly timeS: Float64Array;
  readonly speedMs: Float64Array;
  readonly throttle: Float64Array;
  readonly dynamicBrakeShare: Float64Array;
  /** NaN where the recorder gives none. */
  readonly tractiveEffortKn: Float64Array;
  readonly reductionKpa: Float64Array;
  /** Brake cylinder of the recording locomotive; NaN where the recorder gives none. */
  readonly locomotiveCylinderKpa: Float64Array;
  /** Infinity when there is none. */
  readonly emergencyS: number;
};

/** Indices of the vehicles at which the brake pipe is vented. */
export type Vents = {
  /** In every application. */
  readonly service: readonly number[];
  /** As well as those, when it is an emergency one. */
  readonly alsoInEmergency: readonly number[];
};

/** Where in its range everything assumed is taken. */
export type Assumption = {
  /** 0 to 1: from (n/8)² to n/8 of the power in a notch. */
  readonly power: number;
  readonly adhesion: number;
  readonly dynamicBrake: number;
  readonly rolling: number;
  readonly curve: number;
  readonly shoeFriction: number;
  /** Multiplies the braking ratio of every vehicle. */
  readonly braking: number;
};

/** The recorded speed is followed over about this long, s. */
export const FOLLOW_S = 10;
const STOPPING_MS = 0.05;

/** Value of a column at a time, straight between samples; the first and last beyond the ends. */
function at(timeS: Float64Array, values: Float64Array, time: number, from: number): number {
  const next = from + 1;
  if (next >= timeS.length) return values[timeS.length - 1] ?? NaN;
  const span = timeS[next]! - timeS[from]!;
  const share = span > 0 ? Math.min(1, Math.max(0, (time - timeS[from]!) / span)) : 0;
  return values[from]! + share * (values[next]! - values[from]!);
}

/** Index of the last sample not later than `time`. */
function indexBefore(timeS: Float64Array, time: number): number {
  let [low, high] = [0, timeS.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (timeS[middle]! <= time) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** A place of the line: distance from the POD, m, ahead positive; straight between places, two at one place a step. */
export type LinePoint = { readonly m: number; readonly grade: number; readonly curvaturePerM: number };

/** The line as it lay under the middle of each vehicle at the POD. */
const lineUnder = (vehicles: readonly DrivenVehicle[]): readonly LinePoint[] =>
  vehicles
    .map(({ atPodM, grade, curvaturePerM }) => ({ m: atPodM, grade, curvaturePerM }))
    .sort((a, b) => a.m - b.m);

/** Grade and curvature resistance over weight along the line. */
function trackTable(line: readonly LinePoint[], curve: number) {
  const points = line.map(({ m, grade, curvaturePerM }) => {
    const { gradeKn, curveKn } = vehicleResistance({ ...UNIT_VEHICLE, grade, curvaturePerM });
    return { m, grade: gradeKn / UNIT_WEIGHT_KN, curve: (curve * curveKn) / UNIT_WEIGHT_KN };
  });
  return {
    m: Float64Array.from(points, ({ m }) => m),
    grade: Float64Array.from(points, (point) => point.grade),
    curve: Float64Array.from(points, (point) => point.curve),
  };
}

/** Both resistances are shares of the weight, whatever vehicle it is. */
const UNIT_VEHICLE = { massKg: 1000, axles: 4, dragFactor: 0, speedMs: 0 } as const;
const UNIT_WEIGHT_KN = (UNIT_VEHICLE.massKg * STANDARD_GRAVITY) / N_PER_KN;

/** Rolling resistance as a polynomial of speed, which the formula is: three of its values make it. */
function rollingOf(vehicle: DrivenVehicle): readonly [number, number, number] {
  const value = (speedMs: number): number => vehicleResistance({ ...vehicle, speedMs }).rollingKn;
  const [zero, one, two] = [value(0), value(1), value(2)];
  return [zero, (4 * one - 3 * zero - two) / 2, (zero - 2 * one + two) / 2];
}

/**
 * Outside forces on every vehicle of a train as its recorder has it: pull or dynamic brake of the
 * locomotives, air brake running along the train, grade, curve and rolling resistance. An equal push
 * for each unit of mass keeps the train to the recorded speed; pushing all alike it puts nothing into
 * the couplers, and `correction.latest` (m/s²) tells how much of the motion is unexplained.
 * `runToPodM`: distance the recording vehicle runs from the start to the POD; `line`: the track, as under the vehicles when not given.
 */
export function trainDrive(
  vehicles: readonly DrivenVehicle[],
  handling: Handling,
  assumption: Assumption,
  runToPodM: number,
  vents: Vents,
  line: readonly LinePoint[] = lineUnder(vehicles),
): { readonly outside: OutsideForces; readonly correction: { latest: number } } {
  const { timeS } = handling;
  const track = trackTable(line, assumption.curve);
  const rolling = vehicles.map(rollingOf);
  const weights = vehicles.map(({ massKg }) => (massKg * STANDARD_GRAVITY) / N_PER_KN);
  const total = vehicles.reduce((sum, { massKg }) => sum + massKg, 0);
  const fromNearest = (vented: readonly number[]): readonly number[] =>
    vehicles.map(({ atPodM }) => Math.min(...vented.map((i) => Math.abs(atPodM - vehicles[i]!.atPodM))));
  const inService = fromNearest(vents.service);
  const inEmergency = fromNearest([...vents.service, ...vents.alsoInEmergency]);
  const fullBrake = vehicles.map(({ massKg, brakingRatio }) =>
    brakeForceKn(
      massKg,
      brakingRatio * assumption.braking,
      assumption.shoeFriction,
      cylinderPressureKpa(NO_END, false),
    ),
  );
  const correction = { latest: 0 };
  const everBraked = handling.reductionKpa.some((each) => each > 0) || Number.isFinite(handling.emergencyS);

  const cylinderShare = (i: number, time: number): number => {
    if (!everBraked) return 0;
    if (time >= handling.emergencyS + inEmergency[i]! / PROPAGATION_MS.emergency)
      return cylinderPressureKpa(0, true) / FULL;
    const then = time - inService[i]! / PROPAGATION_MS.service;
    const reduction = at(timeS, handling.reductionKpa, then, indexBefore(timeS, then));
    return cylinderPressureKpa(reduction, false) / FULL;
  };

  const outside: OutsideForces = (time, headM, speeds, out) => {
    const index = indexBefore(timeS, time);
    const led = {
      throttle: handling.throttle[index]!,
      dynamicBrakeShare: handling.dynamicBrakeShare[index]!,
    };
    const recorded = at(timeS, handling.tractiveEffortKn, time, index);
    const cylinder = at(timeS, handling.locomotiveCylinderKpa, time, index);
    let mean = 0;
    vehicles.forEach(({ massKg }, i) => (mean += (massKg * speeds[i]!) / total));
    const target = at(timeS, handling.speedMs, time, index);
    correction.latest = Number.isFinite(target) ? (target - mean) / FOLLOW_S : 0;
    for (let i = 0; i < vehicles.length; i += 1) {
      const { rating, own, atPodM, massKg } = vehicles[i]!;
      const v = speeds[i]!;
      const moving = v / Math.sqrt(v * v + STOPPING_MS * STOPPING_MS);
      const size = Math.abs(v);
      const place = atPodM - runToPodM + headM;
      const near = indexBefore(track.m, place);
      const grade = at(track.m, track.grade, place, near);
      const curve = at(track.m, track.curve, place, near);
      const [a, b, c] = rolling[i]!;
      const resisting =
        assumption.rolling * (a + b * size + c * size * size) +
        curve * weights[i]! +
        fullBrake[i]! *
          (rating !== null && own === null && Number.isFinite(cylinder)
            ? cylinder / FULL
            : cylinderShare(i, time));
      const { throttle, dynamicBrakeShare } = own ?? led;
      const pull =
        rating === null
          ? 0
          : own === null && Number.isFinite(recorded)
            ? recorded
            : dynamicBrakeShare > 0
              ? -assumption.dynamicBrake *
                dynamicBrakeKn(rating.dynamicBrakeKn, dynamicBrakeShare, size) *
                moving
              : throttle > 0
                ? tractiveEffortKn(
                    rating,
                    { notch: throttle, at: assumption.power },
                    Math.max(size, STOPPING_MS),
                    assumption.adhesion,
                  )
                : 0;
      out[i] = pull - grade * weights[i]! - resisting * moving + (massKg * correction.latest) / N_PER_KN;
    }
  };
  return { outside, correction };
}

const NO_END = Number.MAX_VALUE;
const FULL = cylinderPressureKpa(NO_END, false);

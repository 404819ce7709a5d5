import { dynamicBrakeKn, notchShare, tractiveEffortKn, type LocomotiveRating } from './locomotive-force';
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
  /** Infinity when there is none. */
  readonly emergencyS: number;
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

/** Grade and curvature resistance over weight along the track, from where the vehicles stood at the POD. */
function trackTable(vehicles: readonly DrivenVehicle[], curve: number) {
  const points = vehicles
    .map(({ atPodM, massKg, axles, dragFactor, grade, curvaturePerM }) => {
      const { gradeKn, curveKn } = vehicleResistance({
        massKg,
        axles,
        dragFactor,
        grade,
        curvaturePerM,
        speedMs: 0,
      });
      const weight = (massKg * STANDARD_GRAVITY) / N_PER_KN;
      return { m: atPodM, grade: gradeKn / weight, curve: (curve * curveKn) / weight };
    })
    .sort((a, b) => a.m - b.m);
  return {
    m: Float64Array.from(points, ({ m }) => m),
    grade: Float64Array.from(points, (point) => point.grade),
    curve: Float64Array.from(points, (point) => point.curve),
  };
}

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
 * `runToPodM`: distance the recording vehicle runs from the start to the POD; `recording`: its index.
 */
export function trainDrive(
  vehicles: readonly DrivenVehicle[],
  handling: Handling,
  assumption: Assumption,
  runToPodM: number,
  recording: number,
): { readonly outside: OutsideForces; readonly correction: { latest: number } } {
  const { timeS } = handling;
  const track = trackTable(vehicles, assumption.curve);
  const rolling = vehicles.map(rollingOf);
  const weights = vehicles.map(({ massKg }) => (massKg * STANDARD_GRAVITY) / N_PER_KN);
  const total = vehicles.reduce((sum, { massKg }) => sum + massKg, 0);
  const fromRecording = vehicles.map(({ atPodM }) => Math.abs(atPodM - vehicles[recording]!.atPodM));
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
    const late = fromRecording[i]!;
    if (time >= handling.emergencyS + late / PROPAGATION_MS.emergency)
      return cylinderPressureKpa(0, true) / FULL;
    const then = time - late / PROPAGATION_MS.service;
    const reduction = at(timeS, handling.reductionKpa, then, indexBefore(timeS, then));
    return cylinderPressureKpa(reduction, false) / FULL;
  };

  const outside: OutsideForces = (time, headM, speeds, out) => {
    const index = indexBefore(timeS, time);
    const throttle = handling.throttle[index]!;
    const share = handling.dynamicBrakeShare[index]!;
    const recorded = at(timeS, handling.tractiveEffortKn, time, index);
    let mean = 0;
    vehicles.forEach(({ massKg }, i) => (mean += (massKg * speeds[i]!) / total));
    const target = at(timeS, handling.speedMs, time, index);
    correction.latest = Number.isFinite(target) ? (target - mean) / FOLLOW_S : 0;
    for (let i = 0; i < vehicles.length; i += 1) {
      const { rating, atPodM, massKg } = vehicles[i]!;
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
        fullBrake[i]! * cylinderShare(i, time);
      const pull =
        rating === null
          ? 0
          : Number.isFinite(recorded)
            ? recorded
            : share > 0
              ? -assumption.dynamicBrake * dynamicBrakeKn(rating.dynamicBrakeKn, share, size) * moving
              : throttle > 0
                ? tractiveEffortKn(
                    rating,
                    notchShare(throttle, assumption.power),
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

import type { Method } from '../findings/finding';
import { vehicleResistance } from './resistance';

const N_PER_KN = 1000;

/** One vehicle of a train as the forces on it are summed. */
export type VehicleInTrain = {
  readonly massKg: number;
  readonly axles: number;
  /** Rise over run, uphill positive in the direction of travel. */
  readonly grade: number;
  readonly curvaturePerM: number;
  readonly dragFactor: number;
  /** Pull of a locomotive, kN; dynamic brake negative; 0 for cars. */
  readonly tractionKn: number;
  /** Air brake, kN, retarding; never negative. */
  readonly brakeKn: number;
};

/** What the resistance formulas are multiplied by, for their spread between trains. */
export type ResistanceFactors = { readonly rolling: number; readonly curve: number };
const AS_STATED: ResistanceFactors = { rolling: 1, curve: 1 };

/** Sum of what holds a vehicle back and pushes it on, kN, forward positive. */
export function netForceKn(
  vehicle: VehicleInTrain,
  speedMs: number,
  { rolling, curve }: ResistanceFactors = AS_STATED,
): number {
  const { gradeKn, curveKn, rollingKn } = vehicleResistance({ ...vehicle, speedMs });
  return vehicle.tractionKn - vehicle.brakeKn - gradeKn - curve * curveKn - rolling * rollingKn;
}

export type SteadyForces = {
  /** Force in the coupler behind each vehicle but the last, kN: draft positive, buff negative. */
  readonly couplersKn: Float64Array;
  /** Of the whole train, speeding up positive. */
  readonly accelerationMs2: number;
};

/**
 * Coupler forces of a train that moves as one: a = ΣN/Σm, F_i = Σ_{j>i} (m_j·a − N_j), where N is
 * the net force of `netForceKn`. `vehicles` head end first; `speedMs` > 0. Masses kg, forces kN.
 * Source: Newton’s second law for the vehicles behind a coupler.
 */
export function steadyCouplerForces(
  vehicles: readonly VehicleInTrain[],
  speedMs: number,
  factors: ResistanceFactors = AS_STATED,
): SteadyForces {
  const net = vehicles.map((vehicle) => netForceKn(vehicle, speedMs, factors));
  const mass = vehicles.reduce((sum, { massKg }) => sum + massKg, 0);
  const accelerationMs2 = (net.reduce((sum, each) => sum + each, 0) * N_PER_KN) / mass;
  const couplersKn = new Float64Array(Math.max(0, vehicles.length - 1));
  let behind = 0;
  for (let i = vehicles.length - 2; i >= 0; i -= 1) {
    behind += (vehicles[i + 1]!.massKg * accelerationMs2) / N_PER_KN - net[i + 1]!;
    couplersKn[i] = behind;
  }
  return { couplersKn, accelerationMs2 };
}

export const couplerForceMethod: Method = {
  id: 'steady-coupler-force',
  name: 'Steady coupler force along the train',
  formula:
    'F_i = Σ over the vehicles behind of (m·a − N); N = T − B − R; a = ΣN/Σm over the train. T: tractive effort or, negative, dynamic brake; B: air brake; R: grade, curve and rolling resistance. Draft positive. The range is the 5th to the 95th percentile of draws over what was assumed.',
  validRange:
    'All vehicles at one speed and one acceleration: slack at rest, all in or all out, handling unchanged for about half a minute. Run-in and run-out, which can be several times larger, are not in it. Rotating parts are not counted as mass.',
  sources: [
    { text: 'Newton’s second law', status: 'published' },
    {
      text: 'Rolling resistance 0.8 to 1.3 times, curve resistance 0.6 to 1.25 times the formula',
      status: 'engineering judgement',
    },
  ],
};

import type { Handling } from '~/lib/mechanics/train-drive';
import type { SimulationInput } from '~/lib/mechanics/train-simulation';

/** One value for each second. */
export const column = (by: (t: number) => number, count = 301): Float64Array =>
  Float64Array.from({ length: count }, (_, t) => by(t));

/** Steady at 10 m/s, with nothing applied. */
export const coasting = (count = 301): Handling => ({
  timeS: column((t) => t, count),
  speedMs: column(() => 10, count),
  throttle: column(() => 0, count),
  dynamicBrakeShare: column(() => 0, count),
  tractiveEffortKn: column(() => NaN, count),
  reductionKpa: column(() => 0, count),
  locomotiveCylinderKpa: column(() => NaN, count),
  emergencyS: Infinity,
});

/** The middle of what is assumed of power, adhesion, brakes and resistance. */
export const assumption: SimulationInput['assumption'] = {
  power: 0.5,
  adhesion: 0.3,
  dynamicBrake: 1,
  rolling: 1,
  curve: 1,
  shoeFriction: 0.32,
  braking: 1,
};

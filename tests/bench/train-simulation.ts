import { gearOf, kindOfGear } from '~/lib/mechanics/draft-gear';
import type { DrivenVehicle, Handling } from '~/lib/mechanics/train-drive';
import { simulateTrain, type SimulationInput } from '~/lib/mechanics/train-simulation';
import { assumption, coasting, column } from '../mechanics/driven-train';
import { medianMs, type Measurement } from './measurement';

const VEHICLES = 150;
const SECONDS = 300;
const ROUNDS = 3;
const FLOOR_S = 5;
const LENGTH_M = 18;

/** Loads and empties mixed, over a rolling grade, three locomotives at the head. */
const vehicles: readonly DrivenVehicle[] = Array.from({ length: VEHICLES }, (_, i) => ({
  massKg: i < 3 ? 180_000 : i % 3 === 0 ? 28_000 : 120_000,
  axles: i < 3 ? 6 : 4,
  lengthM: LENGTH_M,
  dragFactor: 0.07,
  brakingRatio: i % 3 === 0 ? 0.25 : 0.1,
  rating: i < 3 ? { massKg: 180_000, ratedKn: 450, ratedSpeedMs: 5, dynamicBrakeKn: 350 } : null,
  own: null,
  atPodM: (40 - i) * LENGTH_M,
  grade: 0.006 * Math.sin(i / 20),
  curvaturePerM: i % 50 < 15 ? 0.002 : 0,
}));

/** One sample a second: power, dynamic brake with a reduction of the pipe, power again. */
const handling: Handling = {
  ...coasting(SECONDS + 1),
  speedMs: column((t) => 12 - (t > 100 && t < 200 ? (t - 100) * 0.03 : t >= 200 ? 3 : 0), SECONDS + 1),
  throttle: column((t) => (t < 100 ? 6 : t < 220 ? 0 : 5), SECONDS + 1),
  dynamicBrakeShare: column((t) => (t >= 105 && t < 210 ? 0.7 : 0), SECONDS + 1),
  reductionKpa: column((t) => (t >= 150 && t < 200 ? 60 : 0), SECONDS + 1),
};

/** 150 vehicles through 300 s of a recorder at one sample a second, in seconds on one core. */
export function trainSimulation(): readonly Measurement[] {
  const input: SimulationInput = {
    vehicles,
    handling,
    assumption,
    gear: gearOf(kindOfGear('friction')),
    recording: 0,
    vents: { service: [0], alsoInEmergency: [] },
    runToPodM: 2700,
    durationS: SECONDS,
    everyS: 1,
  };
  let unclosed = 0;
  let steps = 0;
  const times = Array.from({ length: ROUNDS }, () => {
    const from = performance.now();
    const run = simulateTrain(input);
    unclosed = run.energy.unclosed;
    steps = run.steps;
    return performance.now() - from;
  });
  if (unclosed > 0.001) throw new Error(`The energy of the simulated train does not close: ${unclosed}.`);
  return [
    {
      name: 'train-simulation',
      value: medianMs(times) / 1000,
      floor: FLOOR_S,
      unit: 's for 150 vehicles and 300 s of recorder',
      parts: [`${steps} steps`, `energy closed within ${(unclosed * 100).toFixed(4)} %`],
    },
  ];
}

import { describe, expect, it } from 'vitest';
import { netForceKn, steadyCouplerForces } from '~/lib/mechanics/coupler-force';
import { gearOf, kindOfGear } from '~/lib/mechanics/draft-gear';
import type { DrivenVehicle, Handling } from '~/lib/mechanics/train-drive';
import { simulateTrain, steadyDrivenForcesKn, type SimulationInput } from '~/lib/mechanics/train-simulation';
import { assumption, coasting, column } from './driven-train';

const LENGTH = 18;
const COUNT = 30;
const rating = { massKg: 180_000, ratedKn: 450, ratedSpeedMs: 5, dynamicBrakeKn: 350 };

const vehicles: readonly DrivenVehicle[] = Array.from({ length: COUNT }, (_, i) => ({
  massKg: i === 0 ? 180_000 : i % 3 === 0 ? 28_000 : 120_000,
  axles: i === 0 ? 6 : 4,
  lengthM: LENGTH,
  dragFactor: 0.07,
  brakingRatio: 0.1,
  rating: i === 0 ? rating : null,
  own: null,
  atPodM: (10 - i) * LENGTH,
  grade: 0.003,
  curvaturePerM: 0.001,
}));

const handling = (changes: Partial<Handling> = {}): Handling => ({
  ...coasting(),
  throttle: column(() => 8),
  ...changes,
});

const input = (changes: Partial<SimulationInput> = {}): SimulationInput => ({
  vehicles,
  handling: handling(),
  assumption,
  gear: gearOf(kindOfGear('friction')),
  recording: 0,
  vents: { service: [0], alsoInEmergency: [] },
  runToPodM: 1200,
  durationS: 300,
  everyS: 1,
  ...changes,
});

describe('simulateTrain', () => {
  it('stays at the steady forces of the static sum while nothing changes', () => {
    const run = simulateTrain(input());
    const last = run.forcesKn.at(-1)!;
    const statics = steadyCouplerForces(
      vehicles.map((vehicle, i) => ({ ...vehicle, tractionKn: i === 0 ? 225 : 0, brakeKn: 0 })),
      10,
    );
    const mean = run.speedsMs.at(-1)![0]!;
    // Full power at the simulated speed: 450 kN · 5 m/s over it.
    const scale = 450 * 5;
    const exact = steadyCouplerForces(
      vehicles.map((vehicle, i) => ({ ...vehicle, tractionKn: i === 0 ? scale / mean : 0, brakeKn: 0 })),
      mean,
    );
    exact.couplersKn.forEach((force, i) => expect(Math.abs(last[i]! - force)).toBeLessThan(1));
    expect(Math.abs(exact.couplersKn[0]! - statics.couplersKn[0]!)).toBeLessThan(20);
    expect(netForceKn({ ...vehicles[1]!, tractionKn: 0, brakeKn: 0 }, 10)).toBeLessThan(0);
    expect(run.energy.unclosed).toBeLessThan(1e-3);
  });

  it('starts from those forces, whatever push keeps it to the recorded speed', () => {
    const asked = input();
    const first = simulateTrain({ ...asked, durationS: 1 }).forcesKn[0]!;
    steadyDrivenForcesKn(asked, 0, 0).forEach((force, i) => expect(first[i]).toBeCloseTo(force, 6));
  });

  const intoBrake = handling({
    throttle: column((t) => (t < 40 ? 8 : 0)),
    dynamicBrakeShare: column((t) => (t >= 45 ? 1 : 0)),
  });

  it('runs the slack in when power is changed for the dynamic brake', () => {
    const run = simulateTrain(input({ handling: intoBrake }));
    expect(run.forcesKn[35]![0]).toBeGreaterThan(100);
    expect(run.forcesKn.at(-1)![0]).toBeLessThan(-150);
    expect(Math.min(...run.leastKn)).toBeLessThan(run.forcesKn.at(-1)![0]!);
  });

  it.each([{ cubic: 'least' }, { cubic: 'most' }, { friction: 'least' }, { friction: 'most' }] as const)(
    'runs in harder or softer with other draft gears, and settles on the same forces: %o',
    (at) => {
      const usual = simulateTrain(input({ handling: intoBrake }));
      const other = simulateTrain(input({ handling: intoBrake, gear: gearOf(kindOfGear('friction'), at) }));
      const hardest = (run: typeof usual): number => Math.min(...run.leastKn);
      expect(Math.abs(hardest(other) / hardest(usual) - 1)).toBeGreaterThan(0.01);
      usual.forcesKn
        .at(-1)!
        .forEach((force, i) => expect(Math.abs(other.forcesKn.at(-1)![i]! - force)).toBeLessThan(1));
    },
  );

  it('sets the brakes at the rear sooner in emergency where the rear vents too, and not in service', () => {
    const far = vehicles.map((vehicle, i) => ({ ...vehicle, atPodM: -i * 150 }));
    const rearMost = (changes: Partial<Handling>, alsoInEmergency: readonly number[]): number => {
      const run = simulateTrain(
        input({
          vehicles: far,
          handling: handling({ throttle: column(() => 0), ...changes }),
          vents: { service: [0], alsoInEmergency },
        }),
      );
      return run.leastKn.at(-1)!;
    };
    const last = vehicles.length - 1;
    const emergency = { emergencyS: 20 };
    // The rear runs in on a head that brakes alone, and not on one that brakes with it.
    expect(rearMost(emergency, [last])).toBeGreaterThan(rearMost(emergency, []) + 20);
    const service = { reductionKpa: column((t) => (t >= 20 ? 150 : 0)) };
    expect(rearMost(service, [last])).toBe(rearMost(service, []));
  });

  it('brings a brake application to the rear later than to the head', () => {
    const far = vehicles.map((vehicle, i) => ({ ...vehicle, atPodM: -i * 150 }));
    const run = simulateTrain(
      input({
        vehicles: far,
        handling: handling({
          throttle: column(() => 0),
          reductionKpa: column((t) => (t >= 20 ? 150 : 0)),
        }),
      }),
    );
    // The head brakes first, so that the rear runs in on it.
    const during = run.forcesKn[32]!;
    expect(during[14]).toBeLessThan(-50);
    expect(during[14]).toBeLessThan(run.forcesKn.at(-1)![14]!);
  });
});

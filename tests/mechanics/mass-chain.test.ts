import { describe, expect, it } from 'vitest';
import { steadyCouplerForces } from '~/lib/mechanics/coupler-force';
import {
  elasticForceKn,
  extensionFor,
  gearForceKn,
  gearOf,
  KINDS_OF_GEAR,
  storedEnergyKj,
  type DraftGear,
} from '~/lib/mechanics/draft-gear';
import { runChain } from '~/lib/mechanics/mass-chain';

const SPRING_KN_PER_M = 5000;
/** No slack, no friction, never solid: a spring. */
const spring: DraftGear = {
  id: 'spring',
  label: 'spring',
  slackM: 0,
  travelM: 1,
  closedKn: SPRING_KN_PER_M,
  solidKnPerM: SPRING_KN_PER_M,
  cubicShare: 0,
  frictionShare: 0,
  source: { text: 'test', status: 'published' },
};
const MASS = 80_000;
const free = (_t: number, _s: number, _v: Float64Array, out: Float64Array): void => {
  out.fill(0);
};
const exact = { everyS: 0.1, longestStepS: 0.05, tolerance: 1e-9 };
const springs = (count: number): DraftGear[] => Array.from({ length: count }, () => spring);

describe('draft gears', () => {
  it.each(KINDS_OF_GEAR.map((kind) => [kind.id, gearOf(kind)] as const))(
    '%s stores what its elastic force works, and friction only takes',
    (_, gear) => {
      const end = gear.slackM / 2 + gear.travelM * 1.2;
      const steps = 20_000;
      let work = 0;
      for (let i = 0; i < steps; i += 1)
        work += (elasticForceKn(gear, ((i + 0.5) / steps) * end) * end) / steps;
      expect(storedEnergyKj(gear, end)).toBeCloseTo(work, 2);
      expect(storedEnergyKj(gear, -end)).toBe(storedEnergyKj(gear, end));
      for (const x of [-end, -0.05, 0.05, end])
        for (const rate of [-1, -0.01, 0.01, 1])
          expect((gearForceKn(gear, x, rate) - elasticForceKn(gear, x)) * rate).toBeGreaterThanOrEqual(0);
      for (const force of [-3000, -700, 700, 3000])
        expect(elasticForceKn(gear, extensionFor(gear, force))).toBeCloseTo(force, 6);
    },
  );
});

describe('the chain against analytic solutions', () => {
  it('two equal masses on a spring swing with ω = √(2k/m)', () => {
    const omega = Math.sqrt((2 * SPRING_KN_PER_M * 1000) / MASS);
    const { timesS, forcesKn, energy } = runChain(
      { massesKg: [MASS, MASS], gears: [spring] },
      free,
      { speedsMs: [3, 3], extensionsM: [0.05] },
      { ...exact, durationS: 10 },
    );
    timesS.forEach((t, i) =>
      expect(forcesKn[i]![0]).toBeCloseTo(SPRING_KN_PER_M * 0.05 * Math.cos(omega * t), 1),
    );
    expect(energy.unclosed).toBeLessThan(1e-6);
  });

  it('N equal masses swing in each of their modes with ω = 2√(k/m)·sin(jπ/2N)', () => {
    const n = 12;
    for (const mode of [1, 2, 5, 11]) {
      const omega = 2 * Math.sqrt((SPRING_KN_PER_M * 1000) / MASS) * Math.sin((mode * Math.PI) / (2 * n));
      const shape = (i: number): number => Math.cos(((i + 0.5) * mode * Math.PI) / n);
      const { timesS, speedsMs } = runChain(
        { massesKg: new Float64Array(n).fill(MASS), gears: springs(n - 1) },
        free,
        {
          speedsMs: Array.from({ length: n }, (_, i) => 0.2 * shape(i)),
          extensionsM: new Float64Array(n - 1),
        },
        { ...exact, durationS: 8 },
      );
      timesS.forEach((t, step) => {
        for (let i = 0; i < n; i += 1)
          expect(speedsMs[step]![i]).toBeCloseTo(0.2 * shape(i) * Math.cos(omega * t), 4);
      });
    }
  });

  it('two masses through slack keep their momentum and meet with equal and opposite speeds', () => {
    const slack: DraftGear = { ...spring, slackM: 0.1 };
    const { speedsMs } = runChain(
      { massesKg: [MASS, MASS], gears: [slack] },
      free,
      { speedsMs: [0, 0.5], extensionsM: [0.04] },
      { ...exact, durationS: 0.5 },
    );
    const last = speedsMs.at(-1)!;
    expect(last[0]! + last[1]!).toBeCloseTo(0.5, 6);
    // An elastic meeting of equal masses changes their speeds over.
    expect(last[0]).toBeCloseTo(0.5, 4);
  });
});

describe('the chain as a train', () => {
  const friction = gearOf(KINDS_OF_GEAR[0]!);
  const count = 40;
  const masses = Float64Array.from({ length: count }, (_, i) => (i % 4 === 0 ? 30_000 : 120_000));
  const train = {
    massesKg: masses,
    gears: Array.from({ length: count - 1 }, () => friction),
  };
  const pulls = Float64Array.from({ length: count }, (_, i) => (i === 0 ? 350 : -4));
  const pull = (_t: number, _s: number, _v: Float64Array, out: Float64Array): void => {
    out.set(pulls);
  };

  it('comes to the steady forces of the static sum when nothing changes', () => {
    const { forcesKn, speedsMs } = runChain(
      train,
      pull,
      { speedsMs: new Float64Array(count).fill(5), extensionsM: new Float64Array(count - 1) },
      { durationS: 300, everyS: 1, tolerance: 1e-6 },
    );
    const steady = steadyCouplerForces(
      Array.from(masses, (massKg, i) => ({
        massKg,
        axles: 4,
        grade: 0,
        curvaturePerM: 0,
        dragFactor: 0,
        tractionKn: pulls[i]!,
        brakeKn: 0,
      })),
      5,
      { rolling: 0, curve: 0 },
    );
    const last = forcesKn.at(-1)!;
    steady.couplersKn.forEach((force, i) => expect(Math.abs(last[i]! - force)).toBeLessThan(0.1));
    expect(speedsMs.at(-1)![count - 1]).toBeCloseTo(speedsMs.at(-1)![0]!, 2);
  });

  it.each(KINDS_OF_GEAR.map((kind) => [kind.id, gearOf(kind)] as const))(
    'closes its energy within 0.1 % through a run-in and a run-out, %s',
    (_, gear) => {
      const changing = (t: number, _s: number, _v: Float64Array, out: Float64Array): void => {
        out.fill(-3);
        out[0] = t < 20 ? 300 : t < 40 ? -250 : 300;
      };
      const { energy, leastKn, mostKn } = runChain(
        { massesKg: masses, gears: train.gears.map(() => gear) },
        changing,
        { speedsMs: new Float64Array(count).fill(8), extensionsM: new Float64Array(count - 1) },
        { durationS: 60, everyS: 1 },
      );
      expect(energy.unclosed).toBeLessThan(1e-3);
      expect(energy.frictionKj).toBeGreaterThan(0);
      // Slack action goes beyond what the head end pulls or pushes.
      expect(Math.max(...mostKn)).toBeGreaterThan(280);
      expect(Math.min(...leastKn)).toBeLessThan(-200);
    },
  );
});

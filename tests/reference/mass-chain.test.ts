import { describe, expect, it } from 'vitest';
import { steadyCouplerForces } from '~/lib/mechanics/coupler-force';
import { gearOf, kindOfGear, type DraftGear } from '~/lib/mechanics/draft-gear';
import { runChain } from '~/lib/mechanics/mass-chain';
import type { DrivenVehicle, Handling } from '~/lib/mechanics/train-drive';
import { simulateTrain } from '~/lib/mechanics/train-simulation';
import { assumption, coasting, column as valuesOf } from '../mechanics/driven-train';
import solved from './mass-chain.json';

const SPRING_KN_PER_M = 8000;
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
  source: { text: 'Hooke’s law', status: 'published' },
};
const exact = { everyS: 0.25, longestStepS: 0.02, tolerance: 1e-10 };

describe('masses on springs against their analytic solutions (Newton’s laws; Lagrange, Mécanique analytique)', () => {
  it('two masses, pulled at one: F = P·m₂/(m₁ + m₂)·(1 − cos ωt), ω² = k(1/m₁ + 1/m₂)', () => {
    const [m1, m2, pull] = [180_000, 60_000, 250];
    const omega = Math.sqrt(SPRING_KN_PER_M * 1000 * (1 / m1 + 1 / m2));
    const { timesS, forcesKn, energy } = runChain(
      { massesKg: [m1, m2], gears: [spring] },
      (_t, _s, _v, out) => out.set([pull, 0]),
      { speedsMs: [4, 4], extensionsM: [0] },
      { ...exact, durationS: 20 },
    );
    timesS.forEach((t, i) =>
      expect(forcesKn[i]?.[0]).toBeCloseTo(((pull * m2) / (m1 + m2)) * (1 - Math.cos(omega * t)), 2),
    );
    expect(energy.unclosed).toBeLessThan(1e-6);
  });

  it('N equal masses, pulled at one end: the sum over their modes', () => {
    const [n, m, pull] = [10, 100_000, 300];
    const { timesS, forcesKn } = runChain(
      { massesKg: new Float64Array(n).fill(m), gears: Array.from({ length: n - 1 }, () => spring) },
      (_t, _s, _v, out) => {
        out.fill(0);
        out[0] = pull;
      },
      { speedsMs: new Float64Array(n), extensionsM: new Float64Array(n - 1) },
      { ...exact, durationS: 15 },
    );
    // x_i = Σ_j φ_j(i)·φ_j(0)·P/(m·ω_j²)·(1 − cos ω_j t), φ_j(i) = √(2/n)·cos((i + ½)jπ/n); force k(x_i − x_{i+1}).
    const shape = (i: number, j: number): number =>
      Math.sqrt(2 / n) * Math.cos(((i + 0.5) * j * Math.PI) / n);
    const force = (i: number, t: number): number => {
      let sum = 0;
      for (let j = 1; j < n; j += 1) {
        const omega = 2 * Math.sqrt((SPRING_KN_PER_M * 1000) / m) * Math.sin((j * Math.PI) / (2 * n));
        const moved = (shape(0, j) * pull * 1000 * (1 - Math.cos(omega * t))) / (m * omega ** 2);
        sum += SPRING_KN_PER_M * moved * (shape(i, j) - shape(i + 1, j));
      }
      return sum;
    };
    timesS.forEach((t, step) => {
      for (let i = 0; i < n - 1; i += 1) expect(forcesKn[step]?.[i]).toBeCloseTo(force(i, t), 2);
    });
  });
});

describe('trains with slack and friction against SciPy (mass-chain.py, orders 8 and 5(3))', () => {
  const headAt = (time: number): number =>
    solved.headKn.reduce((now, [since = 0, force = 0]) => (time >= since - 1e-9 ? force : now), 0);

  for (const { gear, rows } of solved.runs) {
    it(`${gear}: forces within 2 kN and speeds within 1 mm/s, through a run-in and a run-out`, () => {
      const count = solved.massesKg.length;
      const { timesS, forcesKn, speedsMs, energy } = runChain(
        {
          massesKg: solved.massesKg,
          gears: Array.from({ length: count - 1 }, () => gearOf(kindOfGear(gear))),
        },
        (time, _s, _v, out) => {
          out.fill(-solved.heldKn);
          out[0] = headAt(time);
        },
        { speedsMs: new Float64Array(count).fill(8), extensionsM: new Float64Array(count - 1) },
        { durationS: 70, everyS: 5, longestStepS: 0.002, tolerance: 1e-7 },
      );
      for (const row of rows) {
        const at = timesS.findIndex((time) => Math.abs(time - row.timeS) < 1e-6);
        // At the moment the head end changes the force before it is meant.
        row.forcesKn.forEach((force, i) =>
          expect(Math.abs((forcesKn[at]?.[i] ?? NaN) - force), `${row.timeS} s, ${i}`).toBeLessThan(2),
        );
        row.speedsMs.forEach((speed, i) =>
          expect(Math.abs((speedsMs[at]?.[i] ?? NaN) - speed), `${row.timeS} s, ${i}`).toBeLessThan(1e-3),
        );
      }
      expect(energy.unclosed).toBeLessThan(1e-3);
    });
  }
});

describe('a train through its recorder run', () => {
  const rating = { massKg: 180_000, ratedKn: 450, ratedSpeedMs: 5, dynamicBrakeKn: 350 };
  const vehicles: readonly DrivenVehicle[] = Array.from({ length: 24 }, (_, i) => ({
    massKg: i === 0 ? 180_000 : i % 3 === 0 ? 28_000 : 120_000,
    axles: i === 0 ? 6 : 4,
    lengthM: 18,
    dragFactor: 0.07,
    brakingRatio: 0.1,
    rating: i === 0 ? rating : null,
    own: null,
    atPodM: (8 - i) * 18,
    grade: 0.004,
    curvaturePerM: 0.0015,
  }));
  const seconds = 241;
  const column = (by: (t: number) => number): Float64Array => valuesOf(by, seconds);
  const run = (changes: Partial<Handling>) =>
    simulateTrain({
      vehicles,
      handling: { ...coasting(seconds), ...changes },
      assumption,
      gear: gearOf(kindOfGear('friction')),
      recording: 0,
      vents: { service: [0], alsoInEmergency: [] },
      runToPodM: 1200,
      durationS: 240,
      everyS: 1,
    });

  it.each([
    ['after power is opened up', { throttle: column((t) => (t < 30 ? 3 : 8)) }],
    [
      'after the dynamic brake is set up',
      {
        throttle: column((t) => (t < 30 ? 8 : 0)),
        dynamicBrakeShare: column((t) => (t < 40 ? 0 : 1)),
      },
    ],
  ])('settles %s on the coupler forces of the static sum within 1 kN, its energy closed', (_, changes) => {
    const { forcesKn, speedsMs, energy } = run(changes);
    const [first, last] = [forcesKn[25], forcesKn.at(-1)];
    const speed = speedsMs.at(-1)?.[0] ?? NaN;
    // Rated power is 450 kN · 5 m/s; the dynamic brake gives all of its 350 kN between 6 and 25 mph.
    const head = 'dynamicBrakeShare' in changes ? -350 : (450 * 5) / speed;
    const { couplersKn } = steadyCouplerForces(
      vehicles.map((vehicle, i) => ({ ...vehicle, tractionKn: i === 0 ? head : 0, brakeKn: 0 })),
      speed,
    );
    couplersKn.forEach((force, i) => expect(Math.abs((last?.[i] ?? NaN) - force), String(i)).toBeLessThan(1));
    // It had to move there.
    expect(Math.abs((first?.[0] ?? NaN) - (last?.[0] ?? NaN))).toBeGreaterThan(50);
    expect(energy.unclosed).toBeLessThan(1e-3);
  });
});

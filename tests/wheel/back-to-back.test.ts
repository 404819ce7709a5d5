import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitBackToBack, type BackToBackFit } from '~/lib/wheel/back-to-back';

const SEED = { seed: 6222 };
const turn = 2 * Math.PI;
const mean = fc.double({ min: 1330, max: 1370, noNaN: true });
const amplitude = fc.double({ min: 0.5, max: 15, noNaN: true });
const angle = fc.double({ min: 0, max: turn, noNaN: true });
/** Three to eight places, none leaving more than 150° unmeasured, so that the fit is always possible. */
const places = fc
  .tuple(
    fc.integer({ min: 3, max: 8 }),
    angle,
    fc.array(fc.double({ min: -0.15, max: 0.15, noNaN: true }), { minLength: 8, maxLength: 8 }),
  )
  .map(([n, start, jitter]) => Array.from({ length: n }, (_, i) => start + (turn * i) / n + jitter[i]!));

const fitted = (clock: readonly number[], values: readonly number[], u = 0.5): BackToBackFit => {
  const result = fitBackToBack(
    clock.map((clockRad, i) => ({ clockRad, backToBackMm: values[i]! })),
    u,
  );
  if (result.kind !== 'fitted') throw new Error(result.why);
  return result;
};

describe('back-to-back round the wheel', () => {
  it('finds a bend exactly, wherever it was measured', () => {
    fc.assert(
      fc.property(places, mean, amplitude, angle, (clock, m, a, phase) => {
        const found = fitted(
          clock,
          clock.map((t) => m + a * Math.cos(t - phase)),
        );
        expect(found.meanMm).toBeCloseTo(m, 7);
        expect(found.amplitudeMm).toBeCloseTo(a, 7);
        expect(found.leastMm).toBeCloseTo(m - a, 7);
        expect(Math.cos(found.phaseRad - phase)).toBeCloseTo(1, 9);
        expect(found.residualMm ?? 0).toBeCloseTo(0, 7);
        expect(found.degreesOfFreedom).toBe(clock.length - 3);
      }),
      SEED,
    );
  });

  it('starting the clock elsewhere turns the phase and nothing else', () => {
    fc.assert(
      fc.property(places, fc.array(mean, { minLength: 8, maxLength: 8 }), angle, (clock, values, by) => {
        const before = fitted(clock, values);
        const after = fitted(
          clock.map((t) => t + by),
          values,
        );
        expect(after.meanMm).toBeCloseTo(before.meanMm, 7);
        expect(after.amplitudeMm).toBeCloseTo(before.amplitudeMm, 7);
        expect(after.uMeanMm).toBeCloseTo(before.uMeanMm, 9);
        expect(after.uAmplitudeMm).toBeCloseTo(before.uAmplitudeMm, 6);
        expect(after.uLeastMm).toBeCloseTo(before.uLeastMm, 6);
      }),
      SEED,
    );
  });

  it('three places 120° apart: u/√3 of the mean, u·√(2/3) of the amplitude', () => {
    const found = fitted([0, turn / 3, (2 * turn) / 3], [1350, 1352, 1347], 0.6);
    expect(found.uMeanMm).toBeCloseTo(0.6 / Math.sqrt(3), 12);
    expect(found.uAmplitudeMm).toBeCloseTo(0.6 * Math.sqrt(2 / 3), 12);
    expect(found.uSwingMm).toBeCloseTo(1.2 * Math.sqrt(2 / 3), 12);
    expect(found.uPhaseRad).toBeCloseTo(found.uAmplitudeMm / found.amplitudeMm, 12);
  });

  it('a round wheel has no amplitude, and its phase is unknown', () => {
    const found = fitted([0, Math.PI / 2, Math.PI, 1.5 * Math.PI], [1350, 1350, 1350, 1350]);
    expect(found.amplitudeMm).toBeCloseTo(0, 10);
    expect(found.uPhaseRad).toBeGreaterThan(1e6);
  });

  it('never throws: any angles are fitted or refused, and what is fitted is finite', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(angle, mean), { maxLength: 10 }), (readings) => {
        const result = fitBackToBack(
          readings.map(([clockRad, backToBackMm]) => ({ clockRad, backToBackMm })),
          0.5,
        );
        if (result.kind === 'fitted') {
          expect(Number.isFinite(result.meanMm + result.amplitudeMm + result.uMeanMm)).toBe(true);
          expect(result.uMeanMm).toBeLessThanOrEqual(2.5);
        } else expect(result.why).not.toBe('');
      }),
      SEED,
    );
  });
});

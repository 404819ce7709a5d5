import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  balanceElevationMm,
  balanceSpeedMs,
  maximumCurvingSpeedMs,
  unbalanceMm,
} from '~/lib/track/curving-speed';

const SEED = { seed: 6218 };
const curvature = fc.double({ min: 1e-5, max: 0.02, noNaN: true });
const elevation = fc.double({ min: 0, max: 200, noNaN: true });
const speed = fc.double({ min: 0.1, max: 60, noNaN: true });

describe('curving speed', () => {
  it('at the maximum speed the unbalance is what was allowed', () => {
    fc.assert(
      fc.property(curvature, elevation, fc.double({ min: 0, max: 150, noNaN: true }), (k, ea, eu) => {
        expect(unbalanceMm(k, maximumCurvingSpeedMs(k, ea, eu), ea)).toBeCloseTo(eu, 8);
      }),
      SEED,
    );
  });

  it('at balance speed there is no unbalance, above it outward, below it inward', () => {
    fc.assert(
      fc.property(curvature, fc.double({ min: 1, max: 200, noNaN: true }), (k, ea) => {
        const v = balanceSpeedMs(k, ea);
        expect(unbalanceMm(k, v, ea)).toBeCloseTo(0, 8);
        expect(unbalanceMm(k, v * 1.01, ea)).toBeGreaterThan(0);
        expect(unbalanceMm(k, v * 0.99, ea)).toBeLessThan(0);
      }),
      SEED,
    );
  });

  it('left and right curves are alike; twice the speed wants four times the elevation', () => {
    fc.assert(
      fc.property(curvature, speed, (k, v) => {
        expect(balanceElevationMm(-k, v)).toBe(balanceElevationMm(k, v));
        expect(balanceElevationMm(k, 2 * v) / balanceElevationMm(k, v)).toBeCloseTo(4, 10);
      }),
      SEED,
    );
  });

  it('a sharper curve or less elevation never allows more speed', () => {
    fc.assert(
      fc.property(curvature, elevation, (k, ea) => {
        expect(maximumCurvingSpeedMs(k * 1.1, ea)).toBeLessThan(maximumCurvingSpeedMs(k, ea));
        expect(maximumCurvingSpeedMs(k, ea * 0.9)).toBeLessThanOrEqual(maximumCurvingSpeedMs(k, ea));
      }),
      SEED,
    );
  });
});

import fc from 'fast-check';
import { describe, it, expect } from 'vitest';
import {
  curvatureFromMidOrdinate,
  curvatureFromSmallMidOrdinate,
  curvatureOfDegrees,
  degreesOfCurve,
  midOrdinateFromCurvature,
  smallMidOrdinateFromCurvature,
} from '~/lib/track/curvature';

const SEED = { seed: 6217 };
const chord = fc.double({ min: 3, max: 40, noNaN: true });
/** Down to a radius of 25 m, either hand; flatter than 1,000 km is tangent. */
const curvature = fc.double({ min: -0.04, max: 0.04, noNaN: true }).map((k) => (Math.abs(k) < 1e-6 ? 0 : k));
const near = (a: number, b: number, relative = 1e-9) =>
  expect(Math.abs(a - b)).toBeLessThanOrEqual(relative * Math.max(Math.abs(a), Math.abs(b)));

describe('curvature from the mid-ordinate', () => {
  it('and back again, exact form, either hand', () => {
    fc.assert(
      fc.property(curvature, chord, (k, c) => {
        near(curvatureFromMidOrdinate(midOrdinateFromCurvature(k, c), c), k);
      }),
      SEED,
    );
  });

  it('and back again, small-offset form', () => {
    fc.assert(
      fc.property(curvature, chord, (k, c) => {
        near(curvatureFromSmallMidOrdinate(smallMidOrdinateFromCurvature(k, c), c), k);
      }),
      SEED,
    );
  });

  it('changes hand with the sign of the offset, grows with it, and does not depend on the chord', () => {
    fc.assert(
      fc.property(curvature, chord, chord, (k, c, other) => {
        const m = midOrdinateFromCurvature(k, c);
        near(curvatureFromMidOrdinate(-m, c), -k);
        near(curvatureFromMidOrdinate(midOrdinateFromCurvature(k, other), other), k);
        expect(midOrdinateFromCurvature(k * 0.9, c) * Math.sign(k)).toBeLessThanOrEqual(m * Math.sign(k));
      }),
      SEED,
    );
  });

  it('is zero on tangent, and impossible for a chord longer than the diameter', () => {
    expect(midOrdinateFromCurvature(0, 18.9)).toBe(0);
    expect(curvatureFromMidOrdinate(0, 18.9)).toBe(0);
    expect(midOrdinateFromCurvature(0.2, 18.9)).toBeNaN();
  });

  it('degrees of curve and back', () => {
    fc.assert(
      fc.property(curvature, (k) => {
        near(curvatureOfDegrees(degreesOfCurve(k)), k);
      }),
      SEED,
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axleSumLimit } from '~/lib/mechanics/axle-sum';
import { climbDistance, climbDistanceFt, climbDistanceM } from '~/lib/mechanics/climb-distance';
import { climbLimit } from '~/lib/mechanics/climb-limit';

const SEED = { seed: 6223 };
const angle = fc.double({ min: 0.3, max: 1.5, noNaN: true });
const friction = fc.double({ min: 0, max: 1, noNaN: true });

describe('climb limit', () => {
  it('is the tangent of the contact angle less the friction angle', () => {
    fc.assert(
      fc.property(angle, friction, (delta, mu) => {
        expect(climbLimit(delta, mu)).toBeCloseTo(Math.tan(delta - Math.atan(mu)), 8);
      }),
      SEED,
    );
  });

  it('rises with the angle, falls with friction, and is tan δ without any', () => {
    fc.assert(
      fc.property(angle, friction, (delta, mu) => {
        expect(climbLimit(delta + 0.01, mu)).toBeGreaterThan(climbLimit(delta, mu));
        expect(climbLimit(delta, mu + 0.01)).toBeLessThan(climbLimit(delta, mu));
        expect(climbLimit(delta, 0)).toBe(Math.tan(delta));
      }),
      SEED,
    );
  });

  it('the axle sum is never below it', () => {
    fc.assert(
      fc.property(angle, friction, friction, (delta, mu, other) => {
        expect(axleSumLimit(delta, mu, other) - climbLimit(delta, mu)).toBeCloseTo(other, 9);
      }),
      SEED,
    );
  });
});

describe('climb distance', () => {
  const flange = fc.double({ min: 1.0, max: 1.45, noNaN: true });
  const length = fc.double({ min: 5, max: 25, noNaN: true });
  const attack = fc.double({ min: -0.01, max: 0.03, noNaN: true });

  const corner = climbDistanceFt(75, 0.75, 0) * 0.3048 + 1e-6;

  it('is positive wherever it is given, longest at the steep, long, square corner, and NaN exactly where it is refused', () => {
    fc.assert(
      fc.property(flange, length, attack, (a, l, o) => {
        const answer = climbDistance(a, l, o);
        const drawn = climbDistanceM(a, l, o);
        if (answer.kind === 'measured') {
          expect(drawn).toBe(answer.distanceM);
          expect(answer.distanceM).toBeGreaterThan(0);
          expect(answer.distanceM).toBeLessThanOrEqual(corner);
        } else expect(drawn).toBeNaN();
      }),
      { ...SEED, numRuns: 500 },
    );
  });

  it('a greater angle of attack never climbs in a longer distance', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.1, max: 1.3, noNaN: true }),
        fc.double({ min: 10.2, max: 19, noNaN: true }),
        fc.double({ min: 0, max: 0.018, noNaN: true }),
        (a, l, o) => {
          expect(climbDistanceM(a, l, o + 0.002)).toBeLessThan(climbDistanceM(a, l, o));
        },
      ),
      SEED,
    );
  });

  it('what is missing is out of range, and says which input', () => {
    expect(climbDistance(NaN, 15, 0.005)).toMatchObject({ kind: 'outOfRange' });
    expect(climbDistance(1.2, 15, -0.001)).toMatchObject({
      kind: 'outOfRange',
      why: expect.stringContaining('angle of attack') as unknown,
    });
    expect(climbDistance(1.2, 25, 0.001)).toMatchObject({
      kind: 'outOfRange',
      why: expect.stringContaining('flange length') as unknown,
    });
  });
});

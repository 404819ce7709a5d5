import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inside, shifted, showing, whole, zoomed } from '~/app/traces/photo/window';

const SIZE = { width: 2400, height: 1600 };

describe('the part of a picture that is looked at', () => {
  it('keeps the place under the pointer where it is while looking closer', () => {
    const about = [700, 300] as const;
    const closer = zoomed(SIZE, whole(SIZE), 3, about);
    expect(closer.width).toBeCloseTo(800, 9);
    expect((about[0] - closer.x) / closer.width).toBeCloseTo(700 / 2400, 9);
    expect((about[1] - closer.y) / closer.height).toBeCloseTo(300 / 1600, 9);
  });

  it('never leaves the picture and never shows more than all of it', () => {
    const step = fc.oneof(
      fc.record({
        factor: fc.double({ min: 0.1, max: 10, noNaN: true }),
        at: fc.tuple(fc.integer({ min: 0, max: 2399 }), fc.integer({ min: 0, max: 1599 })),
      }),
      fc.record({ dx: fc.integer({ min: -4000, max: 4000 }), dy: fc.integer({ min: -4000, max: 4000 }) }),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
        const end = steps.reduce(
          (window, each) =>
            'factor' in each
              ? zoomed(SIZE, window, each.factor, each.at)
              : shifted(SIZE, window, each.dx, each.dy),
          whole(SIZE),
        );
        expect(end.x).toBeGreaterThanOrEqual(-1e-6);
        expect(end.y).toBeGreaterThanOrEqual(-1e-6);
        expect(end.x + end.width).toBeLessThanOrEqual(SIZE.width + 1e-6);
        expect(end.y + end.height).toBeLessThanOrEqual(SIZE.height + 1e-6);
      }),
      { seed: 31, numRuns: 200 },
    );
  });

  it('moves just so far that a point comes into sight', () => {
    const corner = zoomed(SIZE, whole(SIZE), 4, [0, 0]);
    const seen = showing(SIZE, corner, [1200, 800]);
    expect(seen.x + seen.width).toBeGreaterThan(1200);
    expect(showing(SIZE, seen, [1200, 800])).toEqual(seen);
  });

  it('takes a point beside the picture to its edge', () => {
    expect(inside(SIZE, [-5, 1700])).toEqual([0, 1599]);
  });
});

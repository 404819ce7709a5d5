import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  diameterFromChord,
  diameterPerChord,
  diameterPerHeight,
  heightFromDiameter,
} from '~/lib/wheel/chord-diameter';

const SEED = { seed: 6221 };
const chord = fc.double({ min: 50, max: 500, noNaN: true });
const diameter = fc.double({ min: 600, max: 1500, noNaN: true });

describe('chord diameter', () => {
  it('and back again', () => {
    fc.assert(
      fc.property(chord, diameter, (c, d) => {
        expect(diameterFromChord(c, heightFromDiameter(c, d)) / d).toBeCloseTo(1, 10);
      }),
      SEED,
    );
  });

  it('slopes agree with differences, and more height is always a smaller wheel', () => {
    fc.assert(
      fc.property(chord, diameter, (c, d) => {
        const h = heightFromDiameter(c, d);
        const step = 1e-5;
        const byHeight = (diameterFromChord(c, h + step) - diameterFromChord(c, h - step)) / (2 * step);
        const byChord = (diameterFromChord(c + step, h) - diameterFromChord(c - step, h)) / (2 * step);
        expect(diameterPerHeight(c, h) / byHeight).toBeCloseTo(1, 4);
        expect(diameterPerChord(c, h) / byChord).toBeCloseTo(1, 4);
        expect(diameterPerHeight(c, h)).toBeLessThan(0);
      }),
      SEED,
    );
  });

  it('scales with the unit', () => {
    fc.assert(
      fc.property(chord, fc.double({ min: 1, max: 40, noNaN: true }), (c, h) => {
        expect(diameterFromChord(c * 25.4, h * 25.4) / diameterFromChord(c, h)).toBeCloseTo(25.4, 9);
      }),
      SEED,
    );
  });

  it('a flat has no diameter, and a chord longer than the wheel no height', () => {
    expect(diameterFromChord(100, 0)).toBe(Infinity);
    expect(heightFromDiameter(100, 90)).toBeNaN();
  });
});

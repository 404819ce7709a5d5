import { describe, expect, it } from 'vitest';
import { CHECKED, TOLERANCE, traced, valuesOf, within } from './whole-path';
import { wornS1002 } from './worn';

const SCENES = 6;
const TIMEOUT_MS = 120_000;
const DEGREE = Math.PI / 180;

describe('from a photo to the numbers of a wheel', () => {
  it('the drawn wheel itself gives the numbers of its standard (EN 13715, from memory), and the hollow run into it', () => {
    const asNew = valuesOf(wornS1002({ hollowMm: 0, flangeMm: 0 }));
    if (typeof asNew === 'string') throw new Error(asNew);
    expect(Math.abs(asNew.flangeHeight - 28)).toBeLessThan(0.05);
    expect(Math.abs(asNew.flangeThickness - 32.5)).toBeLessThan(0.05);
    expect(Math.abs(asNew.flangeAngle - 70 * DEGREE)).toBeLessThan(0.2 * DEGREE);
  });

  it('a hollow and a worn flange change the numbers by what was taken off', () => {
    const worn = wornS1002({ hollowMm: 3, flangeMm: 2 });
    const found = valuesOf(worn);
    if (typeof found === 'string') throw new Error(found);
    expect(Math.abs(found.flangeHeight - 31)).toBeLessThan(0.1);
    const { xMm, yMm } = worn;
    const face = xMm.findIndex((x, i) => x > 20 && yMm[i]! <= 10 - 3);
    expect(Math.abs(found.flangeThickness - xMm[face]!)).toBeLessThan(0.2);
    // The tread falls by 1:15 from where the hollow is deepest to where it ends.
    expect(found.treadHollow).toBeGreaterThan(0.5);
    expect(found.treadHollow).toBeLessThan(3);
  });

  it(
    'nearly every scene comes within tolerance, and every line is followed',
    () => {
      const outcomes = Array.from({ length: SCENES }, (_, i) => traced(i + 1));
      expect(outcomes.flatMap(({ straight }) => straight)).toEqual([]);
      expect(outcomes.filter((outcome) => !within(outcome)).map(({ seed, why }) => [seed, why])).toEqual([]);
      for (const id of CHECKED) {
        const errors = outcomes.map((outcome) => outcome.errors?.[id] ?? NaN);
        const spread = Math.sqrt(errors.reduce((sum, error) => sum + error * error, 0) / SCENES);
        expect(spread).toBeLessThan(TOLERANCE[id] / 2);
      }
    },
    TIMEOUT_MS,
  );
});

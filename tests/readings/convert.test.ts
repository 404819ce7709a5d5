import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromCanonical, toCanonical, widthFromCanonical, widthToCanonical } from '~/lib/readings/convert';
import { DIMENSIONS, type Dimension, type Unit } from '~/lib/readings/unit';

const pairs = (Object.keys(DIMENSIONS) as Dimension[]).flatMap((dimension) =>
  DIMENSIONS[dimension].units.map((unit) => [dimension, unit] as [Dimension, Unit]),
);

describe('conversion', () => {
  it.each(pairs)('%s in %s goes there and back', (dimension, unit) => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1e6, noNaN: true }), (value) => {
        const back = fromCanonical(toCanonical(value, unit, dimension), unit, dimension);
        return Math.abs(back - value) <= 1e-9 * Math.max(1, value);
      }),
      { seed: 3 },
    );
  });

  it.each(pairs)('%s in %s: a small width is the slope of the conversion', (dimension, unit) => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1e4, noNaN: true }), (value) => {
        const step = 1e-5 * value;
        const slope =
          Math.abs(toCanonical(value + step, unit, dimension) - toCanonical(value - step, unit, dimension)) /
          2;
        const width = widthToCanonical(step, value, unit, dimension);
        expect(Math.abs(width / slope - 1)).toBeLessThan(1e-5);
        const back = widthFromCanonical(width, toCanonical(value, unit, dimension), unit, dimension);
        return Math.abs(back / step - 1) < 1e-9;
      }),
      { seed: 4 },
    );
  });

  it.each(Object.keys(DIMENSIONS) as Dimension[])('the canonical unit of %s is itself', (dimension) => {
    expect(toCanonical(12.5, DIMENSIONS[dimension].canonical, dimension)).toBe(12.5);
  });

  it('does not take a unit of another dimension', () => {
    expect(() => toCanonical(1, 'psi', 'speed')).toThrow(RangeError);
  });
});

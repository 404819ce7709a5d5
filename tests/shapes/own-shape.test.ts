import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Outline } from '~/lib/outline/outline';
import { REFERENCE_SHAPES } from '~/lib/shapes';
import { ownShapeOutline } from '~/lib/shapes/own-shape';
import { outlineOfShape } from '~/lib/shapes/shape';

const pairs = ({ xMm, yMm }: Outline, change: (x: number, y: number) => [number, number]): number[] =>
  [...xMm].flatMap((x, i) => change(x, yMm[i]!));
const wheel = outlineOfShape(
  REFERENCE_SHAPES.find(({ id }) => id === 's1002')!,
  1,
);
const rail = outlineOfShape(
  REFERENCE_SHAPES.find(({ id }) => id === '136re')!,
  1,
);

describe("a shape of the user's own", () => {
  it.each(REFERENCE_SHAPES.map((shape) => [shape.id, shape] as const))(
    '%s comes back as it is',
    (_, shape) => {
      const outline = outlineOfShape(shape, 1);
      const found = ownShapeOutline(
        shape.shape,
        pairs(outline, (x, y) => [x, y]),
      );
      if (!found.ok) throw new Error(found.message);
      found.value.xMm.forEach((x, i) => expect(x).toBeCloseTo(outline.xMm[i]!, 6));
      found.value.yMm.forEach((y, i) => expect(Math.abs(y - outline.yMm[i]!)).toBeLessThan(0.01));
    },
  );

  it('is moved into its frame and put in order', () => {
    const shifted = pairs(wheel, (x, y) => [x + 31, y - 400]);
    const backward = shifted.flatMap((_, i) =>
      i % 2 === 0 ? [shifted.at(-2 - i)!, shifted.at(-1 - i)!] : [],
    );
    for (const points of [shifted, backward]) {
      const found = ownShapeOutline('wheel', points);
      if (!found.ok) throw new Error(found.message);
      expect(found.value.xMm[0]).toBeCloseTo(0, 9);
      expect(Math.max(...found.value.yMm)).toBeCloseTo(28, 1);
    }
    const low = ownShapeOutline(
      'rail',
      pairs(rail, (x, y) => [x, y + 185]),
    );
    if (!low.ok) throw new Error(low.message);
    expect(Math.max(...low.value.yMm)).toBe(0);
  });

  it.each([
    ['in inches', 'wheel', pairs(wheel, (x, y) => [x / 25.4, y / 25.4]), /inches/],
    [
      'with x and y exchanged',
      'wheel',
      pairs(outlineOfShape(REFERENCE_SHAPES[0]!, 1), (x, y) => [y, x]),
      /columns/,
    ],
    ['of the other hand', 'wheel', pairs(wheel, (x, y) => [-x, y]), /flange is on the right/],
    ['a rail upside down', 'rail', pairs(rail, (x, y) => [x, -y]), /upward/],
    ['a rail off its axis', 'rail', pairs(rail, (x, y) => [x + 20, y]), /axis/],
    ['an x without a y', 'rail', [1, 2, 3], /two numbers/],
    ['two points', 'wheel', [0, 0, 100, 20], /points/],
  ] as const)('%s is refused with what to change', (_, shape, points, message) => {
    const found = ownShapeOutline(shape, points);
    expect(found.ok).toBe(false);
    if (!found.ok) expect(found.message).toMatch(message);
  });

  it('never throws on any numbers', () => {
    const number = fc.oneof(fc.double({ min: -300, max: 300 }), fc.double());
    fc.assert(
      fc.property(
        fc.constantFrom('wheel' as const, 'rail' as const),
        fc.array(number, { maxLength: 80 }),
        (shape, points) => {
          expect(typeof ownShapeOutline(shape, points).ok).toBe('boolean');
        },
      ),
      { seed: 7311, numRuns: 300 },
    );
  });
});

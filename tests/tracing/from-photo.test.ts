import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ScalePair } from '~/lib/case/trace';
import { outlineFromPhoto, type TracedPicture } from '~/lib/tracing/from-photo';
import { gap, type PixelPoint } from '~/lib/tracing/line';

const SIZE = { width: 1000, height: 800 };
const PAIR: ScalePair = { from: [100, 700], to: [900, 700], apartMm: 160 };
const PATH: readonly PixelPoint[] = Array.from({ length: 601 }, (_, i) => [
  800 - i,
  400 - 100 * Math.sin(i / 190),
]);
const PICTURE: TracedPicture = { path: PATH, clicks: [PATH[0]!, PATH.at(-1)!], scale: [PAIR], size: SIZE };

const refusal = (picture: TracedPicture): string => {
  const made = outlineFromPhoto(picture);
  return made.ok ? '' : made.message;
};

describe('outline from a photo', () => {
  it('is in mm, upright, evenly spaced, from left to right', () => {
    const made = outlineFromPhoto({ ...PICTURE, widthPx: 4, taking: { with: 'flatbed' } });
    if (!made.ok) throw new Error(made.message);
    const { xMm, yMm } = made.value.outline;
    const steps = Array.from(xMm.subarray(1), (x, i) => gap([xMm[i]!, yMm[i]!], [x, yMm[i + 1]!]));
    expect(Math.max(...steps)).toBeLessThan(0.26);
    expect(Math.min(...steps)).toBeGreaterThan(0.23);
    expect(xMm.at(-1)! - xMm[0]!).toBeCloseTo(600 * 0.2, 1);
    expect(Math.max(...yMm) - yMm.at(-1)!).toBeCloseTo(100 * 0.2, 1);
    // The line bulges upwards in the picture, at smaller y of the pixels.
    expect(yMm[Math.round(xMm.length / 2)]! - yMm[0]!).toBeGreaterThan(5);
    expect(made.value.lineWidthMm).toBeCloseTo(0.8, 3);
    expect(made.value.tiltRad).toBeNull();
  });

  it('says where its uncertainty comes from', () => {
    const made = outlineFromPhoto({ ...PICTURE, straight: [0, 2] });
    if (!made.ok) throw new Error(made.message);
    const { acrossMm, scale, because } = made.value.uncertainty;
    expect(acrossMm).toBeGreaterThan(0.7 / 2 / Math.sqrt(3));
    expect(acrossMm).toBeLessThan(1.5);
    expect(scale).toBeGreaterThan(0.001);
    const said = because.join(' ');
    for (const words of ['Pencil line 0.7 mm', 'one pair cannot show a tilted camera', 'Stretches 1, 3 ']) {
      expect(said).toContain(words);
    }
  });

  it('refuses what cannot be an outline', () => {
    expect(refusal({ ...PICTURE, clicks: [] })).toContain('at least two points');
    expect(refusal({ ...PICTURE, path: [[NaN, 0], ...PATH] })).toContain('no place in the picture');
    expect(refusal({ ...PICTURE, scale: [] })).toContain('Mark two points');
    expect(refusal({ ...PICTURE, scale: [{ ...PAIR, apartMm: 6 }] })).toContain('no wheel or rail');
  });

  it('never throws', () => {
    const number = fc.oneof(
      fc.double(),
      fc.double({ min: -50, max: 1050, noNaN: true }),
      fc.constantFrom(0, 100, 500),
    );
    const point = fc.tuple(number, number);
    const pair = fc.record({
      from: point,
      to: point,
      apartMm: fc.oneof(fc.double(), fc.constantFrom(50, 100, 200)),
    });
    const picture = fc.record({
      path: fc.oneof(fc.constant(PATH), fc.array(point, { maxLength: 6 })),
      clicks: fc.oneof(fc.constant(PICTURE.clicks), fc.array(point, { maxLength: 4 })),
      scale: fc.oneof(fc.array(pair, { maxLength: 5 }), fc.tuple(fc.constant(PAIR), pair)),
      size: fc.constantFrom(SIZE, { width: 0, height: 3 }, { width: NaN, height: 1 }),
      widthPx: fc.constantFrom(null, NaN, 0, 4),
    });
    fc.assert(
      fc.property(picture, (given) => {
        const made = outlineFromPhoto(given);
        if (!made.ok) {
          expect(made.message).not.toBe('');
          return;
        }
        const { outline, uncertainty } = made.value;
        expect([...outline.xMm, ...outline.yMm].every(Number.isFinite)).toBe(true);
        expect(Number.isFinite(uncertainty.acrossMm) && Number.isFinite(uncertainty.scale)).toBe(true);
      }),
      { seed: 11, numRuns: 300 },
    );
  });
});

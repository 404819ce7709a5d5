import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lengthMm, reversed, thinned } from '~/lib/outline/arc';
import { heightAt, placesAtHeight } from '~/lib/outline/at';
import { checkOutline } from '~/lib/outline/check';
import { fitCircle, fitLine } from '~/lib/outline/fit';
import { outlineOf, pointCount, type Outline } from '~/lib/outline/outline';
import { resampled } from '~/lib/outline/resample';
import { smoothed } from '~/lib/outline/smooth';
import { normalDraws } from '~/lib/readings/draws';

const SEED = { seed: 6223 };

const arc = (radius: number, fromRad: number, toRad: number, n: number): Outline => {
  const angle = (i: number): number => fromRad + ((toRad - fromRad) * i) / (n - 1);
  return outlineOf(
    Array.from({ length: n }, (_, i) => radius * Math.cos(angle(i))),
    Array.from({ length: n }, (_, i) => radius * Math.sin(angle(i))),
  );
};
const line = (n: number): Outline =>
  outlineOf(
    Array.from({ length: n }, (_, i) => i),
    Array.from({ length: n }, (_, i) => i / 10),
  );
const messageOf = (outline: Outline): string => {
  const result = checkOutline(outline);
  return result.ok ? '' : result.message;
};

describe('a line to be an outline', () => {
  it('is refused with what to do instead', () => {
    expect(messageOf(line(5))).toContain('5 points');
    expect(messageOf(outlineOf(Array(20).fill(3), Array(20).fill(4)))).toContain('one place');
    expect(messageOf(outlineOf([...line(20).xMm, NaN], [...line(20).yMm, 1]))).toContain('Point 21');
    expect(messageOf(arc(20, 0, 2.2 * Math.PI, 100))).toContain('crosses itself');
  });

  it('may shiver, close in on itself without touching, and have any unit', () => {
    expect(messageOf(line(20))).toBe('');
    expect(messageOf(arc(20, 0, 1.9 * Math.PI, 100))).toBe('');
    expect(messageOf(arc(0.8, 0, 1.9 * Math.PI, 100))).toBe('');
    const shiver = normalDraws('shiver', 1, 4000);
    const long = outlineOf(
      Array.from({ length: 2000 }, (_, i) => i / 10 + 0.1 * shiver[2 * i]!),
      Array.from({ length: 2000 }, (_, i) => 0.1 * shiver[2 * i + 1]!),
    );
    expect(messageOf(long)).toBe('');
  });

  it('finds a crossing wherever it is', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 95 }),
        fc.double({ min: 3, max: 50, noNaN: true }),
        (at, high) => {
          const base = line(100);
          // Runs back over itself and across the line at one place.
          const crossed = outlineOf(
            [...base.xMm, 99, at + 0.5, at + 0.5],
            [...base.yMm, 60, 60, at / 10 + 0.05 - high],
          );
          expect(messageOf(crossed)).toContain('crosses itself');
        },
      ),
      SEED,
    );
  });

  it('is checked in time that does not grow with the square of its points', () => {
    const spiral = (n: number): Outline =>
      outlineOf(
        Array.from({ length: n }, (_, i) => (10 + i / 400) * Math.cos(i / 40)),
        Array.from({ length: n }, (_, i) => (10 + i / 400) * Math.sin(i / 40)),
      );
    const started = performance.now();
    expect(messageOf(spiral(5000))).toBe('');
    expect(performance.now() - started).toBeLessThan(1000);
  });
});

describe('resampling', () => {
  it('keeps a circle that was given coarsely', () => {
    const even = resampled(arc(12, 0, 2.5, 31), 0.5);
    expect(even.stepMm).toBeCloseTo(0.5, 1);
    for (let i = 0; i < pointCount(even); i += 1) {
      expect(Math.abs(Math.hypot(even.xMm[i]!, even.yMm[i]!) - 12)).toBeLessThan(0.002);
    }
    expect(lengthMm(even)).toBeCloseTo(30, 1);
  });

  it('ends where the line ends, from either side', () => {
    const even = resampled(reversed(line(37)), 0.3);
    expect(even.xMm[0]).toBeCloseTo(36, 9);
    expect(even.xMm.at(-1)).toBeCloseTo(0, 9);
  });

  it('thinning takes out shiver along the line', () => {
    const shiver = normalDraws('along', 2, 2000);
    const dense = outlineOf(
      Array.from({ length: 2000 }, (_, i) => i / 20 + 0.1 * shiver[i]!),
      Array.from({ length: 2000 }, () => 0),
    );
    expect(lengthMm(dense)).toBeGreaterThan(150);
    expect(lengthMm(thinned(dense, 0.5))).toBeLessThan(130);
  });
});

describe('smoothing', () => {
  it('keeps a radius as it says', () => {
    const half = 3;
    const even = resampled(arc(12, 0, 2.5, 301), 0.1);
    const smooth = smoothed(even, half);
    const stated = half ** 4 / (280 * 12 ** 3);
    const middle = Math.floor(pointCount(smooth) / 2);
    const shift = Math.abs(Math.hypot(smooth.xMm[middle]!, smooth.yMm[middle]!) - 12);
    expect(shift).toBeGreaterThan(stated / 2);
    expect(shift).toBeLessThan(stated * 2);
  });

  it('lowers noise as it says and gives the direction of a line', () => {
    const noise = normalDraws('n', 3, 4001);
    const even = {
      ...outlineOf(
        Array.from({ length: 4001 }, (_, i) => i / 10),
        Array.from(noise, (v) => 0.2 * v),
      ),
      stepMm: 0.1,
    };
    const smooth = smoothed(even, 3);
    const rms = Math.sqrt(smooth.yMm.reduce((sum, y) => sum + y * y, 0) / 4001);
    expect(rms).toBeCloseTo((0.2 * 1.5) / Math.sqrt(61), 2);
    expect(smooth.headingRad[2000]).toBeCloseTo(0, 1);
  });
});

describe('local fits', () => {
  it('finds a line in whatever direction it is drawn', () => {
    fc.assert(
      fc.property(fc.double({ min: -3.1, max: 3.1, noNaN: true }), (angle) => {
        const drawn = outlineOf(
          Array.from({ length: 9 }, (_, i) => 5 + i * Math.cos(angle)),
          Array.from({ length: 9 }, (_, i) => -2 + i * Math.sin(angle)),
        );
        const fit = fitLine(drawn, 0, 9);
        expect(fit?.headingRad).toBeCloseTo(angle, 9);
        expect(fit?.rmsMm).toBeLessThan(1e-6);
      }),
      SEED,
    );
    expect(fitLine(outlineOf([1, 1, 1], [2, 2, 2]), 0, 3)).toBeNull();
  });

  it('finds a circle exactly, and its radius without bias under noise', () => {
    const clean = fitCircle(arc(13, 0.3, 1.1, 20), 0, 20);
    expect(clean?.radiusMm).toBeCloseTo(13, 6);
    expect(clean?.centre.xMm).toBeCloseTo(0, 6);
    const noise = normalDraws('circle', 4, 40 * 400);
    const radii = Array.from({ length: 400 }, (_, k) => {
      const { xMm, yMm } = arc(13, 0, 1.2, 40);
      const off = (i: number): number => 1 + (0.05 * noise[40 * k + i]!) / 13;
      return fitCircle(
        outlineOf(
          xMm.map((x, i) => x * off(i)),
          yMm.map((y, i) => y * off(i)),
        ),
        0,
        40,
      )!.radiusMm;
    });
    expect(radii.reduce((sum, r) => sum + r, 0) / 400).toBeCloseTo(13, 1);
    expect(fitCircle(line(10), 0, 10)?.radiusMm ?? Infinity).toBeGreaterThan(1e4);
  });
});

describe('heights and places', () => {
  it('are read between the points', () => {
    expect(heightAt(line(20), 3.5)).toBeCloseTo(0.35, 12);
    expect(heightAt(line(20), 30)).toBeNull();
    const round = arc(10, Math.PI, 0, 400);
    expect(heightAt(round, 0)).toBeCloseTo(10, 3);
    const [left, right] = placesAtHeight(round, 6);
    expect(left).toBeCloseTo(-8, 3);
    expect(right).toBeCloseTo(8, 3);
  });
});

import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { followClicks, followLine, snapToLine } from '~/lib/tracing/follow-line';
import { gap, type PixelPoint } from '~/lib/tracing/line';
import { prepareImage, type PreparedImage } from '~/lib/tracing/prepare-image';

const WIDTH = 420;
const HEIGHT = 300;

type Shade = (x: number, y: number) => number;

/** A picture from how dark each point of it is, 0 paper to 1 black, under light that falls off to the right. */
function picture(dark: Shade, width = WIDTH, height = HEIGHT): PreparedImage {
  const grey = new Uint8Array(width * height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      grey[y * width + x] = Math.round((235 - (110 * x) / width) * (1 - dark(x, y)));
    }
  }
  return prepareImage(grey, width, height);
}

const CENTRE: PixelPoint = [210, 150];
const RADIUS = 100.3;
const stroke = (away: number, widthPx: number): number =>
  0.7 * Math.min(1, Math.max(0, widthPx / 2 + 0.5 - away));
const circle =
  (widthPx: number): Shade =>
  (x, y) =>
    stroke(Math.abs(gap([x, y], CENTRE) - RADIUS), widthPx);
const onCircle = (angle: number, off = 0): PixelPoint => [
  CENTRE[0] + (RADIUS + off) * Math.cos(angle),
  CENTRE[1] + (RADIUS + off) * Math.sin(angle),
];

describe('following a line', () => {
  it.each([2, 5, 9, 14])(
    'keeps to the middle of a stroke %d pixels wide, to a small part of a pixel',
    (widthPx) => {
      const image = picture(circle(widthPx));
      const { points, followed, widthPx: found } = followLine(image, onCircle(0.2, 2), onCircle(2.2, -2));
      expect(followed).toBe(true);
      const inner = points.slice(5, -5);
      expect(Math.max(...inner.map((point) => Math.abs(gap(point, CENTRE) - RADIUS)))).toBeLessThan(0.25);
      expect(Math.abs((found ?? 0) - widthPx)).toBeLessThan(1);
      expect(gap(points[0]!, onCircle(0.2))).toBeLessThan(3);
    },
  );

  it('follows the line round a bend, not the short way over the paper', () => {
    const { points, followed } = followLine(picture(circle(5)), onCircle(-0.6), onCircle(0.6));
    expect(followed).toBe(true);
    expect(points.length).toBeGreaterThan(1.15 * RADIUS);
  });

  it('keeps to its line where another one crosses', () => {
    const crossed = picture((x, y) => Math.max(circle(5)(x, y), stroke(Math.abs(y - 90), 3)));
    const { points, followed } = followLine(crossed, onCircle(Math.PI), onCircle(1.5 * Math.PI));
    expect(followed).toBe(true);
    expect(Math.max(...points.map((point) => Math.abs(gap(point, CENTRE) - RADIUS)))).toBeLessThan(1.2);
  });

  it('says so where there is no line, and goes straight', () => {
    const image = picture(circle(5));
    const beside = followLine(image, CENTRE, onCircle(0));
    expect(beside).toMatchObject({ followed: false, widthPx: null, cost: 1 });
    expect(beside.why).toContain('no line at the first point');
    expect(beside.points.at(-1)?.map(Math.round)).toEqual(onCircle(0).map(Math.round));
    const apart = picture((x, y) => (x < 120 || x > 300 ? stroke(Math.abs(y - 150), 5) : 0));
    expect(followLine(apart, [20, 150], [400, 150]).why).toContain('No line leads');
    expect(followLine(image, [-5, 10], [10, 10]).why).toContain('outside the picture');
  });

  it('goes across a short gap in the pencil', () => {
    const gappy = picture((x, y) => (x > 200 && x < 212 ? 0 : stroke(Math.abs(y - 150.4), 5)));
    const { followed, points } = followLine(gappy, [20, 152], [400, 149]);
    expect(followed).toBe(true);
    expect(Math.max(...points.map(([, y]) => Math.abs(y - 150.4)))).toBeLessThan(0.6);
  });

  it('joins stretches and names the straight ones', () => {
    const image = picture(circle(5));
    const clicks = [onCircle(0), onCircle(0.8), CENTRE, onCircle(2)];
    const { path, straight, why } = followClicks(image, clicks);
    expect(straight).toEqual([1, 2]);
    expect(why).toHaveLength(2);
    const steps = path.slice(1).map((point, i) => gap(path[i]!, point));
    expect(Math.max(...steps)).toBeLessThan(6);
  });

  it('snaps to the nearest line and leaves a click on bare paper alone', () => {
    const image = picture((_, y) => Math.max(stroke(Math.abs(y - 100), 4), stroke(Math.abs(y - 116), 4)));
    expect(snapToLine(image, [200, 105], 12).point[1]).toBeCloseTo(100, 0);
    expect(snapToLine(image, [200, 111], 12).point[1]).toBeCloseTo(116, 0);
    expect(snapToLine(image, [200, 200], 12)).toEqual({ point: [200, 200], onLine: false });
  });
});

describe('any picture', () => {
  let noise: PreparedImage;
  beforeAll(() => {
    noise = picture((x, y) => ((x * 7919 + y * 104_729 + x * y) % 97) / 97);
  });
  const anywhere = fc.oneof(
    fc.double(),
    fc.double({ min: -20, max: 450, noNaN: true }),
    fc.constantFrom(0, 1, 299, 419),
  );

  it('is followed or refused without throwing, from any point to any other', () => {
    fc.assert(
      fc.property(fc.tuple(anywhere, anywhere), fc.tuple(anywhere, anywhere), (from, to) => {
        const { points, followed, why } = followLine(noise, from, to);
        expect(points.length).toBeGreaterThan(0);
        expect(followed).toBe(why === null);
      }),
      { seed: 9, numRuns: 120 },
    );
  });

  it('is prepared whatever its size and content', () => {
    const sizes = fc.tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 40 }));
    fc.assert(
      fc.property(sizes, fc.integer({ min: 0, max: 255 }), ([width, height], seed) => {
        const grey = Uint8Array.from({ length: width * height }, (_, i) => (i * i * 31 + seed * i) % 256);
        const image = prepareImage(grey, width, height);
        expect(image.darkness.every(Number.isFinite)).toBe(true);
        expect(image.levels.every(({ strength }) => strength.every(Number.isFinite))).toBe(true);
        expect(followLine(image, [0, 0], [width - 1, height - 1]).points.length).toBeGreaterThan(0);
      }),
      { seed: 10, numRuns: 80 },
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ScalePair } from '~/lib/case/trace';
import { normalised, sheetToPicture, taken, type Camera } from '~/lib/tracing/camera';
import { gap, type PixelPoint } from '~/lib/tracing/line';
import { rectangleSides } from '~/lib/tracing/scale-marks';
import { sheetFromScale, type PictureTaking, type Sheet } from '~/lib/tracing/sheet';

const SIZE = { width: 2000, height: 1500 };
const DEGREE = Math.PI / 180;

type View = { readonly focal: number; readonly tiltX: number; readonly tiltY: number; readonly turn: number };

const SQUARE: View = { focal: 0.85, tiltX: 0, tiltY: 0, turn: 0 };

/** Where a camera 300 mm above a sheet sees a point of it (mm, y up). */
function eye({ focal, tiltX, tiltY, turn }: View): (mm: PixelPoint) => PixelPoint {
  const camera: Camera = [Math.log(focal), 0, 0, tiltX, tiltY, turn, 0.01, -0.02, Math.log(300)];
  const h = sheetToPicture(camera);
  const [zeroX, zeroY] = normalised([0, 0], SIZE);
  return ([x, y]) => {
    const [u, v] = taken(h, [x, -y]);
    return [(u - zeroX) * 2000, (v - zeroY) * 2000];
  };
}

function crossSeen(see: (mm: PixelPoint) => PixelPoint, alongMm = 160, acrossMm = 110): readonly ScalePair[] {
  return [
    { from: see([-alongMm / 2, 0]), to: see([alongMm / 2, 0]), apartMm: alongMm },
    { from: see([0, -acrossMm / 2]), to: see([0, acrossMm / 2]), apartMm: acrossMm },
  ];
}

const rectangleSeen = (see: (mm: PixelPoint) => PixelPoint): readonly ScalePair[] =>
  rectangleSides([see([-80, 55]), see([80, 55]), see([80, -55]), see([-80, -55])], 160, 110);

function sheet(scale: readonly ScalePair[], taking?: PictureTaking): Sheet {
  const made = sheetFromScale(scale, SIZE, taking);
  if (!made.ok) throw new Error(made.message);
  return made.value;
}

const refusal = (scale: readonly ScalePair[], size = SIZE): string => {
  const made = sheetFromScale(scale, size);
  return made.ok ? '' : made.message;
};

const PLACES: readonly PixelPoint[] = [
  [-70, -20],
  [-40, 25],
  [0, 0],
  [30, -15],
  [70, 20],
];

/** Largest error of a distance between any two places, mm. */
function worstMm(found: Sheet, see: (mm: PixelPoint) => PixelPoint): number {
  const mm = found.toMm(PLACES.map(see));
  if (!mm.ok) throw new Error(mm.message);
  const errors = PLACES.flatMap((a, i) =>
    PLACES.slice(i + 1).map((b, k) => Math.abs(gap(mm.value[i]!, mm.value[i + 1 + k]!) - gap(a, b))),
  );
  return Math.max(...errors);
}

const anyView = fc.record({
  focal: fc.double({ min: 0.65, max: 1.3, noNaN: true }),
  tilt: fc.double({ min: 0, max: 15 * DEGREE, noNaN: true }),
  direction: fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
  turn: fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
});

describe('scale and tilt from known distances', () => {
  it('is a plain scale when the camera is square to the sheet', () => {
    const see = eye(SQUARE);
    for (const scale of [crossSeen(see).slice(0, 1), crossSeen(see), rectangleSeen(see)]) {
      expect(worstMm(sheet(scale), see)).toBeLessThan(0.02);
      expect(sheet(scale).tiltRad).toBeLessThan(0.02 * DEGREE);
    }
  });

  it.each([
    ['a cross', crossSeen],
    ['a rectangle', rectangleSeen],
  ] as const)('takes a tilt of up to 15° out with %s, whatever the lens', (_, seen) => {
    fc.assert(
      fc.property(anyView, ({ focal, tilt, direction, turn }) => {
        const see = eye({
          focal,
          turn,
          tiltX: tilt * Math.cos(direction),
          tiltY: tilt * Math.sin(direction),
        });
        const made = sheetFromScale(seen(see), SIZE);
        if (!made.ok) throw new Error(made.message);
        expect(worstMm(made.value, see)).toBeLessThan(0.15);
        expect(Math.abs(made.value.tiltRad - tilt)).toBeLessThan(2.5 * DEGREE);
      }),
      { seed: 815, numRuns: 60 },
    );
  });

  it('keeps x to the right and y up as the picture shows them', () => {
    const see = eye({ ...SQUARE, tiltX: 0.2, turn: 0.3 });
    const found = sheet(crossSeen(see)).toMm([
      [500, 700],
      [1500, 700],
      [500, 300],
    ]);
    if (!found.ok) throw new Error(found.message);
    const [origin, right, up] = found.value as readonly [PixelPoint, PixelPoint, PixelPoint];
    expect(right[0] - origin[0]).toBeGreaterThan(10 * Math.abs(right[1] - origin[1]));
    expect(up[1] - origin[1]).toBeGreaterThan(3 * Math.abs(up[0] - origin[0]));
  });

  it('one pair sees no tilt, and its uncertainty allows for one', () => {
    const straight = eye(SQUARE);
    const tilted = eye({ ...SQUARE, tiltX: 10 * DEGREE });
    const one = (see: typeof straight): readonly ScalePair[] => crossSeen(see).slice(0, 1);
    expect(worstMm(sheet(one(tilted)), tilted)).toBeGreaterThan(1);
    const line = PLACES.map(straight);
    const byHand = sheet(one(straight)).spreadOver(line);
    const scanned = sheet(one(straight), { with: 'flatbed' }).spreadOver(line);
    const crossed = sheet(crossSeen(straight)).spreadOver(line);
    expect(scanned.scale).toBeCloseTo(Math.SQRT2 / gap(one(straight)[0]!.from, one(straight)[0]!.to), 4);
    expect(scanned.warpMm).toBeLessThan(0.01);
    expect(byHand.scale + byHand.warpMm / 50).toBeGreaterThan(3 * (crossed.scale + crossed.warpMm / 50));
  });

  it('states an uncertainty of scale as large as marks off by a pixel make it', () => {
    const see = eye({ ...SQUARE, tiltX: 8 * DEGREE, tiltY: -5 * DEGREE });
    const line = PLACES.map(see);
    const stated = sheet(crossSeen(see)).spreadOver(line);
    const jitter = fc.double({ min: -Math.sqrt(3), max: Math.sqrt(3), noNaN: true });
    const lengths: number[] = [];
    fc.assert(
      fc.property(fc.array(jitter, { minLength: 8, maxLength: 8 }), (off) => {
        const moved = crossSeen(see).map(({ from, to, apartMm }, i): ScalePair => {
          const [a, b, c, d] = off.slice(4 * i) as [number, number, number, number];
          return { from: [from[0] + a, from[1] + b], to: [to[0] + c, to[1] + d], apartMm };
        });
        const mm = sheet(moved).toMm(line);
        if (!mm.ok) throw new Error(mm.message);
        lengths.push(gap(mm.value[0]!, mm.value[4]!) / gap(PLACES[0]!, PLACES[4]!) - 1);
      }),
      { seed: 816, numRuns: 150 },
    );
    const spread = Math.sqrt(lengths.reduce((sum, each) => sum + each * each, 0) / lengths.length);
    const expected = Math.hypot(stated.scale, stated.warpMm / gap(PLACES[0]!, PLACES[4]!));
    expect(spread / expected).toBeGreaterThan(0.4);
    expect(spread / expected).toBeLessThan(1.6);
  });

  it('refuses marks that are not what they are said to be', () => {
    const see = eye(SQUARE);
    const [along, across] = crossSeen(see) as [ScalePair, ScalePair];
    expect(refusal([])).toContain('Mark two points');
    expect(refusal([along, along])).toContain('must lie across the first');
    expect(refusal([along, { ...across, apartMm: 140 }])).toContain('halve each other');
    const offCentre = { ...across, from: see([30, -55]), to: see([30, 55]) };
    expect(refusal([along, offCentre])).toContain('halve each other');
    expect(refusal([{ ...along, apartMm: 0 }])).toContain('needs the true distance');
    expect(refusal([{ ...along, to: along.from }])).toContain('less than 20 pixels apart');
    expect(refusal([{ ...along, to: [5000, 10] }])).toContain('outside the picture');
    expect(refusal(rectangleSeen(see).slice(0, 3))).toContain('four corners');
    expect(
      refusal(rectangleSeen(see).map((side, i) => (i === 2 ? { ...side, apartMm: 90 } : side))),
    ).toContain('Opposite sides');
    expect(refusal([along], { width: 0, height: 0 })).toContain('no size');
  });

  it('refuses a tilt beyond what can be taken out', () => {
    const see = eye({ ...SQUARE, tiltX: 45 * DEGREE });
    expect(refusal(crossSeen(see))).not.toBe('');
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simpleFlangeAtRail } from '~/lib/mechanics/point-clearance';
import { outlineOf } from '~/lib/outline/outline';
import { shapeOfSection, referenceShape } from '~/lib/shapes';
import { wholeOutline } from '~/lib/shapes/whole-outline';
import { againstStockRail, standingOutlines } from '~/lib/turnout/against-stock-rail';
import { firstTouch } from '~/lib/turnout/first-touch';
import { faceAt, slopeAt, type FlangeAtRail } from '~/lib/turnout/flange-at-rail';
import { clearances, couldBeStruck, missMm, pointFit } from '~/lib/turnout/point-fit';
import { chippedAt, sectionAt, type PointSection } from '~/lib/turnout/point-section';
import { yawed } from '~/lib/turnout/yawed';

const SEED = { seed: 3113 };
const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Straight pieces between corners, with a point every half millimetre. */
function straight(corners: readonly (readonly [number, number])[]) {
  const points = corners.flatMap(([x1, y1], i) => {
    const [x0, y0] = corners[i - 1] ?? [x1, y1];
    const n = Math.max(1, Math.round(Math.hypot(x1 - x0, y1 - y0) / 0.5));
    return Array.from({ length: n }, (_, k) => [
      x0 + ((x1 - x0) * (k + 1)) / n,
      y0 + ((y1 - y0) * (k + 1)) / n,
    ]);
  });
  return outlineOf(
    points.map(([x]) => x ?? NaN),
    points.map(([, y]) => y ?? NaN),
  );
}

/** A wheel of straight pieces: back, flat tip, straight face at an angle, flat tread. */
function straightWheel(faceRad: number, heightMm: number) {
  const foot = 40;
  const top = foot - heightMm / Math.tan(faceRad);
  return straight([
    [0, -20],
    [0, heightMm],
    [top, heightMm],
    [foot, 0],
    [130, 0],
  ]);
}
/** A rail of straight pieces: upright gauge side, flat top. */
const squareRail = outlineOf([-36, -36, 36, 36], [-40, 0, 0, -40]);

function stood(faceRad: number, heightMm = 28): FlangeAtRail {
  const stands = againstStockRail(straightWheel(faceRad, heightMm), squareRail);
  if (!stands.ok) throw new Error(stands.message);
  return stands.value;
}

describe('a wheel against its stock rail', () => {
  it('of straight pieces: the 70° face draws back by depth/tan 70° from the corner of a square rail', () => {
    const flange = stood(rad(70));
    // The sharp corners of these pieces are rounded by the smoothing of the line, by less than 0.1 mm.
    expect(Math.abs(flange.tipDepthMm - 28)).toBeLessThan(0.1);
    for (const depth of [5, 10, 15, 20, 25]) {
      expect(Math.abs(faceAt(flange, depth) - depth / Math.tan(rad(70)))).toBeLessThan(0.35);
      expect(slopeAt(flange, depth)).toBeCloseTo(rad(70), 2);
    }
    const [ten, twenty] = [faceAt(flange, 10), faceAt(flange, 20)];
    expect(twenty - ten).toBeCloseTo(10 / Math.tan(rad(70)), 2);
  });

  it('touches the rail and does not enter it, for reference wheels on reference rails', () => {
    for (const wheelId of ['freight-narrow', 'freight-wide', 's1002']) {
      for (const section of ['115RE', '136RE', '60E1']) {
        const wheel = wholeOutline(referenceShape(wheelId)!);
        const rail = wholeOutline(shapeOfSection(section)!);
        const stands = againstStockRail(wheel, rail);
        if (!stands.ok) throw new Error(`${wheelId} on ${section}: ${stands.message}`);
        const { faceMm, railMm, bearsAtMm } = stands.value;
        const least = Math.min(...Array.from(faceMm, (face, k) => face - railMm[k]!).filter(Number.isFinite));
        expect(least).toBeGreaterThan(-0.3);
        expect(least).toBeLessThan(0.8);
        expect(bearsAtMm).toBeGreaterThan(2);
        expect(bearsAtMm).toBeLessThan(20);
        const placed = standingOutlines(wheel, rail, stands.value);
        expect(Math.max(...placed.wheel.yMm)).toBeCloseTo(stands.value.tipDepthMm, 0);
      }
    }
  });

  it('draws back steadily with depth', () => {
    const stands = againstStockRail(
      wholeOutline(referenceShape('freight-narrow')!),
      wholeOutline(shapeOfSection('136RE')!),
    );
    if (!stands.ok) throw new Error(stands.message);
    const { faceMm } = stands.value;
    for (let k = 1; k < faceMm.length; k += 1) expect(faceMm[k]!).toBeGreaterThanOrEqual(faceMm[k - 1]!);
  });

  it('says what is wrong with outlines that do not reach', () => {
    const short = outlineOf([-36, -36, 36, 36], [-10, 0, 0, -10]);
    const refused = againstStockRail(straightWheel(rad(70), 28), short);
    expect(refused).toMatchObject({ ok: false, message: expect.stringContaining('Trace it further down') });
    const noFlange = straight([
      [30, 0],
      [130, 0],
    ]);
    expect(againstStockRail(noFlange, squareRail).ok).toBe(false);
  });
});

describe('fit of a point', () => {
  it('of a straight 70° face against an upright edge: smallest at the top, (p − 9.525)/tan 70° − edge', () => {
    const flange = simpleFlangeAtRail(30, rad(70));
    const fit = pointFit(flange, { gapMm: 1, thicknessMm: 2, depthMm: 14 }, rad(89.999));
    expect(fit.reachMm).toBeCloseTo(16, 9);
    expect(fit.least!.depthMm).toBeCloseTo(14, 9);
    expect(fit.least!.clearanceMm).toBeCloseTo((14 - 9.525) / Math.tan(rad(70)) - 3, 2);
    expect(fit.least!.slopeRad).toBeCloseTo(rad(70), 2);
  });

  it('smallest lower down where the flange is steeper than the side of the point', () => {
    const flange = simpleFlangeAtRail(32, rad(85));
    const section = { gapMm: 0, thicknessMm: 1, depthMm: 12 };
    const fit = pointFit(flange, section, rad(70));
    const heights = clearances(flange, section, rad(70)).map(({ clearanceMm }) => clearanceMm);
    // Straight face down to the rounding at 32 − 12 + 12 cos 85° = 21.05 mm, and a little into it.
    expect(fit.least!.depthMm).toBeGreaterThan(21);
    expect(fit.least!.clearanceMm).toBeLessThan(heights[0]!);
    expect(fit.least!.clearanceMm).toBe(Math.min(...heights));
  });

  it('is looked at from the top of the point to the tip of the flange', () => {
    fc.assert(
      fc.property(mm(26, 38), mm(0, 45), (height, depth) => {
        const flange = simpleFlangeAtRail(height, rad(75));
        const section = { gapMm: 0, thicknessMm: 2, depthMm: depth };
        const fit = pointFit(flange, section, rad(80));
        const heights = clearances(flange, section, rad(80));
        if (depth >= height) {
          expect(fit.least).toBeNull();
          expect(heights).toEqual([]);
          expect(missMm(fit)).toBeCloseTo(depth - height, 9);
          expect(couldBeStruck(fit)).toBe(false);
        } else {
          expect(heights[0]!.depthMm).toBeCloseTo(depth, 9);
          expect(heights.at(-1)!.depthMm).toBeCloseTo(height, 9);
        }
      }),
      SEED,
    );
  });

  it('can be struck outside the face; near a shallow tip; not near a steep face', () => {
    const flange = simpleFlangeAtRail(30, rad(75));
    const at = (depthMm: number, thicknessMm: number) =>
      couldBeStruck(pointFit(flange, { gapMm: 0, thicknessMm, depthMm }, rad(85)));
    expect(at(15, 5)).toBe(true);
    expect(at(15, 0.2)).toBe(false);
    expect(at(26, faceAt(flange, 26) - 1)).toBe(true);
    expect(at(26, faceAt(flange, 26) - 5)).toBe(false);
  });
});

const SECTIONS: readonly PointSection[] = [
  { behindMm: 0, gapMm: 1, thicknessMm: 1, depthMm: 20 },
  { behindMm: 304.8, gapMm: 0, thicknessMm: 7, depthMm: 14 },
  { behindMm: 609.6, gapMm: 0, thicknessMm: 13, depthMm: 8 },
];

describe('along the point', () => {
  it('runs straight between the sections read and is not known beyond them', () => {
    expect(sectionAt(SECTIONS, 152.4)).toEqual({
      behindMm: 152.4,
      gapMm: 0.5,
      thicknessMm: 4,
      depthMm: 17,
    });
    expect(sectionAt(SECTIONS, 0)).toBe(SECTIONS[0]);
    expect(sectionAt(SECTIONS, 700)).toBeNull();
    expect(sectionAt([], 0)).toBeNull();
  });

  it('is lower inside a chip and whole again behind it', () => {
    const chip = { fromMm: 50, lengthMm: 100, depthMm: 9 };
    expect(chippedAt(SECTIONS, chip, 49)!.depthMm).toBe(sectionAt(SECTIONS, 49)!.depthMm);
    expect(chippedAt(SECTIONS, chip, 50)!.depthMm).toBe(sectionAt(SECTIONS, 50)!.depthMm + 9);
    expect(chippedAt(SECTIONS, chip, 150)!.depthMm).toBe(sectionAt(SECTIONS, 150)!.depthMm);
  });

  it('is first touched where the clearance passes zero', () => {
    const flange = simpleFlangeAtRail(30, rad(75));
    const touch = firstTouch(flange, SECTIONS, null, rad(85))!;
    const miss = (behind: number) => missMm(pointFit(flange, sectionAt(SECTIONS, behind)!, rad(85)));
    expect(miss(touch.behindMm)).toBeLessThanOrEqual(0);
    expect(miss(touch.behindMm - 1)).toBeGreaterThan(0);
    expect(touch.slopeRad).toBeGreaterThan(0);
    const chip = { fromMm: 0, lengthMm: touch.behindMm + 20, depthMm: 15 };
    expect(firstTouch(flange, SECTIONS, chip, rad(85))!.behindMm).toBe(touch.behindMm + 20);
    expect(firstTouch(flange, [{ ...SECTIONS[0]!, depthMm: 40 }], null, rad(85))).toBeNull();
  });
});

describe('at an angle of attack', () => {
  const flange = (degrees: number) => simpleFlangeAtRail(30, rad(degrees));

  it('of a straight face, the lower part comes nearer by at most ψ²·(R + z)·tan δ/2 before it is moved back', () => {
    // x(y) = (y − z)/tan δ − ψ√(2(R + z)(y − z)) is least at −ψ²·(R + z)·tan δ/2; the same everywhere, so
    // that moving back to the rail leaves a straight face where it was.
    const before = flange(75);
    const after = yawed(before, 0.01, 457);
    for (const depth of [11, 13, 15]) expect(faceAt(after, depth)).toBeCloseTo(faceAt(before, depth), 2);
  });

  it('an upright face is met as far as ψ·ξ ahead of the axle', () => {
    const upright: FlangeAtRail = {
      tipDepthMm: 30,
      faceMm: new Float64Array(121),
      railMm: new Float64Array(121),
      bearsAtMm: 10,
    };
    const after = yawed(upright, 0.01, 457);
    // Seen along the rail at depth z the tip reaches ψ√((R+30)² − (R+z)²) nearer; moved back by that at 10 mm.
    const nearer = (z: number) => 0.01 * Math.sqrt((30 - z) * (2 * 457 + 30 + z));
    for (const z of [10, 15, 20, 30]) expect(faceAt(after, z)).toBeCloseTo(nearer(10) - nearer(z), 6);
  });

  it('never lets the flange into the stock rail, and none is no change', () => {
    fc.assert(
      fc.property(mm(60, 88), mm(0, 0.03), (degrees, psi) => {
        const before = flange(degrees);
        const after = yawed(before, psi, 457);
        const from = Math.ceil(before.bearsAtMm / 0.25);
        const least = Math.min(...after.faceMm.slice(from));
        expect(least).toBeGreaterThanOrEqual(-1e-9);
        if (psi === 0) expect(after).toBe(before);
      }),
      { ...SEED, numRuns: 40 },
    );
  });
});

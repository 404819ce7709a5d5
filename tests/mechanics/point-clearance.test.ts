import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  edgeMarginMm,
  flangeFaceRetreatMm,
  flangeSlopeRad,
  pointClearance,
  type PointReadings,
  type WheelAtPoint,
} from '~/lib/mechanics/point-clearance';

const SEED = { seed: 6226 };
const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const point: fc.Arbitrary<PointReadings> = fc.record({
  gapMm: mm(0, 20),
  tipThicknessMm: mm(1, 20),
  tipDepthMm: mm(0, 45),
  chipDepthMm: mm(0.1, 20),
  chipLengthMm: mm(1, 300),
});
const wheel: fc.Arbitrary<WheelAtPoint> = fc.record({
  flangeThicknessMm: mm(20, 35),
  flangeHeightMm: mm(25, 40),
  faceAngleRad: mm(1.0, 1.5),
  oppositeFlangeThicknessMm: mm(20, 35),
  backToBackMm: mm(1340, 1360),
  gaugeMm: mm(1430, 1470),
});

describe('flange outline', () => {
  it('draws back steadily with depth, without a step where the tip begins to round', () => {
    fc.assert(
      fc.property(wheel, (w) => {
        const step = w.flangeHeightMm / 400;
        let before = 0;
        for (let i = 0; i <= 390; i += 1) {
          const depth = i * step;
          const here = flangeFaceRetreatMm(depth, w.flangeHeightMm, w.faceAngleRad);
          expect(here).toBeGreaterThanOrEqual(before);
          expect(here - before).toBeLessThan(0.5);
          before = here;
        }
      }),
      { ...SEED, numRuns: 50 },
    );
  });

  it('slopes as it draws back', () => {
    fc.assert(
      fc.property(wheel, mm(0.3, 0.97), (w, share) => {
        const depth = 9.6 + share * (w.flangeHeightMm - 9.6);
        const step = 1e-6;
        const run =
          flangeFaceRetreatMm(depth + step, w.flangeHeightMm, w.faceAngleRad) -
          flangeFaceRetreatMm(depth - step, w.flangeHeightMm, w.faceAngleRad);
        expect(flangeSlopeRad(depth, w.flangeHeightMm, w.faceAngleRad)).toBeCloseTo(
          Math.atan2(2 * step, run),
          3,
        );
      }),
      SEED,
    );
  });

  it('ends at the flange tip', () => {
    expect(flangeFaceRetreatMm(30, 29, 1.2)).toBeNaN();
    expect(flangeSlopeRad(30, 29, 1.2)).toBeNaN();
  });
});

describe('point clearance', () => {
  it('reaches below the tip only when the flange is higher than the tip is deep', () => {
    fc.assert(
      fc.property(point, wheel, (p, w) => {
        const { tip } = pointClearance(p, w);
        expect(tip.reachMm).toBeCloseTo(w.flangeHeightMm - p.tipDepthMm, 9);
        expect(tip.lateralMm === null).toBe(tip.reachMm <= 0);
        if (tip.lateralMm === null) expect(edgeMarginMm(tip)).toBeGreaterThanOrEqual(0);
        else expect(edgeMarginMm(tip)).toBe(tip.lateralMm);
      }),
      SEED,
    );
  });

  it('an open or thicker point stands out more, millimetre for millimetre', () => {
    fc.assert(
      fc.property(point, wheel, (p, w) => {
        const before = pointClearance(p, w).tip.lateralMm;
        const gaping = pointClearance({ ...p, gapMm: p.gapMm + 1 }, w).tip.lateralMm;
        const thick = pointClearance({ ...p, tipThicknessMm: p.tipThicknessMm + 1 }, w).tip.lateralMm;
        if (before === null) expect(gaping).toBeNull();
        else {
          expect(gaping).toBeCloseTo(before - 1, 9);
          expect(thick).toBeCloseTo(before - 1, 9);
        }
      }),
      SEED,
    );
  });

  it('a steeper (sharp) flange clears no better, a higher one reaches farther', () => {
    fc.assert(
      fc.property(point, wheel, (p, w) => {
        const before = pointClearance(p, w).tip;
        const sharp = pointClearance(p, { ...w, faceAngleRad: w.faceAngleRad + 0.05 }).tip;
        if (before.lateralMm !== null && before.reachMm > 12) {
          expect(sharp.lateralMm).toBeLessThanOrEqual(before.lateralMm + 1e-9);
        }
        expect(pointClearance(p, { ...w, flangeHeightMm: w.flangeHeightMm + 1 }).tip.reachMm).toBeCloseTo(
          before.reachMm + 1,
          9,
        );
      }),
      SEED,
    );
  });

  it('narrow back-to-back and thin flanges give play, which is added with the other flange hard over', () => {
    fc.assert(
      fc.property(point, wheel, (p, w) => {
        const found = pointClearance(p, w);
        expect(pointClearance(p, { ...w, backToBackMm: w.backToBackMm - 2 }).playMm).toBeCloseTo(
          found.playMm + 2,
          8,
        );
        if (found.tip.lateralMm !== null) {
          expect(found.farthestLateralMm! - found.tip.lateralMm).toBeCloseTo(Math.max(0, found.playMm), 8);
        } else expect(found.farthestLateralMm).toBeNull();
      }),
      SEED,
    );
  });

  it('a chip lowers the edge by its depth as far back as its length; without one there is none', () => {
    fc.assert(
      fc.property(point, wheel, (p, w) => {
        const chipped = pointClearance(p, w);
        expect(chipped.chip?.reachMm).toBeCloseTo(chipped.tip.reachMm - p.chipDepthMm, 8);
        expect(chipped.fullHeightFromTipMm).toBe(p.chipLengthMm);
        const whole = pointClearance({ ...p, chipDepthMm: 0, chipLengthMm: 0 }, w);
        expect(whole.chip).toBeNull();
        expect(whole.fullHeightFromTipMm).toBe(0);
      }),
      SEED,
    );
  });
});

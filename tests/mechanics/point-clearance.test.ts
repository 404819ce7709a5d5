import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  flangeFaceRetreatMm,
  flangeSlopeRad,
  leastMissMm,
  simpleFlangeAtRail,
  type ReadAtPoint,
} from '~/lib/mechanics/point-clearance';
import { missMm, pointFit } from '~/lib/turnout/point-fit';

const SEED = { seed: 6226 };
const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const wheel = fc.record({ flangeHeightMm: mm(25, 40), faceAngleRad: mm(1.0, 1.5) });

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

const inputs: fc.Arbitrary<ReadAtPoint> = fc.record({
  flangeHeightMm: mm(25, 40),
  faceRad: mm(1.0, 1.5),
  edgeMm: mm(0, 30),
  depthMm: mm(-5, 45),
  sideRad: mm(1.1, 1.55),
});

describe('least miss in closed form', () => {
  it('is the fit looked for at every height, within what its steps of 0.25 mm can miss', () => {
    fc.assert(
      fc.property(inputs, (given) => {
        const { flangeHeightMm, faceRad, edgeMm, depthMm, sideRad } = given;
        const fit = pointFit(
          simpleFlangeAtRail(flangeHeightMm, faceRad),
          { gapMm: edgeMm, thicknessMm: 0, depthMm },
          sideRad,
        );
        expect(Math.abs(leastMissMm(given) - missMm(fit))).toBeLessThan(0.1);
      }),
      { ...SEED, numRuns: 400 },
    );
  });

  it('is counted over the top where the flange does not reach the edge', () => {
    fc.assert(
      fc.property(inputs, (given) => {
        const over = given.depthMm - given.flangeHeightMm;
        if (over >= 0) expect(leastMissMm(given)).toBe(over);
      }),
      SEED,
    );
  });

  it('an edge farther out is missed by as much less, millimetre for millimetre', () => {
    fc.assert(
      fc.property(inputs, (given) => {
        if (given.depthMm >= given.flangeHeightMm) return;
        const out = leastMissMm({ ...given, edgeMm: given.edgeMm + 1 });
        expect(out).toBeCloseTo(leastMissMm(given) - 1, 9);
      }),
      SEED,
    );
  });

  it('a steeper side of the point is missed by no less, a steeper flange by no more', () => {
    fc.assert(
      fc.property(inputs, (given) => {
        if (given.depthMm >= given.flangeHeightMm) return;
        const least = leastMissMm(given);
        expect(leastMissMm({ ...given, sideRad: given.sideRad + 0.02 })).toBeGreaterThanOrEqual(least - 1e-9);
        if (given.depthMm > 0 && given.flangeHeightMm - given.depthMm > 12)
          expect(leastMissMm({ ...given, faceRad: given.faceRad + 0.05 })).toBeLessThanOrEqual(least + 1e-9);
      }),
      SEED,
    );
  });
});

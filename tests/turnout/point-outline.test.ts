import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simpleFlangeAtRail } from '~/lib/mechanics/point-clearance';
import { faceAt } from '~/lib/turnout/flange-at-rail';
import { clearances, pointFit } from '~/lib/turnout/point-fit';
import { pointOutline } from '~/lib/turnout/point-outline';
import type { PointSection } from '~/lib/turnout/point-section';

const SEED = { seed: 20310409 };
const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rad = (degrees: number): number => (degrees * Math.PI) / 180;

/** Outermost place of the line's gauge side at a depth: its points from the top's edge on run downward. */
function sideAt({ xMm, yMm }: ReturnType<typeof pointOutline>, depthMm: number): number {
  for (let i = 3; i < xMm.length; i += 1) {
    const [y0, y1] = [yMm[i - 1]!, yMm[i]!];
    if (depthMm < y0 - 1e-9 || depthMm > y1 + 1e-9 || y1 === y0) continue;
    return xMm[i - 1]! + ((xMm[i]! - xMm[i - 1]!) * (depthMm - y0)) / (y1 - y0);
  }
  return NaN;
}

const section = fc.record({
  behindMm: fc.constant(0),
  gapMm: mm(0, 6),
  thicknessMm: mm(0.5, 20),
  depthMm: mm(10, 24),
});

describe('outline of a point', () => {
  it('lies where the fit takes its gauge side, straight and traced', () => {
    fc.assert(
      fc.property(section, mm(70, 88), fc.boolean(), (read, degrees, traced) => {
        const of: PointSection = traced
          ? {
              ...read,
              side: { outMm: Float64Array.from({ length: 60 }, (_, k) => Math.sqrt(k) - 1), share: 1 },
            }
          : read;
        const flange = simpleFlangeAtRail(30, rad(75));
        const line = pointOutline(of, rad(degrees), 36);
        for (const { depthMm, clearanceMm } of clearances(flange, of, rad(degrees)).slice(1)) {
          const drawn = faceAt(flange, depthMm) - sideAt(line, depthMm);
          // The drawn line is straight between its own steps, not always at those of the fit.
          expect(Math.abs(drawn - clearanceMm)).toBeLessThan(traced ? 0.3 : 1e-9);
        }
      }),
      SEED,
    );
  });

  it('is empty where the point is cut off above its top', () => {
    const line = pointOutline({ behindMm: 0, gapMm: 0, thicknessMm: 2, depthMm: 40 }, rad(80), 36);
    expect(line.xMm).toHaveLength(0);
  });
});

describe('a point as high as the stock rail', () => {
  const { faceMm, ...rest } = simpleFlangeAtRail(30, rad(75));
  /** The same flange with a throat of 10 mm radius that curves over into the tread. */
  const throated = {
    ...rest,
    faceMm: faceMm.map((face, k) => {
      const above = 10 - k * 0.25;
      return above <= 0 ? face : -(10 - Math.sqrt(100 - above * above));
    }),
    bearsAtMm: 10,
  };

  it('is held against the face of the flange, not against its throat', () => {
    const high = { gapMm: 0, thicknessMm: 12, depthMm: -1 };
    const fit = pointFit(throated, high, rad(80));
    // 45° of a 10-mm throat is met 10·(1 − sin 45°) = 2.93 mm down.
    expect(fit.least!.depthMm).toBeGreaterThan(2);
    expect(fit.least!.slopeRad).toBeGreaterThan(rad(44));
    expect(clearances(throated, high, rad(80))[0]!.depthMm).toBe(fit.least!.depthMm);
    expect(fit.reachMm).toBe(31);
  });

  it('a lower one is looked at from its own top', () => {
    const low = { gapMm: 0, thicknessMm: 3, depthMm: 6 };
    expect(clearances(throated, low, rad(80))[0]!.depthMm).toBe(6);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simpleFlangeAtRail } from '~/lib/mechanics/point-clearance';
import { reversed } from '~/lib/outline/arc';
import { outlineOf } from '~/lib/outline/outline';
import { pointFit } from '~/lib/turnout/point-fit';
import { pointOutline } from '~/lib/turnout/point-outline';
import { chippedAt, sectionAt, type PointSection } from '~/lib/turnout/point-section';
import { sideBetween, sideOutMm } from '~/lib/turnout/point-side';
import { tracedPoint, type TracedPoint } from '~/lib/turnout/point-trace';
import { asTrace, lineThrough, straightPoint } from './points';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;

function laid(...given: Parameters<typeof asTrace>): TracedPoint {
  const point = tracedPoint(asTrace(...given));
  if (!point.ok) throw new Error(point.message);
  return point.value;
}

const refusal = (...given: Parameters<typeof asTrace>): string => {
  const point = tracedPoint(asTrace(...given));
  return point.ok ? 'not refused' : point.message;
};

describe('cross-section of a point', () => {
  it('of straight pieces: thickness, slope and gauge side at every depth, wherever it lies on the paper', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 60, noNaN: true }),
        fc.double({ min: 65, max: 89, noNaN: true }),
        fc.double({ min: -200, max: 200, noNaN: true }),
        (thickness, degrees, away) => {
          const point = laid(straightPoint(thickness, rad(degrees), { at: [away, -away] }));
          const lean = 1 / Math.tan(rad(degrees));
          expect(point.thicknessMm).toBeCloseTo(thickness + 1.5875 * lean, 6);
          for (const depth of [1, 5, 12.5, 24])
            expect(sideOutMm(point.side, depth, 0)).toBeCloseTo((depth - 1.5875) * lean, 6);
          const { pointSideSlope: slope, pointTracedDown: down } = point.features;
          expect(slope.ok && slope.value.value).toBeCloseTo(rad(degrees), 6);
          expect(down.ok && down.value.value).toBeCloseTo(25, 6);
          expect(Math.max(...point.outline.yMm)).toBeCloseTo(0, 9);
        },
      ),
      { seed: 77, numRuns: 50 },
    );
  });

  it('is the same drawn the other way round, once that is said', () => {
    const drawn = straightPoint(12, rad(80));
    const over = reversed(
      outlineOf(
        drawn.xMm.map((x) => -x),
        drawn.yMm,
      ),
    );
    const [here, there] = [laid(drawn), laid(over, { mirrored: true })];
    expect(there.thicknessMm).toBeCloseTo(here.thicknessMm, 9);
    expect(Array.from(there.side.outMm)).toEqual(
      Array.from(here.side.outMm, (out) => expect.closeTo(out, 9) as number),
    );
  });

  it('takes the back edge where the back comes nearest to the stock rail, not under its head', () => {
    // The planed back stands 2 mm nearer 8 mm down, and runs 20 mm under the head below 15 mm.
    const point = laid(
      lineThrough([
        [-20, -25],
        [-20, -15],
        [-2, -14],
        [-2, -8],
        [0, 0],
        [10, 0],
        [12, -25],
      ]),
    );
    expect(point.thicknessMm).toBeCloseTo(12 + (2 * 1.5875) / 25, 6);
  });

  it('of pins begins at the back edge and is unsure by where a side lies between two pins', () => {
    const pins = outlineOf(
      Array.from({ length: 12 }, (_, i) => i * 2),
      [0, 0, 0, 0, 0, 0, -0.2, -0.5, -1, -3, -14, -20],
    );
    const making = { by: 'pins', entered: '', unit: 'mm', pitchMm: 2 } as const;
    const point = laid(pins, { making });
    expect(point.remarks.join(' ')).toContain('first place is taken as the back edge');
    expect(point.uMm).toBeCloseTo(Math.hypot(Math.SQRT2 * 0.1, 1 / Math.sqrt(3)), 9);
    // A mean over 0.75 mm either way rounds the bend at the pin.
    expect(Math.abs(point.thicknessMm - (16 + (0.5875 / 2) * 2))).toBeLessThan(0.1);
  });

  it('is moved by hand where somebody said why', () => {
    const drawn = straightPoint(12, rad(80));
    const hand = { dxMm: 1.5, dyMm: 0, angleRad: 0, reason: 'Back was smudged' };
    expect(laid(drawn, { hand }).thicknessMm).toBeCloseTo(laid(drawn).thicknessMm + 1.5, 9);
    // Turned counter-clockwise about the back edge at the top, the foot of the side goes farther out.
    const turn = { dxMm: 0, dyMm: 0, angleRad: rad(2), reason: 'Held askew' };
    const slope = laid(drawn, { hand: turn }).features.pointSideSlope;
    expect(slope.ok && slope.value.value).toBeCloseTo(rad(78), 3);
  });

  it('says what to do with a line that is no point', () => {
    expect(refusal(straightPoint(12, rad(80), { downMm: 8 }))).toContain('at least 3/8 in');
    const down = straightPoint(12, rad(80));
    expect(
      refusal(
        outlineOf(
          down.xMm,
          down.yMm.map((y) => -y),
        ),
      ),
    ).toContain('upside down');
    expect(refusal(reversed(down))).toContain('begins on the gauge side');
    expect(refusal(straightPoint(300, rad(80)))).toContain('Check the unit');
    expect(refusal(outlineOf([0, 1], [0, 1]))).toContain('at least 8');
  });
});

describe('fit against a traced side', () => {
  const traced = (degrees: number, thickness = 5): PointSection => {
    const point = laid(straightPoint(thickness, rad(degrees)));
    return { behindMm: 0, gapMm: 1, thicknessMm: point.thicknessMm, depthMm: 14, side: point.side };
  };

  it('of a straight side is the fit of the straight slope', () => {
    const flange = simpleFlangeAtRail(30, rad(72));
    for (const degrees of [66, 75, 84]) {
      const fit = pointFit(flange, traced(degrees), rad(80));
      const straight = pointFit(flange, { gapMm: 1, thicknessMm: 5, depthMm: 14 }, rad(degrees));
      expect(fit.reachMm).toBe(straight.reachMm);
      expect(fit.least!.clearanceMm).toBeCloseTo(straight.least!.clearanceMm, 6);
      expect(fit.least!.depthMm).toBeCloseTo(straight.least!.depthMm, 6);
    }
  });

  it('finds a bulge of the side that a slope from the edge would miss', () => {
    const flange = simpleFlangeAtRail(30, rad(72));
    const bulged = laid(
      lineThrough([
        [0, -20],
        [0, 0],
        [3, 0],
        [4, -6],
        [9, -8],
        [9, -20],
      ]),
    );
    const section = { gapMm: 0, thicknessMm: bulged.thicknessMm, depthMm: 14 };
    const fit = pointFit(flange, { ...section, side: bulged.side }, rad(80));
    const straight = pointFit(flange, section, rad(80));
    expect(Math.abs(fit.least!.depthMm - 22)).toBeLessThan(0.6);
    expect(fit.least!.clearanceMm).toBeLessThan(straight.least!.clearanceMm - 2);
  });

  it('goes on straight below the end of the outline', () => {
    const { side } = traced(84);
    const lean = 1 / Math.tan(rad(70));
    expect(sideOutMm(side, 27, lean) - sideOutMm(side, 25, lean)).toBeCloseTo(2 * lean, 9);
  });

  it('between two outlines is the mean at equal depth below the top, and fades to a straight side where only one was traced', () => {
    const from = { ...traced(84), behindMm: 0 };
    const to = { ...traced(70), behindMm: 400 };
    const between = sectionAt([from, to], 100)!;
    const [leanFrom, leanTo, lean] = [84, 70, 80].map((degrees) => 1 / Math.tan(rad(degrees)));
    const below = 10 - 1.5875;
    expect(sideOutMm(between.side, 10, lean!)).toBeCloseTo(below * (0.75 * leanFrom! + 0.25 * leanTo!), 6);
    const { side: _, ...bare } = to;
    const half = sectionAt([from, bare], 200)!;
    expect(sideOutMm(half.side, 10, lean!)).toBeCloseTo(0.5 * below * leanFrom! + 0.5 * 10 * lean!, 6);
    expect(sideBetween(undefined, undefined, 0.3)).toBeUndefined();
  });

  it('a chip takes metal from the top and leaves the side below it where it was', () => {
    const whole = traced(70);
    const chip = { fromMm: 0, lengthMm: 50, depthMm: 6 };
    const chipped = chippedAt([whole, { ...whole, behindMm: 400 }], chip, 0)!;
    const out = (section: PointSection, depth: number) =>
      section.thicknessMm + sideOutMm(section.side, depth - section.depthMm, 0.2, section.cutMm);
    expect(chipped.depthMm).toBe(20);
    for (const depth of [20, 24, 30]) expect(out(chipped, depth)).toBeCloseTo(out(whole, depth), 9);
  });

  it('is drawn where the fit takes it', () => {
    const section = traced(70);
    const { xMm, yMm } = pointOutline(section, rad(80), 30);
    const lowest = yMm.indexOf(30, 1);
    expect(xMm[lowest]).toBeCloseTo(1 + 5 + 16 / Math.tan(rad(70)), 6);
    expect(xMm[0]).toBe(1);
    expect(Math.min(...yMm)).toBe(14);
  });
});

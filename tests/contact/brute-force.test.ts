import { describe, expect, it } from 'vitest';
import { bruteForce, type BruteInput } from './brute-force';
import { pair, shapeOutline, standing, stateAt } from './standing';

const CASES = [
  { wheel: 's1002', rail: '60e1', cantRad: 1 / 40, backToBackMm: 1360, gaugeMm: 1435 },
  { wheel: 's1002', rail: '60e1', cantRad: 1 / 20, backToBackMm: 1357, gaugeMm: 1440 },
  { wheel: 'freight-narrow', rail: '136re', cantRad: 1 / 40, backToBackMm: 1353, gaugeMm: 1425 },
];

/** The search reads the shape at 0.3 mm; trying everything reads it at this step. */
const CUT_MM = 0.01;
const TOLERANCE_MM = 0.01;

describe('contact search against trying everything', () => {
  it.each(CASES)('$wheel on $rail at $cantRad rad', ({ wheel, rail, cantRad, backToBackMm, gaugeMm }) => {
    const setup = standing(
      pair(shapeOutline(wheel, 0.3), shapeOutline(rail, 0.3), {
        backToBackMm,
        gaugeMm,
        cantLeftRad: cantRad,
        cantRightRad: cantRad,
      }),
    );
    const side = { wheel: shapeOutline(wheel, CUT_MM), rail: shapeOutline(rail, CUT_MM), cantRad };
    const input: BruteInput = {
      left: side,
      right: side,
      backToBackMm,
      gaugeMm,
      gaugeBelowTopMm: 14,
      rollingRadiusMm: 460,
      cutMm: CUT_MM,
    };
    const brute = bruteForce(input);
    let compared = 0;
    for (let step = -6; step <= 6; step += 1) {
      const shiftMm = step * 1.55;
      const quick = stateAt(setup, shiftMm);
      const slow = brute.at(shiftMm);
      expect(Math.abs(quick.heightMm - slow.heightMm)).toBeLessThan(TOLERANCE_MM);
      expect(Math.abs(quick.rollRad - slow.rollRad) * 750).toBeLessThan(TOLERANCE_MM);
      for (const hand of ['left', 'right'] as const) {
        const point = quick[hand].points[0];
        // The place found must touch. Where wheel and rail lie together over a stretch, or the contact is
        // about to jump, many places are within a thousandth of touching, and that is all that can be asked.
        expect(brute.openUnder(hand, slow, shiftMm, point.onWheel.xMm)).toBeLessThan(TOLERANCE_MM);
        if (slow[hand].spreadMm > SURE_MM) continue;
        compared += 1;
        expect(Math.abs(point.at.yMm - slow[hand].railHeightMm)).toBeLessThan(TOLERANCE_MM);
        expect(Math.abs(point.rollingRadiusMm - slow[hand].radiusMm)).toBeLessThan(TOLERANCE_MM);
      }
    }
    expect(compared).toBeGreaterThan(8);
  });
});

/** Of a stretch no longer than this within a thousandth of touching (a crown of 1 m radius) the middle is sure. */
const SURE_MM = 3;

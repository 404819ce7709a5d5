import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lengthMm } from '~/lib/outline/arc';
import { outlineOf, type Outline } from '~/lib/outline/outline';
import { resampled } from '~/lib/outline/resample';
import { drawn, featuresFrom, newWheel } from '../wheel/wheels';

const DEGREE = Math.PI / 180;

/** Floors for a clean file. */
const WITHIN_MM = 0.02;
const WITHIN_RAD = 0.2 * DEGREE;

/**
 * S1002, flange 28 mm high and 32.5 mm thick: EN 13715. The standard states Sh 28.000 mm, Sd 32.500 mm,
 * qR 10.794 mm and a flange angle of 70.000°; coefficients and statement from memory.
 */
function expectS1002(outline: Outline, mirrored: boolean): void {
  const found = featuresFrom(outline, mirrored);
  expect(Math.abs(found.flangeHeight - 28)).toBeLessThan(WITHIN_MM);
  expect(Math.abs(found.flangeThickness - 32.5)).toBeLessThan(WITHIN_MM);
  expect(Math.abs(found.qR - 10.794)).toBeLessThan(WITHIN_MM);
  expect(Math.abs(found.flangeAngle - 70 * DEGREE)).toBeLessThan(WITHIN_RAD);
}

/** The line with points at uneven distances, each of its gaps between a fifth and nine fifths of the step. */
function uneven(outline: Outline, stepMm: number, gaps: readonly number[]): Outline {
  const fine = resampled(outline, 0.05);
  const length = lengthMm(fine);
  const kept: number[] = [0];
  for (let at = 0, k = 0; at < length; k += 1) {
    at += stepMm * (0.2 + 1.6 * gaps[k % gaps.length]!);
    kept.push(Math.min(Math.round(at / fine.stepMm), fine.xMm.length - 1));
  }
  const each = [...new Set(kept)];
  return outlineOf(
    each.map((i) => fine.xMm[i]!),
    each.map((i) => fine.yMm[i]!),
  );
}

describe('the features of S1002 (EN 13715, coefficients from memory)', () => {
  it('come out of its own outline', () => {
    expectS1002(newWheel('s1002'), false);
    const { rimWidth, rootRadius, tipRadius, climbLength } = featuresFrom(newWheel('s1002'));
    // Sections D and G are circles of 13 and 12 mm; the rim is drawn 135 mm wide.
    expect(rootRadius).toBeCloseTo(13, 0);
    expect(tipRadius).toBeCloseTo(12, 2);
    expect(rimWidth).toBeCloseTo(135, 2);
    // Section E, and section F from 70° to 26.6°: TCRP Report 71 vol. 5, chapter 4, flange length.
    const straight = Math.hypot(39.763791 - 38.426669071, 2.747477419 * (39.763791 - 38.426669071));
    expect(Math.abs(climbLength - (straight + 20 * (70 - 26.6) * DEGREE))).toBeLessThan(0.5);
  });

  it('whichever way it is drawn: turned, moved, mirrored, in either order, with uneven points', () => {
    fc.assert(
      fc.property(
        fc.record({
          angleRad: fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
          dxMm: fc.double({ min: -500, max: 500, noNaN: true }),
          dyMm: fc.double({ min: -500, max: 500, noNaN: true }),
          mirrored: fc.boolean(),
        }),
        fc.boolean(),
        fc.double({ min: 0.2, max: 0.7, noNaN: true }),
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 7, maxLength: 20 }),
        (placing, endForEnd, step, gaps) => {
          const line = uneven(newWheel('s1002', 0.05), step, gaps);
          expectS1002(drawn(line, placing, endForEnd), placing.mirrored);
        },
      ),
      { seed: 1002, numRuns: 25 },
    );
  });

  it('in inches, converted as a reading is', () => {
    const line = newWheel('s1002');
    const inches = (mm: number): number => Number((mm / 25.4).toFixed(4));
    expectS1002(
      outlineOf(
        line.xMm.map((x) => inches(x) * 25.4),
        line.yMm.map((y) => inches(y) * 25.4),
      ),
      false,
    );
  });
});

describe('the features of a North American freight wheel (proportions of AAR M-107/M-208, thickness from memory)', () => {
  it('are those it was drawn with', () => {
    const found = featuresFrom(newWheel('freight-narrow'));
    expect(Math.abs(found.flangeHeight - 25.4)).toBeLessThan(WITHIN_MM);
    expect(Math.abs(found.flangeThicknessNa - 25.4 * (1 + 5 / 32))).toBeLessThan(WITHIN_MM);
    expect(Math.abs(found.flangeAngle - 75 * DEGREE)).toBeLessThan(WITHIN_RAD);
    expect(found.treadSlope).toBeCloseTo(1 / 20, 3);
    expect(found.rimWidth).toBeCloseTo(25.4 * (5 + 23 / 32), 2);
    expect(found.rootRadius).toBeCloseTo(12.7, 0);
    expect(found.treadHollow).toBeLessThan(WITHIN_MM);
    expect(found.falseFlange).toBe(0);
  });
});

import { describe, expect, it } from 'vitest';
import { dropInMargin, dropInShares, NEW_NARROW_FLANGE } from '~/lib/mechanics/drop-in';
import { flangeFaceRetreatMm, flangeSlopeRad } from '~/lib/mechanics/point-clearance';
import { toCanonical } from '~/lib/readings/convert';
import { fitBackToBack, type BackToBackFit, type BackToBackReading } from '~/lib/wheel/back-to-back';
import scipy from './back-to-back.json';

const inches = (value: number) => toCanonical(value, 'in', 'crossLength');
const rad = (degrees: number) => (degrees * Math.PI) / 180;

const fit = (readings: readonly BackToBackReading[], u: number): BackToBackFit => {
  const result = fitBackToBack(readings, u);
  if (result.kind !== 'fitted') throw new Error(result.why);
  return result;
};

/** A bent axle: back-to-back varies once round the wheel. */
const bent = (degrees: readonly number[], meanIn: number, bendIn: number, highestDeg: number) =>
  degrees.map((at) => ({
    clockRad: rad(at),
    backToBackMm: inches(meanIn + bendIn * Math.cos(rad(at - highestDeg))),
  }));

describe('back-to-back', () => {
  it('SciPy curve_fit (back-to-back.py): mean, amplitude, phase, their uncertainties and the residual', () => {
    for (const expected of scipy.fits) {
      const readings = expected.clockDeg.map((at, i) => ({
        clockRad: rad(at),
        backToBackMm: expected.backToBackMm[i]!,
      }));
      const found = fit(readings, scipy.uReadingMm);
      expect(found.meanMm).toBeCloseTo(expected.meanMm, 5);
      expect(found.amplitudeMm).toBeCloseTo(expected.amplitudeMm, 5);
      expect(found.phaseRad).toBeCloseTo(expected.phaseRad, 4);
      expect(found.uMeanMm).toBeCloseTo(expected.uMeanMm, 5);
      // SciPy differentiates numerically.
      expect(found.uAmplitudeMm).toBeCloseTo(expected.uAmplitudeMm, 4);
      expect(found.uPhaseRad / expected.uPhaseRad).toBeCloseTo(1, 4);
      expect(found.uLeastMm).toBeCloseTo(expected.uLeastMm, 4);
      expect(found.residualMm).toBeCloseTo(expected.residualMm, 5);
    }
  });

  it('common practice, no source: a bend of 1/4 to 1/2 in throws one place off by as much, not the mean of three 120° apart', () => {
    for (const bendIn of [0.25, 0.375, 0.5]) {
      for (let highest = 0; highest < 360; highest += 15) {
        const readings = bent([0, 120, 240], 53, bendIn, highest);
        const found = fit(readings, 0.5);
        expect(found.meanMm).toBeCloseTo(inches(53), 9);
        expect(found.amplitudeMm).toBeCloseTo(inches(bendIn), 9);
        expect(found.swingMm).toBeCloseTo(inches(2 * bendIn), 9);
        expect(found.residualMm).toBeNull();
      }
      const onePlace = bent([90], 53, bendIn, 90)[0]!.backToBackMm;
      expect(onePlace - inches(53)).toBeCloseTo(inches(bendIn), 9);
    }
  });

  it('common practice, no source: a freight wheelset is 53 in within a few sixteenths, and so is the new one kept here', () => {
    const off = NEW_NARROW_FLANGE.backToBackMm - inches(53);
    expect(Math.abs(off)).toBeLessThanOrEqual(inches(3 / 16));
  });

  it('49 CFR 230.112(b), (c): the new wheelset lies within 53 to 53 3/8 in; a bend of 1/8 in swings just the 1/4 in allowed', () => {
    expect(NEW_NARROW_FLANGE.backToBackMm).toBeGreaterThan(inches(53));
    expect(NEW_NARROW_FLANGE.backToBackMm).toBeLessThan(inches(53 + 3 / 8));
    expect(fit(bent([0, 120, 240], 53.1875, 0.125, 40), 0.5).swingMm).toBeCloseTo(inches(0.25), 9);
  });

  it('two places, or three within a sixth of a turn, are refused with advice', () => {
    for (const at of [
      [0, 180],
      [0, 0, 120],
      [0, 30, 60],
    ]) {
      const result = fitBackToBack(bent(at, 53, 0.25, 0), 0.5);
      expect(result.kind).toBe('degenerate');
      expect(result.kind === 'degenerate' && result.why).toContain('120° apart');
    }
  });
});

describe('drop-in, from memory: a new narrow-flange wheelset has nothing left at 60 in', () => {
  it('53 1/8 + 1 5/32 + 5 23/32 = 60 in', () => {
    const wheelset = { ...NEW_NARROW_FLANGE, overlapMm: 0, movementMm: 0, staticGaugeMm: inches(60) };
    expect(dropInMargin(wheelset)).toBeCloseTo(0, 9);
  });

  it('plane geometry: on track to gauge 3 1/2 in less the overlap is left, and the shares add up to what is lost', () => {
    const asNew = { ...NEW_NARROW_FLANGE, overlapMm: inches(0.5), movementMm: 0 };
    expect(dropInMargin(asNew)).toBeCloseTo(inches(3), 9);
    const worn = {
      backToBackMm: inches(53),
      flangeThicknessMm: inches(15 / 16),
      rimWidthMm: inches(5.625),
      overlapMm: inches(0.5),
      staticGaugeMm: inches(57.5),
      movementMm: inches(0.75),
    };
    const shares = dropInShares(worn, NEW_NARROW_FLANGE);
    expect(shares.total).toBeCloseTo(dropInMargin(asNew) - dropInMargin(worn), 9);
    expect(shares.staticGauge).toBeCloseTo(inches(1), 9);
    expect(shares.flangeWear).toBeCloseTo(inches(7 / 32), 9);
  });
});

describe('flange outline for point clearance, against S1002 (EN 13715, from memory)', () => {
  // Sh 28 mm, flange angle 70°, qR 10.794 mm: from 10 mm above the datum to 2 mm below the tip.
  const retreat = flangeFaceRetreatMm(26, 28, rad(70));

  it('draws back no more than the real flange at 2 mm below the tip, so that it errs towards contact, by under 3 mm', () => {
    expect(retreat).toBeLessThan(10.794);
    expect(retreat).toBeGreaterThan(10.794 - 3);
  });

  it('is as steep as the flange on its face and flat at its tip', () => {
    expect(flangeSlopeRad(15, 28, rad(70))).toBeCloseTo(rad(70), 12);
    expect(flangeSlopeRad(28, 28, rad(70))).toBeCloseTo(0, 12);
  });
});

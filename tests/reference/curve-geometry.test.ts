import { describe, expect, it } from 'vitest';
import { fromCanonical, toCanonical } from '~/lib/readings/convert';
import {
  curvatureFromMidOrdinate,
  curvatureFromSmallMidOrdinate,
  curvatureOfDegrees,
  degreesOfCurve,
  midOrdinateFromCurvature,
  RULE_OF_THUMB_CHORD_M,
  ruleOfThumbDegrees,
} from '~/lib/track/curvature';
import { diameterFromChord, diameterPerHeight, heightFromDiameter } from '~/lib/wheel/chord-diameter';

const feetOfRadius = (degrees: number) =>
  1 / fromCanonical(curvatureOfDegrees(degrees), '1/m', 'curvature') / 0.3048;

describe('degrees of curve', () => {
  it('Vose, Handbook of Railroad Construction (1857), table of radii, 1/4° to 5°: within 0.1 %', () => {
    const radii = [
      [0.25, 22920], [0.5, 11460], [0.75, 7640], [1, 5730], [1.25, 4585], [1.5, 3820], [1.75, 3274],
      [2, 2865], [2.5, 2292], [3, 1910], [3.5, 1637], [4, 1433], [4.5, 1274], [5, 1146],
    ] as const; // prettier-ignore
    for (const [degrees, radius] of radii) {
      expect(Math.abs(feetOfRadius(degrees) / radius - 1), `${degrees}°`).toBeLessThan(1e-3);
    }
  });

  it('Vose (1857), 10°: 573.7 ft by the chord definition, 0.13 % longer than 5729.58/D', () => {
    const chordDefinition = 50 / Math.sin((5 * Math.PI) / 180);
    expect(chordDefinition).toBeCloseTo(573.7, 1);
    expect(chordDefinition / feetOfRadius(10) - 1).toBeCloseTo(0.0013, 4);
  });
});

describe('62-ft chord', () => {
  it('TM 5-628/AFR 91-44 (1991), ch. 12: an inch of mid-ordinate is about a degree, 1 to 12°', () => {
    for (let degrees = 1; degrees <= 12; degrees += 1) {
      const mm = midOrdinateFromCurvature(curvatureOfDegrees(degrees), RULE_OF_THUMB_CHORD_M);
      expect(ruleOfThumbDegrees(mm) / degrees).toBeCloseTo(1, 1);
    }
  });

  it('circle geometry: a degree is 1.0064 in exactly', () => {
    const mm = midOrdinateFromCurvature(curvatureOfDegrees(1), RULE_OF_THUMB_CHORD_M);
    expect(fromCanonical(mm, 'in', 'crossLength')).toBeCloseTo(1.0064, 4);
    expect(degreesOfCurve(curvatureFromMidOrdinate(mm, RULE_OF_THUMB_CHORD_M))).toBeCloseTo(1, 12);
  });
});

describe('sagitta of a circular arc (Euclid, Elements III.35; handbook of tables: R = c²/8h + h/2)', () => {
  it('worked example as printed for machinists: chord 24 in, rise 3 in, R 25.5 in', () => {
    expect(diameterFromChord(24, 3)).toBe(51);
    expect(1 / curvatureFromMidOrdinate(3 * 25.4, 24 * 0.0254)).toBeCloseTo(25.5 * 0.0254, 12);
    expect(heightFromDiameter(24, 51)).toBeCloseTo(3, 12);
  });

  it('points of a 3-4-5 triangle on a circle of radius 5: chord 8, height 2', () => {
    expect(diameterFromChord(8, 2)).toBe(10);
    expect(heightFromDiameter(8, 10)).toBe(2);
  });

  it('a half circle: chord equal to the diameter, height equal to the radius', () => {
    expect(diameterFromChord(36, 18)).toBe(36);
    expect(diameterPerHeight(36, 18)).toBe(0);
  });

  it('36-in wheel on a 12-in chord: 1.02944 in, and 0.001 in of height is 0.033 in of diameter', () => {
    const height = heightFromDiameter(12, 36);
    expect(height).toBeCloseTo(1.02944, 5);
    expect(Math.abs(diameterPerHeight(12, height)) * 0.001).toBeCloseTo(0.033, 3);
  });

  it('the small-offset form is high by 1 + (2m/c)²', () => {
    const [mm, chord] = [254, toCanonical(62, 'ft', 'alongTrack')];
    const high = curvatureFromSmallMidOrdinate(mm, chord) / curvatureFromMidOrdinate(mm, chord);
    expect(high).toBeCloseTo(1 + ((2 * 0.254) / chord) ** 2, 12);
  });
});

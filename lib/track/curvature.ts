import type { Method } from '../findings/finding';
import { fromCanonical, toCanonical } from '../readings/convert';

const MM_PER_M = 1000;

/**
 * Curvature (1/m) of the circle through the ends and the middle of a chord: 8m/(c² + 4m²).
 * `midOrdinateMm` m, signed (the sign is kept); `chordM` c > 0. Exact for |m| up to half the
 * chord, where the arc is a half circle.
 * Source: sagitta of a circular arc (Euclid, Elements III.35).
 */
export function curvatureFromMidOrdinate(midOrdinateMm: number, chordM: number): number {
  const m = midOrdinateMm / MM_PER_M;
  return (8 * m) / (chordM * chordM + 4 * m * m);
}

/**
 * The same for an offset small against the chord: 8m/c², the R = c²/(8m) of the trade. High by
 * the factor 1 + (2m/c)²: 7 parts in 10,000 for 10 in on 62 ft.
 */
export function curvatureFromSmallMidOrdinate(midOrdinateMm: number, chordM: number): number {
  return (8 * midOrdinateMm) / MM_PER_M / (chordM * chordM);
}

/**
 * Mid-ordinate (mm) of a chord on a circle, signed as the curvature: (1 − √(1 − (κc/2)²))/κ.
 * NaN when the chord is longer than the diameter.
 */
export function midOrdinateFromCurvature(curvaturePerM: number, chordM: number): number {
  // Written so that it holds on tangent and loses no digits in flat curves.
  const half = (curvaturePerM * chordM) / 2;
  return ((curvaturePerM * chordM * chordM) / 4 / (1 + Math.sqrt(1 - half * half))) * MM_PER_M;
}

/** The same for a flat curve: κc²/8. */
export function smallMidOrdinateFromCurvature(curvaturePerM: number, chordM: number): number {
  return ((curvaturePerM * chordM * chordM) / 8) * MM_PER_M;
}

/**
 * Degrees of curve of a curvature (1/m): D = 5729.58/R, R in ft, so that 100 ft of arc turns D
 * degrees. Signed. The older chord definition, R = 50/sin(D/2), gives a radius 0.13 % longer at
 * 10 degrees.
 */
export function degreesOfCurve(curvaturePerM: number): number {
  return fromCanonical(curvaturePerM, '°curve', 'curvature');
}

/** Curvature (1/m) of a number of degrees of curve; reverse of `degreesOfCurve`. */
export function curvatureOfDegrees(degrees: number): number {
  return toCanonical(degrees, '°curve', 'curvature');
}

/** 62 ft: the chord whose mid-ordinate in inches is nearly the degrees of curve. */
export const RULE_OF_THUMB_CHORD_M = toCanonical(62, 'ft', 'alongTrack');

/**
 * Degrees of curve by the rule of thumb: one degree for every inch of mid-ordinate of a 62-ft
 * chord. 0.6 % too many: a degree is really 1.0064 in. For checking a sheet in the field; findings
 * use `curvatureFromMidOrdinate`. Source: TM 5-628/AFR 91-44 (1991), ch. 12.
 */
export function ruleOfThumbDegrees(midOrdinateMm: number): number {
  return fromCanonical(midOrdinateMm, 'in', 'crossLength');
}

export const curvatureMethod: Method = {
  id: 'curvature-mid-ordinate',
  name: 'Curvature from the mid-ordinate of a chord',
  formula:
    '1/R = 8m/(c² + 4m²); D = 5729.58/R (R in ft). m: mid-ordinate; c: chord; R: radius; D: degrees of curve.',
  validRange:
    'Any chord on the body of a curve; on a spiral it is the curvature near the middle of the chord. Left and right are told by the sign.',
  sources: [
    { text: 'Circle geometry: Euclid, Elements III.35', status: 'published' },
    {
      text: '62-ft chord, 1 in per degree: TM 5-628/AFR 91-44, Railroad Track Standards (1991), ch. 12',
      status: 'published',
    },
  ],
};

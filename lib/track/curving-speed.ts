import type { Method } from '../findings/finding';
import { toCanonical } from '../readings/convert';

/** Inches of elevation per degree of curve per (mile/h)², as the rule prints it. */
const ELEVATION_FACTOR = 0.0007;

/** 3 in: unbalance for which every vehicle counts as qualified (49 CFR 213.57(c)). */
export const QUALIFIED_UNBALANCE_MM = toCanonical(3, 'in', 'crossLength');

/** Elevation in inches that balances `mph` on a curve of `degrees`: E = 0.0007·D·V². */
export function balanceElevationIn(degrees: number, mph: number): number {
  return ELEVATION_FACTOR * degrees * mph * mph;
}

/**
 * Maximum curving speed in mile/h: √((Ea + Eu)/(0.0007·D)).
 * `degrees` D > 0; `actualIn` Ea elevation of the outer rail; `unbalanceIn` Eu allowed.
 * Infinity on tangent; NaN when the outer rail is lower than Eu allows at any speed.
 * Source: 49 CFR 213.57(b).
 */
export function maximumCurvingSpeedMph(degrees: number, actualIn: number, unbalanceIn: number): number {
  return Math.sqrt((actualIn + unbalanceIn) / (ELEVATION_FACTOR * degrees));
}

/** The rule's factor for mm, 1/m and m/s. */
const FACTOR =
  toCanonical(ELEVATION_FACTOR, 'in', 'crossLength') /
  (toCanonical(1, '°curve', 'curvature') * toCanonical(1, 'mph', 'speed') ** 2);

/**
 * Elevation (mm) that balances `speedMs` on a curve: E = 0.0007·D·V² in canonical units.
 * `curvaturePerM` is taken without sign: left and right curves balance alike.
 * Source: 49 CFR 213.57(b).
 */
export function balanceElevationMm(curvaturePerM: number, speedMs: number): number {
  return FACTOR * Math.abs(curvaturePerM) * speedMs * speedMs;
}

/**
 * Unbalance (mm): elevation that balances the speed less the elevation there is. Positive when
 * faster than balance (outward), negative when slower. `actualMm`: outer rail above inner.
 */
export function unbalanceMm(curvaturePerM: number, speedMs: number, actualMm: number): number {
  return balanceElevationMm(curvaturePerM, speedMs) - actualMm;
}

/** Speed (m/s) at which `actualMm` balances the curve. Infinity on tangent, NaN for reverse elevation. */
export function balanceSpeedMs(curvaturePerM: number, actualMm: number): number {
  return maximumCurvingSpeedMs(curvaturePerM, actualMm, 0);
}

/**
 * Maximum curving speed (m/s) for the unbalance allowed, 3 in unless the vehicle is qualified for
 * more. As `maximumCurvingSpeedMph` in canonical units.
 */
export function maximumCurvingSpeedMs(
  curvaturePerM: number,
  actualMm: number,
  allowedMm: number = QUALIFIED_UNBALANCE_MM,
): number {
  return Math.sqrt((actualMm + allowedMm) / (FACTOR * Math.abs(curvaturePerM)));
}

export const curvingSpeedMethod: Method = {
  id: 'curving-speed',
  name: 'Balance elevation, unbalance and maximum curving speed',
  formula:
    'E = 0.0007·D·V²; Eu = 0.0007·D·V² − Ea; Vmax = √((Ea + Eu)/(0.0007·D)). E, Ea, Eu: balance, actual and unbalanced elevation, in; D: degrees of curve; V: mile/h.',
  validRange:
    'Body of a curve, D and Ea averaged over the same 155 ft. Eu up to 3 in for any vehicle; more only for types qualified for it. No such speed where the outer rail is lower than Eu allows.',
  sources: [
    { text: '49 CFR 213.57(b), (c) and notes; appendix A to part 213, table 1', status: 'published' },
  ],
};

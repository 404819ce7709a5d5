import type { Method } from '../findings/finding';

/**
 * Lateral force on each truck from draft or buff in a curve, like cars: F·S/(2R).
 * `couplerForceKn` F positive in draft; result positive inward (draft), negative outward (buff).
 * `couplerToCouplerM` S: length between coupler pulling faces; `curvaturePerM` 1/R, taken
 * without sign. Small angles, couplers free to swing, neighbours alike.
 * Source: statics of a car between two equal pulls, each at S/(2R) to its centre line.
 */
export function couplerLateralKn(
  couplerForceKn: number,
  couplerToCouplerM: number,
  curvaturePerM: number,
): number {
  return (couplerForceKn * couplerToCouplerM * Math.abs(curvaturePerM)) / 2;
}

/**
 * Lateral force on each truck when the couplers at both ends swing by the same angle in opposite
 * senses, as in a jackknife: F·sin α·(pin to pin)/(truck centres). The two trucks are pushed
 * opposite ways; the size is returned. `swingRad` α 0 to π/2; lengths m; force kN, either sign.
 * Source: statics, moments about one truck centre.
 */
export function couplerSwingLateralKn(
  couplerForceKn: number,
  swingRad: number,
  pinToPinM: number,
  truckCentresM: number,
): number {
  return (Math.abs(couplerForceKn) * Math.sin(swingRad) * pinToPinM) / truckCentresM;
}

export const couplerLateralMethod: Method = {
  id: 'coupler-lateral',
  name: 'Truck lateral force from draft or buff in a curve',
  formula:
    'L_truck = F·S/(2R), inward in draft, outward in buff. With coupler swing α at both ends in opposite senses: L_truck = F·sin α·(pin to pin)/(truck centres). F: coupler force; S: coupler-to-coupler length; R: radius.',
  validRange:
    'Quasi-static, small angles, a car between neighbours like itself. Long and short cars coupled together swing more than this says.',
  sources: [{ text: 'Statics of a car between two equal coupler forces', status: 'published' }],
};

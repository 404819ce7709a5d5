import { type Method } from '../findings/finding';
import { DEPTH_STEP_MM, faceAt, type FlangeAtRail } from './flange-at-rail';

/**
 * The flange with the wheelset at an angle of attack towards this stock rail, rad, 0 to 0.03, seen along
 * the rail: every place of the flange at depth y lies, where it passes depth z, ξ = √((R+y)² − (R+z)²)
 * ahead of the axle and so stands ψ·ξ nearer to the rail. The flange is then moved back until it touches
 * the stock rail again. R: rolling radius, mm.
 */
export function yawed(flange: FlangeAtRail, yawRad: number, rollingRadiusMm: number): FlangeAtRail {
  if (yawRad === 0) return flange;
  const { faceMm } = flange;
  const n = faceMm.length;
  const projected = new Float64Array(n);
  const tipFace = faceAt(flange, flange.tipDepthMm);
  for (let k = 0; k < n; k += 1) {
    const z = k * DEPTH_STEP_MM;
    const nearer = (y: number, face: number): number =>
      face - yawRad * Math.sqrt((y - z) * (2 * rollingRadiusMm + y + z));
    let least = nearer(flange.tipDepthMm, tipFace);
    for (let j = k; j < n; j += 1) least = Math.min(least, nearer(j * DEPTH_STEP_MM, faceMm[j]!));
    projected[k] = least;
  }
  // What the two lie in each other before is the width of the steps, not the yaw.
  const back = Math.max(0, deepest(projected, flange) - deepest(faceMm, flange));
  return { ...flange, faceMm: projected.map((face) => face + back) };
}

/** How far a face lies inside the stock rail, from where the flange bears downward, mm. */
function deepest(faceMm: Float64Array, { railMm, bearsAtMm }: FlangeAtRail): number {
  let most = -Infinity;
  for (let k = Math.ceil(bearsAtMm / DEPTH_STEP_MM); k < faceMm.length; k += 1) {
    most = Math.max(most, railMm[k]! - faceMm[k]!);
  }
  return Number.isFinite(most) ? most : 0;
}

export const yawMethod: Method = {
  id: 'flange-at-angle-of-attack',
  name: 'Flange at an angle of attack, seen along the rail',
  formula:
    'x(z) = least over y ≥ z of [x(y) − ψ·√((R+y)² − (R+z)²)], moved back until it touches the stock rail; x: face of the flange from the gauge line, z and y: depth, ψ: angle of attack, R: rolling radius.',
  validRange:
    'ψ from 0 to 30 mrad, to first order. Stock rail and point are taken to be the same over the length of the flange below the rail, about 5 in ahead of the axle.',
  sources: [{ text: 'Plane projection of a body of revolution', status: 'published' }],
};

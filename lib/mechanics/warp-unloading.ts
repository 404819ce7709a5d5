import { toCanonical } from '../readings/convert';

/** Between side bearings and between spring groups of one truck, and between rail contacts. */
const SIDE_BEARING_SPACING_MM = toCanonical(50, 'in', 'crossLength');
const SPRING_SPACING_MM = toCanonical(79, 'in', 'crossLength');
const CONTACT_SPACING_MM = toCanonical(60, 'in', 'crossLength');

/** Spring group of a freight truck, kN/mm: 14 to 31 kip/in; engineering judgement. */
export const SPRING_GROUP_KN_PER_MM = [2.5, 5.5] as const;

/**
 * Load that twisted track takes off one wheel of a car on two three-piece trucks, kN. The body does
 * not twist; it rolls on its centre plates through the side-bearing clearance of both trucks, and
 * beyond that the springs of each truck take half the rest: k·(b/2)·(φ/2)·(b/s)/2,
 * φ = (|warp| − free)/s, free = 4·c·s/e. `warpMm` either sign; `clearanceMm` c of one side bearing.
 * Source: statics; spacings e = 50 in, b = 79 in, s = 60 in are common practice, no source.
 */
export function warpUnloadingKn(warpMm: number, clearanceMm: number, springKnPerMm: number): number {
  const freeMm = (4 * Math.max(0, clearanceMm) * CONTACT_SPACING_MM) / SIDE_BEARING_SPACING_MM;
  const twist = Math.max(0, Math.abs(warpMm) - freeMm) / CONTACT_SPACING_MM;
  const perSpringGroup = springKnPerMm * (SPRING_SPACING_MM / 2) * (twist / 2);
  return (perSpringGroup * SPRING_SPACING_MM) / CONTACT_SPACING_MM / 2;
}

import { toCanonical } from '../../readings/convert';
import type { MarginWitness } from '../witness';

const STANDARD_GRAVITY = 9.80665;
const N_PER_KN = 1000;

/** Between side bearings and between spring groups of one truck, and between rail contacts. */
const SIDE_BEARING_SPACING_MM = toCanonical(50, 'in', 'crossLength');
const SPRING_SPACING_MM = toCanonical(79, 'in', 'crossLength');
const CONTACT_SPACING_MM = toCanonical(60, 'in', 'crossLength');

/**
 * Load left on the wheel that twisted track lifts, kN. The body does not twist; it rolls on its
 * centre plates through the side-bearing clearance of both trucks, and beyond that the springs
 * of each truck take half the rest.
 */
function wheelLoadLeft(
  grossKg: number,
  axles: number,
  warpMm: number,
  clearanceMm: number,
  springKnPerMm: number,
): number {
  const standing = (grossKg * STANDARD_GRAVITY) / N_PER_KN / (2 * axles);
  const freeMm = (4 * Math.max(0, clearanceMm) * CONTACT_SPACING_MM) / SIDE_BEARING_SPACING_MM;
  const twist = Math.max(0, Math.abs(warpMm) - freeMm) / CONTACT_SPACING_MM;
  const perSpringGroup = springKnPerMm * (SPRING_SPACING_MM / 2) * (twist / 2);
  const perWheel = (perSpringGroup * SPRING_SPACING_MM) / CONTACT_SPACING_MM / 2;
  return Math.max(0, standing - perWheel);
}

export const wheelLoadMargin: MarginWitness = {
  kind: 'margin',
  id: 'wheelLoad',
  name: 'Load left on the wheel',
  needsUndisturbed: true,
  inputs: ['grossWeight', 'axleCount', 'warp62', 'sideBearingClearance'],
  assumed: [
    {
      id: 'springKnPerMm',
      low: 2.5,
      high: 5.5,
      source: {
        text: 'Spring group of a freight truck, 14 to 31 kip/in',
        status: 'engineering judgement',
      },
    },
  ],
  formula:
    'V = W·g/(2n) − k·(b/2)·(φ/2)·(b/s)/2; φ = (|warp| − free)/s; free = 4·c·s/e; W: gross weight; n: axles; c: side-bearing clearance; e = 50 in; b = 79 in; s = 60 in; k: spring group',
  sources: [
    { text: 'Statics of a stiff car body on two sprung trucks', status: 'published' },
    { text: 'Side bearings 50 in and springs 79 in apart', status: 'common practice, no source' },
  ],
  unit: 'kN',
  compute: ([gross = NaN, axles = NaN, warp = NaN, clearance = NaN, spring = NaN]) =>
    wheelLoadLeft(gross, axles, warp, clearance, spring),
  upTo: [25, 50],
  outcomes: [
    { id: 'hardly', label: 'below 25 kN (5.6 kip)', ifTrue: 0.3, ifFalse: 0.03 },
    { id: 'light', label: '25 to 50 kN (to 11 kip)', ifTrue: 0.5, ifFalse: 0.12 },
    { id: 'ordinary', label: 'above 50 kN', ifTrue: 0.2, ifFalse: 0.85 },
  ],
  findings: ['wheelLoad', 'warpAtPod'],
  reason:
    'An empty car stands at about 35 kN a wheel and twist lifts some of it; a loaded one keeps its load except where lading or side bearings take it off, which no scale of the whole car shows. Warp is taken over any two points less than 62 ft apart, which asks too much of trucks closer together.',
};

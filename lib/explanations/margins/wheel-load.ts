import {
  onPlateKn,
  PLATE_EDGE_MM,
  SPRING_GROUP_KN_PER_MM,
  WARP_UNLOADING_FORMULA,
  WARP_UNLOADING_SOURCES,
  warpUnloadingKn,
} from '../../mechanics/warp-unloading';
import { staticWheelLoadKn } from '../../mechanics/wheel-load';
import type { MarginWitness } from '../witness';

/** Load left on the wheel that twisted track lifts, kN. */
const wheelLoadLeft = (
  grossKg: number,
  axles: number,
  warpMm: number,
  clearanceMm: number,
  springKnPerMm: number,
  plateEdgeMm: number,
): number => {
  const wheelKn = staticWheelLoadKn(grossKg, axles);
  const plateKn = onPlateKn(wheelKn);
  return Math.max(0, wheelKn - warpUnloadingKn({ warpMm, clearanceMm, springKnPerMm, plateKn, plateEdgeMm }));
};

export const wheelLoadMargin: MarginWitness = {
  kind: 'margin',
  id: 'wheelLoad',
  name: 'Load left on the wheel',
  needsUndisturbed: true,
  inputs: ['grossWeight', 'axleCount', 'warp62', 'sideBearingClearance'],
  assumed: [
    {
      id: 'springKnPerMm',
      low: SPRING_GROUP_KN_PER_MM[0],
      high: SPRING_GROUP_KN_PER_MM[1],
      source: {
        text: 'Spring group of a freight truck, 14 to 31 kip/in',
        status: 'engineering judgement',
      },
    },
    {
      id: 'plateEdgeMm',
      low: PLATE_EDGE_MM[0],
      high: PLATE_EDGE_MM[1],
      source: {
        text: 'Centre plates of 12 to 16 in, bearing farther in when worn',
        status: 'engineering judgement',
      },
    },
  ],
  formula: `V = W·g/(2n) − ${WARP_UNLOADING_FORMULA}; W: gross weight; n: axles`,
  sources: WARP_UNLOADING_SOURCES,
  unit: 'kN',
  compute: ([gross = NaN, axles = NaN, warp = NaN, clearance = NaN, spring = NaN, edge = NaN]) =>
    wheelLoadLeft(gross, axles, warp, clearance, spring, edge),
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

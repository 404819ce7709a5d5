import { leastMissMm, pointClearanceMethod } from '../../mechanics/point-clearance';
import { degrees } from '../../readings/quantities/build';
import type { MarginWitness } from '../witness';

/** By how much the flange misses the tip or the floor of a chip, whichever is less; negative: exposed. mm. */
function leastMiss(
  gapMm: number,
  thicknessMm: number,
  tipDepthMm: number,
  chipLengthMm: number,
  chipDepthMm: number,
  flangeHeightMm: number,
  sideRad: number,
  faceRad: number,
): number {
  const missAt = (depthMm: number): number =>
    leastMissMm({ flangeHeightMm, faceRad, edgeMm: gapMm + thicknessMm, depthMm, sideRad });
  const tip = missAt(tipDepthMm);
  return chipLengthMm > 0 && chipDepthMm > 0 ? Math.min(tip, missAt(tipDepthMm + chipDepthMm)) : tip;
}

/**
 * The fit of the findings, with what a reference range can be given for: thickness and slope of the gauge
 * side are those of the outline of the point where one was traced. The face of the flange is drawn from its
 * range, traced or not: its angle already speaks to whether the wheel could hold the rail, and no reading
 * speaks to two facts.
 */
export const pointReachMargin: MarginWitness = {
  kind: 'margin',
  id: 'pointReach',
  name: 'By how much the flange misses the point',
  needsUndisturbed: true,
  inputs: [
    'pointGap',
    'tipThickness',
    'tipDepth',
    'chipLength',
    'chipDepth',
    'flangeHeight',
    'pointSideSlope',
  ],
  assumed: [
    {
      id: 'faceAngleRad',
      low: degrees(65),
      high: degrees(76),
      source: { text: 'Flange face angle of wheels in service', status: 'engineering judgement' },
    },
  ],
  formula:
    'least of the misses at the tip and at the floor of a chip: over the top where the flange does not reach, else the least over every depth z of r(z) − (gap + tip thickness) − (z − depth)/tan β; r: straight flange face at 65 to 76° whatever was measured of it, with a 12-mm tip of the measured height; β: slope of the gauge side of the point, straight through its outline where one was traced. Drawn alike from the readings and from the reference ranges; the findings hold the traced wheel and the whole traced side against each other',
  sources: pointClearanceMethod.sources,
  unit: 'mm',
  compute: ([
    gap = NaN,
    thickness = NaN,
    depth = NaN,
    chipLength = NaN,
    chipDepth = NaN,
    height = NaN,
    side = NaN,
    face = NaN,
  ]) => leastMiss(gap, thickness, depth, chipLength, chipDepth, height, side, face),
  upTo: [-9, -2],
  outcomes: [
    { id: 'exposed', label: 'stands more than 9 mm outside the face', ifTrue: 0.55, ifFalse: 0.1 },
    { id: 'touched', label: '2 to 9 mm outside', ifTrue: 0.38, ifFalse: 0.72 },
    { id: 'clear', label: 'hidden or out of reach', ifTrue: 0.07, ifFalse: 0.18 },
  ],
  findings: ['pointClearanceTip', 'pointClearanceChip'],
  reason:
    'A tip a few millimetres outside the face is pressed aside or just touched; one well outside takes the flange on its end.',
};

import { edgeMarginMm, pointClearance, pointClearanceMethod } from '../../mechanics/point-clearance';
import { degrees } from '../../readings/quantities/build';
import { toCanonical } from '../../readings/convert';
import type { MarginWitness } from '../witness';

/** Only the play of the wheelset depends on these, which the clearance against the near rail does not use. */
const STANDARD_GAUGE_MM = toCanonical(56.5, 'in', 'crossLength');
const BACK_TO_BACK_MM = toCanonical(53, 'in', 'crossLength');
const FLANGE_MM = toCanonical(1.125, 'in', 'crossLength');

/** By how much the flange misses the tip or the floor of a chip, whichever is less; negative: exposed. mm. */
function leastMiss(
  gapMm: number,
  tipThicknessMm: number,
  tipDepthMm: number,
  chipLengthMm: number,
  chipDepthMm: number,
  flangeHeightMm: number,
  faceAngleRad: number,
): number {
  const { tip, chip } = pointClearance(
    {
      gapMm: Math.max(0, gapMm),
      tipThicknessMm: Math.max(0, tipThicknessMm),
      tipDepthMm,
      chipDepthMm: chipLengthMm > 0 ? chipDepthMm : 0,
      chipLengthMm,
    },
    {
      flangeThicknessMm: FLANGE_MM,
      oppositeFlangeThicknessMm: FLANGE_MM,
      flangeHeightMm,
      faceAngleRad,
      backToBackMm: BACK_TO_BACK_MM,
      gaugeMm: STANDARD_GAUGE_MM,
    },
  );
  return chip === null ? edgeMarginMm(tip) : Math.min(edgeMarginMm(tip), edgeMarginMm(chip));
}

export const pointReachMargin: MarginWitness = {
  kind: 'margin',
  id: 'pointReach',
  name: 'By how much the flange misses the point',
  needsUndisturbed: true,
  inputs: ['pointGap', 'tipThickness', 'tipDepth', 'chipLength', 'chipDepth', 'flangeHeight'],
  assumed: [
    {
      id: 'faceAngleRad',
      low: degrees(65),
      high: degrees(76),
      source: { text: 'Flange face angle of wheels in service', status: 'engineering judgement' },
    },
  ],
  formula:
    'least of the misses at the tip and at the floor of a chip: over the top where the flange does not reach, else r(depth) − (gap + tip thickness)',
  sources: pointClearanceMethod.sources,
  unit: 'mm',
  compute: ([
    gap = NaN,
    thickness = NaN,
    depth = NaN,
    chipLength = NaN,
    chipDepth = NaN,
    height = NaN,
    angle = NaN,
  ]) => leastMiss(gap, thickness, depth, chipLength, chipDepth, height, angle),
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

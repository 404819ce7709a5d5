import type { SubjectKind } from '~/lib/readings/quantity';

/** Readings taken together, and which findings (by what they are) stand beside them. */
export type PartForm = { readonly group: string; readonly findings: readonly string[] };
export type PartForms = readonly [PartForm, ...PartForm[]];

/** The groups of readings of the kinds that a screen shows one of at a time. */
export const PART_FORMS = {
  mark: [{ group: 'markExtent', findings: [] }],
  wheelset: [
    { group: 'backToBack', findings: ['backToBackMean', 'backToBackLeast', 'backToBackSwing'] },
    {
      group: 'wheelShape',
      findings: [
        'flangeThickness',
        'flangeHeight',
        'flangeAngle',
        'climbLength',
        'rimThickness',
        'rimWidth',
        'treadHollow',
        'qR',
        'treadSlope',
        'falseFlange',
        'rootRadius',
        'tipRadius',
        'wearRate',
      ],
    },
    { group: 'wheelDiameter', findings: ['wheelDiameter', 'diameterDifference'] },
    {
      group: 'wheelChecks',
      findings: ['flangeThicknessCheck', 'flangeHeightCheck', 'rimThicknessCheck', 'hollowCheck'],
    },
  ],
  wheelDefect: [{ group: 'wheelDefectSize', findings: ['defectLength', 'defectWidth'] }],
  truck: [
    { group: 'sideBearings', findings: ['sideBearingClearance', 'sideBearingClearanceEnd', 'wedgeRise'] },
  ],
  rail: [
    {
      group: 'railWear',
      findings: ['verticalLoss', 'gaugeFaceLoss', 'gaugeFaceAngle', 'railCant', 'headWidth', 'headAreaLoss'],
    },
    { group: 'railFriction', findings: ['gaugeFaceFriction', 'topOfRailFriction'] },
    { group: 'railHold', findings: ['gaugeSpikesDrawn', 'fasteningsMissing', 'plateCut'] },
  ],
  turnout: [
    {
      group: 'pointFit',
      findings: [
        'pointGap',
        'tipThickness',
        'tipDepth',
        'chipFrom',
        'chipLength',
        'chipDepth',
        'pointThrow',
        'pointClearanceLeast',
        'pointClearanceTip',
        'pointClearanceChip',
        'pointClearanceChipEnd',
        'pointClearanceYawed',
      ],
    },
    {
      group: 'alongPoint',
      findings: [
        'gapBehind',
        'thicknessBehind',
        'pointOutline',
        'depthBehind',
        'pointFaceAngle',
        'pointClearanceBehind',
        'pointFirstTouch',
        'falseFlange',
        'falseFlangeBelowStockRail',
      ],
    },
    {
      group: 'switchState',
      findings: [
        'pointPlace',
        'heelSpread',
        'condition-heel-secure',
        'condition-stand-and-rods',
        'condition-stock-rail-seated',
      ],
    },
    {
      group: 'turnoutCondition',
      findings: [
        'condition-point-fits',
        'condition-point-whole',
        'condition-point-not-worn',
        'condition-tread-clears-stock-rail',
        'condition-throw-lever',
        'condition-position-indicator',
        'condition-turnout-fastenings',
        'condition-turnout-clear',
        'condition-turnout-anchors',
      ],
    },
    {
      group: 'frogAndGuard',
      findings: [
        'guardCheckGauge',
        'guardFaceGauge',
        'flangewayWidth',
        'flangewayDepth',
        'frogPointDown',
        'frogPointBack',
        'frogTreadWear',
      ],
    },
    {
      group: 'frogCondition',
      findings: [
        'springFrogHorn',
        'raisedGuardWear',
        'condition-spring-wing-tread',
        'condition-spring-wing-toe',
        'condition-spring-frog-whole',
        'condition-spring-holds',
        'condition-guarding-face-restored',
      ],
    },
  ],
} as const satisfies Partial<Record<SubjectKind, PartForms>>;

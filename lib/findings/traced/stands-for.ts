import type { TracedFeatureId } from './trace-features';

/**
 * Which feature of an outline is the same thing as a quantity that is read. Flange thickness is read 3/8 in
 * above the tread, whatever the units of the case.
 */
export const STANDS_FOR: Readonly<Record<'wheelset' | 'rail', Readonly<Record<string, TracedFeatureId>>>> = {
  wheelset: {
    flangeThickness: 'flangeThicknessNa',
    flangeHeight: 'flangeHeight',
    flangeAngle: 'flangeAngle',
    climbLength: 'climbLength',
    rimWidth: 'rimWidth',
    treadHollow: 'treadHollow',
  },
  rail: {
    verticalLoss: 'verticalLoss',
    gaugeFaceLoss: 'gaugeFaceLoss',
    gaugeFaceAngle: 'gaugeFaceAngle',
    railCant: 'railCant',
  },
};

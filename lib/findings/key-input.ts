import type { Dimension } from '../readings/unit';

/**
 * The quantities on which the mechanisms turn, each taken from the readings nearest to the POD
 * and to the first derailed wheelset. A margin is drawn twice from these: once from what was
 * measured, once from the declared reference ranges alone, so that nothing measured says nothing.
 */
export const KEY_INPUTS = [
  'flangeAngle', // flanging wheel of the first derailed axle
  'climbLength',
  'flangeThickness',
  'flangeHeight',
  'backToBackMin', // smallest around the wheelset
  'rimWidth', // wheel that would drop
  'treadHollow', // wheel on the inner rail
  'fieldSideRide', // share of its positions at which it stands on the field side of the inner rail
  'gaugeFaceAngle', // outer rail nearest the POD, or contact angle of the flanging wheel on it
  'gaugeFaceFriction', // outer rail
  'topOfRailFriction', // inner rail
  'gaugeStanding', // widest undisturbed station within 62 ft before the POD
  'lateralMovement', // both rails together, same station
  'warp62', // largest crosslevel difference less than 62 ft apart before the POD
  'curvature', // 155-ft average at the POD
  'elevation', // 155-ft average at the POD
  'speed', // recorder at the POD, else as reported
  'grossWeight', // first derailed vehicle
  'axleCount',
  'axleSpacing', // in a truck of the first derailed vehicle
  'gravityCentreHeight', // first derailed vehicle
  'railCantOuter',
  'railCantInner',
  'defectiveTies', // most in 39 ft within 62 ft before the POD
  'sideBearingClearance', // smallest of the first derailed truck
  'pointGap',
  'tipThickness',
  'tipDepth',
  'chipLength',
  'chipDepth',
  'pointSideSlope', // of the tip, from its outline or as read
] as const;
export type KeyInputId = (typeof KEY_INPUTS)[number];

export type KeyInput = {
  readonly id: KeyInputId;
  readonly dimension: Dimension;
  /** Null when nobody measured it (or only where the derailment had disturbed it). */
  readonly measured: {
    readonly value: number;
    readonly u: number;
    readonly readings: readonly [string, ...string[]];
    readonly remark: string;
    /** Comes from the same outline as this other one and errs with it. */
    readonly errsWith?: KeyInputId;
  } | null;
  /** Uniform reference range it is drawn from when not measured; canonical unit. */
  readonly reference: { readonly low: number; readonly high: number; readonly source: string };
};

export type KeyInputs = Readonly<Record<KeyInputId, KeyInput>>;

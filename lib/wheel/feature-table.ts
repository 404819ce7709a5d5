import { type Source } from '../findings/finding';
import { type Dimension } from '../readings/unit';

export type WheelFeatureId =
  | 'flangeHeight'
  | 'flangeThickness'
  | 'flangeThicknessNa'
  | 'qR'
  | 'flangeAngle'
  | 'climbLength'
  | 'rootRadius'
  | 'tipRadius'
  | 'treadSlope'
  | 'treadHollow'
  | 'falseFlange'
  | 'rimWidth';

export type WheelFeatureEntry = {
  readonly id: WheelFeatureId;
  readonly name: string;
  readonly dimension: Extract<Dimension, 'crossLength' | 'angle' | 'ratio'>;
  readonly meaning: string;
  readonly source: Source;
};

const EN_15313: Source = {
  text: 'EN 15313, dimensions of wheels in service',
  status: 'from memory',
};
const OWN_FIT: Source = {
  text: 'Circle fitted to a stated part of the outline',
  status: 'engineering judgement',
};

/** What is taken from the outline of a wheel, in the order it is listed and drawn. Lengths mm, angles rad, slopes rise over run. */
export const WHEEL_FEATURES: readonly WheelFeatureEntry[] = [
  {
    id: 'flangeHeight',
    name: 'Flange height',
    dimension: 'crossLength',
    meaning: 'Tip of the flange above the tread, the tread taken 70 mm from the back of the flange (Sh).',
    source: EN_15313,
  },
  {
    id: 'flangeThickness',
    name: 'Flange thickness, 10 mm above the tread',
    dimension: 'crossLength',
    meaning: 'From the back of the flange to its face, 10 mm above the tread reference point (Sd).',
    source: EN_15313,
  },
  {
    id: 'flangeThicknessNa',
    name: 'Flange thickness, 3/8 in above the tread',
    dimension: 'crossLength',
    meaning: 'From the back of the flange to its face, 3/8 in above the tread reference point.',
    source: {
      text: '49 CFR 215.103, 229.75 and 230.113: flange thickness gauged 3/8 in above the tread',
      status: 'from memory',
    },
  },
  {
    id: 'qR',
    name: 'Flange face qR',
    dimension: 'crossLength',
    meaning:
      'Across from the face 10 mm above the tread reference point to the face 2 mm below the tip: small where a flange has worn steep and sharp.',
    source: EN_15313,
  },
  {
    id: 'flangeAngle',
    name: 'Flange angle',
    dimension: 'angle',
    meaning: 'Steepest angle of the flange face to the axle.',
    source: { text: 'TCRP Report 71 vol. 5, chapter 4 (maximum wheel flange angle)', status: 'published' },
  },
  {
    id: 'climbLength',
    name: 'Flange length',
    dimension: 'crossLength',
    meaning:
      'Along the line from where the steepest angle begins, over the tip side, to where the angle has fallen to 26.6°: what a climbing wheel has to pass.',
    source: { text: 'TCRP Report 71 vol. 5, chapter 4 (flange length)', status: 'published' },
  },
  {
    id: 'rootRadius',
    name: 'Root radius',
    dimension: 'crossLength',
    meaning:
      'Circle that the straight part of the flange face goes over into towards the tread, fitted together with it within 32° of the steepest direction.',
    source: OWN_FIT,
  },
  {
    id: 'tipRadius',
    name: 'Tip radius',
    dimension: 'crossLength',
    meaning: 'Circle fitted to the tip of the flange where it lies within 25° of level.',
    source: OWN_FIT,
  },
  {
    id: 'treadSlope',
    name: 'Tread slope',
    dimension: 'ratio',
    meaning:
      'Slope of the tread over 20 mm about the tread reference point, positive where it falls towards the field side (coning 1:20 is 0.05).',
    source: {
      text: 'Straight line fitted to the tread from 60 to 80 mm from the back',
      status: 'engineering judgement',
    },
  },
  {
    id: 'treadHollow',
    name: 'Hollow',
    dimension: 'crossLength',
    meaning:
      'How far the lowest part of the running band lies below the field-side edge of the tread, square to the axle; 0 where the tread falls to the edge.',
    source: {
      text: 'Tread hollow as the height of the field-side edge above the running band',
      status: 'common practice, no source',
    },
  },
  {
    id: 'falseFlange',
    name: 'False flange',
    dimension: 'crossLength',
    meaning:
      'How far the field-side edge of the tread stands above the tread reference point; 0 where it lies below.',
    source: {
      text: 'Raised field-side edge, from the tread reference point',
      status: 'common practice, no source',
    },
  },
  {
    id: 'rimWidth',
    name: 'Rim width',
    dimension: 'crossLength',
    meaning: 'From the back of the flange to the face of the rim on the field side.',
    source: EN_15313,
  },
];

import type { Measure, QuantityGroup } from '../quantity';
import { CROSS, crossLength, degrees, inches, LEFT_RIGHT, PIN_GAUGE } from './build';

export const backToBackGroup: QuantityGroup = {
  id: 'backToBack',
  name: 'Back-to-back',
  screen: 'wheels',
  subject: 'wheelset',
  howTo: {
    take: 'Chalk three places 120° apart on the rim, 0° at the top. Measure between the inner faces of the rims at each place, at the same height, with the rod square to the axle. More places are better.',
    why: 'The mean places the flanges; the swing from place to place shows a bent axle or a wheel out of square.',
    bearsOn: ['wideGauge', 'switchPointPick', 'wheelClimb'],
    spoiledBy:
      'An axle bent in the derailment: say whether the state is disturbed. Loaded and unloaded readings mixed.',
    figure: 'backToBackClock',
  },
  quantities: [
    crossLength('wheelset', {
      id: 'backToBack',
      name: 'Back-to-back',
      short: 'Back-to-back',
      slots: [
        { id: '0', label: '0°' },
        { id: '120', label: '120°' },
        { id: '240', label: '240°' },
      ],
      openSlots: 'clockDegrees',
      possibleIn: [48, 58],
      usualIn: [52.5, 53.75],
      referenceIn: [52.875, 53.25],
      referenceSource: '53 in within a few sixteenths; common practice, no source',
    }),
  ],
};

const wheel = (
  id: string,
  name: string,
  short: string,
  ranges: { possible: [number, number]; usual: [number, number]; reference: [number, number] },
): Measure =>
  crossLength('wheelset', {
    id,
    name,
    short,
    slots: LEFT_RIGHT,
    possibleIn: ranges.possible,
    usualIn: ranges.usual,
    referenceIn: ranges.reference,
    referenceSource: 'wheels in freight service, new to the wear limit; engineering judgement',
    resolution: PIN_GAUGE,
  });

export const wheelShapeGroup: QuantityGroup = {
  id: 'wheelShape',
  name: 'Flange, rim and tread',
  screen: 'wheels',
  subject: 'wheelset',
  howTo: {
    take: 'Thickness 3/8 in above the tread; height from the tread to the tip; the steepest angle of the flange face with the axle; rim thickness and width at the outer face; hollow as the drop of the running band below the field-side edge. Press the pin gauge radially, square to the rim. Older sizes from shop records may be entered too, with the date they were taken and the distance the wheels had run: they show the wear, and the latest stand.',
    why: 'A shallow or short flange climbs at a smaller side force; a thin one drops in sooner and reaches a standing-open point; a hollow tread rides the field side of the low rail.',
    bearsOn: ['wheelClimb', 'wideGauge', 'switchPointPick', 'railRollover'],
    spoiledBy:
      'Flanges battered on ties and ballast. Left and right swapped, or the car turned end for end since.',
    figure: 'wheelShape',
  },
  quantities: [
    wheel('flangeThickness', 'Flange thickness', 'Thickness', {
      possible: [0.3, 2],
      usual: [0.8, 1.5],
      reference: [0.9, 1.3],
    }),
    wheel('flangeHeight', 'Flange height', 'Height', {
      possible: [0.4, 2.5],
      usual: [0.9, 1.6],
      reference: [1, 1.4],
    }),
    {
      kind: 'measure',
      id: 'flangeAngle',
      name: 'Greatest flange angle',
      short: 'Angle',
      subject: 'wheelset',
      slots: LEFT_RIGHT,
      dimension: 'angle',
      bareUnit: { us: '°', metric: '°' },
      possible: [degrees(20), degrees(89)],
      usual: [degrees(58), degrees(80)],
      defaultResolution: {
        halfWidth: degrees(2),
        source: 'protractor on a pin-gauge outline, 2 degrees either way; engineering judgement',
      },
      reference: {
        low: degrees(65),
        high: degrees(76),
        source: 'wheels in freight service; engineering judgement',
      },
    },
    wheel('climbLength', 'Flange length for the climb distance', 'Flange length', {
      possible: [0.1, 2],
      usual: [0.3, 1],
      reference: [0.4, 0.75],
    }),
    wheel('rimThickness', 'Rim thickness', 'Rim', {
      possible: [0.2, 4.5],
      usual: [0.6, 3],
      reference: [0.7, 2],
    }),
    wheel('rimWidth', 'Rim width', 'Rim width', { possible: [4, 7], usual: [5, 6], reference: [5.4, 5.75] }),
    wheel('treadHollow', 'Tread hollow', 'Hollow', {
      possible: [0, 1],
      usual: [0, 0.35],
      reference: [0, 0.2],
    }),
    {
      kind: 'measure',
      id: 'distanceRun',
      name: 'Distance run since new or turned',
      short: 'Run',
      subject: 'wheelset',
      slots: [],
      dimension: 'alongTrack',
      bareUnit: { us: 'mi', metric: 'km' },
      possible: [0, 5e9],
      usual: [0, 1.5e9],
      defaultResolution: {
        halfWidth: 5e5,
        source: 'records of car miles, to a few hundred miles; engineering judgement',
      },
      reference: { low: 0, high: 8e8, source: 'wheels in freight service; engineering judgement' },
    },
  ],
};

export const diameterGroup: QuantityGroup = {
  id: 'wheelDiameter',
  name: 'Diameter from a chord',
  screen: 'wheels',
  subject: 'wheelset',
  howTo: {
    take: 'Set the two feet of the chord gauge on the tread at the tape line and read how far the tread stands above the chord half way. Enter the distance between the feet and the height.',
    why: 'A difference between the two wheels of an axle steers it to one side.',
    bearsOn: ['wheelClimb'],
    spoiledBy:
      'Feet on the flange fillet. One thousandth of height is about 33 thousandths of diameter: look at the uncertainty before using the difference.',
    figure: 'chordDiameter',
  },
  quantities: [
    crossLength('wheelset', {
      id: 'chordLength',
      name: 'Distance between the feet',
      short: 'Feet apart',
      slots: LEFT_RIGHT,
      possibleIn: [4, 30],
      usualIn: [8, 20],
      referenceIn: [12, 12],
      referenceSource: 'a 12-in gauge; common practice, no source',
      resolution: {
        halfWidth: inches(0.005),
        source: 'fixed feet of a machined gauge; engineering judgement',
      },
    }),
    crossLength('wheelset', {
      id: 'chordHeight',
      name: 'Height of the tread above the chord',
      short: 'Height',
      slots: LEFT_RIGHT,
      possibleIn: [0.1, 6],
      usualIn: [0.8, 1.5],
      referenceIn: [0.92, 1.15],
      referenceSource: 'wheels of 32 to 40 in on a 12-in chord; circle geometry',
      resolution: { halfWidth: inches(0.0005), source: 'dial read to 0.001 in; common practice, no source' },
    }),
  ],
};

const check = (id: string, name: string, what: string) =>
  ({
    kind: 'goNoGo',
    id,
    name,
    short: name,
    subject: 'wheelset',
    slots: LEFT_RIGHT,
    check: what,
  }) as const;

export const wheelCheckGroup: QuantityGroup = {
  id: 'wheelChecks',
  name: 'Go/no-go checks',
  screen: 'wheels',
  subject: 'wheelset',
  howTo: {
    take: 'Apply the limit gauge the railroad supplies and record pass or fail of the check named on it. It gives no number.',
    why: 'It says on which side of one limit the wheel lay, and nothing more.',
    bearsOn: ['wheelClimb', 'wideGauge', 'switchPointPick'],
    spoiledBy: 'A worn gauge. Rocking it on a burr.',
    figure: 'limitGauge',
  },
  quantities: [
    check(
      'flangeThicknessCheck',
      'Flange thickness check',
      'The flange is thicker than the condemning thickness of the gauge used',
    ),
    check(
      'flangeHeightCheck',
      'Flange height check',
      'The flange is lower than the condemning height of the gauge used',
    ),
    check(
      'rimThicknessCheck',
      'Rim check',
      'The rim is thicker than the condemning thickness of the gauge used',
    ),
    check(
      'hollowCheck',
      'Hollow check',
      'The tread is hollowed less than the condemning depth of the gauge used',
    ),
  ],
};

export const wheelDefectGroup: QuantityGroup = {
  id: 'wheelDefectSize',
  name: 'Size of the defect',
  screen: 'wheels',
  subject: 'wheelDefect',
  howTo: {
    take: 'Measure along the tread and across it with a flexible rule. Photograph it with the rule in the picture. Look whether the metal in it is fresh.',
    why: 'A defect that was there before can break a rail or a wheel; a fresh one is usually damage from the derailment.',
    bearsOn: ['brokenWheel', 'brokenRail'],
    spoiledBy: 'Damage from running on the ground.',
    figure: 'treadDefect',
  },
  quantities: [
    {
      kind: 'measure',
      id: 'defectLength',
      name: 'Length along the tread',
      short: 'Length',
      subject: 'wheelDefect',
      slots: [],
      dimension: 'crossLength',
      bareUnit: CROSS,
      possible: [0, inches(40)],
      usual: [0, inches(8)],
      defaultResolution: {
        halfWidth: inches(1 / 16),
        source: 'flexible rule on a broken edge; common practice, no source',
      },
      reference: { low: 0, high: inches(2), source: 'engineering judgement' },
    },
    {
      kind: 'measure',
      id: 'defectWidth',
      name: 'Width across the tread',
      short: 'Width',
      subject: 'wheelDefect',
      slots: [],
      dimension: 'crossLength',
      bareUnit: CROSS,
      possible: [0, inches(8)],
      usual: [0, inches(4)],
      defaultResolution: {
        halfWidth: inches(1 / 16),
        source: 'flexible rule on a broken edge; common practice, no source',
      },
      reference: { low: 0, high: inches(1), source: 'engineering judgement' },
    },
  ],
};

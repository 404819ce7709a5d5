import type { QuantityGroup } from '../quantity';
import { ALONG, crossLength, feet, LEFT_RIGHT, TAPE } from './build';

export const stationPositionGroup: QuantityGroup = {
  id: 'stationPosition',
  name: 'Where the stations are',
  screen: 'track',
  subject: 'station',
  howTo: {
    take: 'Chalk the POD as station 0. Walk back from it against the direction of travel and chalk a station every 15 ft 6 in, a quarter of a 62-ft chord; go on past it while the track is whole. Before the POD is negative.',
    why: 'The pictures, the averages and the differences all hang on these distances.',
    bearsOn: ['wheelClimb', 'wideGauge', 'railRollover'],
    spoiledBy: 'Stations counted from a mark that was not the first. Chalk moved with the track.',
    figure: 'stations',
  },
  quantities: [
    {
      kind: 'measure',
      id: 'stationPosition',
      name: 'Distance from the POD',
      short: 'From POD',
      subject: 'station',
      slots: [],
      dimension: 'alongTrack',
      bareUnit: ALONG,
      possible: [feet(-20_000), feet(20_000)],
      usual: [feet(-2_000), feet(2_000)],
      defaultResolution: TAPE,
      reference: { low: feet(-620), high: feet(155), source: 'engineering judgement' },
    },
  ],
};

export const gaugeGroup: QuantityGroup = {
  id: 'gaugeAndCrosslevel',
  name: 'Gauge and crosslevel',
  screen: 'track',
  subject: 'station',
  howTo: {
    take: 'Set the gauge square across at 5/8 in below the top of both rails; leave out lip and flow. Set the level board on both heads. Crosslevel is positive when the outer rail of the curve is higher; on tangent when the left rail is.',
    why: 'Wide gauge lets a wheel down; a change of crosslevel takes the load off one wheel; elevation against speed gives the unbalance.',
    bearsOn: ['wideGauge', 'wheelClimb', 'railRollover', 'harmonicRoll'],
    spoiledBy:
      'Track the derailed wheels ran on, or that the crew has gauged since: mark each station disturbed or repaired.',
    figure: 'gaugeAndLevel',
  },
  quantities: [
    crossLength('station', {
      id: 'gauge',
      name: 'Gauge, standing',
      short: 'Gauge',
      possibleIn: [50, 66],
      usualIn: [56, 58.5],
      referenceIn: [56.25, 57.5],
      referenceSource: 'track in freight service; engineering judgement',
    }),
    crossLength('station', {
      id: 'crosslevel',
      name: 'Crosslevel',
      short: 'Crosslevel',
      possibleIn: [-12, 12],
      usualIn: [-3, 7],
      referenceIn: [-1, 5],
      referenceSource: 'track in freight service; engineering judgement',
    }),
  ],
};

export const movementGroup: QuantityGroup = {
  id: 'movement',
  name: 'Movement under load',
  screen: 'track',
  subject: 'station',
  howTo: {
    take: 'Look for the polished strip beside plate, spike and rail base that shows how far each has slid or pumped, and measure it on both rails. Better: measure under a standing or passing loaded car if the railroad allows it.',
    why: 'The wheel ran on loaded track. The movement seen is added to what was measured standing (49 CFR 213.13).',
    bearsOn: ['wideGauge', 'railRollover', 'wheelClimb'],
    spoiledBy: 'Movement made by the derailed wheels. Old rusted slide marks that no longer move.',
    figure: 'plateMovement',
  },
  quantities: [
    crossLength('station', {
      id: 'lateralMovement',
      name: 'Sideways movement under load',
      short: 'Sideways',
      slots: LEFT_RIGHT,
      possibleIn: [0, 4],
      usualIn: [0, 1.5],
      referenceIn: [0, 0.5],
      referenceSource: 'engineering judgement',
    }),
    crossLength('station', {
      id: 'verticalMovement',
      name: 'Downward movement under load',
      short: 'Down',
      slots: LEFT_RIGHT,
      possibleIn: [0, 6],
      usualIn: [0, 2],
      referenceIn: [0, 0.75],
      referenceSource: 'engineering judgement',
    }),
  ],
};

export const stringLineGroup: QuantityGroup = {
  id: 'stringLine',
  name: 'String line and profile',
  screen: 'track',
  subject: 'station',
  howTo: {
    take: 'Stretch the cord along the gauge face of the outer rail, 5/8 in below the top, with its ends 31 ft each side of the station (62-ft chord) and read the offset at the middle. Repeat with the 31-ft chord. On tangent use the left rail. Positive when the rail bows outward from the curve. For profile hold the cord along the top of each rail: positive when the middle is low.',
    why: 'The offset gives the curvature, and the jump from one station to the next the kink a wheel had to follow.',
    bearsOn: ['wheelClimb', 'railRollover', 'trackBuckle', 'harmonicRoll'],
    spoiledBy: 'Wind on the cord, lip on the rail, a chord across a joint gap, disturbed track.',
    figure: 'stringLine',
  },
  quantities: [
    crossLength('station', {
      id: 'midOrdinate62',
      name: 'Mid-ordinate of a 62-ft chord',
      short: '62-ft offset',
      possibleIn: [-40, 40],
      usualIn: [-14, 14],
      referenceIn: [0, 10],
      referenceSource: 'tangent to ten degrees; engineering judgement',
    }),
    crossLength('station', {
      id: 'midOrdinate31',
      name: 'Mid-ordinate of a 31-ft chord',
      short: '31-ft offset',
      possibleIn: [-15, 15],
      usualIn: [-4, 4],
      referenceIn: [0, 2.5],
      referenceSource: 'tangent to ten degrees; engineering judgement',
    }),
    crossLength('station', {
      id: 'profile62',
      name: 'Profile, mid-ordinate of a 62-ft chord',
      short: 'Profile',
      slots: LEFT_RIGHT,
      possibleIn: [-12, 12],
      usualIn: [-3, 3],
      referenceIn: [-1, 1],
      referenceSource: 'engineering judgement',
    }),
  ],
};

export const tiesGroup: QuantityGroup = {
  id: 'ties',
  name: 'Ties and fastenings',
  screen: 'track',
  subject: 'station',
  howTo: {
    take: 'In the 39 ft centred on the station count the ties that hold neither gauge nor surface, and the rail-holding spikes or clips that are missing, loose or drawn on each rail.',
    why: 'What held the rail to gauge and upright.',
    bearsOn: ['wideGauge', 'railRollover'],
    spoiledBy: 'Ties split and spikes drawn by the derailed wheels.',
    figure: 'tieCount',
  },
  quantities: [
    {
      kind: 'count',
      id: 'defectiveTies',
      name: 'Defective ties in 39 ft',
      short: 'Bad ties',
      subject: 'station',
      slots: [],
      possible: [0, 30],
    },
    {
      kind: 'count',
      id: 'fasteningsLoose',
      name: 'Rail fastenings loose, drawn or missing in 39 ft',
      short: 'Loose fastenings',
      subject: 'station',
      slots: LEFT_RIGHT,
      possible: [0, 200],
    },
  ],
};

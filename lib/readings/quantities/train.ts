import type { Count, Measure, QuantityGroup } from '../quantity';
import { ALONG, crossLength, degrees, feet, mph } from './build';

const KIP_KN = 4.4482216152605;
const kips = (value: number): number => value * KIP_KN;

const caseMeasure = {
  kind: 'measure',
  subject: 'case',
  slots: [],
} as const;

export const podPlacingGroup: QuantityGroup = {
  id: 'podPlacing',
  name: 'POD in the recorder run',
  screen: 'train',
  subject: 'case',
  howTo: {
    take: 'Tape from the POD, along the track, to the leading end of the recording vehicle where it stopped, before it is moved. The sample at which the first derailed vehicle reached the POD is then found by the distance run; or enter the number of the sample, counted from 1, when you know it from something better, and say from what in the note.',
    why: 'Speed, throttle and brakes at the POD are read there. The first emergency sample is only when the brake pipe parted, which may be hundreds of feet later.',
    bearsOn: ['wheelClimb', 'overspeed', 'inTrainForce'],
    spoiledBy:
      'A recording vehicle moved after the stop, a train parted so that the head end ran on by itself, wheels that slid under emergency braking, a wheel diameter never set.',
    figure: 'couplerForces',
  },
  quantities: [
    {
      ...caseMeasure,
      id: 'podBackFromStop',
      name: 'From the POD to where the recording vehicle stopped',
      short: 'POD to stop',
      dimension: 'alongTrack',
      bareUnit: ALONG,
      possible: [0, feet(60_000)],
      usual: [feet(50), feet(10_000)],
      defaultResolution: {
        halfWidth: feet(5),
        source: 'paced or taped past derailed equipment; common practice, no source',
      },
      reference: { low: feet(100), high: feet(5_000), source: 'ordinary stops; engineering judgement' },
    },
    {
      kind: 'count',
      id: 'podSample',
      name: 'Sample at which the POD was reached',
      short: 'POD sample',
      subject: 'case',
      slots: [],
      possible: [1, 10_000_000],
    },
  ],
};

export const GRADE = {
  kind: 'measure',
  slots: [],
  dimension: 'grade',
  bareUnit: { us: '%', metric: '%' },
  possible: [-0.08, 0.08],
  usual: [-0.025, 0.025],
  defaultResolution: { halfWidth: 0.0005, source: 'track chart to 0.1 %; common practice, no source' },
  reference: { low: -0.015, high: 0.015, source: 'ordinary main-line grades; engineering judgement' },
} as const;

export const CURVATURE = {
  kind: 'measure',
  slots: [],
  dimension: 'curvature',
  bareUnit: { us: '°curve', metric: 'm radius' },
  possible: [-1 / 30, 1 / 30],
  usual: [-1 / 90, 1 / 90],
  defaultResolution: {
    halfWidth: degrees(0.05) / 30.48,
    source: 'track chart gives 0.1 degree; common practice, no source',
  },
  reference: { low: 0, high: 1 / 110, source: 'tangent to sharp curve; engineering judgement' },
} as const;

export const trainTrackGroup: QuantityGroup = {
  id: 'trainTrack',
  name: 'Track under the train, draft gear and end of train',
  screen: 'train',
  subject: 'case',
  howTo: {
    take: 'Copy the grade at the POD from the track chart, uphill positive in the direction of travel. Where grade and curve change along the train, enter or import them for each vehicle as it stood when the first derailed one reached the POD. Look at the couplers and the stencils for the kind of draft gear most vehicles have, and at the rear for the end-of-train device; the locomotive’s display and the download say whether it was armed.',
    why: 'Grade and curve resistance, and the slack between vehicles, decide how much of the locomotives’ force reaches the first derailed vehicle.',
    bearsOn: ['inTrainForce'],
    spoiledBy: 'One grade taken for a train that lies over a crest or in a sag.',
    figure: 'couplerForces',
  },
  quantities: [
    {
      ...GRADE,
      subject: 'case',
      id: 'gradeAtPod',
      name: 'Grade at the POD, uphill positive',
      short: 'Grade',
    },
    {
      kind: 'choice',
      id: 'draftGear',
      name: 'Draft gear of most vehicles',
      short: 'Draft gear',
      subject: 'case',
      slots: [],
      choices: [
        { id: 'friction', label: 'Friction draft gear' },
        { id: 'wornFriction', label: 'Friction draft gear, worn, much slack' },
        { id: 'cushioned', label: 'End-of-car cushioning' },
        { id: 'solid', label: 'Drawbars or articulated, no slack' },
      ],
    },
    {
      kind: 'choice',
      id: 'endOfTrainDevice',
      name: 'End-of-train device',
      short: 'End of train',
      subject: 'case',
      slots: [],
      choices: [
        { id: 'vents', label: 'Two-way and armed: vents the brake pipe in emergency' },
        { id: 'doesNotVent', label: 'One-way, or two-way and not armed' },
        { id: 'none', label: 'None' },
      ],
    },
  ],
};

export const vehicleTrackGroup: QuantityGroup = {
  id: 'vehicleTrack',
  name: 'Track under the vehicle',
  screen: 'train',
  subject: 'vehicle',
  howTo: {
    take: 'Lay the consist on the track chart with the first derailed vehicle at the POD and read grade and curvature at the middle of each vehicle. Before derailed vehicles are moved, tape along the track from the POD to where the leading axle of each stood. A column of the consist file can bring them for all.',
    why: 'A train on a crest or in a sag pulls and pushes itself; each vehicle’s curve decides how its coupler forces press on the rails.',
    bearsOn: ['inTrainForce'],
    spoiledBy: 'Laying out the train from a wrong consist or from the wrong end.',
    figure: 'couplerForces',
  },
  quantities: [
    {
      ...GRADE,
      subject: 'vehicle',
      id: 'gradeUnderVehicle',
      name: 'Grade under the vehicle, uphill positive',
      short: 'Grade',
    },
    {
      ...CURVATURE,
      subject: 'vehicle',
      id: 'curvatureUnderVehicle',
      name: 'Curvature under the vehicle, of the other hand than at the POD negative',
      short: 'Curvature',
    },
    {
      kind: 'measure',
      id: 'leadingAxleAt',
      name: 'Where its leading axle came to rest, from the POD',
      short: 'Leading axle at',
      subject: 'vehicle',
      slots: [],
      dimension: 'alongTrack',
      bareUnit: ALONG,
      possible: [feet(-20_000), feet(20_000)],
      usual: [feet(-200), feet(3_000)],
      defaultResolution: {
        halfWidth: feet(0.5),
        source: 'taped or paced in the pile; engineering judgement',
      },
      reference: { low: feet(0), high: feet(1_000), source: 'engineering judgement' },
    },
  ],
};

const force = (
  id: string,
  name: string,
  short: string,
  usualKip: readonly [number, number],
  reference: Measure['reference'],
): Measure => ({
  kind: 'measure',
  id,
  name,
  short,
  subject: 'vehicle',
  slots: [],
  dimension: 'force',
  bareUnit: { us: 'kip', metric: 'kN' },
  possible: [0, kips(300)],
  usual: [kips(usualKip[0]), kips(usualKip[1])],
  defaultResolution: { halfWidth: kips(1), source: 'data sheet to 1–2 kip; common practice, no source' },
  reference,
});

const notch = (id: string, name: string, short: string): Count => ({
  kind: 'count',
  id,
  name,
  short,
  subject: 'vehicle',
  slots: [],
  possible: [0, 8],
});

export const locomotiveGroup: QuantityGroup = {
  id: 'locomotiveRating',
  name: 'Locomotive rating',
  screen: 'train',
  subject: 'vehicle',
  howTo: {
    take: 'From the locomotive’s data sheet: continuous tractive effort and the speed at which it is given, and the largest dynamic-brake force. Enter them for every locomotive on line, wherever in the train it stood. Say how each was worked: with the recording one, by itself (a remote or manned unit with a throttle of its own: enter its notch at the POD, from its own recorder), or not at all.',
    why: 'With throttle and speed they give the pull at the drawbar, and with the dynamic brake the push, from which the coupler forces along the train follow.',
    bearsOn: ['inTrainForce'],
    spoiledBy: 'Ratings of another model; a unit that was isolated or cut out; wheel slip.',
    figure: 'couplerForces',
  },
  quantities: [
    force('tractiveEffortRated', 'Continuous tractive effort', 'Tractive effort', [30, 180], {
      low: kips(50),
      high: kips(170),
      source: 'four- and six-axle road locomotives; engineering judgement',
    }),
    {
      kind: 'measure',
      id: 'tractiveEffortSpeed',
      name: 'Speed of the continuous tractive effort',
      short: 'At speed',
      subject: 'vehicle',
      slots: [],
      dimension: 'speed',
      bareUnit: { us: 'mph', metric: 'km/h' },
      possible: [mph(2), mph(60)],
      usual: [mph(6), mph(20)],
      defaultResolution: {
        halfWidth: mph(0.1),
        source: 'data sheet to 0.1 mph; common practice, no source',
      },
      reference: { low: mph(8), high: mph(14), source: 'road locomotives; engineering judgement' },
    },
    force('dynamicBrakeFull', 'Largest dynamic-brake force', 'Dynamic brake', [20, 110], {
      low: kips(35),
      high: kips(100),
      source: 'four- and six-axle road locomotives; engineering judgement',
    }),
    {
      kind: 'choice',
      id: 'locomotiveControl',
      name: 'How the locomotive was worked',
      short: 'Worked',
      subject: 'vehicle',
      slots: [],
      choices: [
        { id: 'asRecorded', label: 'With the recording locomotive, in its notch' },
        { id: 'byItself', label: 'By itself, in the notch entered here' },
        { id: 'isolated', label: 'Isolated, shut down or dead in tow' },
      ],
    },
    notch('ownThrottle', 'Own throttle notch at the POD, when worked by itself', 'Own throttle'),
    notch(
      'ownDynamicBrake',
      'Own dynamic-brake notch at the POD, when worked by itself',
      'Own dynamic brake',
    ),
  ],
};

export const ladingGroup: QuantityGroup = {
  id: 'ladingPlace',
  name: 'Where the weight sits',
  screen: 'train',
  subject: 'vehicle',
  howTo: {
    take: 'Height of the centre of gravity above the rail from the equipment drawing and the lading. How far the lading lay off the middle from scale weights of each side, or by measuring it where it has not moved: to the right of travel positive.',
    why: 'A high or shifted load moves weight from one rail to the other on a curve.',
    bearsOn: ['wheelClimb', 'overspeed', 'loadShift', 'harmonicRoll'],
    spoiledBy: 'Lading that moved in the derailment.',
    figure: 'vehicleLengths',
  },
  quantities: [
    crossLength('vehicle', {
      id: 'gravityCentreHeight',
      name: 'Height of the centre of gravity above the rail',
      short: 'Centre height',
      possibleIn: [20, 140],
      usualIn: [40, 100],
      referenceIn: [60, 98],
      referenceSource: 'empty, low, to loaded, high cube; engineering judgement',
      resolution: { halfWidth: 50.8, source: 'drawing and lading, to 4 in; engineering judgement' },
    }),
    crossLength('vehicle', {
      id: 'ladingOffset',
      name: 'Centre of gravity off the middle, right positive',
      short: 'Off the middle',
      possibleIn: [-30, 30],
      usualIn: [-6, 6],
      referenceIn: [-2, 2],
      referenceSource: 'evenly loaded within 2 in; engineering judgement',
      resolution: { halfWidth: 12.7, source: 'scale weights of each side, to 1/2 in; engineering judgement' },
    }),
  ],
};

import type { QuantityGroup } from '../quantity';
import { crossLength, degrees, mph } from './build';

const TEMPERATURE = {
  kind: 'measure',
  subject: 'case',
  slots: [],
  dimension: 'temperature',
  bareUnit: { us: '°F', metric: '°C' },
  possible: [-60, 75],
  usual: [-40, 65],
  defaultResolution: { halfWidth: 0.5, source: 'thermometer read to 1 °C; common practice, no source' },
} as const;

const SPEED = {
  kind: 'measure',
  subject: 'case',
  slots: [],
  dimension: 'speed',
  bareUnit: { us: 'mph', metric: 'km/h' },
  possible: [0, mph(180)],
  usual: [0, mph(80)],
} as const;

export const conditionsGroup: QuantityGroup = {
  id: 'conditions',
  name: 'Speed and temperature',
  screen: 'scene',
  subject: 'case',
  howTo: {
    take: 'Take the authorised speed from the timetable, bulletins and signals in force. Give the speed at the derailment as reported and say by whom in the note; the recorder import gives its own. Hold the thermometer on the shaded web of the rail until it stops moving.',
    why: 'Speed sets the unbalance on the curve. Rail temperature against the temperature it was laid at tells whether heat could have moved the track.',
    bearsOn: ['wheelClimb', 'trackBuckle', 'overspeed'],
    spoiledBy:
      'A reading of the rail after it was cut or moved. A speed read from a recorder whose wheel diameter was never set.',
    figure: 'railThermometer',
  },
  quantities: [
    {
      ...SPEED,
      id: 'authorisedSpeed',
      name: 'Authorised speed',
      short: 'Authorised',
      defaultResolution: { halfWidth: 0, source: 'an instruction, not a measurement' },
      reference: { low: mph(10), high: mph(60), source: 'ordinary freight speeds; engineering judgement' },
    },
    {
      ...SPEED,
      id: 'speedAtPod',
      name: 'Speed at the POD',
      short: 'At the POD',
      defaultResolution: {
        halfWidth: mph(1),
        source: 'speed indicator read to 1–2 mph; common practice, no source',
      },
      reference: { low: mph(5), high: mph(60), source: 'ordinary freight speeds; engineering judgement' },
    },
    {
      ...TEMPERATURE,
      id: 'airTemperature',
      name: 'Air temperature',
      short: 'Air',
      reference: { low: -20, high: 35, source: 'ordinary weather; engineering judgement' },
    },
    {
      ...TEMPERATURE,
      id: 'railTemperature',
      name: 'Rail temperature',
      short: 'Rail',
      reference: { low: -20, high: 50, source: 'ordinary weather; engineering judgement' },
    },
    {
      ...TEMPERATURE,
      id: 'railNeutralTemperature',
      name: 'Rail neutral temperature, from records',
      short: 'Neutral',
      reference: { low: 10, high: 45, source: 'engineering judgement' },
    },
  ],
};

export const curveDesignGroup: QuantityGroup = {
  id: 'curveDesign',
  name: 'Curve as designed',
  screen: 'track',
  subject: 'case',
  howTo: {
    take: 'Copy the degree of curve and the designed elevation from the track chart or curve list, and say in the note which edition. Enter a qualified cant deficiency only where the equipment is qualified for more than the ordinary 3 in.',
    why: 'What was measured is compared with what was meant to be there; the records may also be wrong.',
    bearsOn: ['wheelClimb', 'overspeed'],
    spoiledBy: 'Using the records in place of a measurement.',
    figure: 'curveDesign',
  },
  quantities: [
    {
      kind: 'measure',
      id: 'designCurvature',
      name: 'Curvature from records',
      short: 'Curvature',
      subject: 'case',
      slots: [],
      dimension: 'curvature',
      bareUnit: { us: '°curve', metric: 'm radius' },
      possible: [-1 / 30, 1 / 30],
      usual: [-1 / 90, 1 / 90],
      defaultResolution: {
        halfWidth: degrees(0.05) / 30.48,
        source: 'records give 0.1 degree; common practice, no source',
      },
      reference: { low: 0, high: 1 / 110, source: 'tangent to sharp curve; engineering judgement' },
    },
    crossLength('case', {
      id: 'designElevation',
      name: 'Elevation from records',
      short: 'Elevation',
      possibleIn: [0, 9],
      usualIn: [0, 7],
      referenceIn: [0, 6],
      referenceSource: 'ordinary curve elevations; engineering judgement',
    }),
    crossLength('case', {
      id: 'qualifiedUnbalance',
      name: 'Cant deficiency the equipment is qualified for',
      short: 'Qualified for',
      possibleIn: [0, 12],
      usualIn: [3, 7],
      referenceIn: [3, 3],
      referenceSource: '49 CFR 213.57: all vehicles are considered qualified for 3 in',
      resolution: { halfWidth: 0, source: 'an approval, not a measurement' },
    }),
  ],
};

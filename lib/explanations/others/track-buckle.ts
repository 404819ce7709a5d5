import type { OtherExplanation } from '../explanation';

export const trackBuckle: OtherExplanation = {
  id: 'trackBuckle',
  name: 'Track buckle (heat)',
  description: 'The track shifted sideways under heat, before or under the train.',
  speaksFor: [
    'The whole track shifted sideways, ties and all, in one or more waves',
    'Rail hotter than the temperature it was laid at',
    'Ballast lately disturbed, rail lately cut or replaced',
    'A crew report of bad line ahead',
  ],
  toExclude: [
    'Measure rail temperature at the time of day',
    'Get the neutral temperature and the record of rail work',
    'Read the buckle screen: compression of both rails from heat, and its push in the curve',
    'Look at the line and the ballast shoulders beyond the damage',
  ],
  observations: ['obsLateralShift'],
  findings: ['railCompression', 'buckleCurvePush'],
  readings: ['railTemperature', 'railNeutralTemperature', 'airTemperature'],
};

import type { QuantityGroup } from '../quantity';
import { ALONG, feet } from './build';

export const sheetReadingGroup: QuantityGroup = {
  id: 'sheetReading',
  name: 'How the sheet was read',
  screen: 'track',
  subject: 'case',
  howTo: {
    take: 'Say once for the whole sheet what each station does not repeat: the length of the cord when it was neither 62 nor 31 ft, the rail on which line was taken on tangent, and which way the crew faced. If the sheet turns out to have been walked against the direction of travel, say so here: positions, left and right are turned round wherever they are used, and what was entered stays.',
    why: 'Curvature hangs on the length of the chord; left, right and before the POD hang on the direction of travel.',
    bearsOn: ['wheelClimb', 'wideGauge', 'railRollover'],
    spoiledBy: 'Part of the sheet read one way and part the other: enter the second part turned round.',
    figure: 'stringLine',
  },
  quantities: [
    {
      kind: 'measure',
      id: 'otherChord',
      name: 'Length of the other chord',
      short: 'Other chord',
      subject: 'case',
      slots: [],
      dimension: 'alongTrack',
      bareUnit: ALONG,
      possible: [feet(3), feet(330)],
      usual: [feet(10), feet(130)],
      defaultResolution: {
        halfWidth: feet(0.02),
        source: 'cord measured off on the rail with a tape to 1/4 in; engineering judgement',
      },
      reference: { low: feet(20), high: feet(124), source: 'chords in use; engineering judgement' },
    },
    {
      kind: 'choice',
      id: 'lineRail',
      name: 'Line taken on tangent on',
      short: 'Line rail',
      subject: 'case',
      slots: [],
      choices: [
        { id: 'left', label: 'The left rail' },
        { id: 'right', label: 'The right rail' },
      ],
    },
    {
      kind: 'choice',
      id: 'sheetFacing',
      name: 'Positions, left and right were read facing',
      short: 'Facing',
      subject: 'case',
      slots: [],
      choices: [
        { id: 'travel', label: 'The direction of travel' },
        { id: 'against', label: 'Against the direction of travel' },
      ],
    },
  ],
};

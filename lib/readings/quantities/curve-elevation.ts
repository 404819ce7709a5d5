import type { QuantityGroup } from '../quantity';
import { question } from './build';

export const curveElevationGroup: QuantityGroup = {
  id: 'curveElevation',
  name: 'How the elevation runs',
  screen: 'track',
  subject: 'case',
  howTo: {
    take: 'Look along the crosslevel of the whole curve, spirals included, and answer from the readings. Say in the note which stations show it, and what stood in the way where elevation or spiral is short.',
    why: 'The rules want the full elevation throughout a curve, and its runoff even and along the spirals, or name what does not permit it (49 CFR 213.59). No figure is given beyond those on track surface, which are compared by themselves.',
    bearsOn: ['wheelClimb', 'harmonicRoll'],
    spoiledBy: 'Crosslevel read on a part of the curve alone, or where the derailment disturbed the track.',
    figure: 'curveDesign',
  },
  quantities: [
    question('case', 'elevationThroughout', 'Full elevation throughout the curve', 'Elevation kept', [
      ['yes', 'Yes'],
      ['conditions', 'No, physical conditions do not permit it'],
      ['no', 'No'],
      ['couldNotTell', 'Could not tell'],
    ]),
    question('case', 'elevationRunoff', 'Runoff of the elevation', 'Runoff', [
      ['even', 'Even, along the full length of the spirals at least'],
      ['onTangent', 'Even, partly on tangent for want of room'],
      ['uneven', 'Uneven'],
      ['short', 'Shorter than the spirals'],
      ['couldNotTell', 'Could not tell'],
    ]),
  ],
};

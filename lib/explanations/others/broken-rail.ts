import type { OtherExplanation } from '../explanation';

export const brokenRail: OtherExplanation = {
  id: 'brokenRail',
  name: 'Broken rail or joint',
  description: 'A rail, weld or joint parted under the train or before it.',
  speaksFor: [
    'A break with a dark, rusted or fatigue-marked part of its surface',
    'Batter on the receiving end: wheels crossed the gap',
    'Nicks that match on the treads of wheels ahead of the first derailed',
    'A track circuit that dropped before the train',
  ],
  toExclude: [
    'Recover every piece and lay them end to end',
    'Look for an internal defect and an old crack surface',
    'Look at the treads of the wheels ahead',
    'Absence of batter proves nothing: a gap may open under the last car, or a piece be missing',
  ],
  observations: ['obsOldBreak', 'obsReceivingBatter', 'obsTreadNicks'],
  findings: [],
  readings: ['railTemperature', 'defectLength'],
};

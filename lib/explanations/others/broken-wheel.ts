import type { OtherExplanation } from '../explanation';

export const brokenWheel: OtherExplanation = {
  id: 'brokenWheel',
  name: 'Broken wheel, axle or journal',
  description: 'A wheel, axle or bearing failed and let the car down.',
  speaksFor: [
    'A wheel, axle or journal with an old crack surface or burnt off',
    'Hot-bearing or wheel-impact alarms on the way',
    'Marks on ties well before the pile, of one wheel',
  ],
  toExclude: [
    'Account for every wheel, axle and bearing of the first derailed car and its neighbours',
    'Walk back for pieces and marks to the last detector passed',
    'Tell old fracture surfaces from fresh',
  ],
  observations: ['obsWheelBroken'],
  findings: [],
  readings: ['defectLength', 'defectWidth', 'rimThicknessCheck'],
};

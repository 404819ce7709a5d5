import type { OtherExplanation } from '../explanation';

export const obstruction: OtherExplanation = {
  id: 'obstruction',
  name: 'Obstruction',
  description: 'A wheel ran onto something on the rail.',
  speaksFor: ['Pieces of something run over', 'Its marks on rail head, pilot or wheels', 'A crew report'],
  toExclude: [
    'Search both sides well back of the first mark',
    'Look at the pilot and leading wheels',
    'Ask the crew, and who worked there last',
  ],
  observations: ['obsObstruction'],
  findings: [],
  readings: [],
};

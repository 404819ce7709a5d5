import { northAmericanRail } from './rail-shape';

export const rail133RE = northAmericanRail({
  sectionId: '133RE',
  crownIn: 10,
  cornerIn: 3 / 8,
  crownHalfWidthIn: 0.65,
  headDepthIn: 1 + 15 / 16,
  baseDepthIn: 1 + 3 / 16,
  webIn: 26.83,
  notes: [
    'The crown ends where the corner runs into the side by the gauge point, 5/8 in below the top; the hollow of the web makes up the published weight.',
    'The depth of the head (1 15/16 in) is from memory.',
  ],
});

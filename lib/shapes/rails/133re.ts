import { northAmericanRail } from './rail-shape';

export const rail133RE = northAmericanRail({
  sectionId: '133RE',
  crownIn: 10,
  cornerIn: 3 / 8,
  crownHalfWidthIn: 0.42,
  headDepthIn: 1 + 15 / 16,
  baseDepthIn: 1 + 3 / 16,
  webIn: 12.5,
  notes: ['The depth of the head (1 15/16 in) is from memory.'],
});

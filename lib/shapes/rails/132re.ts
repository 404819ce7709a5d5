import { northAmericanRail } from './rail-shape';

export const rail132RE = northAmericanRail({
  sectionId: '132RE',
  crownIn: 10,
  cornerIn: 3 / 8,
  crownHalfWidthIn: 0.677,
  headDepthIn: 1 + 3 / 4,
  baseDepthIn: 1 + 3 / 16,
  webIn: 11.07,
  notes: [],
});

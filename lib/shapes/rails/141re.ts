import { northAmericanRail } from './rail-shape';

export const rail141RE = northAmericanRail({
  sectionId: '141RE',
  crownIn: 8,
  cornerIn: 9 / 16,
  crownHalfWidthIn: 0.375,
  headDepthIn: 2 + 5 / 32,
  baseDepthIn: 1 + 3 / 16,
  webIn: 12.87,
  notes: [],
});

import { northAmericanRail } from './rail-shape';

export const rail119RE = northAmericanRail({
  sectionId: '119RE',
  crownIn: 8,
  cornerIn: 3 / 8,
  crownHalfWidthIn: 0.502,
  headDepthIn: 1 + 7 / 8,
  baseDepthIn: 1 + 1 / 8,
  webIn: 12.87,
  notes: [],
});

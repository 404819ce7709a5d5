import { northAmericanRail } from './rail-shape';

export const rail136RE = northAmericanRail({
  sectionId: '136RE',
  crownIn: 8,
  cornerIn: 9 / 16,
  crownHalfWidthIn: 0.5,
  headDepthIn: 1 + 15 / 16,
  baseDepthIn: 1 + 3 / 16,
  webIn: 12.87,
  notes: ['Crown 8 in, as rolled since about 2010.'],
});

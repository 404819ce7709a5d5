import { northAmericanRail } from './rail-shape';

export const rail136RE = northAmericanRail({
  sectionId: '136RE',
  crownIn: 8,
  cornerIn: 9 / 16,
  crownHalfWidthIn: 0.78,
  headDepthIn: 1 + 15 / 16,
  baseDepthIn: 1 + 3 / 16,
  webIn: 17.9,
  notes: [
    'The crown ends where the corner runs into the side by the gauge point, 5/8 in below the top; the hollow of the web makes up the published weight.',
    'Crown 8 in, as rolled since about 2010.',
  ],
});

import { northAmericanRail } from './rail-shape';

export const rail141RE = northAmericanRail({
  sectionId: '141RE',
  crownIn: 8,
  cornerIn: 9 / 16,
  crownHalfWidthIn: 0.85,
  headDepthIn: 2 + 5 / 32,
  baseDepthIn: 1 + 3 / 16,
  webIn: 60,
  notes: [
    'The crown ends where the corner runs into the side by the gauge point, 5/8 in below the top; the hollow of the web makes up the published weight. With these radii the section comes out about 0.6 % heavier than published: do not rely on its corners.',
  ],
});

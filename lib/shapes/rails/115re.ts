import { northAmericanRail } from './rail-shape';

export const rail115RE = northAmericanRail({
  sectionId: '115RE',
  crownIn: 8,
  cornerIn: 3 / 8,
  crownHalfWidthIn: 0.548,
  headDepthIn: 1 + 11 / 16,
  baseDepthIn: 1 + 1 / 8,
  webIn: 12.87,
  notes: [
    'Crown 8 in, as rolled since about 2010; the earlier crown of 10 in is 0.02 mm higher 10 mm from the axis.',
  ],
});

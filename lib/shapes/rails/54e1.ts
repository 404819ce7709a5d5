import { europeanRail } from './rail-shape';

export const rail54E1 = europeanRail({
  sectionId: '54E1',
  crownHalfWidthMm: 10.012,
  widthAtMm: 14.1,
  headDepthMm: 49.4,
  baseDepthMm: 30.2,
  toeMm: 11,
  filletMm: 12,
  source: {
    text: 'EN 13674-1:2011, rail 54E1: overall sizes; head R 300, R 80, R 13, side 1:20',
    status: 'from memory',
  },
  notes: [
    'Overall sizes are published; crown R 300 to 10.012 mm from the axis, R 80 to 24.8635 mm, R 13 into a side of 1:20 and half-width 35 mm at 14.1 mm below the top are from memory and close on each other.',
  ],
});

import { europeanRail } from './rail-shape';

export const rail60E1 = europeanRail({
  sectionId: '60E1',
  crownHalfWidthMm: 10.228,
  widthAtMm: 14.3,
  headDepthMm: 51,
  baseDepthMm: 31.5,
  toeMm: 11.5,
  filletMm: 13,
  source: { text: 'EN 13674-1:2011, rail 60E1: head R 300, R 80, R 13, side 1:20', status: 'published' },
  notes: [
    'Crown R 300 to 10.228 mm from the axis, R 80 to 26.0265 mm, R 13 into a side of 1:20; half-width 36 mm at 14.3 mm below the top.',
  ],
});

import { across, leader, upright } from '../pieces/dimension';
import { area, box, line, pen, words, type Point } from '../pieces/draw';
import { sketch } from './sketch';

const SPOT: readonly Point[] = [
  [120, 92],
  [134, 80],
  [156, 76],
  [178, 82],
  [196, 80],
  [206, 92],
  [202, 108],
  [184, 116],
  [160, 112],
  [140, 118],
  [126, 108],
];
const PITS: readonly Point[] = [
  [142, 96],
  [158, 90],
  [172, 100],
  [188, 94],
  [152, 106],
];

export const treadDefect = sketch(
  'Size of a tread defect',
  'The tread from below, flange at the bottom. A spot is measured along the tread and across it with a flexible rule, and photographed with the rule in the picture.',
  [
    box(14, 52, 292, 92, { fill: 'paper', stroke: pen('wheel', 1.4) }),
    box(14, 128, 292, 16, { fill: 'shade', stroke: pen('wheel', 1.2) }),
    words(22, 140, 'flange'),
    words(22, 68, 'field-side edge', { ink: 'faint' }),
    area(SPOT, 'shade', pen('mark', 1.8)),
    ...PITS.map(([cx, cy]) => ({ type: 'circle' as const, cx, cy, r: 2.2, fill: 'mark' as const })),
    ...across(120, 206, 38, 90, 90, 'along the tread', { beside: 'before' }),
    ...upright(76, 118, 226, 160, 142, 'across', {}),
    box(96, 154, 150, 12, { fill: 'paper', stroke: pen('ink', 1) }),
    ...Array.from({ length: 14 }, (_, i) =>
      line([106 + i * 10, 154], [106 + i * 10, i % 2 === 0 ? 161 : 158], pen('ink', 0.8)),
    ),
    ...leader([262, 160], [246, 160], 'rule'),
    words(160, 188, 'is the metal in it fresh or old?', { anchor: 'middle', ink: 'faint' }),
  ],
);

import { arrow } from '../pieces/arrow';
import { across } from '../pieces/dimension';
import { area, line, open, pen, words, type Point } from '../pieces/draw';
import { railPlan } from '../pieces/rail-plan';
import { tieAbove } from '../pieces/track-parts';
import type { Shape } from '../shapes';
import { sketch } from './sketch';

const walker = (x: number, y: number): Shape[] => [
  { type: 'circle', cx: x, cy: y - 22, r: 4, stroke: pen('ink', 1.4) },
  open(
    [
      [x, y - 18],
      [x, y - 8],
    ] as Point[],
    pen('ink', 1.6),
  ),
  open(
    [
      [x - 6, y],
      [x, y - 8],
      [x + 5, y],
    ] as Point[],
    pen('ink', 1.6),
  ),
  open(
    [
      [x - 7, y - 11],
      [x, y - 15],
      [x + 5, y - 10],
    ] as Point[],
    pen('ink', 1.6),
  ),
];
const wheel: readonly Point[] = [
  [276, 62],
  [306, 70],
  [304, 78],
  [274, 70],
];

export const walkBack = sketch(
  'Walking back to the first mark',
  'Track from above. From the first derailed wheel the searcher walks back along both rails, past the tie marks, to the first mark, and then on well beyond it, looking for an earlier one.',
  [
    ...Array.from({ length: 17 }, (_, i) => tieAbove(14 + i * 18, 66, 8, 66)).flat(),
    ...railPlan(10, 310, 76, 9, 'bottom'),
    ...railPlan(10, 310, 114, 9, 'top'),
    ...Array.from({ length: 6 }, (_, i) =>
      line([176 + i * 18, 68 - i], [184 + i * 18, 70 - i], pen('mark', 2.4)),
    ),
    line([132, 83], [164, 77], pen('mark', 2.8)),
    area(wheel, 'paper', pen('wheel', 1.5)),
    words(306, 52, 'first derailed wheel', { anchor: 'end' }),
    line([132, 62], [132, 142], pen('mark', 1.4, [9, 3, 2, 3])),
    words(132, 56, 'first mark', { anchor: 'middle', bold: true }),
    ...walker(92, 54),
    ...arrow([276, 24], [112, 24], { width: 1.6 }),
    words(190, 16, 'walk back', { anchor: 'middle' }),
    ...across(20, 132, 154, 126, 126, 'search on, both rails', { beside: 'after' }),
    ...arrow([206, 180], [306, 180], { width: 1.4, ink: 'faint' }),
    words(202, 184, 'train ran this way', { anchor: 'end', ink: 'faint' }),
  ],
);

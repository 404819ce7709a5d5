import { across, leader, upright } from '../pieces/dimension';
import { place, type Placing } from '../pieces/curve';
import { area, line, pen, words, type Point } from '../pieces/draw';
import { railShape, SKETCH_RAIL } from '../pieces/rail-section';
import { sketch } from './sketch';

const SCALE = 0.62;
const STOCK: Placing = { at: [222, 58], scale: SCALE };
const FACE = STOCK.at[0] + (SKETCH_RAIL.headWidthMm / 2) * SCALE;
const TIP: readonly Point[] = [
  [0, 0],
  [3, -2],
  [6, 0],
  [15, 60],
  [22, 120],
  [0, 120],
];
const TIP_LEFT = FACE + 8;
const TIP_TOP = 58 + 13;

export const pointAndStockRail = sketch(
  'Point against its stock rail',
  'Left: the closed point from above, standing off the stock rail by the gap, with a chip behind its tip. Right: a section at the tip: gap, thickness 5/8 in below the top of the stock rail, and depth of the tip below that top.',
  [
    words(14, 18, 'from above', { ink: 'faint' }),
    area(
      [
        [14, 56],
        [156, 56],
        [156, 78],
        [14, 78],
      ],
      'shade',
      pen('rail', 1.2),
    ),
    line([14, 78], [156, 78], pen('rail', 2)),
    words(20, 71, 'stock rail'),
    area(
      [
        [44, 87],
        [156, 82],
        [156, 112],
        [76, 95],
        [70, 91],
        [60, 93],
      ],
      'paper',
      pen('ink', 1.4),
    ),
    ...upright(78, 87, 38, null, 44, '', {}),
    words(14, 112, 'gap'),
    ...leader([86, 132], [68, 92], 'chip: length, depth', { anchor: 'middle' }),
    ...across(44, 76, 116, 90, 96, '', {}),
    words(150, 126, 'point', { anchor: 'end' }),
    line([170, 22], [170, 182], pen('faint', 0.8)),
    words(178, 18, 'section at the tip', { ink: 'faint' }),
    railShape(STOCK),
    area(place(TIP, { at: [TIP_LEFT, TIP_TOP], scale: SCALE }), 'paper', pen('ink', 1.4)),
    line([FACE - 10, 58], [312, 58], pen('faint', 0.8, [4, 2])),
    ...upright(58, TIP_TOP - 1.5, 292, null, TIP_LEFT + 5, '', {}),
    words(316, 40, 'below top', { anchor: 'end' }),
    line([292, 44], [292, 46], pen('ink', 0.7)),
    ...leader([284, 112], [TIP_LEFT + 6, TIP_TOP + 14], 'how', { anchor: 'start' }),
    words(287, 130, 'thick', {}),
    words(80, 162, 'photograph lock and rods', { anchor: 'middle', ink: 'faint' }),
    words(80, 176, 'before anyone throws it', { anchor: 'middle', ink: 'faint' }),
  ],
);

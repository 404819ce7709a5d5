import { angleBetween, leader, upright } from '../pieces/dimension';
import { place, type Placing } from '../pieces/curve';
import { area, line, pen, words, type Point } from '../pieces/draw';
import { headOutline, SKETCH_RAIL } from '../pieces/rail-section';
import { sketch } from './sketch';

const TIP_X = 36;
const FOOT = 50;
const GAUGE_LINE = 54;
const BACK = 62;
/** Gauge side of the point from above, at so far behind the tip. */
const side = (x: number): number => BACK + 4 + (x - TIP_X) * 0.1;
const END_X = 306;
const READ_AT = TIP_X + 3 * FOOT;

const SCALE = 0.5;
const STOCK: Placing = { at: [52, 124], scale: SCALE };
const FACE = STOCK.at[0] + (SKETCH_RAIL.headWidthMm / 2) * SCALE;
const TOP = 124 + 12;
const EDGE = FACE + 6 + 16;
const BOTTOM = 192;
const LEAN = 13;
const POINT: readonly Point[] = [
  [0, 0],
  [16 / SCALE, 0],
  [(16 + LEAN) / SCALE, (BOTTOM - TOP) / SCALE],
  [0, (BOTTOM - TOP) / SCALE],
];

export const alongPoint = sketch(
  'Reading a point along its length',
  'Above: stock rail and closed point from above, chalked every foot from the tip back. At each chalk mark: the gap between them, and the thickness of the point without the gap. Below: a section at one mark: how far the top of the point lies below the top of the stock rail, and the slope of its gauge side.',
  [
    area(
      [
        [8, 32],
        [312, 32],
        [312, GAUGE_LINE],
        [8, GAUGE_LINE],
      ],
      'shade',
      pen('rail', 1.2),
    ),
    line([8, GAUGE_LINE], [312, GAUGE_LINE], pen('rail', 2)),
    area(
      [
        [TIP_X, BACK],
        [END_X, BACK],
        [END_X, side(END_X)],
        [TIP_X, side(TIP_X)],
      ],
      'paper',
      pen('ink', 1.4),
    ),
    ...Array.from({ length: 6 }, (_, i) => {
      const x = TIP_X + i * FOOT;
      return [
        line([x, 23], [x, 36], pen('mark', i === 3 ? 2.4 : 1.6)),
        line([x, GAUGE_LINE - 6], [x, side(x)], pen('mark', i === 3 ? 2 : 1.4, [5, 2])),
        words(x, 18, i === 0 ? 'tip' : `${i} ft`, { anchor: 'middle', bold: i === 3 }),
      ];
    }).flat(),
    words(41, 47, 'stock rail'),
    ...upright(GAUGE_LINE, BACK, READ_AT - 12, null, null, 'gap', { beside: 'before', backed: true }),
    ...upright(BACK, side(READ_AT), READ_AT + 12, null, null, '', {}),
    ...leader([214, 102], [READ_AT + 12, 72], 'thickness'),
    words(258, 80, 'point', { anchor: 'middle' }),

    words(12, 112, 'section at 3 ft', { ink: 'faint' }),
    area(place(headOutline(SKETCH_RAIL), STOCK), 'shade', pen('rail', 1.3)),
    area(place(POINT, { at: [FACE + 6, TOP], scale: SCALE }), 'paper', pen('ink', 1.4)),
    line([FACE - 6, 124], [EDGE + 56, 124], pen('faint', 0.8, [4, 2])),
    ...upright(124, TOP, EDGE + 40, null, EDGE + 2, 'below top', {}),
    ...angleBetween(
      [EDGE + LEAN, BOTTOM],
      20,
      -Math.PI / 2 - Math.atan2(LEAN, BOTTOM - TOP),
      -Math.PI,
      '',
      [0, 0],
    ),
    ...leader([EDGE + 44, 172], [EDGE - 3, 176], 'slope of the gauge side'),
  ],
);

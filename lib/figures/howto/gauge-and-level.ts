import { across, leader, upright } from '../pieces/dimension';
import { area, box, line, pen, words, type Point } from '../pieces/draw';
import { railShape, SKETCH_RAIL } from '../pieces/rail-section';
import { sketch } from './sketch';

const SCALE = 0.36;
const LEFT: Point = [70, 62];
const RIGHT: Point = [250, 74];
const HALF_HEAD = (SKETCH_RAIL.headWidthMm / 2) * SCALE;
const GAUGE_DEPTH = 15.875 * SCALE;

export const gaugeAndLevel = sketch(
  'Gauge and crosslevel',
  'Track in section. Gauge is measured between the heads 5/8 in below their tops. The level board lies on both heads; the gap under it at the lower rail is the crosslevel.',
  [
    area(
      [
        [24, 126],
        [296, 144],
        [296, 164],
        [24, 146],
      ],
      'shade',
      pen('faint', 1),
      0.55,
    ),
    railShape({ at: LEFT, scale: SCALE }),
    railShape({ at: RIGHT, scale: SCALE }),
    box(44, 48, 232, 14, { fill: 'paper', stroke: pen('ink', 1.3) }),
    box(146, 51, 28, 8, { fill: 'paper', stroke: pen('seriesC', 1.2), radius: 4 }),
    { type: 'circle', cx: 160, cy: 55, r: 2.8, fill: 'seriesC' },
    words(160, 40, 'level board', { anchor: 'middle' }),
    ...upright(62, 74, 286, 276, RIGHT[0] + HALF_HEAD, '', {}),
    words(308, 34, 'crosslevel', { anchor: 'end', bold: true }),
    line([286, 38], [286, 46], pen('ink', 0.7)),
    ...across(
      LEFT[0] + HALF_HEAD,
      RIGHT[0] - HALF_HEAD,
      104,
      LEFT[1] + GAUGE_DEPTH,
      RIGHT[1] + GAUGE_DEPTH,
      'gauge',
    ),
    ...leader([118, 84], [LEFT[0] + HALF_HEAD, LEFT[1] + GAUGE_DEPTH], '5/8 in below top'),
    words(160, 186, 'square across; leave out lip and flow', { anchor: 'middle', ink: 'faint' }),
  ],
);

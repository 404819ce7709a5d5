import { arc } from '../pieces/curve';
import { across, upright } from '../pieces/dimension';
import { line, open, pen, words, type Point } from '../pieces/draw';
import { sketch } from './sketch';

const LEFT: Point = [28, 70];
const RIGHT: Point = [292, 70];
const SAG = 34;
const HALF = (RIGHT[0] - LEFT[0]) / 2;
const RADIUS = (HALF * HALF + SAG * SAG) / (2 * SAG);
const CENTRE: Point = [160, LEFT[1] - SAG + RADIUS];
const REACH = Math.asin(HALF / RADIUS);
const outline = (radius: number): Point[] =>
  arc(CENTRE, radius, -Math.PI / 2 - REACH * 1.08, -Math.PI / 2 + REACH * 1.08);

export const stringLine = sketch(
  'String line and profile',
  'Above: the cord is stretched along the gauge face of the outer rail with its ends 31 ft each side of the station; the offset is read at the middle. Below: the cord along the top of the rail; the gap at the middle is the profile reading.',
  [
    open(outline(RADIUS), pen('rail', 2.4)),
    open(outline(RADIUS + 8), pen('rail', 1)),
    line(LEFT, RIGHT, pen('mark', 1.4)),
    ...[LEFT, RIGHT].map(([cx, cy]) => ({ type: 'circle' as const, cx, cy, r: 3, fill: 'mark' as const })),
    ...upright(LEFT[1] - SAG, LEFT[1], 160, null, null, 'offset', {}),
    ...across(LEFT[0], 160, 92, 70, 70, '31 ft'),
    ...across(160, RIGHT[0], 92, 70, 70, '31 ft'),
    words(160, 18, 'outer rail, gauge face', { anchor: 'middle' }),
    line([14, 116], [306, 116], pen('faint', 0.6)),
    open(
      [
        [28, 150],
        [90, 152],
        [130, 160],
        [160, 164],
        [190, 160],
        [230, 152],
        [292, 150],
      ],
      pen('rail', 3),
    ),
    line([28, 148], [292, 148], pen('mark', 1.4)),
    ...upright(148, 162, 160, null, null, '', {}),
    words(160, 131, 'profile: gap under the cord', { anchor: 'middle' }),
    words(160, 190, 'top of each rail; positive when the middle is low', { anchor: 'middle', ink: 'faint' }),
  ],
);

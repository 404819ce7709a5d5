import { across } from '../pieces/dimension';
import { area, box, line, pen, words, type Point } from '../pieces/draw';
import { sketch } from './sketch';

const wheel = (x: number, side: 1 | -1): Point[] => [
  [x, 32],
  [x + side * 5, 28],
  [x + side * 8, 36],
  [x + side * 26, 35],
  [x + side * 26, 50],
  [x + side * 14, 54],
  [x + side * 12, 118],
  [x + side * 26, 122],
  [x + side * 26, 137],
  [x + side * 8, 136],
  [x + side * 5, 144],
  [x, 140],
];
const CLOCK: Point = [252, 86];
const RADIUS = 42;
const at = (degrees: number, radius: number): Point => [
  CLOCK[0] + radius * Math.sin((degrees * Math.PI) / 180),
  CLOCK[1] - radius * Math.cos((degrees * Math.PI) / 180),
];

export const backToBackClock = sketch(
  'Back-to-back at three places',
  'Left: a wheelset from the front; the rod measures between the inner faces of the two rims, square to the axle. Right: the three places round the rim, 0 degrees at the top, then 120 and 240.',
  [
    box(20, 78, 152, 16, { fill: 'shade', stroke: pen('wheel', 1.2) }),
    area(wheel(58, -1), 'paper', pen('wheel', 1.5)),
    area(wheel(134, 1), 'paper', pen('wheel', 1.5)),
    line([58, 40], [134, 40], pen('mark', 2.2)),
    ...across(58, 134, 18, 28, 28, ''),
    words(96, 12, 'back-to-back', { anchor: 'middle' }),
    words(96, 54, 'rod', { anchor: 'middle' }),
    words(96, 166, 'inner faces of the rims,', { anchor: 'middle', ink: 'faint' }),
    words(96, 180, 'same height, square', { anchor: 'middle', ink: 'faint' }),
    { type: 'circle', cx: CLOCK[0], cy: CLOCK[1], r: RADIUS, fill: 'paper', stroke: pen('wheel', 1.6) },
    { type: 'circle', cx: CLOCK[0], cy: CLOCK[1], r: RADIUS - 9, stroke: pen('wheel', 0.9) },
    { type: 'circle', cx: CLOCK[0], cy: CLOCK[1], r: 9, fill: 'shade', stroke: pen('wheel', 1.2) },
    ...[0, 120, 240].flatMap((degrees) => [
      line(CLOCK, at(degrees, RADIUS), pen('faint', 0.8, [3, 2])),
      {
        type: 'circle' as const,
        cx: at(degrees, RADIUS - 4.5)[0],
        cy: at(degrees, RADIUS - 4.5)[1],
        r: 3.6,
        fill: 'mark' as const,
      },
    ]),
    words(252, 36, '0° (chalk)', { anchor: 'middle', bold: true }),
    words(298, 128, '120°', { anchor: 'middle', bold: true }),
    words(206, 128, '240°', { anchor: 'middle', bold: true }),
    words(252, 166, 'turn the wheelset,', { anchor: 'middle', ink: 'faint' }),
    words(252, 180, 'or move the rod round', { anchor: 'middle', ink: 'faint' }),
  ],
);

import { arrow } from '../pieces/arrow';
import { leader } from '../pieces/dimension';
import { box, line, pen, words } from '../pieces/draw';
import { railShape, SKETCH_RAIL } from '../pieces/rail-section';
import { groundLine, tieSide } from '../pieces/track-parts';
import type { Shape } from '../shapes';
import { sketch } from './sketch';

const SCALE = 0.68;
const TOP = 34;
const BASE = TOP + SKETCH_RAIL.heightMm * SCALE;
const RAYS = [-0.5, 0, 0.5, 1, 1.5];

const sun: Shape[] = [
  { type: 'circle', cx: 40, cy: 34, r: 12, fill: 'paper', stroke: pen('warn', 1.6) },
  ...RAYS.map((turn) =>
    line(
      [40 + 16 * Math.cos(turn), 34 + 16 * Math.sin(turn)],
      [40 + 24 * Math.cos(turn), 34 + 24 * Math.sin(turn)],
      pen('warn', 1.6),
    ),
  ),
  ...arrow([72, 52], [122, 76], { ink: 'warn' }),
  words(26, 74, 'sun', { ink: 'ink' }),
];

export const railThermometer = sketch(
  'Where to hold the rail thermometer',
  'A rail in section with the sun on its left. The thermometer lies on the shaded side of the web.',
  [
    ...sun,
    ...groundLine(20, 300, 181),
    ...tieSide(70, BASE, 180, 18),
    railShape({ at: [160, TOP], scale: SCALE }),
    box(171, 80, 5, 40, { fill: 'paper', stroke: pen('seriesA', 1.4) }),
    box(172.5, 98, 2, 20, { fill: 'mark' }),
    { type: 'circle', cx: 173.5, cy: 122, r: 4.5, fill: 'mark', stroke: pen('seriesA', 1.2) },
    ...leader([212, 74], [176, 92], 'thermometer'),
    ...leader([212, 136], [168, 136], 'shaded web'),
    ...leader([212, 42], [182, 46], 'not on the head'),
  ],
);

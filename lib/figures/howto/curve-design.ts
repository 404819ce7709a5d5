import { arc } from '../pieces/curve';
import { across, angleBetween, upright } from '../pieces/dimension';
import { area, line, open, pen, words, type Point } from '../pieces/draw';
import { railShape } from '../pieces/rail-section';
import { sketch } from './sketch';

const CENTRE: Point = [84, 196];
const FROM = (-116 * Math.PI) / 180;
const TO = (-64 * Math.PI) / 180;
const RADIUS = 136;
const on = (angle: number, radius: number): Point => [
  CENTRE[0] + radius * Math.cos(angle),
  CENTRE[1] + radius * Math.sin(angle),
];
const TILT = 0.13;
const SECTION: Point = [252, 128];
const at = (x: number): Point => [SECTION[0] + x * Math.cos(TILT), SECTION[1] - x * Math.sin(TILT)];
const LOW = at(-38);
const HIGH = at(38);
const HEAD = 31;

export const curveDesign = sketch(
  'Curve from the records',
  'Left: a curve in plan; the degree of curve is the angle turned in 100 ft. Right: the outer rail stands higher than the inner one by the elevation.',
  [
    open(arc(CENTRE, RADIUS - 5, FROM, TO), pen('rail', 2)),
    open(arc(CENTRE, RADIUS + 5, FROM, TO), pen('rail', 2)),
    line(CENTRE, on(-1.92, RADIUS - 10), pen('faint', 0.9, [5, 3])),
    line(CENTRE, on(-1.22, RADIUS - 10), pen('faint', 0.9, [5, 3])),
    ...angleBetween(CENTRE, 62, -1.92, -1.22, 'of curve', [84, 127], { anchor: 'middle' }),
    words(84, 113, 'degrees', { anchor: 'middle' }),
    words(84, 36, '100 ft', { anchor: 'middle', bold: true }),
    ...across(on(-1.92, RADIUS)[0], on(-1.22, RADIUS)[0], 44, 62, 62, ''),
    words(20, 20, 'plan', { ink: 'faint' }),
    words(186, 20, 'section', { ink: 'faint' }),
    area(
      [at(-66), at(66), [at(66)[0] + 1.3, at(66)[1] + 10], [at(-66)[0] + 1.3, at(-66)[1] + 10]],
      'shade',
      pen('faint', 1),
      0.6,
    ),
    railShape({ at: at(-38), scale: 0.17, turn: -TILT }, { origin: 'base' }),
    railShape({ at: at(38), scale: 0.17, turn: -TILT }, { origin: 'base' }),
    line([LOW[0] - 6, LOW[1] - HEAD], [300, LOW[1] - HEAD], pen('faint', 0.9, [5, 3])),
    ...upright(HIGH[1] - HEAD, LOW[1] - HEAD, 306, HIGH[0] + 6, null, '', {}),
    words(316, 60, 'elevation', { anchor: 'end', bold: true }),
    words(LOW[0], 176, 'inner', { anchor: 'middle' }),
    words(HIGH[0], 176, 'outer', { anchor: 'middle' }),
  ],
);

import { across, angleBetween, upright } from '../pieces/dimension';
import { line, pen, words, type Point } from '../pieces/draw';
import { GAUGE_POINT_MM, SKETCH_WHEEL, wheelShape as outline } from '../pieces/wheel-outline';
import { sketch } from './sketch';

const SCALE = 1.25;
const AT: Point = [72, 104];
const x = (mm: number): number => AT[0] + mm * SCALE;
const y = (mm: number): number => AT[1] + mm * SCALE;
const { flangeThicknessMm: t, flangeHeightMm: h, rimWidthMm: width, rimThicknessMm: rim } = SKETCH_WHEEL;
const FACE: Point = [x(t - 1.2), y(GAUGE_POINT_MM + 3)];
const STEEP = (75 * Math.PI) / 180;

export const wheelShape = sketch(
  'Flange, rim and tread',
  'A wheel in section at the rail: flange thickness 3/8 in above the tread, flange height from the tread to the tip, greatest angle of the flange face with the axle, rim width, rim thickness, and tread hollow as the drop of the running band below the field-side edge.',
  [
    outline({ at: AT, scale: SCALE }, { ...SKETCH_WHEEL, hollowMm: 5 }),
    line([x(t + 22), y(0)], [x(-14), y(0)], pen('faint', 0.8, [5, 3])),
    line([x(62), y(-4)], [x(width - 8), y(-3.6)], pen('faint', 0.8, [2, 2])),
    ...across(x(0), x(t), y(GAUGE_POINT_MM), null, null, '', {}),
    line([x(t / 2), y(GAUGE_POINT_MM)], [x(t / 2) + 16, 164], pen('ink', 0.7)),
    words(x(t / 2) + 12, 177, 'thickness, 3/8 in above tread'),
    ...upright(y(0), y(h), 52, null, x(10), '', {}),
    words(46, y(h / 2) + 4, 'height', { anchor: 'end' }),
    line(
      [FACE[0] - 22 * Math.cos(STEEP), FACE[1] + 22 * Math.sin(STEEP)],
      [FACE[0] + 32 * Math.cos(STEEP), FACE[1] - 32 * Math.sin(STEEP)],
      pen('mark', 1),
    ),
    line(FACE, [FACE[0] + 56, FACE[1]], pen('mark', 0.8, [4, 2])),
    ...angleBetween(FACE, 26, -STEEP, 0, 'greatest angle', [FACE[0] + 60, FACE[1] + 6], { ink: 'ink' }),
    ...across(x(0), x(width), 26, y(-rim), y(-rim), 'rim width'),
    ...upright(y(-rim), y(-8), 268, x(width), null, 'rim', {}),
    words(274, y(-rim / 2) + 17.5, 'thick', {}),
    line([x(98), y(-13)], [x(98), y(-6)], pen('ink', 0.7)),
    words(x(98), y(-16), 'hollow', { anchor: 'middle' }),
  ],
);

import { place } from '../pieces/curve';
import { area, line, pen, words, type Point } from '../pieces/draw';
import { SKETCH_WHEEL, wheelShape } from '../pieces/wheel-outline';
import type { Shape } from '../shapes';
import { sketch } from './sketch';

const SCALE = 0.92;
const SLOT_MM = 27;

/** A plate with a slot as wide as the condemning thickness, brought up over the flange from below. */
const plate = (at: Point, liftMm: number): Shape =>
  area(
    place(
      [
        [-16, -2],
        [0, -2],
        [0, 26],
        [SLOT_MM, 26],
        [SLOT_MM, 6],
        [SLOT_MM + 30, 6],
        [SLOT_MM + 30, 46],
        [-16, 46],
      ].map(([x, y]): Point => [x!, y! + liftMm]),
      { at, scale: SCALE },
    ),
    'shade',
    pen('ink', 1.3),
    0.7,
  );

const panel = (x: number, worn: boolean): Shape[] => {
  const at: Point = [x + 22, 84];
  return [
    wheelShape({ at, scale: SCALE }, { ...SKETCH_WHEEL, flangeThicknessMm: worn ? 23 : 32, rimWidthMm: 118 }),
    plate([at[0] - (worn ? 0 : -1), at[1]], worn ? 4 : 20),
    words(x + 66, 158, worn ? 'FAIL' : 'PASS', { anchor: 'middle', bold: true, size: 13 }),
    words(x + 66, 174, worn ? 'the slot goes over' : 'the slot stays off', { anchor: 'middle' }),
  ];
};

export const limitGauge = sketch(
  'Pass or fail with a limit gauge',
  'Left: the flange is thicker than the slot of the gauge, which stays off it: pass. Right: the worn flange lets the slot go over it: fail.',
  [
    ...panel(10, false),
    ...panel(172, true),
    line([160, 24], [160, 182], pen('faint', 0.8)),
    words(160, 14, 'flange thickness; record pass or fail, no number', { anchor: 'middle', ink: 'faint' }),
    words(160, 196, 'a sketch: use the gauge the railroad supplies', { anchor: 'middle', ink: 'faint' }),
  ],
);

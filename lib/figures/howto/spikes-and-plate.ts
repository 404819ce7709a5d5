import { arrow } from '../pieces/arrow';
import { place } from '../pieces/curve';
import { leader, upright } from '../pieces/dimension';
import { line, pen, words, type Point } from '../pieces/draw';
import { railShape, SKETCH_RAIL } from '../pieces/rail-section';
import { plateShape, spikeShape, tieSide } from '../pieces/track-parts';
import { sketch } from './sketch';

const SCALE = 0.46;
const SEAT: Point = [166, 126];
const LEAN = -0.07;
const PLATE_END = 165 * SCALE;
const [FIELD, GAUGE] = place(
  [
    [-165, 20],
    [165, 20],
  ],
  { at: SEAT, scale: SCALE, turn: LEAN },
) as [Point, Point];
const EDGE = (SKETCH_RAIL.baseWidthMm / 2) * SCALE;

export const spikesAndPlate = sketch(
  'How the rail was held',
  'A rail leaning outward on its tie. The spike on the gauge side is drawn up; the plate has cut deeper at the field edge than at the gauge edge.',
  [
    ...tieSide(20, 132, 232, 42),
    plateShape({ at: SEAT, scale: SCALE, turn: LEAN }),
    railShape({ at: SEAT, scale: SCALE, turn: LEAN }, { origin: 'base' }),
    spikeShape({ at: [SEAT[0] + EDGE + 8, SEAT[1] - 32], scale: SCALE }),
    spikeShape({ at: [SEAT[0] - EDGE - 6, SEAT[1] - 6], scale: SCALE, mirror: true }),
    ...upright(SEAT[1] - 36, SEAT[1] - 12, 232, 214, 202, 'drawn up', {}),
    line([SEAT[0] - PLATE_END - 22, 132], [SEAT[0] - PLATE_END, 132], pen('faint', 0.8, [3, 2])),
    ...leader([66, 108], [FIELD[0] + 2, FIELD[1] - 2], 'field edge', { anchor: 'end' }),
    ...leader([260, 152], [GAUGE[0] - 2, GAUGE[1]], 'gauge', { anchor: 'start' }),
    words(263, 170, 'edge', {}),
    ...arrow([160, 34], [120, 34], { width: 1.6 }),
    words(114, 30, 'rolls', { anchor: 'end' }),
    words(114, 44, 'outward', { anchor: 'end' }),
    words(160, 192, 'plate cut = field edge less gauge edge', { anchor: 'middle', ink: 'faint' }),
  ],
);

import { across, leader, upright } from '../pieces/dimension';
import { area, box, pen, words } from '../pieces/draw';
import { railShape, SKETCH_RAIL } from '../pieces/rail-section';
import { tieSide } from '../pieces/track-parts';
import { sketch } from './sketch';

const SCALE = 0.3;
const TOP = 94;
const BASE = TOP + SKETCH_RAIL.heightMm * SCALE;
const HALF = (SKETCH_RAIL.headWidthMm / 2) * SCALE;
const RUNNING = 34;
const GUARD_FACE = RUNNING + HALF + 14;
const POINT = 264;
const WING = POINT - HALF - 24;
const FLOOR = TOP + 24;

export const frogAndGuard = sketch(
  'Frog and guard rail',
  'Section across the track at the frog point. Guard check gauge from the gauge line of the frog to the guard line of the guard rail; guard face gauge between the guard lines; flangeway width and depth.',
  [
    ...tieSide(10, BASE, 300, 18),
    railShape({ at: [RUNNING, TOP], scale: SCALE }),
    area(
      [
        [GUARD_FACE, TOP],
        [GUARD_FACE + 16, TOP],
        [GUARD_FACE + 16, TOP + 14],
        [GUARD_FACE + 11, TOP + 18],
        [GUARD_FACE + 11, BASE - 6],
        [GUARD_FACE + 24, BASE],
        [GUARD_FACE + 2, BASE],
        [GUARD_FACE + 4, TOP + 18],
        [GUARD_FACE, TOP + 14],
      ],
      'paper',
      pen('rail', 1.3),
    ),
    railShape({ at: [POINT, TOP], scale: SCALE }),
    area(
      [
        [WING - 18, TOP],
        [WING, TOP],
        [WING, TOP + 16],
        [WING - 6, TOP + 20],
        [WING - 6, BASE - 6],
        [WING + 2, BASE],
        [WING - 26, BASE],
        [WING - 12, BASE - 6],
        [WING - 12, TOP + 20],
        [WING - 18, TOP + 16],
      ],
      'paper',
      pen('rail', 1.3),
    ),
    ...across(GUARD_FACE, POINT - HALF, 24, TOP + 2, TOP + 4, 'guard check gauge'),
    ...across(GUARD_FACE, WING, 50, TOP + 2, TOP + 2, 'guard face gauge'),
    box(WING - 6, FLOOR, POINT - WING + 3, 10, { fill: 'shade', stroke: pen('rail', 1) }),
    ...across(WING, POINT - HALF, 78, TOP + 2, TOP + 4, 'flangeway width', { outside: 'before' }),
    ...upright(TOP, FLOOR, (WING + POINT - HALF) / 2, null, null, '', {}),
    ...leader([196, 136], [(WING + POINT - HALF) / 2, TOP + 12], 'depth', { anchor: 'end' }),
    ...leader([286, 74], [POINT + 4, TOP], 'frog', { anchor: 'start' }),
    words(RUNNING - 4, 188, 'rail', { anchor: 'middle' }),
    words(GUARD_FACE + 14, 188, 'guard', { anchor: 'middle' }),
    words(WING - 8, 188, 'wing', { anchor: 'middle' }),
    words(POINT + 8, 188, 'point', { anchor: 'middle' }),
  ],
);

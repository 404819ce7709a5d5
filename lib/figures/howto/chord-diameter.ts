import { arc } from '../pieces/curve';
import { across, leader, upright } from '../pieces/dimension';
import { box, line, open, pen, words, type Point } from '../pieces/draw';
import { sketch } from './sketch';

const CENTRE: Point = [150, 262];
const RADIUS = 178;
const HALF_CHORD = 96;
const CHORD_Y = CENTRE[1] - Math.sqrt(RADIUS ** 2 - HALF_CHORD ** 2);
const TOP = CENTRE[1] - RADIUS;
const span = Math.asin(130 / RADIUS);

export const chordDiameter = sketch(
  'Diameter from a chord',
  'The gauge stands on the tread with its two feet a fixed distance apart; its dial reads how far the tread stands above the chord half way between them.',
  [
    open(arc(CENTRE, RADIUS, -Math.PI / 2 - span, -Math.PI / 2 + span), pen('wheel', 2)),
    open(arc(CENTRE, RADIUS - 20, -Math.PI / 2 - span, -Math.PI / 2 + span), pen('wheel', 0.9)),
    line([CENTRE[0] - HALF_CHORD, CHORD_Y], [CENTRE[0] + HALF_CHORD, CHORD_Y], pen('faint', 1, [5, 3])),
    box(CENTRE[0] - HALF_CHORD - 12, 44, 2 * HALF_CHORD + 24, 12, { fill: 'shade', stroke: pen('ink', 1.3) }),
    ...[-1, 1].map((side) =>
      line([CENTRE[0] + side * HALF_CHORD, 56], [CENTRE[0] + side * HALF_CHORD, CHORD_Y], pen('ink', 2.4)),
    ),
    line([CENTRE[0], 56], [CENTRE[0], TOP], pen('ink', 1.6)),
    { type: 'circle', cx: CENTRE[0], cy: 38, r: 14, fill: 'paper', stroke: pen('ink', 1.4) },
    line([CENTRE[0], 38], [CENTRE[0] + 8, 30], pen('mark', 1.6)),
    ...leader([190, 22], [164, 34], 'dial'),
    ...upright(TOP, CHORD_Y, CENTRE[0], null, null, 'height', { backed: true }),
    ...across(CENTRE[0] - HALF_CHORD, CENTRE[0] + HALF_CHORD, 146, CHORD_Y, CHORD_Y, 'feet apart'),
    ...leader([270, 84], [240, 109], 'tread', { anchor: 'start' }),
    words(160, 180, 'feet at the tape line, not in the fillet', { anchor: 'middle', ink: 'faint' }),
  ],
);

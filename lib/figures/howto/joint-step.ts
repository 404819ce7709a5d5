import { across, upright } from '../pieces/dimension';
import { box, line, pen, words } from '../pieces/draw';
import { sketch } from './sketch';

const JOINT = 160;
/** Picture units to the inch along the rail. */
const INCH = 3.4;
const RAIL_TOP = 74;
const STEP = 10;
const TIE = { y: 116, width: 28, height: 16 };
const TIES = [-36, -14, 12, 34];
const SOUND = new Set([-14, 34]);

const at = (inches: number): number => JOINT + inches * INCH;

export const jointStep = sketch(
  'Joint: step and nearest ties',
  'Side view of a joint: a straightedge laid on the higher rail end shows the step down to the other. Below, the distance from the middle of the joint to the centreline of the nearest sound tie; a tie crossed through does not hold.',
  [
    box(12, RAIL_TOP, JOINT - 14, 12, { fill: 'paper', stroke: pen('ink', 1.2) }),
    box(JOINT + 2, RAIL_TOP + STEP, 320 - JOINT - 14, 12, { fill: 'paper', stroke: pen('ink', 1.2) }),
    line([60, RAIL_TOP - 2], [250, RAIL_TOP - 2], pen('seriesA', 2.5)),
    words(60, RAIL_TOP - 10, 'straightedge'),
    ...upright(RAIL_TOP - 1, RAIL_TOP + STEP, 262, 250, 250, 'step', { beside: 'after' }),
    line([JOINT, 50], [JOINT, 184], pen('ink', 1, [4, 2])),
    words(JOINT, 42, 'middle of the joint', { anchor: 'middle' }),
    ...TIES.flatMap((place) => [
      box(at(place) - TIE.width / 2, TIE.y, TIE.width, TIE.height, { stroke: pen('ink', 1.2) }),
      ...(SOUND.has(place)
        ? []
        : [
            line(
              [at(place) - TIE.width / 2, TIE.y],
              [at(place) + TIE.width / 2, TIE.y + TIE.height],
              pen('mark', 1.2),
            ),
          ]),
    ]),
    ...across(at(-14), JOINT, 158, TIE.y + TIE.height, null, '', {}),
    words(at(-14) - 6, 162, 'to its centreline', { anchor: 'end' }),
    words(160, 196, 'nearest sound tie: 18 in, 24 in, or further', { anchor: 'middle' }),
  ],
);

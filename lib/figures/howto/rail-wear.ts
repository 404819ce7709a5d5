import { place, type Placing } from '../pieces/curve';
import { across, angleBetween, leader, upright } from '../pieces/dimension';
import { area, box, line, pen, words, type Point } from '../pieces/draw';
import { headOutline, railShape, SKETCH_RAIL } from '../pieces/rail-section';
import { groundLine } from '../pieces/track-parts';
import { sketch } from './sketch';

const SCALE = 1.35;
const PLACING: Placing = { at: [128, 52], scale: SCALE };
const WORN = { topMm: 8, faceMm: 13 };
const EDGE = PLACING.at[0] - (SKETCH_RAIL.headWidthMm / 2) * SCALE;
const GAUGE_POINT = PLACING.at[1] + 16 * SCALE;
const FOOT: Point = [EDGE + WORN.faceMm * 0.25 * SCALE, PLACING.at[1] + SKETCH_RAIL.heightMm * 0.2 * SCALE];
const SHOULDER: Point = [EDGE + (WORN.faceMm * 1.5 - 1.5) * SCALE, PLACING.at[1] + (WORN.topMm + 10) * SCALE];
const FACE = Math.atan2(FOOT[1] - SHOULDER[1], SHOULDER[0] - FOOT[0]);
const LEAN = 0.12;
const RAIL_AT: Point = [264, 158];

export const railWear = sketch(
  'Wear of the rail head',
  'Left: the worn head over the new section, dashed. Loss from the top of the head; loss from the gauge face 5/8 in below the top; angle of the worn gauge face with the level across the track. Right: the cant, read with a level on the base.',
  [
    area(place(headOutline(SKETCH_RAIL, WORN), PLACING), 'shade', pen('rail', 1.3)),
    area(place(headOutline(SKETCH_RAIL), PLACING), undefined, pen('faint', 1, [4, 2])),
    ...upright(PLACING.at[1], PLACING.at[1] + WORN.topMm * SCALE, 170, 140, 140, '', {}),
    words(170, 34, 'top loss', { anchor: 'middle' }),
    ...across(EDGE, EDGE + WORN.faceMm * 1.16 * SCALE, GAUGE_POINT, null, null, '', {}),
    words(8, 32, 'face loss, 5/8 in', {}),
    words(8, 46, 'below the top', {}),
    line([50, 50], [EDGE + 4, GAUGE_POINT - 2], pen('ink', 0.7)),
    line(FOOT, [FOOT[0] + 66 * Math.cos(FACE), FOOT[1] - 66 * Math.sin(FACE)], pen('mark', 1.3)),
    line(FOOT, [FOOT[0] - 66, FOOT[1]], pen('mark', 0.9, [4, 2])),
    ...angleBetween(FOOT, 36, Math.PI, 2 * Math.PI - FACE, '', [0, 0]),
    words(8, FOOT[1] + 16, 'face angle', {}),
    line([212, 20], [212, 180], pen('faint', 0.8)),
    ...groundLine(222, 310, 166),
    railShape({ at: RAIL_AT, scale: 0.4, turn: -LEAN }, { origin: 'base' }),
    line([264, 166], [264, 70], pen('faint', 0.9, [4, 2])),
    ...angleBetween(RAIL_AT, 92, -Math.PI / 2, -Math.PI / 2 - LEAN, '', [0, 0]),
    words(264, 46, 'cant', { anchor: 'middle', bold: true }),
    box(238, 159, 52, 5, { fill: 'paper', stroke: pen('seriesC', 1.1) }),
    ...leader([262, 184], [270, 163], 'level on base', { anchor: 'middle' }),
    words(108, 176, 'leave out lip and flow', { anchor: 'middle', ink: 'faint' }),
  ],
);

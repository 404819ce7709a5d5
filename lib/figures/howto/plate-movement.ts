import { across, leader, upright } from '../pieces/dimension';
import { arrow } from '../pieces/arrow';
import { box, line, pen, words } from '../pieces/draw';
import { railShape, SKETCH_RAIL } from '../pieces/rail-section';
import { plateShape, spikeShape, tieSide } from '../pieces/track-parts';
import { sketch } from './sketch';

const SCALE = 0.46;
const BASE = 128;
const EDGE = (SKETCH_RAIL.baseWidthMm / 2) * SCALE;

export const plateMovement = sketch(
  'Movement under load',
  'A rail on its plate and tie. The bright strip beside the plate and base shows how far it has slid outward; the gap under the spike head shows how far the rail moves up and down.',
  [
    ...tieSide(20, 137, 280, 39),
    box(84, 134, 16, 4, { fill: 'mark', fillOpacity: 0.75 }),
    plateShape({ at: [176, BASE], scale: SCALE }),
    spikeShape({ at: [176 + EDGE + 6, BASE - 14], scale: SCALE }),
    spikeShape({ at: [176 - EDGE - 6, BASE - 14], scale: SCALE, mirror: true }),
    railShape({ at: [176, BASE], scale: SCALE }, { origin: 'base' }),
    ...across(84, 100, 160, 139, 139, 'sideways', { outside: 'before' }),
    ...leader([66, 118], [92, 135], 'bright strip', { anchor: 'end' }),
    ...upright(BASE - 16, BASE - 6, 234, 222, 214, 'down', {}),
    ...arrow([140, 62], [96, 62], { width: 1.6 }),
    words(92, 56, 'pushed outward', { anchor: 'middle' }),
    ...arrow([176, 14], [176, 38], { width: 1.6 }),
    words(184, 24, 'wheel load'),
    line([20, 176], [300, 176], pen('faint', 0.8)),
    words(160, 194, 'measure both rails; not old rusted slide marks', { anchor: 'middle', ink: 'faint' }),
  ],
);

import { arrow } from '../pieces/arrow';
import { across, upright } from '../pieces/dimension';
import { line, pen, words } from '../pieces/draw';
import { railPlan } from '../pieces/rail-plan';
import { sketch } from './sketch';

const TOP = 76;
const HEAD = 46;

export const markAcrossHead = sketch(
  'Reading a mark on the head',
  'The head of one rail from above. The mark starts near the gauge face at the POD and crosses to the field side. Read where it starts and ends along the rail, and how far it lies from the gauge face at both.',
  [
    ...railPlan(14, 306, TOP, HEAD, 'bottom'),
    words(22, TOP + 15, 'field side', { ink: 'faint' }),
    words(22, TOP + HEAD - 7, 'gauge face', { ink: 'faint' }),
    line([96, TOP + HEAD - 6], [236, TOP + 3], pen('mark', 3)),
    line([96, TOP - 44], [96, 182], pen('mark', 1, [9, 3, 2, 3])),
    words(96, 24, 'POD 0', { anchor: 'middle', bold: true }),
    ...across(96, 236, 52, TOP + HEAD - 8, TOP + 1, 'start to end'),
    ...upright(TOP + HEAD - 6, TOP + HEAD, 118, null, null, '', {}),
    words(128, TOP + HEAD + 16, 'across at start'),
    ...upright(TOP + 3, TOP + HEAD, 254, 238, null, 'at end', {}),
    ...arrow([176, 176], [306, 176], { width: 1.6 }),
    words(302, 168, 'direction of travel', { anchor: 'end' }),
    words(20, 180, '− before', { ink: 'faint' }),
    words(102, 180, '+ after', { ink: 'faint' }),
  ],
);

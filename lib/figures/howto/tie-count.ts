import { across } from '../pieces/dimension';
import { line, pen, words } from '../pieces/draw';
import { railPlan } from '../pieces/rail-plan';
import { tieAbove } from '../pieces/track-parts';
import { sketch } from './sketch';

const DEFECTIVE = new Set([4, 5, 10, 13]);
const FIRST = 22;
const STEP = 16;
const COUNTED = { from: 2, to: 15 };

export const tieCount = sketch(
  'Counting ties and fastenings',
  'Track from above: 39 ft centred on the station. Ties that hold neither gauge nor surface are crossed through and counted; loose or missing fastenings are counted on each rail.',
  [
    ...Array.from({ length: 18 }, (_, i) => tieAbove(FIRST + i * STEP, 52, 8, 92, DEFECTIVE.has(i))).flat(),
    ...railPlan(12, 308, 70, 9, 'bottom'),
    ...railPlan(12, 308, 118, 9, 'top'),
    ...[3, 7, 8, 12].map((i) => ({
      type: 'circle' as const,
      cx: FIRST + i * STEP + 4,
      cy: i % 2 === 0 ? 132 : 65,
      r: 3.6,
      stroke: pen('mark', 1.5),
    })),
    line([FIRST + 8.5 * STEP + 4, 40], [FIRST + 8.5 * STEP + 4, 152], pen('ink', 1.2, [4, 2])),
    ...across(FIRST + COUNTED.from * STEP - 4, FIRST + COUNTED.to * STEP + 12, 32, 50, 50, '39 ft'),
    words(FIRST + 8.5 * STEP + 4, 16, 'station at the middle', { anchor: 'middle' }),
    ...tieAbove(24, 168, 8, 22, true),
    words(40, 184, 'does not hold'),
    { type: 'circle', cx: 160, cy: 180, r: 3.6, stroke: pen('mark', 1.5) },
    words(172, 184, 'fastening loose, missing'),
  ],
);

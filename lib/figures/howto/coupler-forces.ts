import { arrow } from '../pieces/arrow';
import { arc, place } from '../pieces/curve';
import { area, line, open, pen, words, type Point } from '../pieces/draw';
import type { Shape } from '../shapes';
import { sketch } from './sketch';

const RADIUS = 150;
const CAR = 0.62;

/** Two coupled cars on a curve seen from above; draft pulls them inward, buff pushes them outward. */
const pair = (centre: Point, draft: boolean): Shape[] => {
  const angles = [-Math.PI / 2 - CAR / 2, -Math.PI / 2 + CAR / 2];
  const at = (angle: number, radius: number): Point => [
    centre[0] + radius * Math.cos(angle),
    centre[1] + radius * Math.sin(angle),
  ];
  const ends = [-Math.PI / 2 - CAR, -Math.PI / 2 + CAR] as const;
  return [
    open(arc(centre, RADIUS - 7, ends[0] - 0.05, ends[1] + 0.05), pen('rail', 1.4)),
    open(arc(centre, RADIUS + 7, ends[0] - 0.05, ends[1] + 0.05), pen('rail', 1.4)),
    ...angles.map((angle) =>
      area(
        place(
          [
            [-36, -9],
            [36, -9],
            [36, 9],
            [-36, 9],
          ],
          { at: at(angle, RADIUS - 3), scale: 1, turn: angle + Math.PI / 2 },
        ),
        'paper',
        pen('ink', 1.4),
      ),
    ),
    { type: 'circle', cx: at(-Math.PI / 2, RADIUS)[0], cy: at(-Math.PI / 2, RADIUS)[1], r: 3.4, fill: 'ink' },
    ...ends.flatMap((angle, i) => {
      const along = (i === 0 ? -1 : 1) * 26;
      const start = at(angle, RADIUS - 3);
      const turn = angle + Math.PI / 2;
      const end: Point = [start[0] + along * Math.cos(turn), start[1] + along * Math.sin(turn)];
      return draft
        ? arrow(start, end, { ink: 'seriesA', width: 2 })
        : arrow(end, start, { ink: 'seriesA', width: 2 });
    }),
    ...angles.flatMap((angle) =>
      draft
        ? arrow(at(angle, RADIUS - 16), at(angle, RADIUS - 40), { ink: 'mark', width: 2 })
        : arrow(at(angle, RADIUS + 10), at(angle, RADIUS + 32), { ink: 'mark', width: 2 }),
    ),
  ];
};

export const couplerForces = sketch(
  'Pull and push in a curve',
  'Two pictures of coupled cars on a curve from above. A pull in the couplers, draft, draws the cars towards the inside of the curve. A push, buff, presses them towards the outside.',
  [
    ...pair([160, 182], true),
    words(14, 18, 'pull (draft):', { bold: true }),
    words(14, 32, 'inward'),
    line([14, 104], [306, 104], pen('faint', 0.7)),
    ...pair([160, 298], false),
    words(14, 122, 'push (buff):', { bold: true }),
    words(14, 136, 'outward'),
  ],
);

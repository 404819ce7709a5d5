import type { Ink, Shape } from '../shapes';
import { area, line, pen } from './draw';

export const MARKERS = ['dot', 'square', 'triangle', 'diamond', 'cross', 'bar'] as const;
export type MarkerShape = (typeof MARKERS)[number];

/**
 * A reading on a chart. Hollow: read where the derailment had disturbed the place, or said not to
 * count. The shape tells series apart where colour cannot.
 */
export function marker(
  shape: MarkerShape,
  x: number,
  y: number,
  ink: Ink,
  hollow: boolean,
  r = 2.6,
): Shape[] {
  const looks = hollow ? ({ fill: 'paper', stroke: pen(ink, 1.1) } as const) : ({ fill: ink } as const);
  switch (shape) {
    case 'dot':
      return [{ type: 'circle', cx: x, cy: y, r, ...looks }];
    case 'square':
      return [{ type: 'rect', x: x - r * 0.9, y: y - r * 0.9, width: r * 1.8, height: r * 1.8, ...looks }];
    case 'triangle':
      return [
        area(
          [
            [x, y - r * 1.25],
            [x + r * 1.15, y + r * 0.85],
            [x - r * 1.15, y + r * 0.85],
          ],
          looks.fill,
          hollow ? pen(ink, 1.1) : undefined,
        ),
      ];
    case 'diamond':
      return [
        area(
          [
            [x, y - r * 1.3],
            [x + r * 1.3, y],
            [x, y + r * 1.3],
            [x - r * 1.3, y],
          ],
          looks.fill,
          hollow ? pen(ink, 1.1) : undefined,
        ),
      ];
    case 'cross':
      return [
        line([x - r, y - r], [x + r, y + r], pen(ink, hollow ? 0.8 : 1.5)),
        line([x - r, y + r], [x + r, y - r], pen(ink, hollow ? 0.8 : 1.5)),
      ];
    case 'bar':
      return [line([x, y - r * 1.3], [x, y + r * 1.3], pen(ink, hollow ? 0.9 : 2))];
  }
}

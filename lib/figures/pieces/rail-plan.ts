import type { Shape } from '../shapes';
import { box, line, pen } from './draw';

/** A straight rail head seen from above, the gauge face drawn heavy. `face`: which edge that is. */
export function railPlan(
  x1: number,
  x2: number,
  top: number,
  width: number,
  face: 'top' | 'bottom',
): Shape[] {
  const edge = face === 'top' ? top : top + width;
  return [
    box(x1, top, x2 - x1, width, { fill: 'shade', stroke: pen('rail', 1) }),
    line([x1, edge], [x2, edge], pen('rail', 2.2)),
  ];
}

import type { Shape } from '../shapes';
import { area, box, line, pen } from './draw';

/** A two-axle truck from the side: wheels and side frame. `x` is its centre, `rail` the top of rail. */
export function truckSide(x: number, rail: number, spacing: number, wheel: number): Shape[] {
  const y = rail - wheel;
  return [
    ...[-1, 1].map((side): Shape => ({
      type: 'circle',
      cx: x + (side * spacing) / 2,
      cy: y,
      r: wheel,
      fill: 'paper',
      stroke: pen('wheel', 1.4),
    })),
    area(
      [
        [x - spacing / 2 - 5, y - 3],
        [x - spacing * 0.2, y - wheel * 0.7],
        [x + spacing * 0.2, y - wheel * 0.7],
        [x + spacing / 2 + 5, y - 3],
        [x + spacing / 2 + 5, y + 3],
        [x + spacing * 0.15, y + wheel * 0.45],
        [x - spacing * 0.15, y + wheel * 0.45],
        [x - spacing / 2 - 5, y + 3],
      ],
      'shade',
      pen('ink', 1),
    ),
  ];
}

export type CarSide = {
  readonly left: number;
  readonly right: number;
  readonly rail: number;
  readonly bodyTop: number;
  readonly bodyBottom: number;
  readonly truckFrom: number;
  readonly truckTo: number;
  readonly spacing: number;
  readonly wheel: number;
};

/** A hopper-bottomed car from the side between its pulling faces. */
export function carSide({
  left,
  right,
  rail,
  bodyTop,
  bodyBottom,
  truckFrom,
  truckTo,
  spacing,
  wheel,
}: CarSide): Shape[] {
  const bodyLeft = left + 12;
  const bodyRight = right - 12;
  const sill = bodyBottom - 6;
  return [
    area(
      [
        [bodyLeft, bodyTop],
        [bodyRight, bodyTop],
        [bodyRight, sill],
        [bodyLeft, sill],
      ],
      'paper',
      pen('ink', 1.4),
    ),
    box(bodyLeft - 4, sill, bodyRight - bodyLeft + 8, 6, { fill: 'shade', stroke: pen('ink', 1) }),
    box(left, sill, 8, 5, { fill: 'ink' }),
    box(right - 8, sill, 8, 5, { fill: 'ink' }),
    ...truckSide(truckFrom, rail, spacing, wheel),
    ...truckSide(truckTo, rail, spacing, wheel),
    line([left - 6, rail], [right + 6, rail], pen('rail', 2)),
  ];
}

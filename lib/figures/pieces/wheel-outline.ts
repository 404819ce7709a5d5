import type { Shape } from '../shapes';
import { bezier, place, type Placing } from './curve';
import { area, pen, type Point } from './draw';

/** Sizes of a sketched wheel section, mm. */
export type WheelSketch = {
  readonly flangeThicknessMm: number;
  readonly flangeHeightMm: number;
  readonly rimWidthMm: number;
  readonly rimThicknessMm: number;
  readonly hollowMm: number;
};

/** A plausible freight wheel, drawn for the eye: a sketch, not a reference shape. */
export const SKETCH_WHEEL: WheelSketch = {
  flangeThicknessMm: 31,
  flangeHeightMm: 27,
  rimWidthMm: 145,
  rimThicknessMm: 44,
  hollowMm: 0,
};

/** Flange thickness is read this far above the tread. */
export const GAUGE_POINT_MM = 9.525;

/**
 * Section through rim and flange at the rail, mm, closed: x from the back of the flange towards
 * the field side, y down from the tread; the flange hangs below, the rim stands above.
 */
export function wheelOutline({
  flangeThicknessMm: t,
  flangeHeightMm: h,
  rimWidthMm: width,
  rimThicknessMm: rim,
  hollowMm: hollow,
}: WheelSketch): Point[] {
  const tread = (x: number): number => {
    const share = (x - (t + 16)) / (width - 14 - (t + 16));
    const sag = share > 0 && share < 1 ? hollow * Math.sin(Math.PI * share) ** 0.8 : 0;
    return -(x - 70) / 20 - sag;
  };
  const face = (y: number): number => t - (y - GAUGE_POINT_MM) * 0.268;
  const treadFrom = t + 16;
  const samples = 14;
  return [
    [0, -rim],
    [0, h - 11],
    ...bezier([0, h - 10], [2, h - 2], [7, h], [13, h], 6),
    ...bezier([13, h], [20, h], [face(h - 8) - 1.5, h - 3], [face(h - 9), h - 9], 6),
    ...bezier([face(7), 7], [face(3), 3], [t + 5, tread(treadFrom) + 0.6], [treadFrom, tread(treadFrom)], 8),
    ...Array.from({ length: samples }, (_, i): Point => {
      const x = treadFrom + ((width - 12 - treadFrom) * (i + 1)) / samples;
      return [x, tread(x)];
    }),
    ...bezier([width - 10, tread(width - 10)], [width - 3, tread(width - 6)], [width, -7], [width, -12], 6),
    [width, -rim],
  ];
}

/** The wheel section as a filled shape; `at` is the back of the flange at tread height. */
export const wheelShape = (placing: Placing, sketch: WheelSketch = SKETCH_WHEEL): Shape =>
  area(place(wheelOutline(sketch), placing), 'paper', pen('wheel', 1.5));

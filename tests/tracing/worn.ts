import { outlineOf, type Outline } from '~/lib/outline/outline';
import { outlineOfShape } from '~/lib/shapes/shape';
import { s1002 } from '~/lib/shapes/wheels/s1002';

export type Wear = { readonly hollowMm: number; readonly flangeMm: number };

/** Of the rim's back and face as much is drawn as pins of a gauge reach. */
const DRAWN_TO_MM = -10;
const HOLLOW_FROM_MM = 44;
const HOLLOW_TO_MM = 112;

const smoothStep = (from: number, to: number, value: number): number => {
  const share = Math.min(1, Math.max(0, (value - from) / (to - from)));
  return share * share * (3 - 2 * share);
};

/** Depth of a hollow across the tread, 1 at its deepest: flat in the middle, running out to both sides. */
const hollowAt = (xMm: number): number =>
  smoothStep(HOLLOW_FROM_MM, HOLLOW_FROM_MM + 24, xMm) *
  (1 - smoothStep(HOLLOW_TO_MM - 24, HOLLOW_TO_MM, xMm));

const THICKNESS_FROM_MM = 12;

/**
 * S1002 (EN 13715) as new, or invented wear on it: a hollow run into the tread, and metal taken off the
 * face of the flange, all of it from 12 mm above the tread up, less towards the tip.
 */
export function wornS1002({ hollowMm, flangeMm }: Wear): Outline {
  const { xMm, yMm } = outlineOfShape(s1002, 0.1);
  const points = Array.from(xMm, (x, i) => [x, yMm[i]!] as const).filter(([, y]) => y >= DRAWN_TO_MM);
  const tip = points.reduce((best, point) => (point[1] > best[1] ? point : best));
  const face = points.reduce((best, point) =>
    point[0] > tip[0] && Math.abs(point[1] - THICKNESS_FROM_MM) < Math.abs(best[1] - THICKNESS_FROM_MM)
      ? point
      : best,
  );
  const worn = points.map(([x, y]): readonly [number, number] => {
    const share = x <= tip[0] ? 0 : Math.min(1, (x - tip[0]) / (face[0] - tip[0]));
    const taken = x > 60 ? 0 : flangeMm * share * smoothStep(0, THICKNESS_FROM_MM, y);
    return [x - taken, y - hollowMm * hollowAt(x)];
  });
  return outlineOf(
    worn.map(([x]) => x),
    worn.map(([, y]) => y),
  );
}

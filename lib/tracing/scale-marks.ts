import type { ScalePair } from '../case/trace';
import { ok, refuse, type Result } from '../readings/result';
import { normalised, type PictureSize } from './camera';
import { gap, type PixelPoint } from './line';

/** A point whose place on the paper is known (mm, y down) and where the picture shows it. */
export type KnownPoint = { readonly mm: PixelPoint; readonly seen: PixelPoint };

/** Nearer ends than this cannot carry a scale, pixels. */
const SHORTEST_PX = 20;
const NEAREST_APART_MM = 5;
const FARTHEST_APART_MM = 2000;
/** Corners marked once for two sides; the second mark may be a little beside the first. */
const SAME_CORNER_PX = 3;
const SAME_SIDE = 0.002;

const ordinal = (index: number): string => ['first', 'second', 'third', 'fourth'][index] ?? `${index + 1}th`;

function problemOf(
  { from, to, apartMm }: ScalePair,
  index: number,
  { width, height }: PictureSize,
): string | null {
  const name = `The ${ordinal(index)} scale pair`;
  if (![...from, ...to].every(Number.isFinite))
    return `${name} has a point without a place. Mark both points again.`;
  if ([from, to].some(([x, y]) => x < -0.5 || y < -0.5 || x > width - 0.5 || y > height - 0.5))
    return `${name} has a point outside the picture. Mark both points again.`;
  if (!(gap(from, to) >= SHORTEST_PX))
    return `${name} has its points less than ${SHORTEST_PX} pixels apart. Mark two points farther apart, best across the whole drawing.`;
  if (!(apartMm >= NEAREST_APART_MM && apartMm <= FARTHEST_APART_MM))
    return `${name} needs the true distance between its points, from ${NEAREST_APART_MM} mm to ${FARTHEST_APART_MM / 1000} m.`;
  return null;
}

const cross = (a: ScalePair, b: ScalePair): number =>
  (a.to[0] - a.from[0]) * (b.to[1] - b.from[1]) - (a.to[1] - a.from[1]) * (b.to[0] - b.from[0]);

/** Sine of the angle between two lines below which they do not cross each other in earnest. */
const LEAST_CROSSING = 0.5;

const crossing = (a: ScalePair, b: ScalePair): number =>
  cross(a, b) / (gap(a.from, a.to) * gap(b.from, b.to));

type Placed = { readonly mm: PixelPoint; readonly at: PixelPoint };

function crossPoints(along: ScalePair, across: ScalePair): Result<readonly Placed[]> {
  const sine = crossing(along, across);
  if (Math.abs(sine) < LEAST_CROSSING)
    return refuse('The second scale pair must lie across the first, about square to it. Mark it again.');
  const side = Math.sign(sine);
  return ok([
    { mm: [-along.apartMm / 2, 0], at: along.from },
    { mm: [along.apartMm / 2, 0], at: along.to },
    { mm: [0, (-side * across.apartMm) / 2], at: across.from },
    { mm: [0, (side * across.apartMm) / 2], at: across.to },
  ]);
}

function rectanglePoints(sides: readonly ScalePair[]): Result<readonly Placed[]> {
  const [a, b, c, d] = sides as readonly [ScalePair, ScalePair, ScalePair, ScalePair];
  const meet = sides.every((side, i) => gap(side.to, sides[(i + 1) % 4]!.from) <= SAME_CORNER_PX);
  if (!meet)
    return refuse(
      'Four scale pairs are the sides of a rectangle: each begins where the one before ends. Mark the four corners in order.',
    );
  const same = (p: ScalePair, q: ScalePair): boolean =>
    Math.abs(p.apartMm - q.apartMm) <= SAME_SIDE * p.apartMm;
  if (!same(a, c) || !same(b, d))
    return refuse('Opposite sides of a rectangle are equally long. Enter its width and height once each.');
  if (Math.abs(crossing(a, b)) < LEAST_CROSSING)
    return refuse(
      'The corners do not go round a rectangle. Mark the four corners in order, round the sheet.',
    );
  const height = Math.sign(crossing(a, b)) * b.apartMm;
  return ok([
    { mm: [0, 0], at: a.from },
    { mm: [a.apartMm, 0], at: b.from },
    { mm: [a.apartMm, height], at: c.from },
    { mm: [0, height], at: d.from },
  ]);
}

/**
 * The points whose places on the paper follow from the scale pairs: the two of one pair, the four
 * ends of a cross (two pairs), or the four corners of a rectangle (four pairs, its sides in order).
 * Refuses pairs that are none of these, naming the pair.
 */
export function knownPoints(scale: readonly ScalePair[], size: PictureSize): Result<readonly KnownPoint[]> {
  const problem = scale
    .map((pair, index) => problemOf(pair, index, size))
    .find((message) => message !== null);
  if (problem !== undefined && problem !== null) return refuse(problem);
  const [first, second] = scale;
  if (first === undefined)
    return refuse('Mark two points a known distance apart first, and enter the distance.');
  const placed: Result<readonly Placed[]> =
    scale.length === 1
      ? ok([
          { mm: [0, 0], at: first.from },
          { mm: [first.apartMm, 0], at: first.to },
        ])
      : scale.length === 2 && second !== undefined
        ? crossPoints(first, second)
        : scale.length === 4
          ? rectanglePoints(scale)
          : refuse('Mark one pair, two pairs across each other, or the four corners of a rectangle.');
  return placed.ok ? ok(placed.value.map(({ mm, at }) => ({ mm, seen: normalised(at, size) }))) : placed;
}

/** The four sides of a rectangle from its corners, marked in order round it; the first side is `widthMm` long. */
export function rectangleSides(
  corners: readonly [PixelPoint, PixelPoint, PixelPoint, PixelPoint],
  widthMm: number,
  heightMm: number,
): readonly ScalePair[] {
  return corners.map((from, i) => ({
    from,
    to: corners[(i + 1) % 4]!,
    apartMm: i % 2 === 0 ? widthMm : heightMm,
  }));
}

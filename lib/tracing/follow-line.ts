import { centred } from './centre-line';
import { leastCostPath, MAX_COST } from './least-cost-path';
import { evenlySpaced, gap, lengthOf, smoothed, type PixelPoint } from './line';
import { middleOf } from './numbers';
import type { PreparedImage, RidgeLevel } from './prepare-image';

export type FollowOptions = {
  /** How far from a click its line is looked for, pixels. */
  readonly snapPx?: number;
};

/** The line between two clicks. */
export type FollowedLine = {
  /** From the first click to the second, about a pixel apart: the middle of the stroke, or straight when not followed. */
  readonly points: readonly PixelPoint[];
  /** Mean cost of a pixel of the way, 0 on the middle of the line to 1 on bare paper. */
  readonly cost: number;
  /** False when no line leads from one click to the other; the points are then a straight line between them. */
  readonly followed: boolean;
  /** Why it was not followed, and what to do; null when it was. */
  readonly why: string | null;
  /** Width of the stroke, pixels; null when not followed. */
  readonly widthPx: number | null;
};

export type Snapped = { readonly point: PixelPoint; readonly onLine: boolean };

const DEFAULT_SNAP_PX = 10;

const strengthAt = ({ step, width, height, strength }: RidgeLevel, [x, y]: PixelPoint): number => {
  const u = Math.min(width - 1, Math.max(0, Math.round((x + 0.5) / step - 0.5)));
  const v = Math.min(height - 1, Math.max(0, Math.round((y + 0.5) / step - 0.5)));
  return strength[v * width + u]!;
};

const inside = ({ width, height }: PreparedImage, [x, y]: PixelPoint): boolean =>
  Number.isFinite(x) && Number.isFinite(y) && x >= 0 && y >= 0 && x <= width - 1 && y <= height - 1;

/**
 * The point of the nearest dark line within `radiusPx` of a click: where ridge strength times a bell
 * curve of the distance is largest. `onLine` is false, and the point the click itself, when nothing
 * there stands out of the grain of the paper, or the click lies outside the picture.
 */
export function snapToLine(image: PreparedImage, point: PixelPoint, radiusPx = DEFAULT_SNAP_PX): Snapped {
  const level = image.levels[0]!;
  if (!inside(image, point)) return { point, onLine: false };
  const [x, y] = point;
  const top = Math.max(1, Math.ceil(y - radiusPx));
  const bottom = Math.min(level.height - 2, Math.floor(y + radiusPx));
  const left = Math.max(1, Math.ceil(x - radiusPx));
  const right = Math.min(level.width - 2, Math.floor(x + radiusPx));
  let best: PixelPoint = point;
  let score = 0;
  for (let v = top; v <= bottom; v += 1) {
    for (let u = left; u <= right; u += 1) {
      const away = Math.hypot(u - x, v - y);
      if (away > radiusPx) continue;
      const here = level.strength[v * level.width + u]!;
      if (here < image.grain) continue;
      const worth = here * Math.exp(-((away / (0.6 * radiusPx)) ** 2));
      if (worth > score) [score, best] = [worth, [u, v]];
    }
  }
  return { point: best, onLine: score > 0 };
}

/** A window larger than this many pixels is searched on a coarser grid. */
const LARGEST_WINDOW = 160_000;
const SMALLEST_MARGIN_PX = 40;
/** How far the line may bulge beside the straight way between two clicks, as a share of that. */
const BULGE = 0.5;

type Window = {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
};

function windowAbout(level: RidgeLevel, a: PixelPoint, b: PixelPoint): Window {
  const margin = SMALLEST_MARGIN_PX + BULGE * gap(a, b);
  const low = (p: number, q: number): number =>
    Math.max(0, Math.floor((Math.min(p, q) - margin) / level.step));
  const high = (p: number, q: number, size: number): number =>
    Math.min(size - 1, Math.ceil((Math.max(p, q) + margin) / level.step));
  const left = low(a[0], b[0]);
  const top = low(a[1], b[1]);
  return {
    left,
    top,
    width: high(a[0], b[0], level.width) - left + 1,
    height: high(a[1], b[1], level.height) - top + 1,
  };
}

const size = ({ width, height }: Window): number => width * height;

/** Strength at which a pixel counts as fully on the line, as a share of that at the fainter click. */
const FULL_SHARE = 0.6;

/** Cost of a pixel: 0 on the line to 1 on bare paper. */
const costOf = (strength: number, full: number): number => (1 - Math.min(1, strength / full)) ** 2;

function searched(
  level: RidgeLevel,
  window: Window,
  full: number,
  a: PixelPoint,
  b: PixelPoint,
): readonly PixelPoint[] {
  const { left, top, width, height } = window;
  const cost = new Uint8Array(width * height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const strength = level.strength[(top + y) * level.width + left + x]!;
      cost[y * width + x] = 2 + Math.round((MAX_COST - 2) * costOf(strength, full));
    }
  }
  const indexOf = ([x, y]: PixelPoint): number => {
    const u = Math.min(width - 1, Math.max(0, Math.round((x + 0.5) / level.step - 0.5) - left));
    const v = Math.min(height - 1, Math.max(0, Math.round((y + 0.5) / level.step - 0.5) - top));
    return v * width + u;
  };
  const way = leastCostPath({ width, height, cost }, indexOf(a), indexOf(b));
  return Array.from(way, (index): PixelPoint => {
    const x = index % width;
    const y = (index - x) / width;
    return [(left + x + 0.5) * level.step - 0.5, (top + y + 0.5) * level.step - 0.5];
  });
}

/** A pixel of the way counts as on the line when its cost is below this. */
const ON_LINE_COST = 0.6;
const SHARE_ON_LINE = 0.85;
/** The longest stretch of bare paper the line is carried across: a skipped pencil, a fold. */
const LONGEST_GAP_PX = 25;

function judged(costs: readonly number[]): string | null {
  let run = 0;
  let longest = 0;
  for (const cost of costs) {
    run = cost < ON_LINE_COST ? 0 : run + 1;
    longest = Math.max(longest, run);
  }
  const on = costs.filter((cost) => cost < ON_LINE_COST).length / costs.length;
  if (on >= SHARE_ON_LINE && longest <= LONGEST_GAP_PX) return null;
  return 'No line leads from one point to the other. Set more points along the line between them, or keep the straight stretch.';
}

function straight(a: PixelPoint, b: PixelPoint, why: string): FollowedLine {
  return { points: evenlySpaced([a, b], 1), cost: 1, followed: false, why, widthPx: null };
}

/**
 * The dark line from one click to another: both clicks are taken to the line next to them, the
 * cheapest way between is searched over the ridge strength (`./least-cost-path`), smoothed, and moved
 * to the middle of the stroke (`./centre-line`). Good to a small part of a pixel on a clean line.
 *
 * Never throws. When a click has no line within `snapPx`, or the cheapest way runs over bare paper
 * for more than 25 pixels or for more than 15 % of its length, `followed` is false, `why` says so
 * and the points are straight from click to click: that stretch is drawn, not followed, and belongs
 * into `straight` of the trace.
 */
export function followLine(
  image: PreparedImage,
  from: PixelPoint,
  to: PixelPoint,
  { snapPx = DEFAULT_SNAP_PX }: FollowOptions = {},
): FollowedLine {
  if (!inside(image, from) || !inside(image, to)) {
    const why = 'A point lies outside the picture. Set it again on the line.';
    return { points: [from, to], cost: 1, followed: false, why, widthPx: null };
  }
  const start = snapToLine(image, from, snapPx);
  const end = snapToLine(image, to, snapPx);
  if (!start.onLine || !end.onLine) {
    return straight(
      start.point,
      end.point,
      `There is no line at the ${start.onLine ? 'second' : 'first'} point. Set it again nearer to the line, or keep the straight stretch.`,
    );
  }
  const [a, b] = [start.point, end.point];
  if (gap(a, b) < 1)
    return straight(a, b, 'The two points are the same. Set the next one farther along the line.');
  const level =
    image.levels.find((each) => size(windowAbout(each, a, b)) <= LARGEST_WINDOW) ?? image.levels.at(-1)!;
  const finest = image.levels[0]!;
  const full = FULL_SHARE * Math.min(strengthAt(finest, a), strengthAt(finest, b));
  const way = searched(level, windowAbout(level, a, b), full, a, b);
  const rough = smoothed(evenlySpaced([a, ...way.slice(1, -1), b], 1), 3 * level.step);
  const costs = rough.map((point) => costOf(strengthAt(level, point), full));
  const why = judged(costs);
  if (why !== null) return straight(a, b, why);
  const { points, widthPx } = centred(image, rough);
  return {
    points: lengthOf(points) > 0 ? points : [a, b],
    cost: costs.reduce((sum, cost) => sum + cost, 0) / costs.length,
    followed: true,
    why: null,
    widthPx,
  };
}

/** A whole line through clicks. */
export type FollowedClicks = {
  readonly path: readonly PixelPoint[];
  /** Stretches (0 from the first click to the second) that were drawn straight. */
  readonly straight: readonly number[];
  /** One sentence for each of them. */
  readonly why: readonly string[];
  /** Median width of the stroke, pixels; null when nothing was followed. */
  readonly widthPx: number | null;
};

/** `followLine` from each click to the next, joined. */
export function followClicks(
  image: PreparedImage,
  clicks: readonly PixelPoint[],
  options: FollowOptions = {},
): FollowedClicks {
  const stretches = clicks.slice(1).map((to, i) => followLine(image, clicks[i]!, to, options));
  const widths = stretches.flatMap(({ widthPx }) => (widthPx === null ? [] : [widthPx]));
  return {
    path: joined(stretches.map(({ points }) => points)),
    straight: stretches.flatMap(({ followed }, i) => (followed ? [] : [i])),
    why: stretches.flatMap(({ why }) => (why === null ? [] : [why])),
    widthPx: widths.length === 0 ? null : middleOf(widths),
  };
}

/** Stretches end to end; where one ends and the next begins they meet halfway between. */
export function joined(stretches: readonly (readonly PixelPoint[])[]): readonly PixelPoint[] {
  const out: PixelPoint[] = [];
  for (const points of stretches) {
    const last = out.pop();
    const first = points[0];
    if (last !== undefined && first !== undefined) {
      out.push([(last[0] + first[0]) / 2, (last[1] + first[1]) / 2], ...points.slice(1));
    } else out.push(...points);
  }
  return out;
}

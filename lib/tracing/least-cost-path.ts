/** A window of pixels with the cost of stepping on each: whole numbers from 1 to `MAX_COST`. */
export type CostWindow = { readonly width: number; readonly height: number; readonly cost: Uint8Array };

export const MAX_COST = 100;

/** Lengths of a straight and a diagonal step, to 0.3 %, in whole numbers so that costs stay whole. */
const STRAIGHT = 5;
const DIAGONAL = 7;
/** More than the dearest step, and a power of two. */
const BUCKETS = 1024;

/**
 * The cheapest way from one pixel of a window to another, eight neighbours to a pixel: indices
 * y·width + x from `from` to `to`. A step costs its length times the cost of the pixel stepped on.
 *
 * Dijkstra's shortest path with whole costs kept in a ring of buckets (E. W. Dijkstra, "A note on two
 * problems in connexion with graphs", 1959; R. B. Dial, Algorithm 360, Comm. ACM 12 (1969)). Drawing
 * along a picture's edges by the cheapest path between clicks: E. N. Mortensen and W. A. Barrett,
 * "Interactive segmentation with intelligent scissors", Graphical Models and Image Processing 60 (1998).
 */
export function leastCostPath({ width, height, cost }: CostWindow, from: number, to: number): Int32Array {
  const count = width * height;
  const distance = new Int32Array(count).fill(2 ** 31 - 1);
  const cameFrom = new Int32Array(count).fill(-1);
  const settled = new Uint8Array(count);
  const heads = new Int32Array(BUCKETS).fill(-1);
  // Each pixel is entered again only when a cheaper way to it is found, at most once from each neighbour.
  const entryPixel = new Int32Array(8 * count + 1);
  const entryNext = new Int32Array(8 * count + 1);
  let entries = 0;
  const enter = (pixel: number, at: number): void => {
    const bucket = at & (BUCKETS - 1);
    entryPixel[entries] = pixel;
    entryNext[entries] = heads[bucket]!;
    heads[bucket] = entries;
    entries += 1;
  };
  distance[from] = 0;
  enter(from, 0);
  let waiting = 1;
  for (let reached = 0; waiting > 0; reached += 1) {
    const bucket = reached & (BUCKETS - 1);
    while (heads[bucket]! >= 0) {
      const entry = heads[bucket]!;
      heads[bucket] = entryNext[entry]!;
      waiting -= 1;
      const pixel = entryPixel[entry]!;
      if (settled[pixel] === 1) continue;
      settled[pixel] = 1;
      if (pixel === to) return wayBack(cameFrom, to);
      const x = pixel % width;
      const y = (pixel - x) / width;
      for (let dy = -1; dy <= 1; dy += 1) {
        if (y + dy < 0 || y + dy >= height) continue;
        for (let dx = -1; dx <= 1; dx += 1) {
          if ((dx === 0 && dy === 0) || x + dx < 0 || x + dx >= width) continue;
          const next = pixel + dy * width + dx;
          if (settled[next] === 1) continue;
          const along = reached + (dx === 0 || dy === 0 ? STRAIGHT : DIAGONAL) * cost[next]!;
          if (along >= distance[next]!) continue;
          distance[next] = along;
          cameFrom[next] = pixel;
          enter(next, along);
          waiting += 1;
        }
      }
    }
  }
  return Int32Array.of(from, to);
}

function wayBack(cameFrom: Int32Array, to: number): Int32Array {
  const way: number[] = [];
  for (let pixel = to; pixel >= 0; pixel = cameFrom[pixel]!) way.push(pixel);
  return Int32Array.from(way.reverse());
}

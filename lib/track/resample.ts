/** Stations in order of position, and which of them have a reading (1, else 0). Positions m, ascending. */
export type TakenStations = {
  readonly positionsM: ArrayLike<number>;
  readonly isTaken: ArrayLike<number>;
};

/** How near a station must be to stand for a place, and how far apart two may be to bridge it; m. */
export type Bridge = { readonly sameM: number; readonly bridgeM: number };

/** What stands `offsetM` (m) beyond a station: the first `count` (0, 1 or 2) of `indices`, with their `weights`. */
export type PointFinder = {
  readonly offsetM: number;
  /** The station before which the last place lay: the next is looked for from there. */
  next: number;
  count: number;
  readonly indices: Int32Array;
  readonly weights: Float64Array;
};

export const pointFinder = (offsetM: number): PointFinder => ({
  offsetM,
  next: 0,
  count: 0,
  indices: new Int32Array(2),
  weights: new Float64Array(2),
});

/**
 * Finds what stands the finder's offset beyond a station: the station there (to `sameM`), or the two
 * stations with a reading on either side, for the straight line between them, when they are at most
 * `bridgeM` apart.
 * Gives how many stations that takes, 1 or 2, and leaves them in the finder until it is asked again;
 * 0 where neither holds: nothing is carried across a missing station, nor past an end.
 * Stations are asked for in any order; quickest when each lies beyond the one before.
 */
export function findPoint(
  finder: PointFinder,
  { positionsM, isTaken }: TakenStations,
  { sameM, bridgeM }: Bridge,
  station: number,
): number {
  const atM = positionsM[station]! + finder.offsetM;
  const last = positionsM.length;
  let { next } = finder;
  while (next > 0 && positionsM[next - 1]! >= atM) next -= 1;
  while (next < last && positionsM[next]! < atM) next += 1;
  finder.next = next;
  const before = next - 1;
  const toNext = next < last ? positionsM[next]! - atM : Infinity;
  const toBefore = before >= 0 ? atM - positionsM[before]! : Infinity;
  const { indices, weights } = finder;
  if (toNext <= sameM || toBefore <= sameM) {
    const closest = toNext < toBefore ? next : before;
    indices[0] = closest;
    weights[0] = 1;
    finder.count = isTaken[closest] === 1 ? 1 : 0;
    return finder.count;
  }
  const apart = toNext + toBefore;
  finder.count = 0;
  if (!(apart <= bridgeM) || isTaken[before] !== 1 || isTaken[next] !== 1) return 0;
  indices[0] = before;
  indices[1] = next;
  weights[0] = toNext / apart;
  weights[1] = toBefore / apart;
  finder.count = 2;
  return 2;
}

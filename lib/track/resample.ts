/**
 * Finds what stands at places of a sheet: the station there (to `sameM`), or the two stations with a
 * reading on either side, for the straight line between them, when they are at most `bridgeM` apart.
 * `find` gives how many stations that takes, 1 or 2, and leaves them in `indices` with their `weights`
 * until the next call; 0 where neither holds: nothing is carried across a missing station, nor past an end.
 * Places are asked for in any order; quickest when each lies beyond the one before.
 * `positionsM` ascending; `isTaken` is 1 where a station has a reading, else 0. Positions m.
 */
export function pointFinder(
  positionsM: ArrayLike<number>,
  isTaken: ArrayLike<number>,
  { sameM, bridgeM }: { readonly sameM: number; readonly bridgeM: number },
): {
  readonly find: (atM: number) => number;
  readonly indices: ArrayLike<number>;
  readonly weights: ArrayLike<number>;
} {
  const count = positionsM.length;
  const indices = new Int32Array(2);
  const weights = new Float64Array(2);
  let next = 0;
  const find = (atM: number): number => {
    while (next > 0 && positionsM[next - 1]! >= atM) next -= 1;
    while (next < count && positionsM[next]! < atM) next += 1;
    const before = next - 1;
    const toNext = next < count ? positionsM[next]! - atM : Infinity;
    const toBefore = before >= 0 ? atM - positionsM[before]! : Infinity;
    if (Math.min(toNext, toBefore) <= sameM) {
      const closest = toNext < toBefore ? next : before;
      indices[0] = closest;
      weights[0] = 1;
      return isTaken[closest] === 1 ? 1 : 0;
    }
    const apart = toNext + toBefore;
    if (!(apart <= bridgeM) || isTaken[before] !== 1 || isTaken[next] !== 1) return 0;
    indices[0] = before;
    indices[1] = next;
    weights[0] = toNext / apart;
    weights[1] = toBefore / apart;
    return 2;
  };
  return { find, indices, weights };
}

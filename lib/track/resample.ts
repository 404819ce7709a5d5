/** A reading's share in a value found between stations. */
export type Share = { readonly index: number; readonly weight: number };

/**
 * What stands at a place of the sheet: the station there (to `sameM`), or the straight line between
 * the two stations with a reading on either side when they are at most `bridgeM` apart. null where
 * neither holds: nothing is carried across a missing station, nor past an end.
 * `positionsM` ascending; `has` says whether a station has a reading; `near` is where to start
 * looking, any index. Positions m.
 */
export function sharesAt(
  positionsM: ArrayLike<number>,
  has: (index: number) => boolean,
  atM: number,
  { sameM, bridgeM }: { readonly sameM: number; readonly bridgeM: number },
  near: number,
): readonly Share[] | null {
  const count = positionsM.length;
  let next = Math.min(Math.max(near, 0), count);
  while (next > 0 && (positionsM[next - 1] ?? NaN) >= atM) next -= 1;
  while (next < count && (positionsM[next] ?? NaN) < atM) next += 1;
  const before = next - 1;
  const toNext = next < count ? (positionsM[next] ?? NaN) - atM : Infinity;
  const toBefore = before >= 0 ? atM - (positionsM[before] ?? NaN) : Infinity;
  const closest = toNext < toBefore ? next : before;
  if (Math.min(toNext, toBefore) <= sameM) return has(closest) ? [{ index: closest, weight: 1 }] : null;
  const apart = toNext + toBefore;
  if (!(apart <= bridgeM) || !has(before) || !has(next)) return null;
  return [
    { index: before, weight: toNext / apart },
    { index: next, weight: toBefore / apart },
  ];
}

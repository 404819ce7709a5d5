import type { Method } from '../findings/finding';

/** 62 ft, the distance within which 49 CFR 213.63(a) compares crosslevel. */
export const WARP_BASE_M = 18.8976;

/**
 * Positions are paced or taped, so two stations meant to be 62 ft apart seldom differ by
 * exactly that once converted; a millimetre either side counts as 62 ft.
 */
const SAME_DISTANCE_M = 0.001;

/** Two stations and how crosslevel changes from the earlier position to the later one. */
export type WarpPair = {
  /** Indices into the stations given, earlier position first. */
  readonly from: number;
  readonly to: number;
  readonly distanceM: number;
  /** Crosslevel at `to` less crosslevel at `from`, signed. */
  readonly changeMm: number;
};

/** Which pairs are compared: farther apart than one length and no farther than the other. */
export type Reach = { readonly moreThanM: number; readonly lessThanM: number };

/**
 * Pairs less than a distance apart. One exactly that far apart (to a millimetre) is left out: the
 * rule says "less than 62 feet". Two readings at one position are not a pair.
 */
export const lessThan = (baseM: number): Reach => ({
  moreThanM: SAME_DISTANCE_M,
  lessThanM: baseM - SAME_DISTANCE_M,
});

/** Pairs at most a distance apart, those exactly that far apart among them. */
export const upTo = (baseM: number): Reach => ({
  moreThanM: SAME_DISTANCE_M,
  lessThanM: baseM + SAME_DISTANCE_M,
});

/** Pairs a distance apart, give or take: those `lessThan` leaves out where nothing else is said. */
export const apart = (baseM: number, giveM: number = SAME_DISTANCE_M): Reach => ({
  moreThanM: baseM - giveM,
  lessThanM: baseM + giveM,
});

export const LESS_THAN_62_FT = lessThan(WARP_BASE_M);

/** Levels in order of position, those not taken left out. `order`: indices into the stations given. */
export type LevelsInOrder = {
  readonly order: Int32Array;
  readonly positionsM: Float64Array;
  readonly levelsMm: Float64Array;
};

/**
 * Positions (m) may come in any order; equal ones keep theirs. Crosslevel (mm) is NaN where it was not
 * taken: the station is passed over, nothing is filled in.
 */
export function levelsInOrder(positions: ArrayLike<number>, crosslevels: ArrayLike<number>): LevelsInOrder {
  const taken: number[] = [];
  let ascending = true;
  let last = -Infinity;
  for (let index = 0; index < positions.length; index += 1) {
    const positionM = positions[index]!;
    if (!Number.isFinite(positionM) || !Number.isFinite(crosslevels[index] ?? NaN)) continue;
    taken.push(index);
    ascending &&= positionM >= last;
    last = positionM;
  }
  if (!ascending) taken.sort((a, b) => positions[a]! - positions[b]!);
  const order = new Int32Array(taken);
  const [positionsM, levelsMm] = [new Float64Array(order.length), new Float64Array(order.length)];
  for (let i = 0; i < order.length; i += 1) {
    positionsM[i] = positions[order[i]!]!;
    levelsMm[i] = crosslevels[order[i]!]!;
  }
  return { order, positionsM, levelsMm };
}

/**
 * The pair within reach with the greatest change of crosslevel, whichever its sign, of those that
 * `which` (indices into the stations given, earlier position first) lets through; the first such pair
 * when several are equal, null when there is none.
 * Units: positions m, crosslevel mm. Source: 49 CFR 213.63(a).
 */
export function worstWarp(
  { order, positionsM, levelsMm }: LevelsInOrder,
  { moreThanM, lessThanM }: Reach = LESS_THAN_62_FT,
  which: (from: number, to: number) => boolean = () => true,
): WarpPair | null {
  let [worstFrom, worstTo, size] = [-1, -1, -1];
  for (let i = 0; i < order.length; i += 1) {
    for (let j = i + 1; j < order.length; j += 1) {
      const distanceM = positionsM[j]! - positionsM[i]!;
      if (distanceM >= lessThanM) break;
      const change = Math.abs(levelsMm[j]! - levelsMm[i]!);
      if (change <= size || distanceM <= moreThanM || !which(order[i]!, order[j]!)) continue;
      [worstFrom, worstTo, size] = [i, j, change];
    }
  }
  return worstFrom < 0 ? null : pairOf({ order, positionsM, levelsMm }, worstFrom, worstTo);
}

/**
 * For every station the pair with the greatest change that ends there, in order of position; the one
 * from the earliest station when several are equal. Units and source as `worstWarp`.
 */
export function worstWarpUpToEach(levels: LevelsInOrder, { moreThanM, lessThanM }: Reach): WarpPair[] {
  const { positionsM, levelsMm } = levels;
  const pairs: WarpPair[] = [];
  let first = 0;
  for (let j = 0; j < positionsM.length; j += 1) {
    while (positionsM[j]! - positionsM[first]! >= lessThanM) first += 1;
    let [from, size] = [-1, -1];
    for (let i = first; i < j; i += 1) {
      const change = Math.abs(levelsMm[j]! - levelsMm[i]!);
      if (change > size && positionsM[j]! - positionsM[i]! > moreThanM) [from, size] = [i, change];
    }
    if (from >= 0) pairs.push(pairOf(levels, from, j));
  }
  return pairs;
}

const pairOf = ({ order, positionsM, levelsMm }: LevelsInOrder, i: number, j: number): WarpPair => ({
  from: order[i]!,
  to: order[j]!,
  distanceM: positionsM[j]! - positionsM[i]!,
  changeMm: levelsMm[j]! - levelsMm[i]!,
});

export const warpMethod: Method = {
  id: 'warp',
  name: 'Warp: change of crosslevel between any two points less than 62 ft apart',
  formula:
    'warp = XL(b) − XL(a) for every pair of stations a, b with 0 < b − a < 62 ft; the greatest |warp| is reported. XL: crosslevel.',
  validRange:
    'Any spacing of stations. A pair exactly 62 ft apart (to 1 mm) is outside the rule and is left out. Stations without crosslevel are passed over; nothing is interpolated, so a peak between stations is not seen.',
  sources: [{ text: '49 CFR 213.63(a), table and footnotes', status: 'published' }],
};

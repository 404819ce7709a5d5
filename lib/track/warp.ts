import type { Method } from '../findings/finding';

/** 62 ft, the distance within which 49 CFR 213.63(a) compares crosslevel. */
export const WARP_BASE_M = 18.8976;

/**
 * Positions are paced or taped, so two stations meant to be 62 ft apart seldom differ by
 * exactly that once converted; a millimetre either side counts as 62 ft.
 */
const SAME_DISTANCE_M = 0.001;

export type CrosslevelStation = {
  readonly positionM: number;
  /** NaN where crosslevel was not taken: the station is passed over, nothing is filled in. */
  readonly crosslevelMm: number;
};

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

/**
 * Calls `visit` for every pair of stations within reach, in order of position: indices into the
 * stations given, earlier position first; their distance; crosslevel at the later less that at the
 * earlier. A callback, not a list: a sheet of thousands of stations has hundreds of thousands of pairs.
 * Units: positions m, crosslevel mm. Stations may come in any order. Source: 49 CFR 213.63(a).
 */
export function eachWarpPair(
  stations: readonly CrosslevelStation[],
  { moreThanM, lessThanM }: Reach,
  visit: (from: number, to: number, distanceM: number, changeMm: number) => void,
): void {
  const order = stations
    .map((_, index) => index)
    .filter((index) => {
      const station = stations[index]!;
      return Number.isFinite(station.positionM) && Number.isFinite(station.crosslevelMm);
    })
    .sort((a, b) => stations[a]!.positionM - stations[b]!.positionM);
  const positions = Float64Array.from(order, (index) => stations[index]!.positionM);
  const levels = Float64Array.from(order, (index) => stations[index]!.crosslevelMm);
  for (let i = 0; i < order.length; i += 1) {
    for (let j = i + 1; j < order.length; j += 1) {
      const distanceM = positions[j]! - positions[i]!;
      if (distanceM >= lessThanM) break;
      if (distanceM <= moreThanM) continue;
      visit(order[i]!, order[j]!, distanceM, levels[j]! - levels[i]!);
    }
  }
}

/**
 * The pair with the greatest change of crosslevel, whichever its sign, of those that `which` lets
 * through; the first such pair when several are equal, null when there is none.
 * Units, order and source as `eachWarpPair`.
 */
export function worstWarp(
  stations: readonly CrosslevelStation[],
  reach: Reach = LESS_THAN_62_FT,
  which: (from: number, to: number) => boolean = () => true,
): WarpPair | null {
  let worst: WarpPair | null = null;
  let size = -1;
  eachWarpPair(stations, reach, (from, to, distanceM, changeMm) => {
    if (Math.abs(changeMm) <= size || !which(from, to)) return;
    size = Math.abs(changeMm);
    worst = { from, to, distanceM, changeMm };
  });
  return worst;
}

export const warpMethod: Method = {
  id: 'warp',
  name: 'Warp: change of crosslevel between any two points less than 62 ft apart',
  formula:
    'warp = XL(b) − XL(a) for every pair of stations a, b with 0 < b − a < 62 ft; the greatest |warp| is reported. XL: crosslevel.',
  validRange:
    'Any spacing of stations. A pair exactly 62 ft apart (to 1 mm) is outside the rule and is left out. Stations without crosslevel are passed over; nothing is interpolated, so a peak between stations is not seen.',
  sources: [{ text: '49 CFR 213.63(a), table and footnotes', status: 'published' }],
};

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

/**
 * Every pair of stations less than `baseM` apart, one at a time, in order of position.
 * A pair exactly `baseM` apart (to a millimetre) is left out: the rule says "less than 62 feet".
 * See `warpPairsAtBase` for those.
 * Units: positions m, crosslevel mm. Stations may come in any order. Two readings at one
 * position are not a pair. Source: 49 CFR 213.63(a).
 */
export function* warpPairs(
  stations: readonly CrosslevelStation[],
  baseM: number = WARP_BASE_M,
): Generator<WarpPair> {
  yield* pairsBetween(stations, SAME_DISTANCE_M, baseM - SAME_DISTANCE_M);
}

/** The pairs `warpPairs` leaves out because they are `baseM` apart to a millimetre. */
export function* warpPairsAtBase(
  stations: readonly CrosslevelStation[],
  baseM: number = WARP_BASE_M,
): Generator<WarpPair> {
  for (const pair of pairsBetween(stations, baseM - SAME_DISTANCE_M, baseM + 2 * SAME_DISTANCE_M)) {
    if (Math.abs(pair.distanceM - baseM) <= SAME_DISTANCE_M) yield pair;
  }
}

/**
 * The pair with the greatest change of crosslevel, whichever its sign; the first such pair when
 * several are equal; null when no two stations lie less than `baseM` apart.
 * Units, order and source as `warpPairs`.
 */
export function worstWarp(
  stations: readonly CrosslevelStation[],
  baseM: number = WARP_BASE_M,
): WarpPair | null {
  let worst: WarpPair | null = null;
  for (const pair of warpPairs(stations, baseM)) {
    if (worst === null || Math.abs(pair.changeMm) > Math.abs(worst.changeMm)) worst = pair;
  }
  return worst;
}

function* pairsBetween(
  stations: readonly CrosslevelStation[],
  moreThanM: number,
  lessThanM: number,
): Generator<WarpPair> {
  const order = stations
    .map((_, index) => index)
    .filter((index) => {
      const station = stations[index]!;
      return Number.isFinite(station.positionM) && Number.isFinite(station.crosslevelMm);
    })
    .sort((a, b) => stations[a]!.positionM - stations[b]!.positionM);
  for (let i = 0; i < order.length; i += 1) {
    const from = order[i]!;
    const earlier = stations[from]!;
    for (let j = i + 1; j < order.length; j += 1) {
      const to = order[j]!;
      const later = stations[to]!;
      const distanceM = later.positionM - earlier.positionM;
      if (distanceM >= lessThanM) break;
      if (distanceM <= moreThanM) continue;
      yield { from, to, distanceM, changeMm: later.crosslevelMm - earlier.crosslevelMm };
    }
  }
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

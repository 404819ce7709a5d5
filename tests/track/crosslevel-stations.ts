import { levelsInOrder, worstWarp, type LevelsInOrder, type Reach, type WarpPair } from '~/lib/track/warp';

/** NaN where crosslevel was not taken. */
export type CrosslevelStation = { readonly positionM: number; readonly crosslevelMm: number };

export const levelsOf = (stations: readonly CrosslevelStation[]): LevelsInOrder =>
  levelsInOrder(
    stations.map(({ positionM }) => positionM),
    stations.map(({ crosslevelMm }) => crosslevelMm),
  );

export const worstOf = (stations: readonly CrosslevelStation[], reach?: Reach): WarpPair | null =>
  worstWarp(levelsOf(stations), reach);

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  apart,
  LESS_THAN_62_FT,
  upTo,
  WARP_BASE_M,
  worstWarpUpToEach,
  type WarpPair,
} from '~/lib/track/warp';
import { levelsOf, worstOf, type CrosslevelStation } from './crosslevel-stations';

const SEED = { seed: 6219 };
/** Whole millimetres, so that shifting the datum rounds nothing. */
const sheet = fc.array(
  fc.record({
    positionM: fc.integer({ min: -200_000, max: 200_000 }).map((mm) => mm / 1000),
    crosslevelMm: fc.integer({ min: -150, max: 150 }),
  }),
  { maxLength: 40 },
);

const size = (stations: readonly CrosslevelStation[]) => Math.abs(worstOf(stations)?.changeMm ?? 0);

/** Every pair by itself, in order of position. */
function allPairs(stations: readonly CrosslevelStation[]): readonly WarpPair[] {
  const order = stations
    .map((station, index) => ({ ...station, index }))
    .sort((a, b) => a.positionM - b.positionM);
  return order.flatMap((from, i) =>
    order.slice(i + 1).flatMap((to) => {
      const distanceM = to.positionM - from.positionM;
      const isPair = distanceM > 0.001 && distanceM < WARP_BASE_M - 0.001;
      const changeMm = to.crosslevelMm - from.crosslevelMm;
      return isPair ? [{ from: from.index, to: to.index, distanceM, changeMm }] : [];
    }),
  );
}

const greatest = (pairs: readonly WarpPair[]): WarpPair | null =>
  pairs.reduce<WarpPair | null>(
    (worst, pair) => (worst === null || Math.abs(pair.changeMm) > Math.abs(worst.changeMm) ? pair : worst),
    null,
  );

describe('warp', () => {
  it('finds what a search of all pairs finds, of the sheet and up to each station', () => {
    fc.assert(
      fc.property(sheet, (stations) => {
        const pairs = allPairs(stations);
        expect(worstOf(stations)).toEqual(greatest(pairs));
        const upToEach = worstWarpUpToEach(levelsOf(stations), LESS_THAN_62_FT);
        const ends = [...new Set(pairs.map(({ to }) => to))];
        expect(upToEach).toHaveLength(ends.length);
        for (const to of ends) {
          const own = pairs.filter((pair) => pair.to === to);
          expect(upToEach).toContainEqual(greatest(own));
        }
      }),
      SEED,
    );
  });

  it('is the same with the sheet in another order, the datum shifted, or the direction reversed', () => {
    fc.assert(
      fc.property(sheet, fc.integer({ min: -50, max: 50 }), (stations, datum) => {
        const worst = size(stations);
        expect(size([...stations].reverse())).toBe(worst);
        expect(size(stations.map((s) => ({ ...s, crosslevelMm: s.crosslevelMm + datum })))).toBe(worst);
        // Left becomes right, and what was ahead lies behind.
        expect(size(stations.map((s) => ({ positionM: -s.positionM, crosslevelMm: -s.crosslevelMm })))).toBe(
          worst,
        );
      }),
      SEED,
    );
  });

  it('one more station never makes it less; every pair is within the base and runs forward', () => {
    fc.assert(
      fc.property(sheet, sheet, (stations, more) => {
        expect(size([...stations, ...more])).toBeGreaterThanOrEqual(size(stations));
        for (const pair of worstWarpUpToEach(levelsOf(stations), LESS_THAN_62_FT)) {
          expect(pair.distanceM).toBeGreaterThan(0);
          expect(pair.distanceM).toBeLessThan(WARP_BASE_M);
          expect(stations[pair.from]!.positionM).toBeLessThan(stations[pair.to]!.positionM);
        }
      }),
      SEED,
    );
  });

  it('pairs at the base are told apart, and stations without crosslevel are passed over', () => {
    const stations = [
      { positionM: 0, crosslevelMm: 10 },
      { positionM: 9, crosslevelMm: NaN },
      { positionM: WARP_BASE_M, crosslevelMm: 60 },
    ];
    expect(worstOf(stations)).toBeNull();
    expect(worstOf(stations, apart(WARP_BASE_M))).toMatchObject({ from: 0, to: 2, changeMm: 50 });
  });

  it('another base, as elsewhere in the world', () => {
    const stations = [0, 1, 2, 3, 4].map((m) => ({ positionM: m, crosslevelMm: m * m }));
    expect(worstOf(stations, upTo(3))).toMatchObject({ from: 1, to: 4, changeMm: 15 });
  });
});

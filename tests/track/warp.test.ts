import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  apart,
  eachWarpPair,
  LESS_THAN_62_FT,
  upTo,
  WARP_BASE_M,
  worstWarp,
  type CrosslevelStation,
  type Reach,
  type WarpPair,
} from '~/lib/track/warp';

const SEED = { seed: 6219 };
/** Whole millimetres, so that shifting the datum rounds nothing. */
const sheet = fc.array(
  fc.record({
    positionM: fc.integer({ min: -200_000, max: 200_000 }).map((mm) => mm / 1000),
    crosslevelMm: fc.integer({ min: -150, max: 150 }),
  }),
  { maxLength: 40 },
);

function pairsOf(
  stations: readonly CrosslevelStation[],
  reach: Reach = LESS_THAN_62_FT,
): readonly WarpPair[] {
  const pairs: WarpPair[] = [];
  eachWarpPair(stations, reach, (from, to, distanceM, changeMm) =>
    pairs.push({ from, to, distanceM, changeMm }),
  );
  return pairs;
}

const size = (stations: readonly CrosslevelStation[]) => Math.abs(worstWarp(stations)?.changeMm ?? 0);

describe('warp', () => {
  it('finds what a search of all pairs finds', () => {
    fc.assert(
      fc.property(sheet, (stations) => {
        let greatest = 0;
        let pairs = 0;
        for (let i = 0; i < stations.length; i += 1) {
          for (let j = i + 1; j < stations.length; j += 1) {
            const distance = Math.abs(stations[i]!.positionM - stations[j]!.positionM);
            if (distance <= 0.001 || distance >= WARP_BASE_M - 0.001) continue;
            pairs += 1;
            const change = Math.abs(stations[i]!.crosslevelMm - stations[j]!.crosslevelMm);
            greatest = Math.max(greatest, change);
          }
        }
        expect(size(stations)).toBe(greatest);
        expect(pairsOf(stations)).toHaveLength(pairs);
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
        for (const pair of pairsOf(stations)) {
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
    expect(worstWarp(stations)).toBeNull();
    expect(pairsOf(stations, apart(WARP_BASE_M))).toMatchObject([{ from: 0, to: 2, changeMm: 50 }]);
  });

  it('another base, as elsewhere in the world', () => {
    const stations = [0, 1, 2, 3, 4].map((m) => ({ positionM: m, crosslevelMm: m * m }));
    expect(worstWarp(stations, upTo(3))).toMatchObject({ from: 1, to: 4, changeMm: 15 });
  });
});

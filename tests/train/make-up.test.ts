import { describe, expect, it } from 'vitest';
import {
  emptiesAheadOfLoads,
  longShortPairs,
  trailingWeights,
  type MadeUpVehicle,
} from '~/lib/train/make-up';

const one = (changes: Partial<MadeUpVehicle>): MadeUpVehicle => ({
  massKg: 100_000,
  lengthM: 18,
  load: 'loaded',
  locomotive: false,
  ...changes,
});

describe('make-up of the train', () => {
  it('sums what is behind each vehicle, up to a weight that is missing', () => {
    expect([...trailingWeights([1, 2, 3, 4])]).toEqual([9, 7, 4, 0]);
    expect([...trailingWeights([1, NaN, 3, 4])]).toEqual([NaN, 7, 4, 0]);
    expect([...trailingWeights([])]).toEqual([]);
  });

  it('pairs 75 ft with 50 ft, either way round, and leaves locomotives out', () => {
    const long = one({ lengthM: 75 * 0.3048 });
    const short = one({ lengthM: 50 * 0.3048 });
    expect(longShortPairs([long, short, long, one({ lengthM: 16 }), short])).toEqual([0, 1]);
    expect(longShortPairs([one({ lengthM: 23, locomotive: true }), short])).toEqual([]);
    expect(longShortPairs([long, one({ lengthM: NaN })])).toEqual([]);
  });

  it('counts empties only when a load is behind them', () => {
    const empty = one({ load: 'empty' });
    expect(emptiesAheadOfLoads([empty, one({}), empty, one({}), empty])).toEqual([0, 2]);
    expect(emptiesAheadOfLoads([empty, empty])).toEqual([]);
  });
});

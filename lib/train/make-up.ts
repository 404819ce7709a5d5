import { toCanonical } from '../readings/convert';
import type { Method } from '../findings/finding';

/** One vehicle of a train as its make-up is judged; NaN where a value is not known. */
export type MadeUpVehicle = {
  readonly massKg: number;
  readonly lengthM: number;
  readonly load: 'empty' | 'loaded' | 'partLoaded' | 'notSaid';
  readonly locomotive: boolean;
};

/** A car this long coupled to one this short swings both couplers far over in a curve. */
export const LONG_FROM_M = toCanonical(75, 'ft', 'alongTrack');
export const SHORT_UP_TO_M = toCanonical(50, 'ft', 'alongTrack');

/** Weight behind each vehicle, head end first, kg; NaN from where a weight behind it is not known. */
export function trailingWeights(massesKg: readonly number[]): Float64Array {
  const behind = new Float64Array(massesKg.length);
  for (let i = massesKg.length - 2; i >= 0; i -= 1) behind[i] = behind[i + 1]! + massesKg[i + 1]!;
  return behind;
}

/** Index of the leading vehicle of every coupled pair of a long and a short one, locomotives left out. */
export function longShortPairs(vehicles: readonly MadeUpVehicle[]): readonly number[] {
  return vehicles.flatMap((one, i) => {
    const next = vehicles[i + 1];
    if (next === undefined || one.locomotive || next.locomotive) return [];
    const [short, long] = [Math.min(one.lengthM, next.lengthM), Math.max(one.lengthM, next.lengthM)];
    return long >= LONG_FROM_M && short <= SHORT_UP_TO_M ? [i] : [];
  });
}

/** Index of every empty car that has a loaded one behind it. */
export function emptiesAheadOfLoads(vehicles: readonly MadeUpVehicle[]): readonly number[] {
  const lastLoad = vehicles.findLastIndex(({ load, locomotive }) => load === 'loaded' && !locomotive);
  return vehicles.flatMap(({ load, locomotive }, i) =>
    load === 'empty' && !locomotive && i < lastLoad ? [i] : [],
  );
}

export const makeUpMethod: Method = {
  id: 'train-make-up',
  name: 'Make-up of the train',
  formula:
    'Long-short pair: a car of 75 ft (22.9 m) or more over pulling faces coupled to one of 50 ft (15.2 m) or less. Empty ahead of loads: an empty car with any loaded car behind it. Locomotives are left out.',
  validRange:
    'As the consist gives lengths and loads. Railroads have their own make-up rules, by tonnage behind and by grade and curve; these counts are not those rules.',
  sources: [{ text: 'Lengths that make a pair long-short', status: 'engineering judgement' }],
};

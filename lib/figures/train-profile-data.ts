import type { Context } from '../findings/context';
import { couplerForces } from '../findings/train/coupler-forces';
import { madeUpTrain, trailingByVehicle } from '../findings/train/make-up';
import type { VehicleState } from '../findings/train/train-state';
import type { UnitSystem } from '../readings/unit';
import { systemOf } from './case-marks';

/** One line of a range: its middle and its ends. NaN where there is nothing. */
export type Band = {
  readonly mean: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
};

export type TrainProfileData = {
  readonly system: UnitSystem;
  /** Middle of each vehicle from the head end, m. */
  readonly middlesM: readonly number[];
  /** Where each coupler behind a vehicle is, m: one fewer. */
  readonly couplersM: readonly number[];
  readonly positions: readonly (number | null)[];
  readonly massesKg: readonly number[];
  readonly trailingKg: readonly number[];
  /** Index of the first derailed vehicle; null when none is marked. */
  readonly first: number | null;
  readonly forcesKn: Band | null;
  readonly ratios: Band | null;
  /** Grade under the middle of each vehicle; null where one grade stands for all. */
  readonly grades: readonly number[] | null;
  /** Curvature under each vehicle, of the hand of the curve at the POD positive, 1/m; null where none is known by vehicle. */
  readonly curvatures: readonly number[] | null;
};

const FALLBACK_LENGTH_M = 16.8;

/** The train along its length: weight, weight behind, and the forces between, where they are known. */
export function trainProfileData(context: Context): TrainProfileData {
  const train = madeUpTrain(context);
  const lengths = train.map(({ lengthM }) => (lengthM > 0 ? lengthM : FALLBACK_LENGTH_M));
  let end = 0;
  const ends = lengths.map((length) => (end += length));
  const behind = trailingByVehicle(context);
  const firstId = context.first.vehicle?.entity.id;
  const first = train.findIndex(({ entity }) => entity.id === firstId);
  const forces = train.length > 1 ? couplerForces(context) : null;
  const band = (spreads: readonly { mean: number; low: number; high: number }[]): Band => ({
    mean: spreads.map(({ mean }) => mean),
    low: spreads.map(({ low }) => low),
    high: spreads.map(({ high }) => high),
  });
  return {
    system: systemOf(context.record),
    middlesM: ends.map((each, i) => each - lengths[i]! / 2),
    couplersM: ends.slice(0, -1),
    positions: train.map(({ entity }) =>
      typeof entity.fields.position === 'number' ? entity.fields.position : null,
    ),
    massesKg: train.map(({ massKg }) => massKg),
    trailingKg: train.map(({ entity }) => behind.get(entity.id) ?? NaN),
    first: first < 0 ? null : first,
    forcesKn: forces?.kind === 'known' ? band(forces.couplers) : null,
    ratios: forces?.kind === 'known' ? band(forces.ratios) : null,
    ...trackUnder(forces?.kind === 'known' ? forces.state.vehicles : []),
  };
}

/** Grade and curvature by vehicle, where they are more than one value for the whole train. */
function trackUnder(vehicles: readonly VehicleState[]): Pick<TrainProfileData, 'grades' | 'curvatures'> {
  const grades = vehicles.map(({ grade }) => grade.value);
  const known = vehicles.map(({ curvature: [low, high] }) => (low === high ? low : NaN));
  const several = (values: readonly number[]): boolean => new Set(values.filter(Number.isFinite)).size > 1;
  return { grades: several(grades) ? grades : null, curvatures: several(known) ? known : null };
}

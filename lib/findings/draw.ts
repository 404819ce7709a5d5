import { probabilityBelow, propagate, type Input } from '../readings/propagate';
import { distinct, readingsOf } from './build';
import type { LimitCheck } from './finding';
import type { Taken } from './reading-index';

/** Enough for a standard uncertainty good to about two per cent (relative 1/√(2M) for M draws). */
export const DRAWS = 2_000;

export type Drawn = {
  /** The formula at the readings as taken, with the spread of its draws. */
  readonly taken: Taken;
  readonly draws: Float64Array;
  /** Share of the draws for which the formula has no answer; `taken.u` is NaN unless it is zero. */
  readonly outOfRange: number;
};

/**
 * A formula of several independent values, with its uncertainty by propagation of distributions
 * (JCGM 101:2008, 7). One reading used twice errs in the same way twice. `assumed` are inputs
 * nobody read, after the others in the formula's order; the finding must say what was assumed.
 */
export function draw(
  formula: (values: ArrayLike<number>) => number,
  inputs: readonly [Taken, ...Taken[]],
  seed: number,
  assumed: readonly Input[] = [],
): Drawn {
  const [first, ...others] = inputs;
  const all: readonly Input[] = [
    ...inputs.map(({ value, u, readings }) => ({ key: readings.join('+'), value, u })),
    ...assumed,
  ];
  const spread = propagate(formula, all, DRAWS, seed);
  return {
    taken: {
      value: formula(all.map(({ value }) => value)),
      u: spread.u ?? NaN,
      readings: readingsOf(first, ...others),
      remarks: distinct(inputs.flatMap(({ remarks }) => remarks)),
    },
    draws: spread.draws,
    outOfRange: spread.outOfRange,
  };
}

/** Zero as a least value, with the share of the draws below it. */
export const notBelowZero = (
  name: string,
  { taken, draws }: Drawn,
  source: LimitCheck['source'],
): LimitCheck => ({
  name,
  citation: source.text,
  sense: 'min',
  limit: 0,
  exceeded: taken.value < 0,
  probabilityExceeds: probabilityBelow(draws, 0),
  source,
});

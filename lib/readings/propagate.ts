import { normalDraws } from './draws';

/** One input of a computation: the key of its draws (the reading's id), value and standard uncertainty. */
export type Input = { readonly key: string; readonly value: number; readonly u: number };

/**
 * Outcome of a Monte Carlo propagation. Draws for which the formula has no answer are NaN in `draws`
 * and counted in `outOfRange` (a share, 0 to 1); `mean` and `u` are null unless every draw has one,
 * because an average over the rest would hide them.
 */
export type Propagated = {
  readonly draws: Float64Array;
  readonly mean: number | null;
  readonly u: number | null;
  readonly outOfRange: number;
};

/**
 * Propagation of distributions (JCGM 101:2008, 7): each input drawn from a normal distribution
 * N(value, u²) keyed by `key` and `seed`, `f` evaluated `n` times on values in the inputs' order.
 * Two inputs with one key share their draws: one reading used twice errs in the same way twice.
 * `f` must not keep the array it is given. Throws if `n` is less than 2.
 */
export function propagate(
  f: (values: ArrayLike<number>) => number,
  inputs: readonly Input[],
  n: number,
  seed: number,
): Propagated {
  if (n < 2) throw new RangeError('propagation needs at least two draws');
  const normals = inputs.map(({ key, u }) => (u === 0 ? null : normalDraws(key, seed, n)));
  const values = Float64Array.from(inputs, ({ value }) => value);
  const draws = new Float64Array(n);
  let missing = 0;
  let mean = 0;
  let squares = 0;
  for (let i = 0; i < n; i += 1) {
    inputs.forEach(({ value, u }, j) => {
      values[j] = value + u * (normals[j]?.[i] ?? 0);
    });
    const y = f(values);
    if (!Number.isFinite(y)) {
      draws[i] = Number.NaN;
      missing += 1;
      continue;
    }
    draws[i] = y;
    const from = y - mean;
    mean += from / (i + 1 - missing);
    squares += from * (y - mean);
  }
  const complete = missing === 0;
  return {
    draws,
    mean: complete ? mean : null,
    u: complete ? Math.sqrt(squares / (n - 1)) : null,
    outOfRange: missing / n,
  };
}

/** Share of all draws above `limit`. Draws out of range count as neither above nor below. */
export const probabilityAbove = (draws: Float64Array, limit: number): number =>
  draws.reduce((count, draw) => (draw > limit ? count + 1 : count), 0) / draws.length;

/** Share of all draws below `limit`. Draws out of range count as neither above nor below. */
export const probabilityBelow = (draws: Float64Array, limit: number): number =>
  draws.reduce((count, draw) => (draw < limit ? count + 1 : count), 0) / draws.length;

/**
 * The value a share `p` (0 to 1) of the draws lie at or below, linear between neighbours; null if
 * any draw is out of range or there are none.
 */
export function quantileOf(draws: Float64Array, p: number): number | null {
  if (draws.length === 0 || draws.some(Number.isNaN)) return null;
  const sorted = Float64Array.from(draws).sort();
  const at = Math.min(Math.max(p, 0), 1) * (sorted.length - 1);
  const below = sorted[Math.floor(at)] ?? 0;
  const above = sorted[Math.ceil(at)] ?? below;
  return below + (above - below) * (at - Math.floor(at));
}

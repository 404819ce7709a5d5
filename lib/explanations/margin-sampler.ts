import type { KeyInput, KeyInputId, KeyInputs } from '../findings/key-input';
import { uniformDraws } from '../readings/draws';
import { inverseNormal } from '../readings/inverse-normal';
import type { MarginWitness } from './witness';

/** Enough that an outcome met once in a hundred is known to about a sixth of itself. */
export const MARGIN_DRAWS = 4_000;

/** λ = q/π0 of each outcome, and where this case's draws lie. */
export type MarginWeights = {
  readonly weights: Readonly<Record<string, number>>;
  /** 10th, 50th and 90th percentile of this case's draws. */
  readonly spread: readonly [number, number, number];
};

type Counted = { readonly counts: readonly number[]; readonly draws: Float64Array };

export type MarginSampler = (witness: MarginWitness, inputs: KeyInputs) => MarginWeights;

/**
 * Draws margins for a case and for the reference from the same numbers, keyed by input: measured
 * inputs are normal (value, u), the rest uniform over their reference range. Nothing measured gives
 * the very draws of the reference, so every λ is exactly 1. One added to each count keeps λ finite
 * where the reference never falls. Draws without an answer count for no outcome.
 */
export function marginSampler(seed: number): MarginSampler {
  const uniforms = memo((key: string) => uniformDraws(key, seed, MARGIN_DRAWS));
  const normals = memo((key: string) => uniforms(key).map(inverseNormal));
  const known = new Map<string, MarginWeights>();
  const references = new Map<string, Counted>();

  const column = (input: KeyInput, measured: boolean): Float64Array => {
    const { low, high } = input.reference;
    if (!measured || input.measured === null) return uniforms(input.id).map((p) => low + (high - low) * p);
    const { value, u, errsWith } = input.measured;
    return u === 0
      ? new Float64Array(MARGIN_DRAWS).fill(value)
      : normals(errsWith ?? input.id).map((z) => value + u * z);
  };

  const count = (witness: MarginWitness, inputs: KeyInputs, measured: boolean): Counted => {
    const columns = [
      ...witness.inputs.map((id) => column(inputs[id], measured)),
      ...witness.assumed.map(({ id, low, high }) =>
        uniforms(`${witness.id}/${id}`).map((p) => low + (high - low) * p),
      ),
    ];
    const counts = witness.outcomes.map(() => 0);
    const draws = new Float64Array(MARGIN_DRAWS);
    const values = columns.map(() => 0);
    for (let i = 0; i < MARGIN_DRAWS; i += 1) {
      columns.forEach((each, j) => {
        values[j] = each[i] ?? NaN;
      });
      const value = witness.compute(values);
      draws[i] = value;
      if (!Number.isFinite(value)) continue;
      const above = witness.upTo.findIndex((limit) => value <= limit);
      const outcome = above < 0 ? witness.upTo.length : above;
      counts[outcome] = (counts[outcome] ?? 0) + 1;
    }
    return { counts, draws };
  };

  return (witness, inputs) => {
    const key = fingerprint(witness, inputs);
    const before = known.get(key);
    if (before !== undefined) return before;
    const rangesKey = `${witness.id}|${witness.inputs.map((id) => rangeOf(inputs[id])).join('|')}`;
    const reference = references.get(rangesKey) ?? count(witness, inputs, false);
    references.set(rangesKey, reference);
    const found = count(witness, inputs, true);
    const sorted = found.draws.filter(Number.isFinite).sort();
    const at = (p: number): number => sorted[Math.floor(p * (sorted.length - 1))] ?? NaN;
    const result: MarginWeights = {
      weights: Object.fromEntries(
        witness.outcomes.map(({ id }, i) => [
          id,
          ((found.counts[i] ?? 0) + 1) / ((reference.counts[i] ?? 0) + 1),
        ]),
      ),
      spread: [at(0.1), at(0.5), at(0.9)],
    };
    known.set(key, result);
    return result;
  };
}

/** Inputs a margin needs that nobody measured. */
export const unmeasuredInputs = (witness: MarginWitness, inputs: KeyInputs): readonly KeyInputId[] =>
  witness.inputs.filter((id) => inputs[id].measured === null);

const rangeOf = ({ reference }: KeyInput): string => `${reference.low},${reference.high}`;

const fingerprint = (witness: MarginWitness, inputs: KeyInputs): string =>
  [
    witness.id,
    ...witness.inputs.map((id) => {
      const input = inputs[id];
      return `${rangeOf(input)},${input.measured?.value ?? ''},${input.measured?.u ?? ''},${input.measured?.errsWith ?? ''}`;
    }),
  ].join('|');

function memo<K, V>(make: (key: K) => V): (key: K) => V {
  const made = new Map<K, V>();
  return (key) => {
    const before = made.get(key);
    if (before !== undefined) return before;
    const value = make(key);
    made.set(key, value);
    return value;
  };
}

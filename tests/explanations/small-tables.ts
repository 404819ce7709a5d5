import { FACT_IDS, type Fact, type FactId } from '~/lib/explanations/fact';
import type { Explanation, ExplanationId } from '~/lib/explanations/explanation';
import type { Tables } from '~/lib/explanations/judgement-table';
import type { ObservationWitness, Witness, WitnessState } from '~/lib/explanations/witness';

/** A witness that is one question, with invented judgements. */
export const question = (id: string, ifTrue: number, ifFalse: number): ObservationWitness => ({
  kind: 'observation',
  id,
  name: id,
  quantity: id,
  orMarks: [],
  unlessChosen: null,
  needsUndisturbed: false,
  reason: 'invented for a test',
  ifTrue,
  ifFalse,
});

export const fact = (id: FactId, witnesses: readonly Witness[]): Fact => ({
  id,
  name: id,
  definition: id,
  negation: `not ${id}`,
  witnesses,
});

/** Expectations by explanation and fact; what is not given is one half. */
export function tables(
  facts: readonly Fact[],
  expectations: Readonly<Partial<Record<ExplanationId, Readonly<Partial<Record<FactId, number>>>>>>,
): Tables {
  return {
    facts,
    explanations: Object.entries(expectations).map(([id, given]): Explanation => ({
      id: id as ExplanationId,
      name: id,
      description: id,
      clause: id,
      characteristic: [],
      expectations: Object.fromEntries(
        FACT_IDS.map((each) => [each, { probability: given[each] ?? 0.5, reason: 'invented for a test' }]),
      ) as Explanation['expectations'],
    })),
  };
}

export const SEEN: WitnessState = { kind: 'seen', worstOfMany: false };
export const notFound = (examined: number): WitnessState => ({
  kind: 'notFound',
  examined,
  examinedSaid: true,
});

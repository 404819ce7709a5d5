import type { NotLooked } from './argument';
import type { ExplanationId } from './explanation';
import type { Fact } from './fact';
import { expectationPath, RECORDED_WRONGLY, type Tables } from './judgement-table';
import type { JudgementValues } from './judgements';
import { BACKGROUND, decibans, outcomeLikelihoods, ranking, type Lambda, type Weighing } from './weigh';
import type { Witness, WitnessRecord } from './witness';

/**
 * What was not looked at, and how far it could be expected to move the answer: what moves the first two
 * against each other most comes first.
 *
 * For each outcome o of the witness, given all that is known: P(o | H) = L′(H, o)/L′(H). The weight
 * it would bring between H and H′ is 10·log10 of the ratio of these; the expectation of its size is
 * taken over o with P(o) = ½P(o | H) + ½P(o | H′). Exact, no sampling. A margin is taken
 * as if every input it lacks were measured and left no doubt: the most it could bring.
 */
export function lookNext(
  tables: Tables,
  records: ReadonlyMap<string, WitnessRecord>,
  values: JudgementValues,
  weighing: Weighing,
): readonly NotLooked[] {
  const order = ranking(weighing.total, tables);
  const pairs = order.flatMap((a, i) => order.slice(i + 1).map((b) => [a, b] as const));
  const result = tables.facts.flatMap((fact) => {
    const lambda = weighing.facts.find((each) => each.fact === fact.id)?.lambda ?? [1, 1];
    return fact.witnesses.flatMap((witness): readonly NotLooked[] => {
      const record = records.get(witness.id);
      const missing = missingOf(witness, record);
      if (missing === null) return [];
      const own = weighing.facts.find((each) => each.fact === fact.id)?.witnesses.get(witness.id) ?? [1, 1];
      const outcomes = outcomesOf(witness, record, values);
      // Taking what is known of this witness out first: learning it outright replaces that.
      const without: Lambda = [lambda[0] / own[0], lambda[1] / own[1]];
      const size = (pair: readonly [ExplanationId, ExplanationId]): number =>
        expectedSize(fact, without, own, outcomes, values, pair);
      const [most, mostBetween] = pairs.reduce<readonly [number, readonly [ExplanationId, ExplanationId]]>(
        (greatest, pair) => {
          const here = size(pair);
          return here > greatest[0] + 1e-12 ? [here, pair] : greatest;
        },
        [0, [order[0] ?? BACKGROUND, order[1] ?? BACKGROUND]],
      );
      return [
        {
          witness: witness.id,
          name: witness.name,
          fact: fact.id,
          missing,
          betweenTopTwo: size([order[0] ?? BACKGROUND, order[1] ?? BACKGROUND]),
          most,
          mostBetween,
        },
      ];
    });
  });
  const leadKnown =
    Math.abs(weighing.total[order[0] ?? BACKGROUND] - weighing.total[order[1] ?? BACKGROUND]) > 1e-9;
  return result.sort(
    (a, b) =>
      (leadKnown ? b.betweenTopTwo - a.betweenTopTwo : 0) ||
      b.most - a.most ||
      (a.witness < b.witness ? -1 : 1),
  );
}

/** Key inputs missing; [] for a witness nobody looked for; null when there is nothing to add. */
function missingOf(witness: Witness, record: WitnessRecord | undefined): NotLooked['missing'] | null {
  const state = record?.state ?? { kind: 'notLooked' };
  if (state.kind === 'outcome') return state.unmeasured.length > 0 ? state.unmeasured : null;
  if (state.kind !== 'notLooked') return null;
  return witness.kind === 'margin' ? witness.inputs : [];
}

type Possible = { readonly weight: number; readonly lambda: Lambda };

/** A margin that is partly known leans towards some outcomes already. */
function outcomesOf(
  witness: Witness,
  record: WitnessRecord | undefined,
  values: JudgementValues,
): readonly Possible[] {
  const weights = record?.state.kind === 'outcome' ? record.state.weights : null;
  return outcomeLikelihoods(witness, values).map(({ id, lambda }) => ({
    lambda,
    weight: weights === null ? 1 : (weights[id] ?? 0),
  }));
}

function expectedSize(
  fact: Fact,
  without: Lambda,
  own: Lambda,
  outcomes: readonly Possible[],
  values: JudgementValues,
  [first, second]: readonly [ExplanationId, ExplanationId],
): number {
  const a = expectations(first, fact, values);
  const b = expectations(second, fact, values);
  const dot = (expectation: Lambda, lambda: Lambda): number =>
    expectation[0] * without[0] * lambda[0] + expectation[1] * without[1] * lambda[1];
  const totalA = dot(a, own);
  const totalB = dot(b, own);
  return outcomes.reduce((sum, { weight, lambda }) => {
    const pA = (weight * dot(a, lambda)) / totalA;
    const pB = (weight * dot(b, lambda)) / totalB;
    return pA + pB === 0 ? sum : sum + ((pA + pB) / 2) * Math.abs(decibans(pA / pB));
  }, 0);
}

/** P′(f | H): the expectation with a share ε given back to the background. */
function expectations(explanation: ExplanationId, fact: Fact, values: JudgementValues): Lambda {
  const at = (path: string): number => values.get(path) ?? NaN;
  const epsilon = at(RECORDED_WRONGLY);
  const probability =
    (1 - epsilon) * at(expectationPath(explanation, fact.id)) +
    epsilon * at(expectationPath(BACKGROUND, fact.id));
  return [probability, 1 - probability];
}

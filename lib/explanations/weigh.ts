import type { ByExplanation } from './argument';
import type { ExplanationId } from './explanation';
import type { FactId } from './fact';
import {
  EXAMINED_NOT_SAID,
  expectationPath,
  judgedOutcomes,
  RECORDED_WRONGLY,
  witnessPath,
  type Tables,
} from './judgement-table';
import type { JudgementValues } from './judgements';
import type { Witness, WitnessState } from './witness';

/** P(witness | fact) and P(witness | no fact), up to one factor common to both. */
export type Lambda = readonly [ifTrue: number, ifFalse: number];

/** Says nothing either way. */
export const SILENT: Lambda = [1, 1];

/** What there is of each witness, by witness id; absent is "not looked for". */
export type States = ReadonlyMap<string, WitnessState>;

export type WeighedFact = {
  readonly fact: FactId;
  readonly lambda: Lambda;
  readonly witnesses: ReadonlyMap<string, Lambda>;
  /** Each explanation against the background, decibans. */
  readonly against: ByExplanation;
};

export type Weighing = {
  readonly facts: readonly WeighedFact[];
  /** Each explanation against the background, decibans. */
  readonly total: ByExplanation;
};

/** The background that every explanation is held against. */
export const BACKGROUND: ExplanationId = 'somethingElse';

/** 10·log10 of a likelihood ratio. Source: Good, Probability and the Weighing of Evidence (1950). */
export const decibans = (ratio: number): number => 10 * Math.log10(ratio);

/** How many readings stand behind "the worst found": five, by judgement, when nobody says. */
const WORST_OF = 5;

/**
 * Weighs the explanations against each other.
 *
 * Λ(f) = Π P(witness | f); L(H) = Σ_f P(f | H)·Λ(f); L(0) the same with the background;
 * L′(H) = (1 − ε)·L(H) + ε·L(0), ε the share recorded wrongly;
 * weight of H against the background = Σ over facts 10·log10(L′(H)/L(0)), in decibans.
 * Because L′ is linear in Λ, the weight of one fact lies between the least and the greatest of
 * 10·log10(P′(f|H)/P′(f|H′)) over its two states, however many witnesses it has.
 * `lambdas` replaces the evidence of a fact outright.
 */
export function weigh(
  tables: Tables,
  states: States,
  values: JudgementValues,
  lambdas: ReadonlyMap<FactId, Lambda> = new Map(),
): Weighing {
  const epsilon = valueAt(values, RECORDED_WRONGLY);
  const facts = tables.facts.map((fact): WeighedFact => {
    const witnesses = new Map(
      fact.witnesses.map(
        (witness) => [witness.id, likelihood(witness, states.get(witness.id), values)] as const,
      ),
    );
    const lambda = lambdas.get(fact.id) ?? product([...witnesses.values()]);
    const background = expected(valueAt(values, expectationPath(BACKGROUND, fact.id)), lambda);
    const against = tables.explanations.map(({ id }) => {
      if (id === BACKGROUND || lambda[0] === lambda[1]) return [id, 0] as const;
      const own = expected(valueAt(values, expectationPath(id, fact.id)), lambda);
      return [id, decibans(((1 - epsilon) * own + epsilon * background) / background)] as const;
    });
    return { fact: fact.id, lambda, witnesses, against: byExplanation(against) };
  });
  const total = tables.explanations.map(
    ({ id }) => [id, facts.reduce((sum, { against }) => sum + against[id], 0)] as const,
  );
  return { facts, total: byExplanation(total) };
}

const expected = (probability: number, [ifTrue, ifFalse]: Lambda): number =>
  probability * ifTrue + (1 - probability) * ifFalse;

/** Rounding of many products; evidence this faint is none. */
const ROUNDING = 1e-12;

/**
 * The product in an order of its own, so that adding witnesses in another order gives the same
 * digits; scaled so that many witnesses do not run out of range.
 */
function product(lambdas: readonly Lambda[]): Lambda {
  const logs = lambdas.map(([ifTrue, ifFalse]) => Math.log(ifTrue / ifFalse)).sort((a, b) => a - b);
  const log = logs.reduce((sum, each) => sum + each, 0);
  if (Math.abs(log) < ROUNDING) return SILENT;
  return log > 0 ? [1, Math.exp(-log)] : [Math.exp(log), 1];
}

/** What one witness in its state says of the fact. */
export function likelihood(
  witness: Witness,
  state: WitnessState | undefined,
  values: JudgementValues,
): Lambda {
  switch (state?.kind) {
    case 'seen': {
      const seen = judged(witness, values);
      return state.worstOfMany ? asWorst([SILENT, seen], 1) : seen;
    }
    case 'notFound': {
      const [ifTrue, ifFalse] = judged(witness, values);
      const examined = state.examinedSaid ? state.examined : valueAt(values, EXAMINED_NOT_SAID);
      return [1 - examined * ifTrue, 1 - examined * ifFalse];
    }
    case 'outcome': {
      const all = outcomeLikelihoods(witness, values);
      let ifTrue = 0;
      let ifFalse = 0;
      for (const [i, { id, lambda }] of all.entries()) {
        const weight = state.weights[id] ?? 0;
        if (weight === 0) continue;
        const [t, f] = state.worstOfMany
          ? asWorst(
              all.map((each) => each.lambda),
              i,
            )
          : lambda;
        ifTrue += weight * t;
        ifFalse += weight * f;
      }
      return [ifTrue, ifFalse];
    }
    default:
      return SILENT;
  }
}

/** All outcomes a witness can have with their probabilities, which sum to one in either state of the fact. */
export function outcomeLikelihoods(
  witness: Witness,
  values: JudgementValues,
): readonly { readonly id: string; readonly lambda: Lambda }[] {
  const outcomes = judgedPaths(witness).map(({ id, ifTrue, ifFalse }) => ({
    id,
    lambda: [valueAt(values, ifTrue), valueAt(values, ifFalse)] as const,
  }));
  const only = outcomes[0]?.lambda ?? SILENT;
  const rest: Lambda = [1 - only[0], 1 - only[1]];
  switch (witness.kind) {
    case 'observation':
      return [{ id: 'notFound', lambda: rest }, ...outcomes];
    case 'mark':
      return [{ id: 'noMark', lambda: rest }, ...outcomes];
    case 'passFail':
      return [{ id: 'pass', lambda: rest }, ...outcomes];
    default: {
      // Changed or widened judgements of one witness need not sum to one any more.
      const sumTrue = outcomes.reduce((sum, { lambda }) => sum + lambda[0], 0);
      const sumFalse = outcomes.reduce((sum, { lambda }) => sum + lambda[1], 0);
      return outcomes.map(({ id, lambda }) => ({ id, lambda: [lambda[0] / sumTrue, lambda[1] / sumFalse] }));
    }
  }
}

/**
 * The worst of many read as such: P(worst is outcome i) = F(i)ⁿ − F(i−1)ⁿ, outcomes from the
 * least telling up. Only where that weakens what a single reading would say for the fact.
 */
function asWorst(outcomes: readonly Lambda[], i: number): Lambda {
  const single = outcomes[i] ?? SILENT;
  if (single[0] <= single[1]) return single;
  const worst = ([0, 1] as const).map((side) => {
    const upTo = outcomes.slice(i + 1).reduce((rest, each) => rest - each[side], 1);
    return upTo ** WORST_OF - (upTo - single[side]) ** WORST_OF;
  });
  return [worst[0] ?? 1, worst[1] ?? 1];
}

type Paths = { readonly id: string; readonly ifTrue: string; readonly ifFalse: string };

/** Widening weighs hundreds of times; the paths of a witness are written out once. */
const pathsOf = new WeakMap<Witness, readonly Paths[]>();

function judgedPaths(witness: Witness): readonly Paths[] {
  const known = pathsOf.get(witness);
  if (known !== undefined) return known;
  const paths = judgedOutcomes(witness).map(({ id }) => ({
    id,
    ifTrue: witnessPath(witness.id, id, true),
    ifFalse: witnessPath(witness.id, id, false),
  }));
  pathsOf.set(witness, paths);
  return paths;
}

/** Of the only outcome that is judged: "seen" or "fail". */
function judged(witness: Witness, values: JudgementValues): Lambda {
  const [only] = judgedPaths(witness);
  return only === undefined ? SILENT : [valueAt(values, only.ifTrue), valueAt(values, only.ifFalse)];
}

function valueAt(values: JudgementValues, path: string): number {
  const value = values.get(path);
  if (value === undefined) throw new Error(`No judgement is called ${path}`);
  return value;
}

function byExplanation(entries: readonly (readonly [ExplanationId, number])[]): ByExplanation {
  return Object.fromEntries(entries) as ByExplanation;
}

/** The explanations from the best supported down; equals in the order of the tables. */
export function ranking(total: ByExplanation, tables: Tables): readonly ExplanationId[] {
  return tables.explanations.map(({ id }) => id).sort((a, b) => total[b] - total[a]);
}

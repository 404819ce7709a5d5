import type { CaseRecord, JudgementChange } from '../case/record';
import { EXPLANATIONS } from '.';
import type { Explanation } from './explanation';
import type { Fact } from './fact';
import { FACTS } from './facts';
import type { AppliedChange, Judgement, JudgementValues, RefusedChange } from './judgements';
import type { Outcome, Witness } from './witness';

/** Facts and explanations together: all that the weighing needs to know of the trade. */
export type Tables = {
  readonly facts: readonly Fact[];
  readonly explanations: readonly Explanation[];
};

export const TABLES: Tables = { facts: FACTS, explanations: EXPLANATIONS };

export const RECORDED_WRONGLY = 'rule/recordedWrongly';
export const EXAMINED_NOT_SAID = 'rule/examinedNotSaid';

const RULES: readonly Judgement[] = [
  {
    path: RECORDED_WRONGLY,
    value: 0.05,
    what: 'Share by which any one fact is taken as recorded wrongly and then says nothing',
    reason: 'One record in twenty is of another wheel, another place or another day.',
    group: 'rule',
  },
  {
    path: EXAMINED_NOT_SAID,
    value: 0.5,
    what: 'Share taken as examined where something was not found and nobody said how much was looked at',
    reason: 'Somebody looked, but a wreck seldom leaves more than half of a place open to view.',
    group: 'rule',
  },
];

export const expectationPath = (explanation: string, fact: string): string =>
  `expectation/${explanation}/${fact}`;

export const witnessPath = (witness: string, outcome: string, ifTrue: boolean): string =>
  `witness/${witness}/${outcome}/${ifTrue ? 'ifTrue' : 'ifFalse'}`;

/** Outcomes of a witness that are judged; "seen" or "fail" where the other side is the rest. */
export function judgedOutcomes(witness: Witness): readonly Outcome[] {
  switch (witness.kind) {
    case 'observation':
    case 'mark':
      return [{ id: 'seen', label: 'seen', ifTrue: witness.ifTrue, ifFalse: witness.ifFalse }];
    case 'passFail':
      return [{ id: 'fail', label: 'failed', ifTrue: witness.ifTrue, ifFalse: witness.ifFalse }];
    case 'choice':
    case 'count':
    case 'margin':
      return witness.outcomes;
  }
}

/** Every judgement of the tables, as delivered: path, value, reason and what it is in words. */
export function judgementTable(tables: Tables = TABLES): readonly Judgement[] {
  const expectations = tables.explanations.flatMap((explanation) =>
    tables.facts.map(({ id, name }): Judgement => ({
      path: expectationPath(explanation.id, id),
      value: explanation.expectations[id].probability,
      reason: explanation.expectations[id].reason,
      what: `How expected is “${name}” if ${explanation.clause}`,
      group: 'expectation',
    })),
  );
  const witnesses = tables.facts.flatMap((fact) =>
    fact.witnesses.flatMap((witness) =>
      judgedOutcomes(witness).flatMap((outcome) =>
        [true, false].map((ifTrue): Judgement => ({
          path: witnessPath(witness.id, outcome.id, ifTrue),
          value: ifTrue ? outcome.ifTrue : outcome.ifFalse,
          reason: witness.reason,
          what: `How often “${witness.name}: ${outcome.label}” appears when ${ifTrue ? 'it is so' : 'it is not so'} that: ${fact.name}`,
          group: 'witness',
        })),
      ),
    ),
  );
  return [...expectations, ...witnesses, ...RULES];
}

export const judgementValues = (table: readonly Judgement[]): JudgementValues =>
  new Map(table.map(({ path, value }) => [path, value] as const));

export type Adjusted = {
  readonly values: JudgementValues;
  readonly applied: readonly AppliedChange[];
  readonly refused: readonly RefusedChange[];
};

const LEAST = 0.001;

/**
 * The investigator's changes laid over the table; of several for one path the last counts.
 * Values must lie between 0.001 and 0.999 and carry a reason: certainty is not a judgement.
 */
export function adjustJudgements(
  table: readonly Judgement[],
  changes: CaseRecord['judgementChanges'],
): Adjusted {
  const byPath = new Map(table.map((judgement) => [judgement.path, judgement] as const));
  const values = new Map(judgementValues(table));
  const applied: AppliedChange[] = [];
  const refused: RefusedChange[] = [];
  for (const change of new Map(changes.map((each) => [each.path, each] as const)).values()) {
    const judgement = byPath.get(change.path);
    const message = refusal(judgement, change);
    if (judgement === undefined || message !== null) {
      refused.push({ path: change.path, value: change.value, message: message ?? '' });
      continue;
    }
    values.set(change.path, change.value);
    applied.push({
      path: change.path,
      what: judgement.what,
      from: judgement.value,
      to: change.value,
      reason: change.reason,
      personId: change.personId,
      at: change.at,
    });
  }
  return { values, applied, refused };
}

/** Why a change cannot be taken, saying what to enter instead; null when it can. */
export function refusal(
  judgement: Judgement | undefined,
  change: Pick<JudgementChange, 'path' | 'value' | 'reason'>,
): string | null {
  if (judgement === undefined) {
    return `No judgement is called ${change.path}. Choose one from the table of judgements.`;
  }
  if (!(change.value >= LEAST && change.value <= 1 - LEAST)) {
    return 'Enter a probability between 0.001 and 0.999: nothing here is certain either way.';
  }
  if (change.reason.trim() === '') return 'Write the reason for the change; it is printed in the report.';
  return null;
}

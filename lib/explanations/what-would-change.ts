import type { Changed, WhatWouldChange } from './argument';
import type { ExplanationId } from './explanation';
import type { Tables } from './judgement-table';
import type { JudgementValues } from './judgements';
import { lowerFirst } from './sentences';
import { BACKGROUND, ranking, weigh, type Lambda, type States, type Weighing } from './weigh';
import { leadDraws, percentile, staysAhead, type Widened } from './widen';
import { speaks, type Ref, type WitnessRecord } from './witness';

/** Ahead by this much, decibans, or the explanations are not told apart. */
export const ENOUGH = 10;

export type Standing = {
  readonly leader: ExplanationId;
  readonly next: ExplanationId;
  readonly lead: number;
};

/** Who leads, who is next, and by how much. */
export function standingOf(weighing: Weighing, tables: Tables): Standing {
  const [leader = BACKGROUND, next = BACKGROUND] = ranking(weighing.total, tables);
  return { leader, next, lead: weighing.total[leader] - weighing.total[next] };
}

/** The witnesses' states in a case as if one reading, outline or recorder run had never been taken. */
export type WithoutReading = {
  readonly ref: Ref;
  readonly what: string;
  readonly states: States;
};

type Given = {
  readonly tables: Tables;
  readonly records: ReadonlyMap<string, WitnessRecord>;
  readonly values: JudgementValues;
  readonly weighing: Weighing;
  readonly widened: Widened;
  readonly withoutReadings: readonly WithoutReading[];
};

/** Leaves out each witness and each reading, flips each fact, and widens all judgements. */
export function whatWouldChange(given: Given): WhatWouldChange {
  const { tables, records, values, weighing, widened } = given;
  const baseline = standingOf(weighing, tables);
  const states = statesOf(records);
  const change = (
    kind: Changed['kind'],
    id: string,
    what: string,
    refs: readonly Ref[],
    again: Weighing,
  ): Changed => {
    const { leader, lead } = standingOf(again, tables);
    const changesLeader = leader !== baseline.leader;
    return {
      kind,
      id,
      what,
      leader,
      lead,
      changesLeader,
      fallsBelow: !changesLeader && baseline.lead >= ENOUGH && lead < ENOUGH,
      refs,
    };
  };

  const witnessesLeftOut = tables.facts.flatMap(({ witnesses }) =>
    witnesses.flatMap(({ id, name }) => {
      const record = records.get(id);
      if (record === undefined || !speaks(record)) return [];
      const without = new Map(states);
      without.delete(id);
      return [change('witnessLeftOut', id, name, record.refs, weigh(tables, without, values))];
    }),
  );
  const readingsLeftOut = given.withoutReadings.map(({ ref, what, states: without }) =>
    change('readingLeftOut', ref.id, what, [ref], weigh(tables, without, values)),
  );
  const factsFlipped = tables.facts.flatMap(({ id, name, negation, witnesses }) => {
    const refs = witnesses.flatMap((witness) => records.get(witness.id)?.refs ?? []);
    const lambda = weighing.facts.find(({ fact }) => fact === id)?.lambda;
    if (lambda === undefined || lambda[0] === lambda[1]) return [];
    const holds = lambda[0] > lambda[1];
    const flipped: Lambda = holds ? [0, 1] : [1, 0];
    const what = holds ? negation : lowerFirst(name);
    return [change('factFlipped', id, what, refs, weigh(tables, states, values, new Map([[id, flipped]])))];
  });

  const draws = leadDraws(widened, baseline.leader, baseline.next);
  return {
    deciding: [...witnessesLeftOut, ...readingsLeftOut, ...factsFlipped]
      .filter(({ changesLeader, fallsBelow }) => changesLeader || fallsBelow)
      .sort((a, b) => Number(b.changesLeader) - Number(a.changesLeader) || a.lead - b.lead),
    witnessesLeftOut,
    readingsLeftOut,
    factsFlipped,
    widened: {
      draws: widened.draws,
      staysAhead: staysAhead(widened, baseline.leader),
      lead: [percentile(draws, 0.1), percentile(draws, 0.5), percentile(draws, 0.9)],
    },
  };
}

export const statesOf = (records: ReadonlyMap<string, WitnessRecord>): Map<string, WitnessRecord['state']> =>
  new Map([...records].map(([id, { state }]) => [id, state] as const));

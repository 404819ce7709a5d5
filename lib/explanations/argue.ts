import type { CaseRecord } from '../case/record';
import type { Finding } from '../findings/finding';
import type { Argument, Contradiction, FactWeight, PairStatement } from './argument';
import { coverageOf, lopsidedOf } from './coverage';
import { lookNext } from './expected-information';
import type { ExplanationId } from './explanation';
import { explanationOf } from '.';
import { factOf } from './facts';
import type { Tables } from './judgement-table';
import type { JudgementValues } from './judgements';
import { caveatsOf, fourStandings, otherStates } from './others-state';
import { lowerFirst, say, sentenceForPair } from './sentences';
import { verdictOf } from './verdict';
import { BACKGROUND, decibans, ranking, weigh, type Lambda, type Weighing } from './weigh';
import { standingOf, statesOf, whatWouldChange, type WithoutReading } from './what-would-change';
import { leadDraws, percentile, widen, type Widened } from './widen';
import { speaks, type Ref, type WitnessRecord } from './witness';
import { cautiousWord } from './words';

/** What speaks this much against the leader is listed as a contradiction, decibans. */
const CONTRADICTS = 5;

/** A fact that moves a pair by less than this is not named as a ground of the sentence, decibans. */
const COUNTS = 1;

export type ArgueInput = {
  readonly record: CaseRecord;
  readonly tables: Tables;
  readonly values: JudgementValues;
  readonly records: ReadonlyMap<string, WitnessRecord>;
  readonly withoutReadings: readonly WithoutReading[];
  readonly findings: readonly Finding[];
  readonly seed: number;
};

/** The whole argument from witnesses and judgements. Pure: the same input gives the same argument. */
export function argue(input: ArgueInput): Argument {
  const { record, tables, values, withoutReadings } = input;
  const records = withFindings(input);
  const states = statesOf(records);
  const weighing = weigh(tables, states, values);
  const widened = widen(tables, states, values, input.seed);
  const standing = standingOf(weighing, tables);
  const facts = factWeights(tables, records, weighing);
  const change = whatWouldChange({ tables, records, values, weighing, widened, withoutReadings });
  const coverage = coverageOf(tables, records);
  const others = otherStates(record);
  const order = ranking(weighing.total, tables);
  return {
    order: order.map((id) => ({
      explanation: id,
      name: explanationOf(id).name,
      decibans: weighing.total[id],
    })),
    lead: standing.lead,
    facts,
    verdict: verdictOf(standing, [...records.values()].some(speaks), change),
    pairs: pairsOf(order, weighing, widened, facts),
    contradictions: contradictionsOf(standing.leader, standing.next, facts),
    whatWouldChange: change,
    lookNext: lookNext(tables, records, values, weighing),
    coverage,
    lopsided: lopsidedOf(coverage, weighing.total),
    others,
    standings: fourStandings(record),
    caveats: caveatsOf(others),
  };
}

/** Margins also refer to the findings that show the same computation from the same readings. */
function withFindings({ tables, records, findings }: ArgueInput): ReadonlyMap<string, WitnessRecord> {
  const linked = new Map(records);
  for (const witness of tables.facts.flatMap((fact) => fact.witnesses)) {
    const record = records.get(witness.id);
    if (witness.kind !== 'margin' || record?.state.kind !== 'outcome') continue;
    const behind = new Set(record.refs.map(({ id }) => id));
    const shown = findings
      .filter(({ what }) => witness.findings.includes(what))
      .filter((finding) => finding.kind !== 'notMeasured' && finding.readings.some((id) => behind.has(id)))
      .map(({ id }): Ref => ({ kind: 'finding', id }));
    linked.set(witness.id, { ...record, refs: [...shown, ...record.refs] });
  }
  return linked;
}

function factWeights(
  tables: Tables,
  records: ReadonlyMap<string, WitnessRecord>,
  weighing: Weighing,
): readonly FactWeight[] {
  const forFact = ([ifTrue, ifFalse]: Lambda): number => decibans(ifTrue / ifFalse);
  return weighing.facts.map(({ fact, lambda, witnesses, against }) => {
    const rows = (tables.facts.find(({ id }) => id === fact)?.witnesses ?? []).map((witness) => {
      const record = records.get(witness.id) ?? {
        witness: witness.id,
        state: { kind: 'notLooked' as const },
        refs: [],
        remarks: [],
      };
      return { ...record, name: witness.name, forFact: forFact(witnesses.get(witness.id) ?? [1, 1]) };
    });
    return {
      fact,
      name: factOf(fact).name,
      forFact: forFact(lambda),
      against,
      witnesses: rows,
      recorded: rows.some(speaks),
    };
  });
}

/** The leader against each of the others, then each of the rest against the background. */
function pairsOf(
  order: readonly ExplanationId[],
  weighing: Weighing,
  widened: Widened,
  facts: readonly FactWeight[],
): readonly PairStatement[] {
  const leader = order[0] ?? BACKGROUND;
  const named = [
    ...order.slice(1).map((other) => [leader, other] as const),
    ...order
      .slice(1)
      .flatMap((other) =>
        other === BACKGROUND || leader === BACKGROUND ? [] : [[other, BACKGROUND] as const],
      ),
  ];
  return named.map(([a, b]) => {
    const [first, second] = weighing.total[a] >= weighing.total[b] ? [a, b] : [b, a];
    const lead = weighing.total[first] - weighing.total[second];
    const cautious = percentile(leadDraws(widened, first, second), 0.1);
    const statement = { first, second, decibans: lead, cautious, ...cautiousWord(10 ** (cautious / 10)) };
    return { ...statement, sentence: sentenceForPair(statement, groundsOf(first, second, facts)) };
  });
}

const groundsOf = (
  first: ExplanationId,
  second: ExplanationId,
  facts: readonly FactWeight[],
): readonly Ref[] =>
  facts
    .filter(({ against }) => Math.abs(against[first] - against[second]) >= COUNTS)
    .flatMap(({ witnesses }) => witnesses.filter(speaks).flatMap(({ refs }) => refs));

function contradictionsOf(
  leader: ExplanationId,
  next: ExplanationId,
  facts: readonly FactWeight[],
): readonly Contradiction[] {
  return facts
    .flatMap(({ fact, name, forFact, against, witnesses }): readonly Contradiction[] => {
      const rivals = [next, BACKGROUND].filter((id) => id !== leader);
      const worst = rivals.reduce((a, b) => (against[b] > against[a] ? b : a), rivals[0] ?? BACKGROUND);
      const size = against[worst] - against[leader];
      if (size < CONTRADICTS) return [];
      return [
        {
          fact,
          name,
          against: worst,
          decibans: size,
          sentence: [
            say('The evidence that ', ...witnesses.filter(speaks).flatMap(({ refs }) => refs)),
            say(forFact > 0 ? lowerFirst(name) : factOf(fact).negation, { kind: 'fact', id: fact }),
            say(' is hard to square with '),
            say(explanationOf(leader).name.toLowerCase(), { kind: 'explanation', id: leader }),
            say(`: it speaks ${Math.round(size)} decibans for `),
            say(explanationOf(worst).name.toLowerCase(), { kind: 'explanation', id: worst }),
            say('.'),
          ],
        },
      ];
    })
    .sort((a, b) => b.decibans - a.decibans);
}

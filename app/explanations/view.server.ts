import type { LoadedCase } from '~/app/case.server';
import { caseFindings } from '~/app/findings/case-findings.server';
import { findingValue } from '~/app/findings/view.server';
import { systemOf } from '~/app/readings/take.server';
import { assessmentOf } from '~/app/work/assessment.server';
import { moment } from '~/app/times';
import { chosenExplanation, determinationCheck } from '~/lib/explanations/determination';
import { EXPLANATIONS } from '~/lib/explanations';
import type { Argument, FactWeight, Sentence } from '~/lib/explanations/argument';
import type { Assessment } from '~/lib/explanations/assess';
import type { ExplanationId } from '~/lib/explanations/explanation';
import { factOf } from '~/lib/explanations/facts';
import { OTHER_EXPLANATIONS } from '~/lib/explanations/others';
import {
  sentenceForChange,
  sentenceForFact,
  sentenceForNotLooked,
  sentenceForWitness,
} from '~/lib/explanations/sentences';
import { SCALE_SOURCE, WHY_CAPPED } from '~/lib/explanations/words';
import { findQuantity } from '~/lib/readings/quantities';
import { phrases, type Phrase } from './phrases.server';

/** Less than this moves nobody; it is shown as nothing either way. */
const NOTICEABLE = 0.5;
const MOST_LOOK_NEXT = 10;

export type Weighed = { readonly fact: string; readonly name: string; readonly decibans: number };

type Line = readonly Phrase[];

export type ExplanationView = {
  readonly id: ExplanationId;
  readonly name: string;
  readonly description: string;
  readonly decibans: number;
  readonly speaksFor: readonly Weighed[];
  readonly speaksAgainst: readonly Weighed[];
  readonly recorded: number;
  readonly of: number;
};

export type OtherView = {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly state: 'excluded' | 'stands' | 'notConsidered';
  readonly reason: string;
  readonly said: string | null;
  readonly toExclude: readonly string[];
  readonly seen: readonly { readonly text: string; readonly href: string }[];
  /** Its screens: what the findings say that let it be excluded or kept. */
  readonly screens: readonly { readonly title: string; readonly value: string; readonly href: string }[];
  readonly notLooked: readonly string[];
};

function weights(facts: readonly FactWeight[], id: ExplanationId): readonly Weighed[] {
  return facts
    .map(({ fact, name, forFact, against }) => ({
      fact,
      name: forFact < 0 ? factOf(fact).negation : name,
      decibans: against[id],
    }))
    .filter(({ decibans }) => Math.abs(decibans) >= NOTICEABLE)
    .sort((a, b) => Math.abs(b.decibans) - Math.abs(a.decibans));
}

function explanationViews(argument: Argument): readonly ExplanationView[] {
  return argument.order.map(({ explanation: id, name, decibans }) => {
    const all = weights(argument.facts, id);
    const coverage = argument.coverage.find((one) => one.explanation === id);
    return {
      id,
      name,
      description: EXPLANATIONS.find((one) => one.id === id)?.description ?? '',
      decibans,
      speaksFor: all.filter((one) => one.decibans > 0),
      speaksAgainst: all.filter((one) => one.decibans < 0),
      recorded: coverage?.recorded ?? 0,
      of: coverage?.of ?? 0,
    };
  });
}

function otherViews(loaded: LoadedCase, { others }: Argument): readonly OtherView[] {
  return others.map(({ id, name, state, reason, personId, at, seen, notLooked }) => {
    const who = loaded.record.entities.person.find((person) => person.id === personId)?.fields.name;
    const other = OTHER_EXPLANATIONS.find((one) => one.id === id);
    return {
      id,
      name,
      description: other?.description ?? '',
      state,
      reason,
      said: at === null ? null : `${typeof who === 'string' ? who : 'not named'}, ${moment(at)}`,
      toExclude: other?.toExclude ?? [],
      seen: seen.map(({ question, reading }) => ({
        text: question,
        href: `/cases/${loaded.caseId}/readings/${reading}`,
      })),
      screens: caseFindings(loaded)
        .filter(({ what }) => other?.findings.includes(what))
        .map((finding) => {
          const { value, limits } = findingValue(finding, systemOf(loaded.record.fields));
          return {
            title: finding.title,
            value: [value, ...limits.map(({ text }) => text)].join('; '),
            href: `/cases/${loaded.caseId}/findings/${encodeURIComponent(finding.id)}`,
          };
        }),
      notLooked: notLooked.map((quantity) => findQuantity(quantity)?.name ?? quantity),
    };
  });
}

type ArgumentView = ReturnType<typeof viewOf>;
export type FactView = ArgumentView['facts'][number];

function viewOf(loaded: LoadedCase, { argument, baseline, findings, adjustedBy }: Assessment) {
  const byId = new Map(findings.map((finding) => [finding.id, finding] as const));
  const line = (sentence: Sentence): Line => phrases(loaded, byId, sentence);
  const { whatWouldChange } = argument;
  return {
    kind: argument.verdict.kind,
    verdict: line(argument.verdict.sentence),
    because: argument.verdict.kind === 'notDistinguishable' ? argument.verdict.because : [],
    pairs: argument.pairs.map(({ sentence }) => line(sentence)),
    caveats: argument.caveats.map(line),
    lopsided: argument.lopsided && line(argument.lopsided),
    words: `${WHY_CAPPED} Scale: ${SCALE_SOURCE.text} (${SCALE_SOURCE.status}).`,
    explanations: explanationViews(argument),
    facts: argument.facts.map((weight) => ({
      id: weight.fact,
      name: weight.name,
      definition: factOf(weight.fact).definition,
      decibans: weight.forFact,
      sentence: line(sentenceForFact(weight)),
      witnesses: weight.witnesses.map((witness) => ({
        id: witness.witness,
        state: witness.state.kind,
        decibans: witness.forFact,
        sentence: line(sentenceForWitness(witness, witness.name)),
        remarks: witness.remarks,
      })),
    })),
    contradictions: argument.contradictions.map(({ sentence }) => line(sentence)),
    deciding: whatWouldChange.deciding.map((change) => line(sentenceForChange(change))),
    tried: {
      witnesses: whatWouldChange.witnessesLeftOut.length,
      readings: whatWouldChange.readingsLeftOut.length,
      facts: whatWouldChange.factsFlipped.length,
    },
    widened: whatWouldChange.widened,
    lookNext: argument.lookNext.slice(0, MOST_LOOK_NEXT).map((item) => line(sentenceForNotLooked(item))),
    notLookedAtAll: argument.lookNext.length,
    others: otherViews(loaded, argument),
    standings: argument.standings,
    determination: line(determinationCheck(argument, chosenExplanation(loaded.record)).sentence),
    adjusted: adjustedBy.map(({ what, from, to, reason }) => ({ what, from, to, reason })),
    baseline: adjustedBy.length === 0 ? null : line(baseline.verdict.sentence),
  };
}

const views = new WeakMap<Assessment, ArgumentView>();

/** The argument in words, ready to be shown; made once for each state of the case. */
async function wholeView(loaded: LoadedCase): Promise<ArgumentView> {
  const assessment = await assessmentOf(loaded);
  const known = views.get(assessment);
  if (known) return known;
  const made = viewOf(loaded, assessment);
  views.set(assessment, made);
  return made;
}

/**
 * The argument with one thing shown in full, a fact or an explanation: the page stays short, and
 * what is opened has an address that can be passed on.
 */
export async function argumentView(loaded: LoadedCase, open: string | null) {
  const { facts, others, ...rest } = await wholeView(loaded);
  return {
    ...rest,
    open,
    facts: facts.map(({ id, name, decibans }) => ({ id, name, decibans })),
    fact: facts.find(({ id }) => id === open) ?? null,
    others: others.map(({ id, name, state, reason }) => ({ id, name, state, reason })),
    other: others.find(({ id }) => id === open) ?? null,
  };
}

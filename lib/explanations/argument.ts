import type { KeyInputId } from '../findings/key-input';
import type { ExplanationId, OtherExplanationId } from './explanation';
import type { FactId } from './fact';
import type { Ref, WitnessRecord } from './witness';

/** A piece of text and where it comes from. A sentence is the concatenation of its parts. */
export type SentencePart = { readonly text: string; readonly refs: readonly Ref[] };
export type Sentence = readonly SentencePart[];

/** Decibans: 10·log10 of a likelihood ratio. Positive speaks for the first of the pair. */
export type ByExplanation = Readonly<Record<ExplanationId, number>>;

/** What the evidence says of one fact, and what that does to the explanations. */
export type FactWeight = {
  readonly fact: FactId;
  readonly name: string;
  /** For the fact against its negation, decibans; 0 when nothing bears on it. */
  readonly forFact: number;
  /** Each explanation against the background. */
  readonly against: ByExplanation;
  readonly witnesses: readonly (WitnessRecord & { readonly name: string; readonly forFact: number })[];
  /** Whether any of its witnesses has a record. */
  readonly recorded: boolean;
};

export type Ranked = {
  readonly explanation: ExplanationId;
  readonly name: string;
  /** Against the background ("something else"), decibans. */
  readonly decibans: number;
};

export type PairStatement = {
  readonly first: ExplanationId;
  readonly second: ExplanationId;
  readonly decibans: number;
  /** 10th percentile of the draws with every judgement moved: the cautious end. */
  readonly cautious: number;
  readonly word: SupportWord;
  /** The cautious number would have earned a stronger word. */
  readonly capped: boolean;
  readonly sentence: Sentence;
};

export const SUPPORT_WORDS = [
  'none',
  'weak',
  'moderate',
  'moderatelyStrong',
  'strong',
  'veryStrong',
] as const;
export type SupportWord = (typeof SUPPORT_WORDS)[number];

export type Verdict =
  | { readonly kind: 'notMeasured'; readonly sentence: Sentence }
  | {
      readonly kind: 'notDistinguishable';
      readonly leader: ExplanationId;
      readonly next: ExplanationId;
      /** Each condition that is not met. */
      readonly because: readonly string[];
      readonly sentence: Sentence;
    }
  | {
      readonly kind: 'distinguishable';
      readonly leader: ExplanationId;
      readonly next: ExplanationId;
      readonly sentence: Sentence;
    };

/** The answer with one thing changed. `lead` is of the new leader over the new next. */
export type Changed = {
  readonly kind: 'witnessLeftOut' | 'readingLeftOut' | 'factFlipped';
  readonly id: string;
  readonly what: string;
  readonly leader: ExplanationId;
  readonly lead: number;
  readonly changesLeader: boolean;
  /** The lead falls from 10 decibans or more to less. */
  readonly fallsBelow: boolean;
  readonly refs: readonly Ref[];
};

export type WhatWouldChange = {
  /** Only those that change the leader or take the lead below 10 decibans, most telling first. */
  readonly deciding: readonly Changed[];
  readonly witnessesLeftOut: readonly Changed[];
  readonly readingsLeftOut: readonly Changed[];
  readonly factsFlipped: readonly Changed[];
  readonly widened: {
    readonly draws: number;
    /** Share of draws in which the leader stays ahead of every other. */
    readonly staysAhead: number;
    /** 10th, 50th and 90th percentile of the leader over the next, decibans. */
    readonly lead: readonly [number, number, number];
  };
};

/** Something nobody looked at or measured, and how far the answer could be expected to move. */
export type NotLooked = {
  readonly witness: string;
  readonly name: string;
  readonly fact: FactId;
  /** Key inputs that are missing, for a margin. */
  readonly missing: readonly KeyInputId[];
  /** Expected size of the change between the leader and the next, decibans. */
  readonly betweenTopTwo: number;
  /** The greatest such expectation over all pairs, and the pair. */
  readonly most: number;
  readonly mostBetween: readonly [ExplanationId, ExplanationId];
};

export type Coverage = {
  readonly explanation: ExplanationId;
  readonly recorded: number;
  readonly of: number;
};

export type Contradiction = {
  readonly fact: FactId;
  readonly name: string;
  readonly against: ExplanationId;
  /** How far it speaks against the leader, decibans, positive. */
  readonly decibans: number;
  readonly sentence: Sentence;
};

export type OtherState = {
  readonly id: OtherExplanationId;
  readonly name: string;
  readonly state: 'excluded' | 'stands' | 'notConsidered';
  readonly reason: string;
  readonly personId: string | null;
  readonly at: string | null;
  /** Observations seen that speak for it. */
  readonly seen: readonly {
    readonly quantity: string;
    readonly question: string;
    readonly reading: string;
  }[];
  /** Observations and readings that bear on it and have no record. */
  readonly notLooked: readonly string[];
};

/** An explanation of the four that the investigator set aside or keeps, beside what the weighing says. */
export type FourStanding = {
  readonly explanation: ExplanationId;
  readonly standing: 'excluded' | 'stands' | 'notSaid';
  readonly reason: string;
};

export type Argument = {
  readonly order: readonly Ranked[];
  /** Of the leader over the next, decibans. */
  readonly lead: number;
  readonly facts: readonly FactWeight[];
  readonly verdict: Verdict;
  /** The leader against each of the others, then each of the four against the background. */
  readonly pairs: readonly PairStatement[];
  readonly contradictions: readonly Contradiction[];
  readonly whatWouldChange: WhatWouldChange;
  readonly lookNext: readonly NotLooked[];
  readonly coverage: readonly Coverage[];
  /** Set when looking was lopsided. */
  readonly lopsided: Sentence | null;
  readonly others: readonly OtherState[];
  readonly standings: readonly FourStanding[];
  /** What must be said with any answer: other explanations not yet considered, or seen to be spoken for. */
  readonly caveats: readonly Sentence[];
};

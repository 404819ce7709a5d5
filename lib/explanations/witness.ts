import type { KeyInputId } from '../findings/key-input';
import type { Source } from '../findings/finding';

/**
 * How often an outcome appears when the fact holds and when it does not, and why a railroader
 * would accept that. Both strictly between 0 and 1.
 */
export type Judged = {
  readonly ifTrue: number;
  readonly ifFalse: number;
};

export type Outcome = Judged & {
  readonly id: string;
  readonly label: string;
};

type Shared = {
  /** Stable, unique over all facts. */
  readonly id: string;
  readonly name: string;
  readonly reason: string;
  /** Readings where the derailment had disturbed or the crew repaired are not used: they could not tell. */
  readonly needsUndisturbed: boolean;
};

/** Something looked for. Only "seen" is judged; "not found" follows from it and the share examined. */
export type ObservationWitness = Shared &
  Judged & {
    readonly kind: 'observation';
    readonly quantity: string;
    /** Types of mark whose record counts as seen when the question itself was not answered. */
    readonly orMarks: readonly string[];
    /** Choice of the same fact that is the same thing read on the spot: with both on record this one is not used. */
    readonly unlessChosen: string | null;
  };

/** A mark on record. No record says nothing: nobody may have walked there. */
export type MarkWitness = Shared & Judged & { readonly kind: 'mark'; readonly markTypes: readonly string[] };

/** One of several named conditions. Outcomes are the choices of the quantity. */
export type ChoiceWitness = Shared & {
  readonly kind: 'choice';
  readonly quantity: string;
  /** What the reading must be of; on tangent a rail of either side. */
  readonly on: 'outerRail' | 'innerRail' | 'firstDerailedTruck';
  /** From the least to the most telling for the fact. */
  readonly outcomes: readonly Outcome[];
};

/** A number counted. Outcome i holds from `from[i]` up to the next; the first starts at 0. */
export type CountWitness = Shared & {
  readonly kind: 'count';
  readonly quantity: string;
  readonly from: readonly number[];
  /** From the least to the most telling for the fact. */
  readonly outcomes: readonly Outcome[];
};

/** A go/no-go gauge. Only "fail" is judged; "pass" is the rest. */
export type PassFailWitness = Shared &
  Judged & {
    readonly kind: 'passFail';
    readonly quantity: string;
    /** The gauge adds nothing to a number of the same thing. */
    readonly unlessMeasured: KeyInputId | null;
  };

/** Something no reading gives and every computation needs: drawn alike for the case and the reference. */
export type Assumed = {
  readonly id: string;
  readonly low: number;
  readonly high: number;
  readonly source: Source;
};

/**
 * A quantity computed from key inputs, drawn twice: from this case and from the reference ranges.
 * Outcome i holds up to `upTo[i]`; the last has no upper end.
 */
export type MarginWitness = Shared & {
  readonly kind: 'margin';
  readonly inputs: readonly KeyInputId[];
  readonly assumed: readonly Assumed[];
  /** Formula in words and symbols, as the report prints it. */
  readonly formula: string;
  readonly sources: readonly Source[];
  readonly unit: string;
  /** Values in the order of `inputs`, then of `assumed`; canonical units. */
  readonly compute: (values: readonly number[]) => number;
  readonly upTo: readonly number[];
  readonly outcomes: readonly Outcome[];
  /** `what` of the findings that show the same computation from this case's readings. */
  readonly findings: readonly string[];
};

export type Witness =
  ObservationWitness | MarkWitness | ChoiceWitness | CountWitness | PassFailWitness | MarginWitness;

/** Where a piece of the argument comes from. */
export type Ref = {
  readonly kind:
    | 'reading'
    | 'recorderRun'
    | 'trace'
    | 'mark'
    | 'finding'
    | 'judgement'
    | 'method'
    | 'explanation'
    | 'fact';
  readonly id: string;
};

/**
 * What there is of one witness in this case. Four states are told apart everywhere; a margin or a
 * count is `outcome` when anything it needs was measured. `weights` are the λ of the outcomes:
 * 1 for the outcome on record, or q/π0 of a margin.
 */
export type WitnessState =
  | { readonly kind: 'seen'; readonly worstOfMany: boolean }
  | { readonly kind: 'notFound'; readonly examined: number; readonly examinedSaid: boolean }
  | { readonly kind: 'couldNotTell'; readonly why: string }
  | { readonly kind: 'notLooked' }
  /** The same thing is on record in a form that says more. */
  | { readonly kind: 'notNeeded'; readonly why: string }
  | {
      readonly kind: 'outcome';
      readonly weights: Readonly<Record<string, number>>;
      /** Read as the worst of many, not as one of many. */
      readonly worstOfMany: boolean;
      /** In words: the outcome, or the median and spread of a margin. */
      readonly said: string;
      /** Key inputs a margin took from the reference because nobody measured them. */
      readonly unmeasured: readonly KeyInputId[];
    };

export type WitnessRecord = {
  readonly witness: string;
  readonly state: WitnessState;
  readonly refs: readonly Ref[];
  readonly remarks: readonly string[];
};

/** Whether a record says anything: "could not tell" and "not looked for" do not. */
export const speaks = ({ state }: WitnessRecord): boolean =>
  state.kind === 'seen' || state.kind === 'notFound' || state.kind === 'outcome';

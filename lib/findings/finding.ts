import type { SubjectRef } from '../case/record';
import type { Dimension } from '../readings/unit';

/** Where a number comes from: what the report prints in its appendix of methods. */
export type Source = {
  readonly text: string;
  readonly status: 'published' | 'common practice, no source' | 'from memory' | 'engineering judgement';
};

/** A way of computing something. Each formula file in lib exports its own. */
export type Method = {
  readonly id: string;
  readonly name: string;
  /** The formula as printed, with the symbols explained. */
  readonly formula: string;
  readonly validRange: string;
  readonly sources: readonly Source[];
};

type NonEmpty<T> = readonly [T, ...T[]];

/** A limit a value is held against. `probabilityExceeds` respects the value's uncertainty. */
export type LimitCheck = {
  readonly name: string;
  readonly citation: string;
  readonly sense: 'max' | 'min';
  /** Canonical unit of the finding's dimension. */
  readonly limit: number;
  readonly exceeded: boolean;
  readonly probabilityExceeds: number;
  readonly source: Source;
};

type Shared = {
  /** Stable and unique within the case: `<what>` or `<what>:<subject id>[:<slot>]`. */
  readonly id: string;
  /** What is found, for grouping: the id of the finding's file. */
  readonly what: string;
  readonly title: string;
  /** Screen it belongs to. */
  readonly part: 'track' | 'wheels' | 'rails' | 'turnout' | 'train' | 'mechanics';
  readonly subject: SubjectRef | null;
  readonly method: Method;
  /** Conditions a reader must know: adopted convention, disturbed stations left out, assumed sides. */
  readonly remarks: readonly string[];
};

/**
 * `readings` are Reading ids, or the id of a recorder run where a speed came from one; the first
 * two kinds cannot exist without them.
 */
export type Finding = Shared &
  (
    | {
        readonly kind: 'measured';
        readonly value: number;
        /** Standard uncertainty (k = 1), same unit as value. */
        readonly u: number;
        readonly dimension: Dimension;
        readonly readings: NonEmpty<string>;
        readonly limits: readonly LimitCheck[];
      }
    | {
        readonly kind: 'passFail';
        readonly pass: boolean;
        readonly check: string;
        readonly readings: NonEmpty<string>;
      }
    | { readonly kind: 'notMeasured'; readonly missing: readonly string[] }
    | { readonly kind: 'outOfRange'; readonly why: string; readonly readings: NonEmpty<string> }
  );

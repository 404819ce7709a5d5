import type { Dimension } from '~/lib/readings/unit';

/** One feature of an outline: its value with its standard uncertainty, canonical unit, or why there is none. */
export type FeatureValue = {
  readonly id: string;
  readonly name: string;
  readonly meaning: string;
  readonly dimension: Dimension;
  readonly found: { readonly value: number; readonly u: number } | { readonly missing: string };
};

/** What is taken from one outline; `problem` when it could not be placed at all. */
export type FeatureValues =
  | { readonly ok: true; readonly features: readonly FeatureValue[]; readonly remarks: readonly string[] }
  | { readonly ok: false; readonly problem: string };

import type { OutlineDimension } from '~/lib/figures/outline-dimensions';
import type { Placing } from '~/lib/outline/placing';
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
  | {
      readonly ok: true;
      readonly features: readonly FeatureValue[];
      readonly remarks: readonly string[];
      /** How the line lies before it was corrected by hand. */
      readonly placing: Placing;
      /** How high the top of the new rail lies above the traced one, mm; 0 for a wheel. */
      readonly newTopMm: number;
      /** As they are drawn, in the units of the case. */
      readonly dimensions: readonly OutlineDimension[];
    }
  | { readonly ok: false; readonly problem: string };

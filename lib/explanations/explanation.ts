import type { FactId } from './fact';

/** Weighed in depth, and the background they are all held against. */
export const EXPLANATION_IDS = [
  'wheelClimb',
  'railRollover',
  'wideGauge',
  'switchPointPick',
  'somethingElse',
] as const;
export type ExplanationId = (typeof EXPLANATION_IDS)[number];

export const OTHER_EXPLANATION_IDS = [
  'brokenRail',
  'brokenWheel',
  'trackBuckle',
  'inTrainForce',
  'harmonicRoll',
  'overspeed',
  'loadShift',
  'obstruction',
  'vandalism',
  'runThroughSwitch',
  'defectiveCar',
] as const;
export type OtherExplanationId = (typeof OTHER_EXPLANATION_IDS)[number];

/** How expected a fact is if this explanation is what happened, strictly between 0 and 1. */
export type Expectation = { readonly probability: number; readonly reason: string };

export type Explanation = {
  readonly id: ExplanationId;
  readonly name: string;
  /** What happened, if it is what happened. */
  readonly description: string;
  /** Completes "if …": "a wheel climbed the rail". */
  readonly clause: string;
  /** Facts on which it turns; empty for the background. */
  readonly characteristic: readonly FactId[];
  readonly expectations: Readonly<Record<FactId, Expectation>>;
};

/** Not weighed by number: the investigator excludes it or lets it stand, with a reason. */
export type OtherExplanation = {
  readonly id: OtherExplanationId;
  readonly name: string;
  readonly description: string;
  /** What would speak for it. */
  readonly speaksFor: readonly string[];
  /** What must be looked at before it can be excluded. */
  readonly toExclude: readonly string[];
  /** Observations (quantity ids) that speak for it when seen. */
  readonly observations: readonly string[];
  /** Findings (by what they are) whose screens let it be excluded or kept; none of them says it happened. */
  readonly findings: readonly string[];
  /** Readings (quantity ids) that bear on it. */
  readonly readings: readonly string[];
};

import type { FeatureValues } from '~/app/traces/feature-values';
import type { Assessment } from '~/lib/explanations/assess';
import type { NotSimulated, SimulatedForces } from '~/lib/findings/train/simulated-forces';

/** What the worker does: long sums and long documents, which would hold up every other page. */
export type Job =
  | { readonly kind: 'assess'; readonly caseId: string }
  | { readonly kind: 'report'; readonly caseId: string }
  | { readonly kind: 'simulate'; readonly caseId: string }
  | { readonly kind: 'outline'; readonly caseId: string; readonly traceId: string };

export type JobResults = {
  readonly assess: Assessment;
  /** Path of the finished PDF. */
  readonly report: string;
  readonly simulate: SimulatedForces | NotSimulated;
  readonly outline: FeatureValues;
};

export type JobRequest = { readonly id: number; readonly job: Job };

export type JobReply =
  | { readonly id: number; readonly ok: true; readonly result: JobResults[Job['kind']] }
  | { readonly id: number; readonly ok: false; readonly message: string };

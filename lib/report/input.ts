import type { CaseRecord } from '../case/record';
import type { Assessment } from '../explanations/assess';
import type { Keep } from '../findings/long-sum';
import type { SimulatedForces } from '../findings/train/simulated-forces';

/** One recorder run with its samples by channel, in canonical units. */
export type RecordedRun = {
  readonly runId: string;
  readonly channels: Readonly<Record<string, Float64Array>>;
};

/** One entry of the case's change log in words. */
export type LogLine = {
  readonly seq: number;
  /** UTC, ISO 8601. */
  readonly at: string;
  readonly who: string;
  readonly what: string;
  readonly hash: string;
};

/** Everything a report is made from; the same input gives the same bytes. */
export type ReportInput = {
  readonly record: CaseRecord;
  readonly assessment: Assessment;
  readonly recorder: RecordedRun | null;
  /** Coupler forces through that run; absent or null when they could not be simulated. */
  readonly simulated?: SimulatedForces | null;
  /** Where sums about outlines are kept; in the memory of the process when not given. */
  readonly keep?: Keep;
  /** Path of a JPEG of the photo, at most 1600 px, by the photo's SHA-256; null when the file is missing. */
  readonly photoFile: (sha256: string) => string | null;
  /** UTC, ISO 8601. */
  readonly generatedAt: string;
  /** Version of the program. */
  readonly version: string;
  /** Hash of the last entry of the case's log: names the state of the case. */
  readonly logHead: string;
  /** The log, oldest first; absent: the report says how to see it. */
  readonly log?: readonly LogLine[];
};

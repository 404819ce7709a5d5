import type { CaseRecord } from '../../case/record';
import type { Trace } from '../../case/trace';
import type { Outline } from '../../outline/outline';
import { RAIL_FEATURES } from '../../rail/features';
import { railTraceFeatures, type TracedRail } from '../../rail/trace-features';
import { ok, type Result } from '../../readings/result';
import type { Dimension } from '../../readings/unit';
import { newSectionOf } from '../../shapes/traced-outline';
import { WHEEL_FEATURES } from '../../wheel/feature-table';
import { wheelTraceFeatures, type TracedWheel } from '../../wheel/trace-features';
import type { Method } from '../finding';

/** A feature of an outline with its entry in the list of its shape. */
export type ListedFeature = {
  readonly id: string;
  readonly name: string;
  readonly dimension: Dimension;
  readonly meaning: string;
  /** mm, rad or 1, with its standard uncertainty. */
  readonly found: Result<{ readonly value: number; readonly u: number }>;
};

/** What is taken from the outline of a wheel or rail. */
export type TakenShape = {
  /** In the frame of its shape, corrected by hand where somebody did. */
  readonly outline: Outline;
  readonly listed: readonly ListedFeature[];
  readonly remarks: readonly string[];
  readonly method: Method;
  /** Height of a new rail's top above the worn one, mm; 0 for a wheel, which the drawing lays at its tip. */
  readonly unwornMm: number;
} & (
  | { readonly shape: 'wheel'; readonly features: TracedWheel['features'] }
  | { readonly shape: 'rail'; readonly features: TracedRail['features'] }
);

/**
 * Everything that is taken from one outline of a wheel or rail, as findings, screens and drawings show
 * it: about a second. Deterministic for a seed. See `wheelTraceFeatures` and `railTraceFeatures`.
 */
export function takenShape(record: CaseRecord, trace: Trace, seed: number): Result<TakenShape> {
  if (trace.shape === 'wheel') {
    const wheel = wheelTraceFeatures(trace, seed);
    if (!wheel.ok) return wheel;
    const { outline, remarks, method, features } = wheel.value;
    const listed = WHEEL_FEATURES.map((entry) => ({ ...entry, found: features[entry.id] }));
    return ok({ shape: 'wheel', outline, remarks, method, features, listed, unwornMm: 0 });
  }
  const rail = railTraceFeatures(trace, newSectionOf(record, trace), seed);
  if (!rail.ok) return rail;
  const { outline, remarks, method, features, newTopMm } = rail.value;
  const listed = RAIL_FEATURES.map((entry) => ({ ...entry, found: features[entry.id] }));
  return ok({ shape: 'rail', outline, remarks, method, features, listed, unwornMm: newTopMm ?? 0 });
}

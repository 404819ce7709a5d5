import type { CaseRecord } from '~/lib/case/record';
import type { Trace } from '~/lib/case/trace';
import { RAIL_FEATURES } from '~/lib/rail/features';
import { railTraceFeatures } from '~/lib/rail/trace-features';
import type { Result } from '~/lib/readings/result';
import { WHEEL_FEATURES } from '~/lib/wheel/feature-table';
import { wheelTraceFeatures } from '~/lib/wheel/trace-features';
import type { FeatureValue, FeatureValues } from './feature-values';
import { sectionOf } from './placed.server';

const SEED = 1;

type Known = Pick<FeatureValue, 'id' | 'name' | 'meaning' | 'dimension'>;
type Found = FeatureValue['found'];

const valueOf = ({ id, name, meaning, dimension }: Known, found: Found): FeatureValue => ({
  id,
  name,
  meaning,
  dimension,
  found,
});

const foundIn = (feature: Result<{ readonly value: number; readonly u: number }>): Found =>
  feature.ok ? { value: feature.value.value, u: feature.value.u } : { missing: feature.message };

/** Takes the features from one outline, each with its uncertainty. Some tenths of a second. */
export function computeFeatures(record: CaseRecord, trace: Trace): FeatureValues {
  if (trace.shape === 'wheel') {
    const wheel = wheelTraceFeatures(trace, SEED);
    if (!wheel.ok) return { ok: false, problem: wheel.message };
    const { features, remarks } = wheel.value;
    return {
      ok: true,
      features: WHEEL_FEATURES.map((known) => valueOf(known, foundIn(features[known.id]))),
      remarks,
    };
  }
  const rail = railTraceFeatures(trace, sectionOf(record, trace), SEED);
  if (!rail.ok) return { ok: false, problem: rail.message };
  const { features, remarks } = rail.value;
  return {
    ok: true,
    features: RAIL_FEATURES.map((known) => valueOf(known, foundIn(features[known.id]))),
    remarks,
  };
}

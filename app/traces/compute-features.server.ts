import { systemOf } from '~/app/readings/take.server';
import type { CaseRecord } from '~/lib/case/record';
import type { Trace } from '~/lib/case/trace';
import { railDimensions, wheelDimensions } from '~/lib/figures/trace-dimensions';
import { FINDING_SEED } from '~/lib/findings/context';
import { outlineOfPairs } from '~/lib/outline/pairs';
import { RAIL_FEATURES } from '~/lib/rail/features';
import { registerRail } from '~/lib/rail/register';
import { railTraceFeatures } from '~/lib/rail/trace-features';
import type { Result } from '~/lib/readings/result';
import { newSectionOf } from '~/lib/shapes/traced-outline';
import { POINT_FEATURES, tracedPoint } from '~/lib/turnout/point-trace';
import { WHEEL_FEATURES } from '~/lib/wheel/feature-table';
import { registerWheel } from '~/lib/wheel/register';
import { wheelTraceFeatures } from '~/lib/wheel/trace-features';
import type { FeatureValue, FeatureValues } from './feature-values';

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

/** Takes the features from one outline, each with its uncertainty. A good part of a second. */
export function computeFeatures(record: CaseRecord, trace: Trace): FeatureValues {
  const system = systemOf(record.fields);
  const drawn = outlineOfPairs(trace.pointsMm);
  if (trace.shape === 'wheel') {
    const wheel = wheelTraceFeatures(trace, FINDING_SEED);
    const lies = registerWheel(drawn, trace);
    if (!wheel.ok || !lies.ok) return { ok: false, problem: messageOf(wheel, lies) };
    const { features, remarks, outline } = wheel.value;
    return {
      ok: true,
      features: WHEEL_FEATURES.map((known) => valueOf(known, foundIn(features[known.id]))),
      remarks,
      placing: lies.value.placing,
      newTopMm: 0,
      dimensions: wheelDimensions(outline, features, system),
    };
  }
  if (trace.shape === 'point') {
    const point = tracedPoint(trace);
    if (!point.ok) return { ok: false, problem: point.message };
    const { features, remarks, placing } = point.value;
    return {
      ok: true,
      features: POINT_FEATURES.map((known) => valueOf(known, foundIn(features[known.id]))),
      remarks,
      placing,
      newTopMm: 0,
      dimensions: [],
    };
  }
  const reference = newSectionOf(record, trace);
  const rail = railTraceFeatures(trace, reference, FINDING_SEED);
  const lies = registerRail(drawn, { mirrored: trace.mirrored, reference });
  if (!rail.ok || !lies.ok) return { ok: false, problem: messageOf(rail, lies) };
  const { features, remarks, outline, newTopMm } = rail.value;
  return {
    ok: true,
    features: RAIL_FEATURES.map((known) => valueOf(known, foundIn(features[known.id]))),
    remarks,
    placing: lies.value.placing,
    newTopMm: newTopMm ?? 0,
    dimensions: railDimensions(outline, features, system),
  };
}

const messageOf = (...results: readonly Result<unknown>[]): string =>
  results.flatMap((result) => (result.ok ? [] : [result.message]))[0] ?? '';

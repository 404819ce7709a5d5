import { systemOf } from '~/app/readings/take.server';
import type { CaseRecord } from '~/lib/case/record';
import type { Trace } from '~/lib/case/trace';
import { dimensionsOf } from '~/lib/figures/trace-dimensions';
import { FINDING_SEED } from '~/lib/findings/context';
import { takenShape } from '~/lib/findings/traced/taken-shape';
import { outlineOfPairs } from '~/lib/outline/pairs';
import { registerRail } from '~/lib/rail/register';
import type { Result } from '~/lib/readings/result';
import { newSectionOf } from '~/lib/shapes/traced-outline';
import { POINT_FEATURES, tracedPoint } from '~/lib/turnout/point-trace';
import { registerWheel } from '~/lib/wheel/register';
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
  const lies =
    trace.shape === 'wheel'
      ? registerWheel(drawn, trace)
      : registerRail(drawn, { mirrored: trace.mirrored, reference: newSectionOf(record, trace) });
  const taken = takenShape(record, trace, FINDING_SEED);
  if (!taken.ok || !lies.ok) return { ok: false, problem: messageOf(taken, lies) };
  const { listed, remarks, unwornMm } = taken.value;
  return {
    ok: true,
    features: listed.map((known) => valueOf(known, foundIn(known.found))),
    remarks,
    placing: lies.value.placing,
    newTopMm: unwornMm,
    dimensions: dimensionsOf(taken.value, system),
  };
}

const messageOf = (...results: readonly Result<unknown>[]): string =>
  results.flatMap((result) => (result.ok ? [] : [result.message]))[0] ?? '';

import type { CaseRecord } from '~/lib/case/record';
import type { Trace } from '~/lib/case/trace';
import type { Outline } from '~/lib/outline/outline';
import { outlineOfPairs } from '~/lib/outline/pairs';
import { afterwards, placed, type Placing } from '~/lib/outline/placing';
import { registerRail } from '~/lib/rail/register';
import { newSectionOf } from '~/lib/shapes/traced-outline';
import type { FeatureValues } from './feature-values';
import type { HandTrial } from './hand';

type Lies = Extract<FeatureValues, { ok: true }>;

/** A rail that is tried the other way round is placed anew; a wheel shows by itself which way round it is. */
function placingOf(record: CaseRecord, trace: Trace, lies: Lies, mirrored: boolean): Placing {
  if (trace.shape !== 'rail' || mirrored === trace.mirrored) return lies.placing;
  const drawn = outlineOfPairs(trace.pointsMm);
  const rail = registerRail(drawn, { mirrored, reference: newSectionOf(record, trace) });
  return rail.ok ? rail.value.placing : lies.placing;
}

/** The outline placed by what it shows, then moved by hand. */
export const placedOutline = (
  record: CaseRecord,
  trace: Trace,
  lies: Lies,
  { mirrored, ...hand }: HandTrial,
): Outline =>
  placed(outlineOfPairs(trace.pointsMm), afterwards(placingOf(record, trace, lies, mirrored), hand));

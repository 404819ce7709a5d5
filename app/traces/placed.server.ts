import type { CaseRecord } from '~/lib/case/record';
import type { Trace } from '~/lib/case/trace';
import type { Outline } from '~/lib/outline/outline';
import { outlineOfPairs } from '~/lib/outline/pairs';
import { afterwards, placed, type Placing } from '~/lib/outline/placing';
import { registerRail } from '~/lib/rail/register';
import { shapeOfSection } from '~/lib/shapes';
import { wholeOutline } from '~/lib/shapes/whole-outline';
import type { FeatureValues } from './feature-values';
import type { HandTrial } from './hand';

/** The new section of the rail that was traced; null when it is not said or not known. */
export function sectionOf(record: CaseRecord, trace: Trace): Outline | null {
  const rail = record.entities.rail.find(({ id }) => id === trace.subject.id);
  const shape = shapeOfSection(String(rail?.fields.section ?? ''));
  return shape && wholeOutline(shape);
}

type Lies = Extract<FeatureValues, { ok: true }>;

/** A rail that is tried the other way round is placed anew; a wheel shows by itself which way round it is. */
function placingOf(record: CaseRecord, trace: Trace, lies: Lies, mirrored: boolean): Placing {
  if (trace.shape === 'wheel' || mirrored === trace.mirrored) return lies.placing;
  const drawn = outlineOfPairs(trace.pointsMm);
  const rail = registerRail(drawn, { mirrored, reference: sectionOf(record, trace) });
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

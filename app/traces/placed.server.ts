import type { CaseRecord } from '~/lib/case/record';
import type { Trace } from '~/lib/case/trace';
import type { Outline } from '~/lib/outline/outline';
import { outlineOfPairs } from '~/lib/outline/pairs';
import { afterwards, placed } from '~/lib/outline/placing';
import { registerRail } from '~/lib/rail/register';
import { ok, type Result } from '~/lib/readings/result';
import { shapeOfSection } from '~/lib/shapes';
import { outlineOfShape } from '~/lib/shapes/shape';
import { registerWheel } from '~/lib/wheel/register';
import type { HandTrial } from './hand';

/** An outline in the frame of its shape, with what is worth knowing about how it got there. */
export type PlacedTrace = {
  readonly outline: Outline;
  /** How high the top of the new rail lies above the traced one, mm; 0 for a wheel. */
  readonly newTopMm: number;
  readonly remarks: readonly string[];
};

/** The new section of the rail that was traced; null when it is not said or not known. */
export function sectionOf(record: CaseRecord, trace: Trace): Outline | null {
  const rail = record.entities.rail.find(({ id }) => id === trace.subject.id);
  const shape = shapeOfSection(String(rail?.fields.section ?? ''));
  return shape && outlineOfShape(shape);
}

/** The outline placed by what it shows, then corrected by hand. */
export function placedTrace(
  record: CaseRecord,
  trace: Trace,
  { mirrored, ...hand }: HandTrial,
): Result<PlacedTrace> {
  const drawn = outlineOfPairs(trace.pointsMm);
  const corrected = (placing: Parameters<typeof afterwards>[0]): Outline =>
    placed(drawn, afterwards(placing, hand));
  if (trace.shape === 'wheel') {
    const wheel = registerWheel(drawn, { mirrored });
    if (!wheel.ok) return wheel;
    const { placing, remarks } = wheel.value;
    return ok({ outline: corrected(placing), newTopMm: 0, remarks });
  }
  const rail = registerRail(drawn, { mirrored, reference: sectionOf(record, trace) });
  if (!rail.ok) return rail;
  const { placing, newTopMm, remarks } = rail.value;
  return ok({ outline: corrected(placing), newTopMm: newTopMm ?? 0, remarks });
}

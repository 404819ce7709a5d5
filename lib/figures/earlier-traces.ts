import type { CaseRecord } from '../case/record';
import type { Trace } from '../case/trace';
import type { Outline } from '../outline/outline';
import { outlineOfPairs } from '../outline/pairs';
import { placed } from '../outline/placing';
import { registerRail } from '../rail/register';
import { ok, type Result } from '../readings/result';
import { newSectionOf, tracedOutline } from '../shapes/traced-outline';

/** Another trace of the same wheel or rail, and how it is called beside its line. */
export type EarlierTrace = { readonly trace: Trace; readonly label: string };

/** The outline moved up, mm. */
export const raised = (outline: Outline, upMm: number): Outline =>
  placed(outline, { mirrored: false, angleRad: 0, dxMm: 0, dyMm: upMm });

/** A trace in its own frame, with the height of the new top of a rail above its own. */
function placedWith(
  record: CaseRecord,
  trace: Trace,
): Result<{ readonly outline: Outline; readonly unwornMm: number }> {
  if (trace.shape === 'wheel') {
    const wheel = tracedOutline(record, trace);
    return wheel.ok ? ok({ outline: wheel.value, unwornMm: 0 }) : wheel;
  }
  const rail = registerRail(outlineOfPairs(trace.pointsMm), {
    mirrored: trace.mirrored,
    reference: newSectionOf(record, trace),
    hand: trace.hand,
  });
  return rail.ok ? ok({ outline: rail.value.outline, unwornMm: rail.value.newTopMm ?? 0 }) : rail;
}

/**
 * Other traces of one wheel or rail as lines in the frame of the one that is shown. `unwornMm`: how far
 * the top of the new rail lies above the top of the one shown; 0 for a wheel. One that cannot be
 * placed is left out.
 */
export const earlierLines = (
  record: CaseRecord,
  unwornMm: number,
  others: readonly EarlierTrace[],
): readonly { readonly label: string; readonly outline: Outline }[] =>
  others.flatMap(({ trace, label }) => {
    const other = placedWith(record, trace);
    return other.ok ? [{ label, outline: raised(other.value.outline, unwornMm - other.value.unwornMm) }] : [];
  });

import type { Context } from '../findings/context';
import type { Finding } from '../findings/finding';
import { bearingOf } from '../findings/mechanics/rollover';
import { otherSide } from '../findings/pod-sides';
import { railReading } from '../findings/rail-place';
import { railSection } from '../rail/sections';
import { systemOf } from './case-marks';
import type { RailLoadData } from './rail-load';

/**
 * What the rollover finding of one rail was computed from, for drawing it. Null when that finding
 * could not be made.
 */
export function railLoadData(
  context: Context,
  findings: readonly Finding[],
  rail: 'flanging' | 'other',
): RailLoadData | null {
  const what = rail === 'flanging' ? 'rolloverFlangingRail' : 'rolloverOtherRail';
  const finding = findings.find((each) => each.what === what);
  const { outer, flanging } = context.sides;
  const near = outer ?? flanging;
  if (finding?.kind !== 'measured' || near === null) return null;
  const side = rail === 'flanging' ? near : otherSide(near);
  const cant = railReading(context, side, 'railCant');
  if (cant === null) return null;
  const { id, fields } = cant.rail.entity;
  const section = railSection(String(fields.section ?? ''));
  if (section === null) return null;
  const place =
    outer === null ? (rail === 'flanging' ? 'flanging' : 'other') : rail === 'flanging' ? 'high' : 'low';
  return {
    system: systemOf(context.record),
    name: `${side === 'left' ? 'Left' : 'Right'} rail (${place})`,
    section,
    bearing: bearingOf(context.read.state('rail', id, 'contactBand')?.state).place,
    lateral: rail === 'flanging' ? 'gaugeFace' : 'topOfRail',
    headLossMm: context.read.take('rail', id, 'verticalLoss')?.value ?? 0,
    cantRad: cant.taken.value,
    u: finding.u,
  };
}

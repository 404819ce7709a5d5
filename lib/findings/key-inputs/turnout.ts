import { remarked } from '../build';
import type { Context } from '../context';
import type { Taken } from '../reading-index';
import { facingNearPod, pointPlace } from '../turnout/near-pod';
import { pointRead } from '../turnout/point-readings';

/** A reading of the point that the wheels met: of the nearest turnout run over facing, if one lies near enough. */
export function pointReading(context: Context, quantity: string): Taken | null {
  const [turnout] = facingNearPod(context);
  if (turnout === undefined) return null;
  const taken = context.read.take('turnout', turnout.id, quantity);
  return taken && ofPoint(context, taken);
}

/** Where the point lies, and whether another could be meant. */
function ofPoint(context: Context, taken: Taken): Taken {
  const [turnout, ...others] = facingNearPod(context);
  return remarked(
    taken,
    turnout === undefined ? '' : pointPlace(context, turnout).remark,
    others.length > 0
      ? `${others.length + 1} facing turnouts near the POD are recorded; the nearest is taken.`
      : '',
  );
}

/** Thickness of the tip and slope of its gauge side: of its outline where gap and depth place one, else as read. */
export function tipOfPoint(context: Context): {
  readonly thickness: Taken | null;
  readonly slope: Taken | null;
} {
  const [turnout] = facingNearPod(context);
  const tip = turnout && pointRead(context, turnout).placed.find(({ section }) => section.behindMm === 0);
  const slope = tip?.outline.point.features.pointSideSlope;
  return {
    thickness:
      tip === undefined ? pointReading(context, 'tipThickness') : ofPoint(context, tip.outline.thickness),
    slope:
      tip === undefined || !slope?.ok
        ? pointReading(context, 'pointFaceAngle')
        : ofPoint(context, { ...tip.outline.thickness, ...slope.value }),
  };
}

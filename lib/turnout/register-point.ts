import { extentMm } from '../outline/arc';
import { checkOutline } from '../outline/check';
import { type Outline } from '../outline/outline';
import { placed, type Placing } from '../outline/placing';
import { ok, refuse, type Result } from '../readings/result';

/** The back is looked for this far below the highest part; lower it may run under the head of the stock rail. 1/2 in. */
const BACK_WITHIN_MM = 12.7;
/** A line that begins this near below its highest part has no back: its first point is the back edge. */
const BEGINS_AT_TOP_MM = 1;
/** The gauge side must be followed at least this far below the highest part. 3/8 in. */
const LEAST_SIDE_MM = 9.525;
/** The shiver of a hand is taken out of the back by a mean over this much of its height, either way. */
const MEAN_HALF_MM = 1.5;
/** No point is wider or higher. */
const MOST_MM = 220;

export type RegisteredPoint = {
  /** x from the back edge towards the gauge side, y upward from the highest part; from the back over the top to the gauge side. */
  readonly outline: Outline;
  readonly placing: Placing;
  readonly remarks: readonly string[];
};

/**
 * Lays the cross-section of a switch point in its own frame: highest part at y = 0, back edge at x = 0. The
 * back edge is the place of the back nearest to the stock rail within 1/2 in of the top, each place a mean over
 * 3 mm of height. The drawing is not
 * turned: its upright is taken to be square to the plane of the track. `mirrored`: the gauge side lies at the
 * left of the drawing. Refuses, with what to do, a line that does not go from the back over the top down the
 * gauge side, or is too large for a point. Never throws.
 */
export function registerPoint(
  drawn: Outline,
  { mirrored }: { readonly mirrored: boolean },
): Result<RegisteredPoint> {
  const checked = checkOutline(drawn);
  if (!checked.ok) return checked;
  const { from, to } = extentMm(drawn);
  if (Math.max(to.xMm - from.xMm, to.yMm - from.yMm) > MOST_MM) {
    return refuse(
      `The outline is ${Math.round(Math.max(to.xMm - from.xMm, to.yMm - from.yMm))} mm across, larger than any point. Check the unit; trace the point alone, without the stock rail.`,
    );
  }
  const turned = placed(drawn, { mirrored, angleRad: 0, dxMm: 0, dyMm: 0 });
  const line = turned.xMm[0]! <= turned.xMm.at(-1)! ? turned : null;
  if (line === null) {
    return refuse(
      'The line begins on the gauge side. Trace from the back, which lies against the stock rail, over the top to the gauge side, or say that the drawing is the other way round.',
    );
  }
  const top = line.yMm.reduce((highest, y, i) => (y > line.yMm[highest]! ? i : highest), 0);
  const topMm = line.yMm[top]!;
  if (topMm - line.yMm.at(-1)! < LEAST_SIDE_MM) {
    return refuse(
      'The gauge side is not followed down far enough. Trace it at least 3/8 in (10 mm) below the highest part of the point, and see that the outline is not upside down.',
    );
  }
  const beginsAtTop = topMm - line.yMm[0]! < BEGINS_AT_TOP_MM;
  const backMm = beginsAtTop ? line.xMm[0]! : backEdge(line, top);
  const placing: Placing = { mirrored, angleRad: 0, dxMm: -backMm, dyMm: -topMm };
  return ok({
    outline: placed(drawn, placing),
    placing,
    remarks: [
      'The upright of the drawing is taken to be square to the plane of the track.',
      ...(beginsAtTop
        ? ['The line begins at the top of the point: its first place is taken as the back edge.']
        : []),
    ],
  });
}

/** Nearest place of the back to the stock rail in the upper 1/2 in; `top`: index of the highest point. */
function backEdge({ xMm, yMm }: Outline, top: number): number {
  const within = Array.from({ length: top + 1 }, (_, i) => i).filter(
    (i) => yMm[i]! >= yMm[top]! - BACK_WITHIN_MM,
  );
  const means = within.map((i) => {
    // Symmetrical towards the end, so that a straight back stays where it is.
    const reach = Math.min(MEAN_HALF_MM, yMm[top]! - yMm[i]!, yMm[i]! - yMm[within[0]!]!);
    const near = within.filter((j) => Math.abs(yMm[j]! - yMm[i]!) <= reach);
    return near.length < 2 ? Infinity : near.reduce((sum, j) => sum + xMm[j]!, 0) / near.length;
  });
  const least = Math.min(...means);
  return Number.isFinite(least) ? least : Math.min(...within.map((i) => xMm[i]!));
}

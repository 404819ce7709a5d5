import type { Outline, PointMm } from '../outline/outline';

/** An area between two lines. `lost`: the second line lies inside the metal of the first. */
export type DifferenceArea = {
  readonly kind: 'lost' | 'gained';
  readonly polygon: readonly PointMm[];
  /** Greatest distance between the two lines within it, mm. */
  readonly mostMm: number;
};

type Nearest = {
  /** Piece of the reference and the share of it at which its nearest point lies. */
  readonly piece: number;
  readonly share: number;
  /** Positive outside the metal. NaN where the trace runs on beyond an end of the reference. */
  readonly outMm: number;
};

function nearestOn({ xMm, yMm }: Outline, x: number, y: number): Nearest {
  let best: Nearest & { readonly square: number } = { piece: 0, share: 0, outMm: NaN, square: Infinity };
  const last = xMm.length - 2;
  for (let i = 0; i <= last; i += 1) {
    const [dx, dy] = [xMm[i + 1]! - xMm[i]!, yMm[i + 1]! - yMm[i]!];
    const length = dx * dx + dy * dy;
    if (length === 0) continue;
    const along = ((x - xMm[i]!) * dx + (y - yMm[i]!) * dy) / length;
    const share = Math.min(1, Math.max(0, along));
    const [ox, oy] = [x - xMm[i]! - share * dx, y - yMm[i]! - share * dy];
    const square = ox * ox + oy * oy;
    if (square >= best.square) continue;
    // Metal lies to the right of a line walked in its order.
    const side = Math.sign(dx * oy - dy * ox);
    const beyond = (i === 0 && along < 0) || (i === last && along > 1);
    best = { piece: i, share, square, outMm: beyond ? NaN : side * Math.sqrt(square) };
  }
  return best;
}

function between({ xMm, yMm }: Outline, from: Nearest, to: Nearest): PointMm[] {
  const at = ({ piece, share }: Nearest): PointMm => ({
    xMm: xMm[piece]! + share * (xMm[piece + 1]! - xMm[piece]!),
    yMm: yMm[piece]! + share * (yMm[piece + 1]! - yMm[piece]!),
  });
  const corners: PointMm[] = [];
  const point = (i: number): void => void corners.push({ xMm: xMm[i]!, yMm: yMm[i]! });
  if (to.piece > from.piece) for (let i = from.piece + 1; i <= to.piece; i += 1) point(i);
  else for (let i = from.piece; i > to.piece; i -= 1) point(i);
  return [at(from), ...corners, at(to)];
}

/**
 * Areas between a traced outline and the line it is laid over, both in the frame of
 * `../outline/outline` and walked the same way (metal to the right). A stretch counts from where the
 * lines part to where they meet again, if somewhere on it they are at least `leastMm` apart (> 0): what
 * is closer is the width of the pencil. Distances are to the nearest point of the reference; where the
 * trace runs on beyond it there is no area.
 */
export function differenceAreas(
  trace: Outline,
  reference: Outline,
  leastMm: number,
): readonly DifferenceArea[] {
  if (reference.xMm.length < 2) return [];
  const near = Array.from(trace.xMm, (x, i) => nearestOn(reference, x, trace.yMm[i]!));
  const areas: DifferenceArea[] = [];
  for (let from = 0; from < near.length;) {
    const side = Math.sign(near[from]!.outMm);
    let to = from;
    let most = 0;
    while (to < near.length && Math.sign(near[to]!.outMm) === side) {
      most = Math.max(most, Math.abs(near[to]!.outMm));
      to += 1;
    }
    if (to === from) to += 1;
    else if (most >= leastMm && to - from > 1) {
      const along = Array.from({ length: to - from }, (_, k): PointMm => ({
        xMm: trace.xMm[from + k]!,
        yMm: trace.yMm[from + k]!,
      }));
      areas.push({
        kind: side < 0 ? 'lost' : 'gained',
        polygon: [...along, ...between(reference, near[to - 1]!, near[from]!)],
        mostMm: most,
      });
    }
    from = to;
  }
  return areas;
}

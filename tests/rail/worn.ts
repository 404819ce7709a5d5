import { outlineOf, type Outline, type PointMm } from '~/lib/outline/outline';
import { placed } from '~/lib/outline/placing';
import { normalDraws } from '~/lib/readings/draws';
import { shapeOfSection } from '~/lib/shapes';
import { outlineOfShape } from '~/lib/shapes/shape';

/** Half-planes that cut a new section: what lies beyond n·p = d is worn away. */
type Cut = { readonly nx: number; readonly ny: number; readonly d: number };

/** A worn rail: the top worn down by `topMm`, the gauge face to a plane at `faceDeg` from level that passes `faceMm` inside the new face at a height. */
export type Wear = {
  readonly sectionId: string;
  readonly topMm: number;
  readonly faceDeg: number;
  readonly faceMm: number;
  /** Depth below the worn top at which `faceMm` is taken. */
  readonly atDepthMm: number;
};

export const referenceOf = (sectionId: string): Outline => {
  const shape = shapeOfSection(sectionId);
  if (shape === null) throw new Error(`no shape of ${sectionId}`);
  return outlineOfShape(shape, 0.25);
};

/** Place of the gauge side of an outline at a height, in the head. */
export function gaugeSideAt({ xMm, yMm }: Outline, heightMm: number): number {
  const top = yMm.indexOf(Math.max(...yMm));
  for (let i = top; i > 0; i -= 1) {
    if (yMm[i - 1]! <= heightMm && yMm[i]! > heightMm) {
      const share = (heightMm - yMm[i - 1]!) / (yMm[i]! - yMm[i - 1]!);
      return xMm[i - 1]! + share * (xMm[i]! - xMm[i - 1]!);
    }
  }
  throw new Error('not in the head');
}

/** The worn outline in the frame of the new section, from `fromMm` (height on the gauge side) to `toMm` (on the field side). */
export function worn(wear: Wear, belowMm: number): Outline {
  const reference = referenceOf(wear.sectionId);
  const angle = (wear.faceDeg * Math.PI) / 180;
  const height = -wear.topMm - wear.atDepthMm;
  const at: PointMm = { xMm: gaugeSideAt(reference, height) + wear.faceMm, yMm: height };
  const face: Cut = { nx: -Math.sin(angle), ny: Math.cos(angle), d: 0 };
  const cuts: Cut[] = [
    { nx: 0, ny: 1, d: -wear.topMm },
    { ...face, d: face.nx * at.xMm + face.ny * at.yMm },
  ];
  const x: number[] = [];
  const y: number[] = [];
  const n = reference.xMm.length;
  for (let i = 0; i < n; i += 1) {
    x.push(reference.xMm[i]!);
    y.push(reference.yMm[i]!);
  }
  let line: PointMm[] = x.map((xMm, i) => ({ xMm, yMm: y[i]! }));
  // A face cut must leave the base and the underside alone: it works on the head only.
  const headFloor = -38;
  for (const cut of cuts) line = clipped(line, cut, headFloor);
  const kept = line.filter(({ yMm }) => yMm > -belowMm);
  return outlineOf(
    kept.map(({ xMm }) => xMm),
    kept.map(({ yMm }) => yMm),
  );
}

function clipped(line: readonly PointMm[], { nx, ny, d }: Cut, floor: number): PointMm[] {
  const over = (p: PointMm): number => (p.yMm < floor ? -1 : nx * p.xMm + ny * p.yMm - d);
  const first = line.findIndex((p) => over(p) > 0);
  const last = line.findLastIndex((p) => over(p) > 0);
  if (first <= 0) return [...line];
  const edge = (a: PointMm, b: PointMm): PointMm => {
    const [oa, ob] = [nx * a.xMm + ny * a.yMm - d, nx * b.xMm + ny * b.yMm - d];
    const share = oa / (oa - ob);
    return { xMm: a.xMm + share * (b.xMm - a.xMm), yMm: a.yMm + share * (b.yMm - a.yMm) };
  };
  const from = edge(line[first - 1]!, line[first]!);
  const to = edge(line[last]!, line[last + 1]!);
  const steps = Math.ceil(Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm) / 0.25);
  const cut = Array.from({ length: steps + 1 }, (_, i) => ({
    xMm: from.xMm + ((to.xMm - from.xMm) * i) / steps,
    yMm: from.yMm + ((to.yMm - from.yMm) * i) / steps,
  }));
  return [...line.slice(0, first), ...cut, ...line.slice(last + 1)];
}

/** A hand shakes over some points, not from one to the next: independent draws averaged over 2 mm, standard deviation 1. */
const SHIVER = 8;
const shiver = (draws: Float64Array): Float64Array =>
  Float64Array.from({ length: draws.length - SHIVER }, (_, i) => {
    let sum = 0;
    for (let j = 0; j < SHIVER; j += 1) sum += draws[i + j]!;
    return sum / Math.sqrt(SHIVER);
  });

/** As somebody drew it: mirrored, turned, moved, with noise across and along. */
export function drawn(
  outline: Outline,
  {
    mirrored = false,
    turnDeg = 0,
    noiseMm = 0,
    seed = 1,
  }: { mirrored?: boolean; turnDeg?: number; noiseMm?: number; seed?: number },
): Outline {
  const n = outline.xMm.length;
  const dx = shiver(normalDraws('drawn-x', seed, n + SHIVER));
  const dy = shiver(normalDraws('drawn-y', seed, n + SHIVER));
  const shaken = outlineOf(
    outline.xMm.map((x, i) => x + noiseMm * dx[i]!),
    outline.yMm.map((y, i) => y + noiseMm * dy[i]!),
  );
  return placed(shaken, { mirrored, angleRad: (turnDeg * Math.PI) / 180, dxMm: 213, dyMm: -57 });
}

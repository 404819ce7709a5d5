import { type Outline } from '../outline/outline';
import { type SectionLine, type Zone } from './section-line';

/** A turn about the frame's origin followed by a move. */
export type Pose = { readonly angleRad: number; readonly dxMm: number; readonly dyMm: number };

/** How much a part counts; points whose distance exceeds a multiple of `toleranceMm` do not count at all. */
export type Laying = {
  readonly weights: Readonly<Record<Zone, number>>;
  readonly toleranceMm: number;
};

/** One traced point against the section. */
export type Match = {
  readonly zone: Zone;
  /** Distance outward from the section's steel, mm; worn points are negative. */
  readonly outMm: number;
};

/** Each point of the trace, posed, against the section; null where the section is out of reach. */
export function matches(trace: Outline, section: SectionLine, pose: Pose): (Match | null)[] {
  const cos = Math.cos(pose.angleRad);
  const sin = Math.sin(pose.angleRad);
  return Array.from(trace.xMm, (tx, i) => {
    const ty = trace.yMm[i]!;
    const x = tx * cos - ty * sin + pose.dxMm;
    const y = tx * sin + ty * cos + pose.dyMm;
    const at = section.nearest(x, y);
    if (at === null) return null;
    const heading = section.headingRad[at]!;
    const outMm =
      -Math.sin(heading) * (x - section.outline.xMm[at]!) +
      Math.cos(heading) * (y - section.outline.yMm[at]!);
    return { zone: section.zones[at]!, outMm };
  });
}

/** Holds a pose where the points leave it free: against this many mm² of a point's own pull. */
const DAMPING = 1e-4;

/**
 * One step towards the pose that brings the points onto the section: Gauss and Newton's least squares of
 * the distances across the line, each point weighted by its part and by Tukey's biweight
 * (1 − (d/c)²)², c the tolerance. Moves that no point resists are left alone.
 */
export function layingStep(
  trace: Outline,
  section: SectionLine,
  pose: Pose,
  { weights, toleranceMm }: Laying,
): Pose {
  const cos = Math.cos(pose.angleRad);
  const sin = Math.sin(pose.angleRad);
  const { xMm: sx, yMm: sy } = section.outline;
  const a = [0, 0, 0, 0, 0, 0];
  const b = [0, 0, 0];
  let total = 0;
  for (let i = 0; i < trace.xMm.length; i += 1) {
    const tx = trace.xMm[i]!;
    const ty = trace.yMm[i]!;
    const x = tx * cos - ty * sin + pose.dxMm;
    const y = tx * sin + ty * cos + pose.dyMm;
    const at = section.nearest(x, y);
    if (at === null) continue;
    const nx = -Math.sin(section.headingRad[at]!);
    const ny = Math.cos(section.headingRad[at]!);
    const out = nx * (x - sx[at]!) + ny * (y - sy[at]!);
    const share = out / toleranceMm;
    if (share <= -1 || share >= 1) continue;
    const weight = weights[section.zones[at]!] * (1 - share * share) ** 2;
    if (weight === 0) continue;
    // Turned about the middle of the head, 100 mm as the unit of the turn, to keep the three of one size.
    const turn = (nx * -(y + ARM_MM / 2) + ny * x) / ARM_MM;
    a[0]! += weight * nx * nx;
    a[1]! += weight * nx * ny;
    a[2]! += weight * nx * turn;
    a[3]! += weight * ny * ny;
    a[4]! += weight * ny * turn;
    a[5]! += weight * turn * turn;
    b[0]! -= weight * nx * out;
    b[1]! -= weight * ny * out;
    b[2]! -= weight * turn * out;
    total += weight;
  }
  if (total === 0) return pose;
  const hold = DAMPING * total;
  const step = solve3(
    [
      [a[0]! + hold, a[1]!, a[2]!],
      [a[1]!, a[3]! + hold, a[4]!],
      [a[2]!, a[4]!, a[5]! + hold],
    ],
    b,
  );
  const angle = step[2]! / ARM_MM;
  // The turn is about (0, −ARM/2): moved so that it is one about the origin.
  const cosStep = Math.cos(angle);
  const sinStep = Math.sin(angle);
  const px = pose.dxMm;
  const py = pose.dyMm + ARM_MM / 2;
  return {
    angleRad: pose.angleRad + angle,
    dxMm: px * cosStep - py * sinStep + step[0]!,
    dyMm: px * sinStep + py * cosStep - ARM_MM / 2 + step[1]!,
  };
}

const ARM_MM = 100;

/** Three equations by elimination; the matrix is positive definite through its damping. */
function solve3(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  for (let i = 0; i < 3; i += 1) {
    for (let j = i + 1; j < 3; j += 1) {
      const factor = rows[j]![i]! / rows[i]![i]!;
      for (let k = i; k < 4; k += 1) rows[j]![k]! -= factor * rows[i]![k]!;
    }
  }
  const x = [0, 0, 0];
  for (let i = 2; i >= 0; i -= 1) {
    let sum = rows[i]![3]!;
    for (let k = i + 1; k < 3; k += 1) sum -= rows[i]![k]! * x[k]!;
    x[i] = sum / rows[i]![i]!;
  }
  return x;
}

import { ok, refuse, type Result } from '../readings/result';
import { arcLengths, extentMm, thinned } from './arc';
import { type Outline } from './outline';

const FEWEST_POINTS = 8;

/** A loop shorter than this share of the line's extent is the shiver of a pencil, not a line that crosses itself. */
const SHIVER = 0.02;

/**
 * Whether a line can be an outline at all, in whatever unit: enough points, all of them numbers, not all
 * in one place, and not crossing itself. Says what to do otherwise. Never throws.
 */
export function checkOutline(outline: Outline): Result<Outline> {
  const { xMm, yMm } = outline;
  const n = xMm.length;
  if (n !== yMm.length) return refuse('The line has an x without a y: check the columns.');
  if (n < FEWEST_POINTS) {
    return refuse(
      `The line has ${n} points. Trace at least ${FEWEST_POINTS}, from one end of the shape to the other.`,
    );
  }
  for (let i = 0; i < n; i += 1) {
    if (!Number.isFinite(xMm[i]) || !Number.isFinite(yMm[i])) {
      return refuse(`Point ${i + 1} of the line is not a pair of numbers: correct or remove it.`);
    }
  }
  const { from, to } = extentMm(outline);
  const extent = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm);
  if (!(extent > 1e-6))
    return refuse('All points of the line lie in one place: check the columns of x and y.');
  if (!Number.isFinite(extent * extent)) {
    return refuse('The line is far too large for a wheel or a rail: check the unit and the columns.');
  }
  const crossing = selfCrossing(thinned(outline, extent / 2000), extent * SHIVER);
  if (crossing !== null) {
    const [x, y] = crossing;
    return refuse(
      `The line crosses itself near x ${x.toFixed(1)}, y ${y.toFixed(1)}. The points must follow the outline from one end to the other, each part traced once.`,
    );
  }
  return ok(outline);
}

/**
 * Where the line crosses or touches itself, leaving out loops shorter along the line than `shortestMm`;
 * null if nowhere. Pieces are sorted into the squares of a grid about two pieces wide, and only pieces
 * that share a square are compared: time grows with the number of points, not with its square.
 */
function selfCrossing(line: Outline, shortestMm: number): readonly [number, number] | null {
  const along = arcLengths(line);
  const pieces = along.length - 1;
  const { from, to } = extentMm(line);
  const extent = Math.max(to.xMm - from.xMm, to.yMm - from.yMm);
  const cell = Math.max((2 * along[pieces]!) / pieces, extent / 1000);
  const columns = Math.floor(extent / cell) + 2;
  const squares = new Map<number, number[]>();
  for (let i = 0; i < pieces; i += 1) {
    for (const square of squaresOf(line, i, from.xMm, from.yMm, cell, columns)) {
      const here = squares.get(square);
      if (here === undefined) {
        squares.set(square, [i]);
        continue;
      }
      for (const j of here) {
        if (along[i]! - along[j + 1]! < shortestMm) continue;
        const at = meeting(line, j, i);
        if (at !== null) return at;
      }
      here.push(i);
    }
  }
  return null;
}

/** Squares that the piece from point i to i + 1 passes: all of its box when short, along its way when long. */
function* squaresOf(
  { xMm, yMm }: Outline,
  i: number,
  left: number,
  low: number,
  cell: number,
  columns: number,
): Generator<number> {
  const column = (x: number): number => Math.floor((x - left) / cell);
  const [x0, y0, x1, y1] = [xMm[i]!, yMm[i]!, xMm[i + 1]!, yMm[i + 1]!];
  const [c0, c1] = [column(Math.min(x0, x1)), column(Math.max(x0, x1))];
  for (let c = c0; c <= c1; c += 1) {
    // The heights the piece has within this column.
    const share = (x: number): number => (x1 === x0 ? 0 : Math.min(1, Math.max(0, (x - x0) / (x1 - x0))));
    const a = y0 + (y1 - y0) * (x1 === x0 ? 0 : share(left + c * cell));
    const b = y0 + (y1 - y0) * (x1 === x0 ? 1 : share(left + (c + 1) * cell));
    const r1 = Math.floor((Math.max(a, b) - low) / cell);
    for (let r = Math.floor((Math.min(a, b) - low) / cell); r <= r1; r += 1) yield r * columns + c;
  }
}

function meeting({ xMm, yMm }: Outline, i: number, j: number): readonly [number, number] | null {
  const [ax, ay, cx, cy] = [xMm[i]!, yMm[i]!, xMm[j]!, yMm[j]!];
  const [bx, by] = [xMm[i + 1]! - ax, yMm[i + 1]! - ay];
  const [dx, dy] = [xMm[j + 1]! - cx, yMm[j + 1]! - cy];
  const turn = bx * dy - by * dx;
  if (turn === 0) return null;
  const s = ((cx - ax) * dy - (cy - ay) * dx) / turn;
  const t = ((cx - ax) * by - (cy - ay) * bx) / turn;
  return s >= 0 && s <= 1 && t >= 0 && t <= 1 ? [ax + s * bx, ay + s * by] : null;
}

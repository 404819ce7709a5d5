/**
 * Least-squares fit of a continuous line of straight pieces to points, and how many pieces the
 * points bear out. Knows nothing of track: see `segments.ts`.
 */

/** Where the pieces meet (ends included, ascending) and the fitted height there, in the units given. */
export type BrokenLine = {
  readonly knots: readonly number[];
  readonly heights: readonly number[];
  /** Sum of the squared distances of the points from the line. */
  readonly squares: number;
};

/** Running sums over points in ascending x, so that any stretch is summed in the time of two look-ups. */
type Sums = {
  readonly x: Float64Array;
  readonly sx: Float64Array;
  readonly sxx: Float64Array;
  readonly sy: Float64Array;
  readonly sxy: Float64Array;
  readonly syy: Float64Array;
};

/** Sums over one stretch, x counted from its beginning. */
type Stretch = {
  readonly n: number;
  readonly x: number;
  readonly xx: number;
  readonly y: number;
  readonly xy: number;
};

function sumsOf(x: Float64Array, y: Float64Array): Sums {
  const empty = (): Float64Array => new Float64Array(x.length + 1);
  const [sx, sxx, sy, sxy, syy] = [empty(), empty(), empty(), empty(), empty()];
  for (let i = 0; i < x.length; i += 1) {
    const [at, value] = [x[i]!, y[i]!];
    sx[i + 1] = sx[i]! + at;
    sxx[i + 1] = sxx[i]! + at * at;
    sy[i + 1] = sy[i]! + value;
    sxy[i + 1] = sxy[i]! + at * value;
    syy[i + 1] = syy[i]! + value * value;
  }
  return { x, sx, sxx, sy, sxy, syy };
}

/** Points first … last − 1, x counted from `from`. */
function stretch({ sx, sxx, sy, sxy }: Sums, first: number, last: number, from: number): Stretch {
  const n = last - first;
  const x = sx[last]! - sx[first]!;
  const y = sy[last]! - sy[first]!;
  return {
    n,
    x: x - from * n,
    xx: sxx[last]! - sxx[first]! - 2 * from * x + from * from * n,
    y,
    xy: sxy[last]! - sxy[first]! - from * y,
  };
}

/** Squares left by one straight line through points first … last − 1, x counted from `from`. */
function lineSquares({ sx, sxx, sy, sxy, syy }: Sums, first: number, last: number, from: number): number {
  // As `stretch`, written out: a long sheet asks for hundreds of thousands.
  const n = last - first;
  if (n < 3) return 0;
  const overX = sx[last]! - sx[first]!;
  const x = overX - from * n;
  const xx = sxx[last]! - sxx[first]! - 2 * from * overX + from * from * n;
  const y = sy[last]! - sy[first]!;
  const xy = sxy[last]! - sxy[first]! - from * y;
  const yy = syy[last]! - syy[first]!;
  const spread = xx - (x * x) / n;
  const along = xy - (x * y) / n;
  return Math.max(0, yy - (y * y) / n - (spread > 0 ? (along * along) / spread : 0));
}

/** First point at or beyond `at`. */
function firstFrom(x: Float64Array, at: number): number {
  let low = 0;
  let high = x.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (x[middle]! < at) low = middle + 1;
    else high = middle;
  }
  return low;
}

const firstsOf = ({ x }: Sums, knots: readonly number[]): number[] => knots.map((knot) => firstFrom(x, knot));

/** Fewest points between two knots: one would let a piece follow a single reading. */
const FEWEST = 2;

/** The points of each piece; null when one has too few. */
function pieces(sums: Sums, knots: readonly number[]): readonly Stretch[] | null {
  const found: Stretch[] = [];
  let first = 0;
  for (let j = 0; j + 1 < knots.length; j += 1) {
    const last = j + 2 === knots.length ? sums.x.length : firstFrom(sums.x, knots[j + 1]!);
    if (last - first < FEWEST) return null;
    found.push(stretch(sums, first, last, knots[j]!));
    first = last;
  }
  return found;
}

/** Some knots with one of them taken out or moved; what is tried before a line is fitted. */
type Trial = {
  readonly knots: readonly number[];
  /** First point at or beyond each knot. */
  readonly firsts: readonly number[];
  /** Left out, never the first or the last; −1: none. */
  readonly without: number;
  /** Stands elsewhere, never the first or the last; −1: none. */
  readonly moved: number;
  readonly to: number;
};

/**
 * Squares that the best line over the knots of a trial leaves; null when a piece has too few points.
 * The equations of `fit`, eliminated as they are set up: thousands of trials are made for one line.
 */
function squaresLeft(sums: Sums, { knots, firsts, without, moved, to }: Trial): number | null {
  const end = knots.length - 1;
  const { x: places, sx, sxx, sy, sxy, syy } = sums;
  let pivot = 0;
  let load = 0;
  let explained = 0;
  let first = 0;
  let from = knots[0]!;
  for (let j = 1; j <= end; j += 1) {
    if (j === without) continue;
    const next = j === moved ? to : knots[j]!;
    const last = j === end ? places.length : j === moved ? firstFrom(places, to) : firsts[j]!;
    const n = last - first;
    if (n < FEWEST) return null;
    // As `stretch`, written out: half the time of a long sheet's line goes by here.
    const overX = sx[last]! - sx[first]!;
    const y = sy[last]! - sy[first]!;
    const x = overX - from * n;
    const xx = sxx[last]! - sxx[first]! - 2 * from * overX + from * from * n;
    const xy = sxy[last]! - sxy[first]! - from * y;
    const length = next - from;
    const w = x / length;
    const ww = xx / (length * length);
    const wy = xy / length;
    pivot += n - 2 * w + ww;
    load += y - wy;
    if (!(pivot > LEAST_PIVOT)) return null;
    explained += (load * load) / pivot;
    const ratio = (w - ww) / pivot;
    pivot = ww - ratio * (w - ww);
    load = wy - ratio * load;
    first = last;
    from = next;
  }
  return pivot > LEAST_PIVOT ? Math.max(0, syy[first]! - explained - (load * load) / pivot) : null;
}

const LEAST_PIVOT = 1e-9;

/** Heights at the knots by least squares: a tridiagonal system, solved by elimination. */
function fit(sums: Sums, knots: readonly number[]): BrokenLine | null {
  const found = pieces(sums, knots);
  const firsts = firstsOf(sums, knots);
  const squares = squaresLeft(sums, { knots, firsts, without: -1, moved: -1, to: NaN });
  if (found === null || squares === null) return null;
  const count = knots.length;
  const diagonal = new Float64Array(count);
  const beside = new Float64Array(count);
  const right = new Float64Array(count);
  found.forEach(({ n, x, xx, y, xy }, j) => {
    const length = knots[j + 1]! - knots[j]!;
    const w = x / length;
    const ww = xx / (length * length);
    const wy = xy / length;
    diagonal[j]! += n - 2 * w + ww;
    diagonal[j + 1]! += ww;
    beside[j]! += w - ww;
    right[j]! += y - wy;
    right[j + 1]! += wy;
  });
  for (let j = 1; j < count; j += 1) {
    const ratio = beside[j - 1]! / diagonal[j - 1]!;
    diagonal[j]! -= ratio * beside[j - 1]!;
    right[j]! -= ratio * right[j - 1]!;
  }
  const heights = new Float64Array(count);
  for (let j = count - 1; j >= 0; j -= 1) {
    heights[j] = (right[j]! - (j + 1 < count ? beside[j]! * heights[j + 1]! : 0)) / diagonal[j]!;
  }
  return { knots, heights: [...heights], squares };
}

/** The split of points first … last − 1 that leaves the least squares; null when none helps. */
function bestSplit(sums: Sums, first: number, last: number): { at: number; gain: number } | null {
  const from = sums.x[first]!;
  const whole = lineSquares(sums, first, last, from);
  let [split, most] = [-1, -Infinity];
  for (let at = first + FEWEST; at <= last - FEWEST; at += 1) {
    const gain = whole - lineSquares(sums, first, at, from) - lineSquares(sums, at, last, sums.x[at]!);
    if (gain > most) [split, most] = [at, gain];
  }
  return split < 0 ? null : { at: split, gain: most };
}

/** Knots to begin with: the sheet is split in two where that helps most, again and again. */
function splitting(sums: Sums, most: number): number[] {
  type Part = { first: number; last: number; split: { at: number; gain: number } | null };
  const part = (first: number, last: number): Part => ({ first, last, split: bestSplit(sums, first, last) });
  let parts: Part[] = [part(0, sums.x.length)];
  while (parts.length <= most) {
    const next = parts.reduce((a, b) => ((b.split?.gain ?? 0) > (a.split?.gain ?? 0) ? b : a));
    if (next.split === null || !(next.split.gain > 0)) break;
    const { at } = next.split;
    parts = parts.flatMap((each) => (each === next ? [part(each.first, at), part(at, each.last)] : [each]));
  }
  return parts.slice(1).map(({ first }) => (sums.x[first - 1]! + sums.x[first]!) / 2);
}

/** Moves each knot to where the squares are least, in steps that halve. */
function settle(sums: Sums, line: BrokenLine, step: number): BrokenLine {
  const knots = [...line.knots];
  const firsts = firstsOf(sums, knots);
  let least = line.squares;
  for (let size = step; size > step / 40; size /= 2) {
    for (let j = 1; j + 1 < knots.length; j += 1) {
      for (const by of [-size, size]) {
        const to = knots[j]! + by;
        if (to <= knots[j - 1]! || to >= knots[j + 1]!) continue;
        const squares = squaresLeft(sums, { knots, firsts, without: -1, moved: j, to });
        if (squares === null || !(squares < least)) continue;
        least = squares;
        knots[j] = to;
        firsts[j] = firstFrom(sums.x, to);
      }
    }
  }
  return fit(sums, knots) ?? line;
}

/** The knot that is missed least, taken out. */
function withoutOne(sums: Sums, { knots }: BrokenLine): BrokenLine | null {
  const firsts = firstsOf(sums, knots);
  let [missedLeast, least] = [-1, Infinity];
  for (let j = 1; j + 1 < knots.length; j += 1) {
    const squares = squaresLeft(sums, { knots, firsts, without: j, moved: -1, to: NaN });
    if (squares !== null && squares < least) [missedLeast, least] = [j, squares];
  }
  return missedLeast < 0
    ? null
    : fit(
        sums,
        knots.filter((_, i) => i !== missedLeast),
      );
}

/** Knots tried at most; below so many each set of them is settled before it is judged. */
const MOST_KNOTS = 48;
const SETTLED_KNOTS = 16;

/**
 * −2·ln(likelihood) + parameters·ln n, independent normal errors whose variance is the mean square
 * left over, but not less than `leastVariance` (Schwarz's criterion, BIC). Two heights at the ends,
 * and a place and a height for every knot between.
 */
export const criterion = (line: BrokenLine, n: number, leastVariance: number): number => {
  const variance = Math.max(line.squares / n, leastVariance);
  return n * Math.log(variance) + line.squares / variance + (2 * line.knots.length - 2) * Math.log(n);
};

/**
 * The broken line through points (x ascending, both finite, four or more) with the number of pieces
 * for which `criterion` is least. `leastVariance` > 0: the variance the points have by themselves,
 * from how they were measured. null with fewer than four points or none apart.
 * Source: Schwarz, "Estimating the dimension of a model", Annals of Statistics 6 (1978), 461–464;
 * the search (split, then take out and settle) is our own and finds a good line, not surely the best.
 */
export function brokenLine(x: Float64Array, y: Float64Array, leastVariance: number): BrokenLine | null {
  const n = x.length;
  const [from, to] = [x[0] ?? NaN, x[n - 1] ?? NaN];
  if (n < 4 || !(to > from)) return null;
  const sums = sumsOf(x, y);
  const step = (2 * (to - from)) / (n - 1);
  const begin = splitting(sums, Math.min(MOST_KNOTS, Math.floor(n / 3)));
  let line = fit(sums, [from, ...begin, to]) ?? fit(sums, [from, to]);
  let best: BrokenLine | null = null;
  while (line !== null) {
    if (line.knots.length - 2 <= SETTLED_KNOTS) line = settle(sums, line, step);
    if (best === null || criterion(line, n, leastVariance) < criterion(best, n, leastVariance)) best = line;
    line = withoutOne(sums, line);
  }
  return best;
}

/**
 * Covariance of the fitted heights and of the knots between, row and column 2j the height of knot j
 * and 2j + 1 its place (first and last place held, so zero), for points with variance σ²:
 * σ²·(JᵀJ)⁻¹, J the slopes of the line by its parameters. null where a knot's place cannot be told
 * because the pieces on both sides run alike.
 */
export function covariance(
  x: Float64Array,
  { knots, heights }: BrokenLine,
  variance: number,
): readonly Float64Array[] | null {
  const found = pieces(sumsOf(x, new Float64Array(x.length)), knots);
  if (found === null) return null;
  const size = 2 * knots.length;
  const normal = Array.from({ length: size }, () => new Float64Array(size));
  const add = (a: number, b: number, value: number): void => {
    normal[a]![b]! += value;
  };
  found.forEach(({ n, x: sx, xx }, j) => {
    const length = knots[j + 1]! - knots[j]!;
    const slope = (heights[j + 1]! - heights[j]!) / length;
    const w = sx / length;
    const ww = xx / (length * length);
    // ∂f/∂height: 1 − w and w; ∂f/∂place: the same times −slope.
    const left = n - 2 * w + ww;
    const cross = w - ww;
    const [a, b] = [2 * j, 2 * j + 2];
    const terms = [
      [a, a, left],
      [a, b, cross],
      [b, a, cross],
      [b, b, ww],
    ] as const;
    for (const [row, column, value] of terms) {
      add(row, column, value);
      add(row + 1, column, -slope * value);
      add(row, column + 1, -slope * value);
      add(row + 1, column + 1, slope * slope * value);
    }
  });
  const held = new Set([1, size - 1]);
  const inverse = invert(
    normal.map((row, i) => row.map((value, j) => (held.has(i) || held.has(j) ? Number(i === j) : value))),
  );
  return (
    inverse &&
    inverse.map((row, i) => row.map((value, j) => (held.has(i) || held.has(j) ? 0 : value * variance)))
  );
}

/** Gauss–Jordan with partial pivoting; null when singular. */
function invert(matrix: readonly Float64Array[]): Float64Array[] | null {
  const size = matrix.length;
  const rows = matrix.map((row, i) => {
    const wide = new Float64Array(2 * size);
    wide.set(row);
    wide[size + i] = 1;
    return wide;
  });
  const largest = Math.max(...matrix.map((row, i) => Math.abs(row[i]!)));
  for (let column = 0; column < size; column += 1) {
    let pivot = column;
    for (let i = column + 1; i < size; i += 1)
      if (Math.abs(rows[i]![column]!) > Math.abs(rows[pivot]![column]!)) pivot = i;
    if (!(Math.abs(rows[pivot]![column]!) > largest * 1e-13)) return null;
    [rows[column], rows[pivot]] = [rows[pivot]!, rows[column]!];
    const by = rows[column]![column]!;
    const own = rows[column]!.map((value) => value / by);
    rows[column] = own;
    for (let i = 0; i < size; i += 1) {
      const share = rows[i]![column]!;
      if (i === column || share === 0) continue;
      rows[i] = rows[i]!.map((value, j) => value - share * own[j]!);
    }
  }
  return rows.map((row) => row.slice(size));
}

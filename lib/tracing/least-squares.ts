/** Sum of squares at its least: the parameters, the sum there, and the covariance of the parameters. */
export type LeastSquares = {
  readonly parameters: readonly number[];
  readonly sum: number;
  /** (JᵀJ)⁻¹; residuals are counted in standard uncertainties. */
  readonly covariance: readonly (readonly number[])[];
};

/** Lower triangle L with L·Lᵀ = `matrix`; null when the matrix is not positive definite. */
export function cholesky(matrix: readonly (readonly number[])[]): readonly (readonly number[])[] | null {
  const n = matrix.length;
  const lower = matrix.map(() => new Array<number>(n).fill(0));
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = matrix[i]![j]!;
      for (let k = 0; k < j; k += 1) sum -= lower[i]![k]! * lower[j]![k]!;
      if (i === j) {
        if (!(sum > 0)) return null;
        lower[i]![i] = Math.sqrt(sum);
      } else lower[i]![j] = sum / lower[j]![j]!;
    }
  }
  return lower;
}

/** x with L·Lᵀ·x = b. */
function solved(lower: readonly (readonly number[])[], b: readonly number[]): readonly number[] {
  const n = b.length;
  const x = [...b];
  for (let i = 0; i < n; i += 1) {
    for (let k = 0; k < i; k += 1) x[i]! -= lower[i]![k]! * x[k]!;
    x[i]! /= lower[i]![i]!;
  }
  for (let i = n - 1; i >= 0; i -= 1) {
    for (let k = i + 1; k < n; k += 1) x[i]! -= lower[k]![i]! * x[k]!;
    x[i]! /= lower[i]![i]!;
  }
  return x;
}

const squares = (values: readonly number[]): number => values.reduce((sum, value) => sum + value * value, 0);

const STEP = 1e-6;

/** How each residual moves with each parameter, by central differences. */
function slopes(residuals: (p: readonly number[]) => readonly number[], at: readonly number[]) {
  return at.map((value, j) => {
    const step = STEP * Math.max(1, Math.abs(value));
    const up = residuals(at.map((p, k) => (k === j ? p + step : p)));
    const down = residuals(at.map((p, k) => (k === j ? p - step : p)));
    return up.map((each, i) => (each - down[i]!) / (2 * step));
  });
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * b[i]!, 0);

const MOST_ROUNDS = 60;

/**
 * Least squares by Levenberg and Marquardt (K. Levenberg 1944; D. W. Marquardt, J. SIAM 11 (1963)),
 * for a handful of parameters. Null when the residuals are not finite at the start, or leave some
 * parameter undetermined.
 */
export function leastSquares(
  residuals: (p: readonly number[]) => readonly number[],
  start: readonly number[],
): LeastSquares | null {
  let p = start;
  let sum = squares(residuals(p));
  if (!Number.isFinite(sum)) return null;
  let damping = 1e-3;
  for (let round = 0; round < MOST_ROUNDS && damping < 1e12; round += 1) {
    const columns = slopes(residuals, p);
    const here = residuals(p);
    const normal = columns.map((a) => columns.map((b) => dot(a, b)));
    const downhill = columns.map((a) => -dot(a, here));
    const damped = normal.map((row, i) => row.map((v, j) => (i === j ? v * (1 + damping) + 1e-12 : v)));
    const lower = cholesky(damped);
    const step = lower === null ? null : solved(lower, downhill);
    const next = step === null ? null : p.map((value, i) => value + step[i]!);
    const nextSum = next === null ? NaN : squares(residuals(next));
    if (next === null || !(nextSum < sum)) {
      damping *= 8;
      continue;
    }
    const gained = sum - nextSum;
    [p, sum, damping] = [next, nextSum, Math.max(1e-9, damping / 8)];
    if (gained < 1e-9 * (1 + sum)) break;
  }
  const columns = slopes(residuals, p);
  const lower = cholesky(columns.map((a) => columns.map((b) => dot(a, b))));
  if (lower === null || !Number.isFinite(sum)) return null;
  const covariance = p.map((_, i) =>
    solved(
      lower,
      p.map((__, j) => (i === j ? 1 : 0)),
    ),
  );
  return { parameters: p, sum, covariance };
}

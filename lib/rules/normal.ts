const SERIES_BELOW = 3;

/** erf by its series: 2/√π · e^(−x²) · Σ 2ⁿ x^(2n+1) / (1·3·…·(2n+1)). Abramowitz and Stegun, 7.1.6. */
const erfSeries = (x: number): number => {
  let term = x;
  let sum = x;
  for (let n = 1; Math.abs(term) > 1e-17 * Math.abs(sum); n += 1) {
    term *= (2 * x * x) / (2 * n + 1);
    sum += term;
  }
  return (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * sum;
};

/** erfc for x ≥ 3 by its continued fraction, evaluated from the far end. Abramowitz and Stegun, 7.1.14. */
const erfcFraction = (x: number): number => {
  let tail = x;
  for (let k = 60; k >= 1; k -= 1) tail = x + k / 2 / tail;
  return Math.exp(-x * x) / (Math.sqrt(Math.PI) * tail);
};

/**
 * Probability that a standard normal variable exceeds z: Q(z) = ½ erfc(z/√2).
 * Any real z; ±Infinity gives 0 and 1. Source: Abramowitz and Stegun, 26.2.3 and 7.1.
 */
export const normalUpperTail = (z: number): number => {
  if (z < 0) return 1 - normalUpperTail(-z);
  if (z === Infinity) return 0;
  const x = z / Math.SQRT2;
  return x < SERIES_BELOW ? (1 - erfSeries(x)) / 2 : erfcFraction(x) / 2;
};

/**
 * Share of Student's t distribution with `degrees` degrees of freedom (a whole number from 1) between
 * −t and t. Source: M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964), 26.7.3
 * and 26.7.4: finite sums, exact for whole degrees.
 */
export function studentWithin(t: number, degrees: number): number {
  const angle = Math.atan(t / Math.sqrt(degrees));
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  const odd = degrees % 2 === 1;
  if (degrees === 1) return (2 * angle) / Math.PI;
  let term = odd ? cos : 1;
  let sum = term;
  for (let k = odd ? 3 : 2; k <= degrees - 2; k += 2) {
    term *= ((k - 1) / k) * cos * cos;
    sum += term;
  }
  return odd ? (2 / Math.PI) * (angle + sin * sum) : sin * sum;
}

/**
 * The t within which a share of Student's t distribution lies, to 1e-12 relative: 0.95 with 4 degrees
 * of freedom gives 2.776. `share` strictly between 0 and 1, `degrees` a whole number from 1; NaN otherwise.
 */
export function studentFactor(share: number, degrees: number): number {
  if (!(share > 0 && share < 1) || !Number.isInteger(degrees) || degrees < 1) return Number.NaN;
  let [low, high] = [0, 1];
  while (studentWithin(high, degrees) < share) high *= 2;
  while (high - low > 1e-13 * high) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (studentWithin(middle, degrees) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

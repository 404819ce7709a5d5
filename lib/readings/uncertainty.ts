/**
 * Standard uncertainty of a value known only to lie within ±`a`, every value in it equally
 * expected: u = a/√3 (JCGM 100:2008, 4.3.7). Any unit; `a` not negative.
 */
export const standardUncertaintyFromHalfWidth = (a: number): number => a / Math.sqrt(3);

/**
 * Combined standard uncertainty of independent contributions, already multiplied by their
 * sensitivities: root sum of squares (JCGM 100:2008, 5.1.2). All in one unit.
 */
export const combine = (...u: readonly number[]): number => Math.hypot(...u);

/** Expanded uncertainty U = k·u (JCGM 100:2008, 6.2.1); k = 2 gives about 95 % (6.3.3). */
export const expanded = (u: number, k = 2): number => k * u;

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalUpperTail } from '../../lib/rules/normal';

describe('normal upper tail', () => {
  it('agrees with the table of the normal distribution (Abramowitz and Stegun, table 26.1 and 26.2, as 1 − P)', () => {
    const table: readonly [number, number][] = [
      [0, 0.5],
      [0.5, 0.308537538726],
      [1, 0.158655253931],
      [1.96, 0.024997895148],
      [2, 0.022750131948],
      [3, 0.001349898032],
      [4, 3.16712418e-5],
      [5, 2.866515719e-7],
    ];
    for (const [z, q] of table) expect(normalUpperTail(z) / q).toBeCloseTo(1, 8);
  });

  it('falls with z, and both tails add to one', () => {
    fc.assert(
      fc.property(fc.double({ min: -12, max: 12, noNaN: true }), (z) => {
        expect(normalUpperTail(z) + normalUpperTail(-z)).toBeCloseTo(1, 12);
        expect(normalUpperTail(z + 0.01)).toBeLessThanOrEqual(normalUpperTail(z));
      }),
      { seed: 7 },
    );
  });

  it('has no step where the series gives way to the continued fraction', () => {
    const at = 3 * Math.SQRT2;
    expect(normalUpperTail(at - 1e-9) / normalUpperTail(at + 1e-9)).toBeCloseTo(1, 6);
    expect(normalUpperTail(Infinity)).toBe(0);
    expect(normalUpperTail(-Infinity)).toBe(1);
  });
});

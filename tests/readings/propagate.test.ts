import { describe, expect, it } from 'vitest';
import { probabilityAbove, probabilityBelow, propagate, quantileOf } from '~/lib/readings/propagate';

const N = 20_000;
const at = (values: ArrayLike<number>, i: number): number => values[i] ?? Number.NaN;

describe('propagation', () => {
  const a = { key: 'a', value: 10, u: 0.3 };
  const b = { key: 'b', value: 4, u: 0.4 };

  it('gives a sum the root sum of squares', () => {
    const found = propagate((v) => at(v, 0) + at(v, 1), [a, b], N, 1);
    expect(Math.abs((found.mean ?? 0) - 14)).toBeLessThan((4 * 0.5) / Math.sqrt(N));
    expect(Math.abs((found.u ?? 0) - 0.5)).toBeLessThan((4 * 0.5) / Math.sqrt(2 * N));
    expect(found.outOfRange).toBe(0);
  });

  it('lets one reading used twice err in the same way twice', () => {
    expect(propagate((v) => at(v, 0) - at(v, 1), [a, a], N, 1).u).toBe(0);
    expect(propagate((v) => at(v, 0) + at(v, 1), [a, a], N, 1).u).toBeCloseTo(
      2 * (propagate((v) => at(v, 0), [a], N, 1).u ?? 0),
      12,
    );
  });

  it('does not change when another reading is added or the order is turned', () => {
    const one = propagate((v) => at(v, 0) + at(v, 1), [a, b], 100, 1);
    const more = propagate((v) => at(v, 1) + at(v, 2), [{ key: 'c', value: 1, u: 1 }, a, b], 100, 1);
    const turned = propagate((v) => at(v, 1) + at(v, 0), [b, a], 100, 1);
    expect(more.draws).toEqual(one.draws);
    expect(turned.draws).toEqual(one.draws);
  });

  it('keeps an exact input exact', () => {
    const found = propagate((v) => 2 * at(v, 0), [{ key: 'x', value: 3, u: 0 }], 10, 1);
    expect(found).toMatchObject({ mean: 6, u: 0, outOfRange: 0 });
  });

  it('forms no mean over draws that have no answer, and says how many they are', () => {
    const found = propagate((v) => Math.sqrt(at(v, 0)), [{ key: 'x', value: 0, u: 1 }], N, 1);
    expect(found.mean).toBeNull();
    expect(found.u).toBeNull();
    expect(found.outOfRange).toBeCloseTo(0.5, 1);
    expect(quantileOf(found.draws, 0.5)).toBeNull();
    expect(probabilityAbove(found.draws, 0) + found.outOfRange).toBeCloseTo(1, 9);
  });

  it('answers how probable a limit is exceeded', () => {
    const { draws } = propagate((v) => at(v, 0), [a], N, 1);
    expect(probabilityAbove(draws, 10)).toBeCloseTo(0.5, 1);
    // Normal table: 2.275 % lie above two standard deviations.
    expect(Math.abs(probabilityAbove(draws, 10.6) - 0.02275)).toBeLessThan(4 * Math.sqrt(0.0222 / N));
    expect(probabilityAbove(draws, 10.2) + probabilityBelow(draws, 10.2)).toBeCloseTo(1, 12);
  });

  it('gives quantiles', () => {
    expect(quantileOf(Float64Array.from([4, 1, 3, 2]), 0)).toBe(1);
    expect(quantileOf(Float64Array.from([4, 1, 3, 2]), 1)).toBe(4);
    expect(quantileOf(Float64Array.from([4, 1, 3, 2]), 0.5)).toBe(2.5);
    expect(quantileOf(new Float64Array(0), 0.5)).toBeNull();
  });

  it('needs two draws', () => {
    expect(() => propagate(() => 1, [], 1, 1)).toThrow(RangeError);
  });
});

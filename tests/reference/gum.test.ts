import { describe, expect, it } from 'vitest';
import { fromCanonical, toCanonical } from '~/lib/readings/convert';
import { formatWithUncertainty, roundUncertainty } from '~/lib/readings/format';
import { inverseNormal } from '~/lib/readings/inverse-normal';
import { probabilityBelow, propagate, quantileOf } from '~/lib/readings/propagate';
import { combine, expanded, standardUncertaintyFromHalfWidth } from '~/lib/readings/uncertainty';
import type { Dimension, Unit } from '~/lib/readings/unit';

const rounded = (value: number, digits: number): number => Number(value.toPrecision(digits));
const at = (values: ArrayLike<number>, i: number): number => values[i] ?? Number.NaN;

/**
 * Clauses 4.3.4, 4.3.7 (example 1), 5.1.5, 5.2.2, 7.2.6, F.2.2.1 and the budget of H.1 were compared
 * with public reprints and reworkings of the guide; 4.4.5, table G.1 and JCGM 101, 9.2.2 are quoted
 * from memory.
 */
describe('JCGM 100:2008 (GUM)', () => {
  it('4.3.7, example 1: expansion of copper, error at most 0,40 gives u = 0,23 (1e-6 per °C)', () => {
    expect(rounded(standardUncertaintyFromHalfWidth(0.4), 2)).toBe(0.23);
  });

  it('4.3.7, example 2: a voltmeter good to 15 µV gives u = 8,7 µV', () => {
    expect(rounded(standardUncertaintyFromHalfWidth(15), 2)).toBe(8.7);
  });

  it('4.4.5: a temperature anywhere from 96 °C to 104 °C has u = 2,3 °C', () => {
    expect(rounded(standardUncertaintyFromHalfWidth((104 - 96) / 2), 2)).toBe(2.3);
  });

  it('F.2.2.1: a display stepping by δx gives u = 0,29 δx', () => {
    expect(rounded(standardUncertaintyFromHalfWidth(1 / 2), 2)).toBe(0.29);
  });

  it('4.3.4: ±129 µΩ at 99 % is u = 50 µΩ, through the normal quantile 2,58', () => {
    const quantile = inverseNormal(0.995);
    expect(rounded(quantile, 3)).toBe(2.58);
    expect(rounded(129 / quantile, 2)).toBe(50);
  });

  it('5.1.5: 12 µV and 8,7 µV combine to 15 µV', () => {
    expect(rounded(combine(12, standardUncertaintyFromHalfWidth(15)), 2)).toBe(15);
  });

  it('5.2.2, example: ten resistors against one standard: 1 Ω together, 0,32 Ω if the bond is ignored', () => {
    const sum = (values: ArrayLike<number>): number => Array.from(values).reduce((a, b) => a + b, 0);
    const resistors = (key: (i: number) => string) =>
      Array.from({ length: 10 }, (_, i) => ({ key: key(i), value: 1000, u: 0.1 }));
    const n = 20_000;
    const bound = propagate(
      sum,
      resistors(() => 'standard'),
      n,
      1,
    );
    const loose = propagate(
      sum,
      resistors((i) => `resistor-${i}`),
      n,
      1,
    );
    // Four standard errors of a standard deviation from n draws.
    const share = 4 / Math.sqrt(2 * n);
    expect(Math.abs((bound.u ?? 0) / 1 - 1)).toBeLessThan(share);
    expect(Math.abs((loose.u ?? 0) / Math.sqrt(0.1) - 1)).toBeLessThan(share);
    expect(rounded(combine(...Array<number>(10).fill(0.1)), 2)).toBe(0.32);
  });

  /** Table H.1: contributions to the length of an end-gauge, nm. */
  const comparator = combine(5.8, 3.9, 6.7);
  const standard = 25;
  const lengthNm = 50_000_623;
  const expansionDifference = lengthNm * 0.1 * standardUncertaintyFromHalfWidth(1e-6);
  const temperatureDifference = lengthNm * 11.5e-6 * standardUncertaintyFromHalfWidth(0.05);

  it('H.1.3.2, H.1.3.5, H.1.3.6: the contributions are 9,7, 2,9 and 16,6 nm', () => {
    expect(rounded(comparator, 2)).toBe(9.7);
    expect(rounded(expansionDifference, 2)).toBe(2.9);
    expect(rounded(temperatureDifference, 3)).toBe(16.6);
  });

  it('H.1.4: combined standard uncertainty of the end-gauge 32 nm', () => {
    expect(Math.round(combine(standard, comparator, expansionDifference, temperatureDifference))).toBe(32);
  });

  it('H.1.4: the same by propagating draws through the model of H.1.2', () => {
    const n = 20_000;
    const found = propagate(
      (v) => at(v, 0) + at(v, 1) - at(v, 0) * (at(v, 2) * at(v, 3) + at(v, 4) * at(v, 5)),
      [
        { key: 'ls', value: lengthNm, u: standard },
        { key: 'd', value: 215, u: comparator },
        { key: 'deltaAlpha', value: 0, u: standardUncertaintyFromHalfWidth(1e-6) },
        { key: 'theta', value: -0.1, u: 0 },
        { key: 'alphaS', value: 11.5e-6, u: 0 },
        { key: 'deltaTheta', value: 0, u: standardUncertaintyFromHalfWidth(0.05) },
      ],
      n,
      1,
    );
    expect(Math.abs((found.mean ?? 0) - 50_000_838)).toBeLessThan((4 * 32) / Math.sqrt(n));
    expect(Math.abs((found.u ?? 0) / 31.7 - 1)).toBeLessThan(4 / Math.sqrt(2 * n));
  });

  it('7.2.6: 10,47 rounds up to 11, 28,05 down to 28', () => {
    expect(roundUncertainty(10.47).u).toBe(11);
    expect(roundUncertainty(28.05).u).toBe(28);
  });

  it('7.2.6: 10,057 62 with an uncertainty of 27 thousandths is given as 10,058', () => {
    expect(formatWithUncertainty(10.05762, 0.027, 'alongTrack', 'metric', { k: 1 })).toBe(
      '10.058 ± 0.027 m (k = 1)',
    );
  });

  it('G.1.3, table G.1: k = 1,960 for 95 %, and 2 for about 95 %', () => {
    expect(inverseNormal(0.975)).toBeCloseTo(1.96, 3);
    expect(expanded(3)).toBe(6);
    const { draws } = propagate((v) => at(v, 0), [{ key: 'x', value: 0, u: 1 }], 20_000, 1);
    const inside = probabilityBelow(draws, 2) - probabilityBelow(draws, -2);
    // Table G.1 gives 95,45 % within two standard deviations.
    expect(Math.abs(inside - 0.9545)).toBeLessThan(4 * Math.sqrt((0.9545 * 0.0455) / 20_000));
  });
});

describe('JCGM 101:2008 (Monte Carlo supplement)', () => {
  it('9.2.2: four standard normal inputs add to y = 0, u = 2,0, interval ±3,92', () => {
    const n = 40_000;
    const inputs = ['x1', 'x2', 'x3', 'x4'].map((key) => ({ key, value: 0, u: 1 }));
    const found = propagate((v) => at(v, 0) + at(v, 1) + at(v, 2) + at(v, 3), inputs, n, 1);
    expect(Math.abs(found.mean ?? 9)).toBeLessThan((4 * 2) / Math.sqrt(n));
    expect(Math.abs((found.u ?? 0) / 2 - 1)).toBeLessThan(4 / Math.sqrt(2 * n));
    // Standard error of a 97,5 % quantile of N(0, 2²): sqrt(p(1 − p)/n)/density.
    const error = (2 * Math.sqrt((0.975 * 0.025) / n)) / 0.0584;
    expect(Math.abs((quantileOf(found.draws, 0.975) ?? 0) - 3.92)).toBeLessThan(4 * error);
    expect(Math.abs((quantileOf(found.draws, 0.025) ?? 0) + 3.92)).toBeLessThan(4 * error);
  });
});

describe('NIST SP 811, appendix B.8: factors', () => {
  const factors: readonly [string, number, Unit, Dimension, number, number][] = [
    ['inch to mm', 1, 'in', 'crossLength', 25.4, 7],
    ['foot to m', 1, 'ft', 'alongTrack', 0.3048, 7],
    ['mile to m', 1, 'mi', 'alongTrack', 1609.344, 7],
    ['mile per hour to m/s', 1, 'mph', 'speed', 0.44704, 7],
    ['kilometre per hour to m/s', 1, 'km/h', 'speed', 0.2777778, 7],
    ['pound to kg', 1, 'lb', 'mass', 0.45359237, 8],
    ['ton, short, to kg', 1, 'ton', 'mass', 907.1847, 7],
    ['pound-force to kN', 1, 'lbf', 'force', 4.448222e-3, 7],
    ['kip to kN', 1, 'kip', 'force', 4.448222, 7],
    ['psi to kPa', 1, 'psi', 'pressure', 6.894757, 7],
    ['bar to kPa', 1, 'bar', 'pressure', 100, 7],
    ['degree to rad', 1, '°', 'angle', 0.01745329, 7],
    ['degree Fahrenheit: 212 °F is 100 °C', 212, '°F', 'temperature', 100, 7],
  ];
  it.each(factors)('%s', (_, value, unit, dimension, canonical, digits) => {
    expect(rounded(toCanonical(value, unit, dimension), digits)).toBe(canonical);
  });

  it('temperature: 32 °F is 0 °C and −40 is the same in both', () => {
    expect(toCanonical(32, '°F', 'temperature')).toBe(0);
    expect(toCanonical(-40, '°F', 'temperature')).toBeCloseTo(-40, 12);
  });
});

describe('degree of curve', () => {
  it('R = 5729.58/D ft: circle geometry, 100 ft of arc turn one degree', () => {
    const radiusFt = fromCanonical(toCanonical(1, '°curve', 'curvature'), 'ft radius', 'curvature');
    expect(radiusFt).toBeCloseTo(5729.58, 6);
    expect(Math.abs(radiusFt - (100 * 180) / Math.PI)).toBeLessThan(0.005);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromCanonical, toCanonical, widthToCanonical } from '~/lib/readings/convert';
import { formatMeasure, formatWithUncertainty } from '~/lib/readings/format';
import { parseMeasure } from '~/lib/readings/parse';
import type { Measure } from '~/lib/readings/quantity';
import { DIMENSIONS, type Dimension, type Unit } from '~/lib/readings/unit';

const IN = 25.4;
const inches = (value: number, halfWidth: number | null = null, feet = false): string =>
  formatMeasure(value * IN, {
    dimension: 'crossLength',
    unit: 'in',
    halfWidth: halfWidth === null ? null : halfWidth * IN,
    feet,
  });

describe('inches', () => {
  it.each([
    [56.75, 1 / 32, '56 3/4 in'],
    [56.75, 1 / 2, '57 in'],
    [56.74, 1 / 32, '56 3/4 in'],
    [55.99, 1 / 32, '56 in'],
    [0.1875, 1 / 32, '3/16 in'],
    [-0.25, 1 / 16, '−1/4 in'],
    [-0.001, 1 / 16, '0 in'],
    [56 + 1 / 64, 1 / 128, '56 1/64 in'],
    [56.7213, 0.0005, '56.721 in'],
    [56.7, null, '56 11/16 in'],
  ])('%f known to %f', (value, halfWidth, text) => {
    expect(inches(value, halfWidth)).toBe(text);
  });
  it('turns into feet only when asked', () => {
    expect(inches(56.5, 1 / 32, true)).toBe(`4' 8 1/2"`);
    expect(inches(-56.5, 1 / 32, true)).toBe(`−4' 8 1/2"`);
    expect(inches(11.5, 1 / 32, true)).toBe('11 1/2 in');
    expect(inches(56.5, 1 / 32)).toBe('56 1/2 in');
  });
});

describe('other units', () => {
  const show = (value: number, dimension: Dimension, unit: Unit, halfWidth: number | null = null): string =>
    formatMeasure(value, { dimension, unit, halfWidth });
  it('keeps the digits the resolution supports', () => {
    expect(show(1441.45, 'crossLength', 'mm', 25.4 / 32)).toBe('1441 mm');
    expect(show(1441.45, 'crossLength', 'mm', 0.05)).toBe('1441.5 mm');
    expect(show(1441.45, 'crossLength', 'cm', 0.5)).toBe('144.1 cm');
  });
  it('writes what the trade writes', () => {
    expect(show(6.5 / (5729.58 * 0.3048), 'curvature', '°curve')).toBe('6.5°');
    expect(show(1 / 291, 'curvature', 'm radius')).toBe('291 m radius');
    expect(show(0, 'curvature', 'm radius')).toBe('tangent');
    expect(show(40 * 0.44704, 'speed', 'mph')).toBe('40.0 mph');
    expect(show(35, 'temperature', '°F')).toBe('95 °F');
    expect(show(0.35, 'ratio', '%')).toBe('35 %');
    expect(show(0.35, 'ratio', '1')).toBe('0.35');
    expect(show(62_000 * 0.45359237, 'mass', 'ton')).toBe('31.0 short tons');
    expect(formatMeasure(-15.5 * 0.3048, { dimension: 'alongTrack', unit: 'ft', form: 'fraction' })).toBe(
      `−15' 6"`,
    );
    expect(formatMeasure(1435, { dimension: 'crossLength', system: 'metric', withUnit: false })).toBe(
      '1435.0',
    );
  });
  it('does not print what is not a number', () => {
    expect(() => show(Number.NaN, 'speed', 'mph')).toThrow(RangeError);
  });
});

describe('with uncertainty', () => {
  it('shows the value to the place of the uncertainty', () => {
    const u = 0.035 * IN;
    expect(formatWithUncertainty(56.7213 * IN, u, 'crossLength', 'us')).toBe('56.72 ± 0.07 in (k = 2)');
    expect(formatWithUncertainty(56.7213 * IN, u, 'crossLength', 'metric')).toBe('1440.7 ± 1.8 mm (k = 2)');
    expect(formatWithUncertainty(56.7213 * IN, u, 'crossLength', 'us', { k: 1 })).toBe(
      '56.721 ± 0.035 in (k = 1)',
    );
    expect(formatWithUncertainty(62_137 * 0.45359237, 310 * 0.45359237, 'mass', 'us')).toBe(
      '62100 ± 600 lb (k = 2)',
    );
  });
  it('gives temperatures a difference, not a temperature, of uncertainty', () => {
    expect(formatWithUncertainty(35, 1 / 1.8, 'temperature', 'us')).toBe('95 ± 2 °F (k = 2)');
  });
  it('writes fractions when asked', () => {
    expect(formatWithUncertainty(56.75 * IN, IN / 32, 'crossLength', 'us', { form: 'fraction' })).toBe(
      '56 3/4 ± 1/16 in (k = 2)',
    );
  });
  it('leaves the ± away when nothing is known', () => {
    expect(formatWithUncertainty(1435, 0, 'crossLength', 'metric')).toBe('1435.0 mm');
    expect(formatWithUncertainty(1435, Number.POSITIVE_INFINITY, 'crossLength', 'metric')).toBe('1435.0 mm');
  });
});

/** Every unit of every dimension, with an ordinary span of numbers in that unit. */
const SPANS: Readonly<Record<Unit, readonly [number, number]>> = {
  in: [-80, 80],
  ft: [-900, 900],
  mm: [-2000, 2000],
  cm: [-200, 200],
  m: [-900, 900],
  mi: [-9, 9],
  km: [-9, 9],
  mph: [0, 120],
  'km/h': [0, 200],
  'm/s': [0, 60],
  lb: [0, 400_000],
  ton: [0, 200],
  t: [0, 200],
  kg: [0, 200_000],
  '°F': [-60, 160],
  '°C': [-50, 80],
  '°': [-90, 90],
  rad: [-2, 2],
  mrad: [-50, 50],
  '°curve': [-20, 20],
  'm radius': [50, 9000],
  'ft radius': [150, 9000],
  '1/m': [-0.02, 0.02],
  lbf: [0, 400_000],
  kip: [0, 400],
  kN: [0, 2000],
  psi: [0, 200],
  kPa: [0, 1000],
  bar: [0, 10],
  s: [0, 9000],
  min: [0, 200],
  h: [0, 24],
  '1': [0, 3],
  '%': [0, 100],
  'kip/in': [0, 1000],
  'kN/mm': [0, 200],
};

const anywhere = (dimension: Dimension, unit: Unit): Measure => ({
  kind: 'measure',
  id: 'any',
  name: 'Anything',
  short: 'Any',
  subject: 'station',
  slots: [],
  dimension,
  bareUnit: { us: unit, metric: unit },
  possible: [-1e9, 1e9],
  usual: [-1e9, 1e9],
  defaultResolution: { halfWidth: 1, source: 'made up for the test' },
  reference: { low: 0, high: 1, source: 'made up for the test' },
});

describe('format, then parse', () => {
  const dimensions = Object.keys(DIMENSIONS) as Dimension[];
  const pairs = dimensions.flatMap((dimension) =>
    DIMENSIONS[dimension].units.map((unit) => [dimension, unit] as [Dimension, Unit]),
  );

  it.each(pairs)('%s in %s comes back to within half the last digit', (dimension, unit) => {
    const quantity = anywhere(dimension, unit);
    fc.assert(
      fc.property(
        fc.double({ min: SPANS[unit][0], max: SPANS[unit][1], noNaN: true }),
        fc.constantFrom(null, 0.5, 0.25, 0.05, 0.03125, 0.004, 0.0005),
        fc.constantFrom(undefined, 'fraction' as const, 'decimal' as const),
        fc.boolean(),
        fc.constantFrom('us' as const, 'metric' as const),
        (number, width, form, feet, system) => {
          const value = toCanonical(number, unit, dimension);
          const halfWidth = width === null ? null : widthToCanonical(width, number, unit, dimension);
          const text = formatMeasure(value, { dimension, unit, halfWidth, form, feet });
          const parsed = parseMeasure(text, quantity, system);
          if (!parsed.ok) throw new Error(`${text}: ${parsed.message}`);
          const off = Math.abs(fromCanonical(parsed.value.value, unit, dimension) - number);
          const rounding = 1e-9 * Math.max(1, Math.abs(number));
          // Printed to the last digit or division that the resolution supports, never coarser.
          if (width !== null) expect(off).toBeLessThanOrEqual(width + rounding);
          const decimals = /\.(\d+)/.exec(text)?.[1]?.length;
          if (decimals !== undefined) expect(off).toBeLessThanOrEqual(0.5 * 10 ** -decimals + rounding);
          if (width === null && decimals === undefined) expect(off).toBeLessThanOrEqual(0.5 + rounding);
          const sixteenths = unit === 'in' && form !== 'decimal' && width === null;
          if (sixteenths) expect(off).toBeLessThanOrEqual(1 / 32 + rounding);
        },
      ),
      { seed: 1866, numRuns: 300 },
    );
  });
});

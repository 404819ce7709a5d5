import { DIMENSIONS, type Dimension, type Unit } from './unit';

/**
 * Factors from each unit to the canonical unit of its dimension.
 *
 * Sources: NIST SP 811 (2008), appendix B.8: inch 25.4 mm, foot 0.3048 m, mile 1609.344 m,
 * mile per hour 0.44704 m/s, pound 0.45359237 kg, short ton 2000 lb, all exact;
 * pound-force 4.4482216152605 N (exact by definition of the standard fall); psi = lbf/in²;
 * bar 100 kPa exact; t/°C = (t/°F − 32)/1.8.
 * Degree of curve: R = 5729.58/D ft, the radius of the circle on which 100 ft of arc turns
 * one degree (100 ft × 180/π, rounded as the trade writes it).
 */
type Conversion =
  /** canonical = (value − zero) × factor */
  | { readonly kind: 'linear'; readonly factor: number; readonly zero: number }
  /** canonical = 1 / (value × factor) */
  | { readonly kind: 'reciprocal'; readonly factor: number };

const times = (factor: number, zero = 0): Conversion => ({ kind: 'linear', factor, zero });
const radius = (metresPerUnit: number): Conversion => ({ kind: 'reciprocal', factor: metresPerUnit });

const FOOT_M = 0.3048;
const POUND_KG = 0.45359237;
const POUND_FORCE_KN = 0.0044482216152605;
const INCH_M = 0.0254;
const DEGREE_OF_CURVE_RADIUS_FT = 5729.58;

const CONVERSIONS: {
  readonly [D in Dimension]: Readonly<Record<(typeof DIMENSIONS)[D]['units'][number], Conversion>>;
} = {
  crossLength: { in: times(25.4), ft: times(304.8), mm: times(1), cm: times(10), m: times(1000) },
  alongTrack: {
    ft: times(FOOT_M),
    m: times(1),
    in: times(INCH_M),
    mi: times(1609.344),
    km: times(1000),
  },
  speed: { mph: times(0.44704), 'km/h': times(1 / 3.6), 'm/s': times(1) },
  mass: { lb: times(POUND_KG), ton: times(2000 * POUND_KG), t: times(1000), kg: times(1) },
  temperature: { '°F': times(1 / 1.8, 32), '°C': times(1) },
  angle: { '°': times(Math.PI / 180), rad: times(1), mrad: times(0.001) },
  curvature: {
    '°curve': times(1 / (DEGREE_OF_CURVE_RADIUS_FT * FOOT_M)),
    'm radius': radius(1),
    'ft radius': radius(FOOT_M),
    '1/m': times(1),
  },
  force: { lbf: times(POUND_FORCE_KN), kip: times(1000 * POUND_FORCE_KN), kN: times(1) },
  pressure: { psi: times(POUND_FORCE_KN / (INCH_M * INCH_M)), kPa: times(1), bar: times(100) },
  time: { s: times(1), min: times(60), h: times(3600) },
  ratio: { '1': times(1), '%': times(0.01) },
  grade: { '%': times(0.01), '1': times(1) },
  stiffness: { 'kip/in': times((1000 * POUND_FORCE_KN) / (1000 * INCH_M)), 'kN/mm': times(1) },
  count: { '1': times(1) },
};

/** Whether `unit` is one the dimension can be entered in. */
export const isUnitOf = (unit: string, dimension: Dimension): unit is Unit =>
  (DIMENSIONS[dimension].units as readonly string[]).includes(unit);

const conversion = (unit: Unit, dimension: Dimension): Conversion => {
  const table: Readonly<Record<string, Conversion>> = CONVERSIONS[dimension];
  const found = table[unit];
  if (!found) throw new RangeError(`${unit} is not a unit of ${dimension}`);
  return found;
};

/** Radii run backwards: the bigger the number, the smaller the curvature. */
export const isReciprocal = (unit: Unit, dimension: Dimension): boolean =>
  conversion(unit, dimension).kind === 'reciprocal';

/**
 * A value in `unit` as the dimension's canonical unit (lib/readings/unit). A radius of zero gives
 * Infinity, which no quantity allows. Throws on a unit that is not the dimension's.
 */
export function toCanonical(value: number, unit: Unit, dimension: Dimension): number {
  const by = conversion(unit, dimension);
  return by.kind === 'linear' ? (value - by.zero) * by.factor : 1 / (value * by.factor);
}

/** A canonical value in `unit`. Zero curvature gives an infinite radius. */
export function fromCanonical(value: number, unit: Unit, dimension: Dimension): number {
  const by = conversion(unit, dimension);
  return by.kind === 'linear' ? value / by.factor + by.zero : 1 / (value * by.factor);
}

/**
 * A small width (a half-width, a standard uncertainty) given in `unit` at `value` in that unit,
 * as a width in the canonical unit: |dc/dv| × width, so without the zero of a temperature scale.
 */
export function widthToCanonical(width: number, value: number, unit: Unit, dimension: Dimension): number {
  const by = conversion(unit, dimension);
  return by.kind === 'linear' ? width * by.factor : width / (value * value * by.factor);
}

/** The reverse of `widthToCanonical`, at the canonical value `value`. */
export function widthFromCanonical(width: number, value: number, unit: Unit, dimension: Dimension): number {
  const by = conversion(unit, dimension);
  return by.kind === 'linear' ? width / by.factor : width / (value * value * by.factor);
}

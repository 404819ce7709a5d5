import { fromCanonical, isReciprocal, widthFromCanonical } from './convert';
import type { Measure } from './quantity';
import { unitLabel } from './spelling';
import type { Dimension, Unit, UnitSystem } from './unit';

const DISPLAY_UNITS: Readonly<Record<Dimension, Readonly<Record<UnitSystem, Unit>>>> = {
  crossLength: { us: 'in', metric: 'mm' },
  alongTrack: { us: 'ft', metric: 'm' },
  speed: { us: 'mph', metric: 'km/h' },
  mass: { us: 'lb', metric: 'kg' },
  temperature: { us: '°F', metric: '°C' },
  angle: { us: '°', metric: '°' },
  curvature: { us: '°curve', metric: 'm radius' },
  force: { us: 'kip', metric: 'kN' },
  pressure: { us: 'psi', metric: 'kPa' },
  time: { us: 's', metric: 's' },
  ratio: { us: '1', metric: '1' },
  grade: { us: '%', metric: '%' },
  stiffness: { us: 'kip/in', metric: 'kN/mm' },
  count: { us: '1', metric: '1' },
};

/** The unit a computed value of the dimension is shown in. */
export const displayUnit = (dimension: Dimension, system: UnitSystem): Unit =>
  DISPLAY_UNITS[dimension][system];

/** Decimal places when nothing is known of how well the value is known. */
const PLAIN_PLACES: Readonly<Record<Unit, number>> = {
  in: 2,
  ft: 1,
  mm: 1,
  cm: 2,
  m: 2,
  mi: 2,
  km: 3,
  mph: 1,
  'km/h': 1,
  'm/s': 2,
  lb: 0,
  ton: 1,
  t: 1,
  kg: 0,
  '°F': 0,
  '°C': 1,
  '°': 1,
  rad: 4,
  mrad: 1,
  '°curve': 1,
  'm radius': 0,
  'ft radius': 0,
  '1/m': 6,
  lbf: 0,
  kip: 1,
  kN: 1,
  'kip/in': 1,
  'kN/mm': 1,
  psi: 0,
  kPa: 0,
  bar: 2,
  s: 1,
  min: 1,
  h: 2,
  '1': 2,
  '%': 0,
};

/**
 * `halfWidth` is that of the reading's resolution, in the canonical unit: it chooses the fraction's
 * denominator or the number of decimals. `form` is 'fraction' for inches unless said otherwise;
 * `feet` turns 12 in and more into feet and inches. The unit is the one named, else the quantity's
 * bare unit in the system, else the dimension's display unit.
 */
export type MeasureStyle = {
  readonly dimension: Dimension;
  readonly halfWidth?: number | null;
  readonly form?: 'fraction' | 'decimal';
  readonly feet?: boolean;
  readonly withUnit?: boolean;
} & (
  | { readonly unit: Unit }
  | { readonly unit?: undefined; readonly system: UnitSystem; readonly bareUnit?: Measure['bareUnit'] }
);

/** Curvature in 1/m under which a radius says nothing: 0.05 mm of offset in a 62-ft chord. */
const STRAIGHT = 1e-6;
const MINUS = '−';
const FINEST_DENOMINATOR = 128;
const TAPE_DENOMINATOR = 16;

const unitOf = (style: MeasureStyle): Unit =>
  style.unit ?? style.bareUnit?.[style.system] ?? displayUnit(style.dimension, style.system);

/** Smallest ruler division not coarser than `step` inches; null when no ruler is that fine. */
function denominatorFor(step: number): number | null {
  for (let denominator = 1; denominator <= FINEST_DENOMINATOR; denominator *= 2) {
    if (1 / denominator <= step * (1 + 1e-9)) return denominator;
  }
  return null;
}

/** A count of 1/denominator inches as a mixed number without sign. */
function mixed(parts: number, denominator: number): string {
  const whole = Math.floor(parts / denominator);
  let top = parts - whole * denominator;
  let bottom = denominator;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  if (top === 0) return String(whole);
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}

function inchText(inches: number, denominator: number, feet: boolean, withUnit: boolean): string {
  const parts = Math.round(Math.abs(inches) * denominator);
  const sign = parts > 0 && inches < 0 ? MINUS : '';
  if (feet && parts >= 12 * denominator) {
    const wholeFeet = Math.floor(parts / (12 * denominator));
    return `${sign}${wholeFeet}' ${mixed(parts - wholeFeet * 12 * denominator, denominator)}"`;
  }
  return `${sign}${mixed(parts, denominator)}${withUnit ? ' in' : ''}`;
}

/** Fixed decimals with a true minus sign and no negative zero; negative places round to tens. */
function fixed(value: number, places: number): string {
  const rounded = places < 0 ? Math.round(value / 10 ** -places) * 10 ** -places : value;
  const text = Math.abs(rounded).toFixed(Math.min(Math.max(places, 0), 12));
  return value < 0 && /[1-9]/.test(text) ? `${MINUS}${text}` : text;
}

const withLabel = (text: string, unit: Unit, withUnit: boolean): string => {
  const label = withUnit ? unitLabel(unit) : '';
  if (label === '') return text;
  return label === '°' ? `${text}${label}` : `${text} ${label}`;
};

const placesFor = (step: number): number => Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));

/**
 * A canonical value as text in a unit, to the digits or fraction its resolution supports. What it
 * writes, `parseMeasure` reads back to within half the last printed digit or division.
 * A radius beyond 1000 km is "tangent". Throws on a value that is not a finite number.
 */
export function formatMeasure(value: number, style: MeasureStyle): string {
  if (!Number.isFinite(value)) throw new RangeError('a measure to be shown is not a number');
  const unit = unitOf(style);
  const { dimension, halfWidth = null, withUnit = true } = style;
  const inUnit = fromCanonical(value, unit, dimension);
  if (isReciprocal(unit, dimension) && Math.abs(value) < STRAIGHT) return 'tangent';

  const step =
    halfWidth !== null && halfWidth > 0 ? 2 * widthFromCanonical(halfWidth, value, unit, dimension) : null;
  const form = style.form ?? (unit === 'in' ? 'fraction' : 'decimal');
  if (form === 'fraction' && (unit === 'in' || unit === 'ft')) {
    const inches = unit === 'ft' ? inUnit * 12 : inUnit;
    const stepInches = step === null ? null : unit === 'ft' ? step * 12 : step;
    const denominator = stepInches === null ? TAPE_DENOMINATOR : denominatorFor(stepInches);
    if (denominator !== null) {
      return inchText(inches, denominator, unit === 'ft' || style.feet === true, withUnit);
    }
  }
  // A count is whole, whatever else is written as a bare number.
  const plain = dimension === 'count' ? 0 : PLAIN_PLACES[unit];
  const places = step === null ? plain : placesFor(step);
  return withLabel(fixed(inUnit, places), unit, withUnit);
}

/** How far a rounded uncertainty may be off before another digit is kept, or it is rounded up. */
const ROUNDING_SHARE = 0.04;

/**
 * An uncertainty to the fewest significant digits, one or two, that state it to within 4 %;
 * rounded up where two digits would still understate it by more. JCGM 100:2008, 7.2.6 asks for at
 * most two; its examples, 10,47 to 11 and 28,05 to 28, both come out; the 4 % is ours.
 * `places` are the decimals that go with it (negative: tens, hundreds). `u` must be above zero.
 */
export function roundUncertainty(u: number): { readonly u: number; readonly places: number } {
  if (!(u > 0) || !Number.isFinite(u))
    throw new RangeError('an uncertainty to be rounded must be above zero');
  const onePlace = -Math.floor(Math.log10(u) + 1e-12);
  const one = Math.round(u * 10 ** onePlace) / 10 ** onePlace;
  if (Math.abs(one / u - 1) <= ROUNDING_SHARE) return { u: Number(one.toPrecision(12)), places: onePlace };
  const places = onePlace + 1;
  const units = u * 10 ** places;
  return { u: Number((notUnderstated(units) / 10 ** places).toPrecision(12)), places };
}

function notUnderstated(units: number): number {
  const nearest = Math.round(units);
  return nearest < units * (1 - ROUNDING_SHARE) ? Math.ceil(units) : nearest;
}

export type UncertaintyStyle = {
  readonly unit?: Unit;
  readonly form?: 'fraction' | 'decimal';
  /** Coverage factor; JCGM 100:2008, 6.3.3: 2 gives an interval of about 95 %. */
  readonly k?: number;
};

/** What a tape or rule shows; a computed value known better is written as a decimal. */
const FINEST_ON_A_RULE = 64;

function fractionWithUncertainty(inches: number, expandedInches: number): string | null {
  const denominator = denominatorFor(expandedInches / 2);
  if (denominator === null || denominator > FINEST_ON_A_RULE) return null;
  const kept = notUnderstated(expandedInches * denominator);
  return `${inchText(inches, denominator, false, false)} ± ${mixed(kept, denominator)} in`;
}

/**
 * `56.72 ± 0.07 in (k = 2)`: value and standard uncertainty `u`, both canonical, as value ± k·u in
 * the system's display unit or the one named, the value to the place of the uncertainty
 * (JCGM 100:2008, 7.2.6). With `form: 'fraction'` inches are written as fractions. A `u` of zero
 * or one that is not finite leaves the ± away: it says nothing is known, not that it is exact.
 */
export function formatWithUncertainty(
  value: number,
  u: number,
  dimension: Dimension,
  system: UnitSystem,
  { unit = displayUnit(dimension, system), form = 'decimal', k = 2 }: UncertaintyStyle = {},
): string {
  const inUnit = fromCanonical(value, unit, dimension);
  const expanded = k * widthFromCanonical(u, value, unit, dimension);
  if (!(expanded > 0) || !Number.isFinite(expanded) || !Number.isFinite(inUnit)) {
    return formatMeasure(value, { dimension, unit, form });
  }
  const suffix = ` (k = ${k})`;
  if (form === 'fraction' && unit === 'in') {
    const fraction = fractionWithUncertainty(inUnit, expanded);
    if (fraction !== null) return fraction + suffix;
  }
  const rounded = roundUncertainty(expanded);
  const text = `${fixed(inUnit, rounded.places)} ± ${fixed(rounded.u, rounded.places)}`;
  return withLabel(text, unit, true) + suffix;
}

import { isReciprocal, toCanonical, widthToCanonical } from './convert';
import { fold } from './fold';
import { formatMeasure } from './format';
import type { Measure } from './quantity';
import { ok, refuse, type Result } from './result';
import { unitLabel } from './spelling';
import { DIMENSIONS, type Unit, type UnitSystem } from './unit';
import { readWritten, type Written } from './written';

/**
 * A measure as read. `value` is in the dimension's canonical unit; `unit` is the one entered or
 * assumed; `resolution` is the half-width implied by how it was written, canonical, null where the
 * writing does not tell; `question` asks back about a value that is possible but unusual.
 */
export type ParsedMeasure = {
  readonly value: number;
  readonly unit: Unit;
  readonly resolution: number | null;
  readonly question: string | null;
};

const OTHER: Readonly<Record<UnitSystem, UnitSystem>> = { us: 'metric', metric: 'us' };

/** Twelve digits keep every reading and make 143.5 cm and 1435 mm the same number. */
const tidy = (value: number): number => Number(value.toPrecision(12)) + 0;

const within = (value: number, [low, high]: readonly [number, number]): boolean => {
  const slack = 1e-9 * Math.max(Math.abs(low), Math.abs(high));
  return value >= low - slack && value <= high + slack;
};

const show = (value: number, unit: Unit, quantity: Measure): string =>
  formatMeasure(value, { dimension: quantity.dimension, unit, form: 'decimal' })
    .replace(/(\.\d*?)0+(?!\d)/, '$1')
    .replace(/\.(?!\d)/, '');

function describeRange(range: readonly [number, number], unit: Unit, quantity: Measure): string {
  const [low, high] = range;
  if (isReciprocal(unit, quantity.dimension)) {
    return `${show(Math.max(Math.abs(low), Math.abs(high)), unit, quantity)} or more`;
  }
  return `between ${show(low, unit, quantity)} and ${show(high, unit, quantity)}`;
}

/** "56 1/2 in or 1435.0 mm": an ordinary value of the quantity in both systems' bare units. */
export function exampleOf(quantity: Measure, system: UnitSystem): string {
  const [low, high] = quantity.usual;
  const middle = low + high === 0 ? high / 2 : (low + high) / 2;
  const units = [...new Set([quantity.bareUnit[system], quantity.bareUnit[OTHER[system]]])];
  return units.map((unit) => formatMeasure(middle, { dimension: quantity.dimension, unit })).join(' or ');
}

type Meaning = { readonly unit: Unit; readonly number: number; readonly canonical: number };

const meaning = (number: number, unit: Unit, quantity: Measure): Meaning => ({
  unit,
  number,
  canonical: tidy(toCanonical(number, unit, quantity.dimension)),
});

/** What the writer may have meant by an impossible value; at most one suggestion. */
function suggestion(tried: Meaning, quantity: Measure, unitGiven: boolean): string {
  const possible = (number: number, unit: Unit): boolean =>
    within(meaning(number, unit, quantity).canonical, quantity.possible);
  const { number, unit } = tried;
  if (number < 0 && possible(-number, unit)) return ' Did you put in a minus sign?';
  const others: readonly Unit[] = DIMENSIONS[quantity.dimension].units;
  const meant = others.filter((other) => other !== unit && possible(number, other));
  const [first] = meant;
  if (first !== undefined && meant.length === 1) {
    return unitGiven
      ? ` Did you mean ${number} ${unitLabel(first)}?`
      : ` Did you leave out the unit ${unitLabel(first)}?`;
  }
  for (const shift of [10, 100, 1000]) {
    const shifted = tidy(number / shift);
    if (possible(shifted, unit)) return ` Did you leave out the decimal point (${shifted})?`;
  }
  return ' Did you leave out a digit, the feet, or the unit?';
}

function impossible(tried: Meaning, quantity: Measure, unitGiven: boolean): Result<never> {
  const { dimension } = quantity;
  if (isReciprocal(tried.unit, dimension) && tried.number === 0) {
    return refuse(`${quantity.name}: a radius of zero is not a curve. Enter tangent for straight track.`);
  }
  const entered = `${tried.number} ${unitLabel(tried.unit)}`.trim().replace('-', '−');
  return refuse(
    `${quantity.name} must be ${describeRange(quantity.possible, tried.unit, quantity)}; ${entered} is not.${suggestion(tried, quantity, unitGiven)}`,
  );
}

type Plain = Extract<Written, { form: 'plain' }>;

/** Units a number without one may stand in, the sheet's own first. */
function bareCandidates(written: Plain, quantity: Measure, system: UnitSystem): readonly Unit[] {
  const own = quantity.bareUnit[system];
  const other = quantity.bareUnit[OTHER[system]];
  const length = quantity.dimension === 'crossLength' || quantity.dimension === 'alongTrack';
  if (!length || written.number.kind !== 'fraction') return [...new Set<Unit>([own, other])];
  // Rules divided in halves and eighths are inch rules; a mixed number of feet or metres is also written.
  return [...new Set<Unit>(['in', own, other])].filter((unit) => unit !== 'mm' && unit !== 'cm');
}

function chooseBare(
  entered: string,
  written: Plain,
  number: number,
  quantity: Measure,
  system: UnitSystem,
): Result<Meaning> {
  const units = bareCandidates(written, quantity, system);
  const meanings = units.map((unit) => meaning(number, unit, quantity));
  const possible = meanings.filter(({ canonical }) => within(canonical, quantity.possible));
  const [first] = possible;
  const own = quantity.bareUnit[system];
  if (first === undefined) {
    const tried = meanings.find(({ unit }) => unit === own) ?? meanings[0];
    return impossible(tried ?? meaning(number, own, quantity), quantity, false);
  }
  const ambiguous = written.number.kind === 'fraction' && units[0] === 'in' && possible.length > 1;
  if (ambiguous) {
    const choices = possible.map(({ unit }) => `${entered.trim()} ${unitLabel(unit)}`);
    return refuse(`${quantity.name}: that could be ${choices.join(' or ')}. Enter it with the unit.`);
  }
  return ok(first);
}

function readComma(entered: string, written: Plain, quantity: Measure, system: UnitSystem): Result<null> {
  const decimal = written.number.asDecimalComma;
  if (decimal === null) return ok(null);
  const sign = written.negative ? -1 : 1;
  const fits = (number: number, unit: Unit): boolean =>
    within(meaning(sign * number, unit, quantity).canonical, quantity.possible);
  const own = written.unit ?? quantity.bareUnit[system];
  // Where the grouped number fits the sheet's own unit, only that unit is meant either way.
  const units =
    written.unit !== null || fits(written.number.value, own)
      ? [own]
      : bareCandidates(written, quantity, system);
  const couldBeDecimal = units.some((unit) => fits(decimal, unit));
  if (!couldBeDecimal) return ok(null);
  return refuse(
    `“${entered.trim()}” could be ${decimal} or ${written.number.value}. Enter it without the comma.`,
  );
}

type Settled = { readonly meaning: Meaning; readonly resolution: number | null; readonly unitGiven: boolean };

function settle(entered: string, written: Written, quantity: Measure, system: UnitSystem): Result<Settled> {
  const { dimension } = quantity;
  if (written.form === 'straight') {
    return ok({ meaning: meaning(0, '°curve', quantity), resolution: null, unitGiven: true });
  }
  const sign = written.negative ? -1 : 1;
  const resolve = (found: Meaning, halfWidth: number | null): Settled => ({
    meaning: found,
    resolution:
      halfWidth === null || !Number.isFinite(found.canonical)
        ? null
        : tidy(widthToCanonical(halfWidth, found.number, found.unit, dimension)),
    unitGiven: true,
  });
  if (written.form === 'feetInches') {
    const inches = sign * (written.feet * 12 + written.inches.value);
    const halfWidth = written.inches.kind === 'whole' ? null : written.inches.halfWidth;
    const settled = resolve(meaning(inches, 'in', quantity), halfWidth);
    return ok(
      dimension === 'alongTrack'
        ? { ...settled, meaning: { ...settled.meaning, unit: 'ft', number: inches / 12 } }
        : settled,
    );
  }
  if (written.form === 'degreesMinutes') {
    const unit: Unit = dimension === 'curvature' ? '°curve' : '°';
    return ok(resolve(meaning(sign * written.degrees, unit, quantity), written.halfWidth));
  }
  const comma = readComma(entered, written, quantity, system);
  if (!comma.ok) return comma;
  if (written.unit === 'ton' && /^tons?$/.test(written.spelling) && system === 'metric') {
    return refuse(
      `“${entered.trim()}”: metric or short tons? Enter ${written.number.value} t for metric tonnes, or ${written.number.value} short tons of 2000 lb.`,
    );
  }
  const number = sign * written.number.value;
  const found =
    written.unit === null
      ? chooseBare(entered, written, number, quantity, system)
      : ok(meaning(number, written.unit, quantity));
  if (!found.ok) return found;
  const { unit } = found.value;
  const wholeOnARule = written.number.kind === 'whole' && (unit === 'in' || unit === 'ft');
  const settled = resolve(found.value, wholeOnARule ? null : written.number.halfWidth);
  return ok({ ...settled, unitGiven: written.unit !== null });
}

/**
 * What a person typed for one measure, as a value in the canonical unit of its dimension.
 *
 * A bare number stands in the quantity's bare unit for the system if that is possible, else in the
 * other system's bare unit if only that is possible: 1435 for a gauge on an inch sheet is 1435 mm.
 * A fraction without unit is inches; where it could as well be feet or metres it is refused.
 * Whatever can be read in two ways, or is outside `quantity.possible`, is refused with a message
 * saying what to enter instead; outside `quantity.usual` it is kept, with a question. Never throws.
 */
export function parseMeasure(text: string, quantity: Measure, system: UnitSystem): Result<ParsedMeasure> {
  const written = readWritten(text, quantity.dimension);
  if (!written.ok) return refuse(`${written.message} Example: ${exampleOf(quantity, system)}.`);
  const settled = settle(text, written.value, quantity, system);
  if (!settled.ok) return settled;
  const { meaning: found, resolution, unitGiven } = settled.value;
  if (!within(found.canonical, quantity.possible)) return impossible(found, quantity, unitGiven);
  const question = within(found.canonical, quantity.usual)
    ? null
    : `${quantity.name} is usually ${describeRange(quantity.usual, found.unit, quantity)}. Is ${show(found.canonical, found.unit, quantity)} right?`;
  return ok({ value: found.canonical, unit: found.unit, resolution, question });
}

/** Everybody reduces fractions: 56 12/16 is written 56 3/4, so the denominator says nothing. */
const isFraction = (text: string): boolean => /\d ?\/ ?\d/.test(fold(text));

/**
 * Half-width implied by how a reading was written (canonical), given the unit it was taken in;
 * null where the writing does not tell, as a fraction or a whole number, or is not that of this
 * quantity.
 */
export function writtenHalfWidth(text: string, quantity: Measure, unit: string): number | null {
  if (isFraction(text)) return null;
  for (const system of ['us', 'metric'] as const) {
    const parsed = parseMeasure(text, quantity, system);
    if (parsed.ok && parsed.value.unit === unit) return parsed.value.resolution;
  }
  return null;
}

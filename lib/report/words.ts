import { standing } from '../case/current';
import type { Field } from '../case/kind';
import { KINDS } from '../case/kinds';
import type { CaseRecord, Disturbance, Entity, EntityKind, Reading } from '../case/record';
import { formatMeasure, formatWithUncertainty } from '../readings/format';
import { uncertaintyOf } from '../readings/instrument';
import { OBSERVATION_LABELS, type ObservationState, type Quantity } from '../readings/quantity';
import { findQuantity } from '../readings/quantities';
import { unitLabel } from '../readings/spelling';
import { DIMENSIONS, type Unit, type UnitSystem } from '../readings/unit';

export const NOT_RECORDED = 'was not recorded';

export const DISTURBANCE_WORDS: Readonly<Record<Disturbance, string>> = {
  undisturbed: 'undisturbed',
  disturbed: 'disturbed',
  repaired: 'repaired since',
  notSaid: 'not said',
};

export const systemOf = (record: CaseRecord): UnitSystem =>
  record.fields.units === 'metric' ? 'metric' : 'us';

/** "6 May 2026, 14:19" from a local time of the site, "2026-05-06T14:19". */
export function localTime(text: string): string {
  const parts = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}:\d{2}))?/.exec(text);
  if (parts === null) return text;
  const [, year, month, day, clock] = parts;
  const date = `${Number(day)} ${MONTHS[Number(month) - 1] ?? month} ${year}`;
  return clock === undefined ? date : `${date}, ${clock}`;
}

const MONTHS = 'January February March April May June July August September October November December'.split(
  ' ',
);

/** Words that are not to be parted at the end of a line. */
export const together = (text: string): string => text.replaceAll(' ', '\u00a0');

/** "2026-05-06 14:19", for tables. */
export const shortTime = (text: string): string => together(text.slice(0, 16).replace('T', ' '));

/** A moment of the log or of the clock, "2026-05-06 14:19:22 UTC". */
export const utc = (text: string): string => `${text.slice(0, 19).replace('T', ' ')} UTC`;

export const nameOfPerson = (record: CaseRecord, id: string | null): string | null => {
  const person = id === null ? undefined : record.entities.person.find((each) => each.id === id);
  return person === undefined ? null : String(person.fields.name ?? '');
};

/** A value of a record as text; '' when it is empty. */
export function fieldText(record: CaseRecord, field: Field, value: Entity['fields'][string]): string {
  if (value === null || value === undefined || value === '') return '';
  switch (field.type) {
    case 'flag':
      return value === true ? 'Yes' : 'No';
    case 'choice':
      return field.choices.find(({ id }) => id === value)?.label ?? String(value);
    case 'date':
    case 'dateTime':
      return localTime(String(value));
    case 'ref': {
      const kind = field.to as EntityKind;
      const entity = record.entities[kind].find(({ id }) => id === value);
      return entity === undefined ? '' : KINDS[kind].describe(entity.fields);
    }
    default:
      return String(value);
  }
}

/** A field of a record of a kind as text; '' when it is empty. */
export function fieldOf(record: CaseRecord, kind: EntityKind, entity: Entity, id: string): string {
  const field = KINDS[kind].fields.find((each) => each.id === id);
  return field === undefined ? '' : fieldText(record, field, entity.fields[id] ?? null);
}

/** A value this short is not parted at the end of a line. */
const SHORT = 14;

const UNITS = new Set<string>(Object.values(DIMENSIONS).flatMap(({ units }) => units));
const isUnit = (text: string): text is Unit => UNITS.has(text);

function stateText(quantity: Quantity | undefined, reading: Reading): string {
  const state = reading.state ?? '';
  if (quantity?.kind === 'choice') return quantity.choices.find(({ id }) => id === state)?.label ?? state;
  if (quantity?.kind === 'goNoGo') return state === 'pass' ? 'Pass' : 'Fail';
  if (quantity?.kind !== 'observation') return state;
  const said = OBSERVATION_LABELS[state as ObservationState] ?? state;
  return reading.examined === null ? said : `${said} (${Math.round(reading.examined * 100)} % examined)`;
}

/** What was read, as it was entered, with the unit it was taken in. */
export function enteredText(reading: Reading): string {
  if (reading.withdrawn) return '(withdrawal)';
  if (reading.state !== null) return stateText(findQuantity(reading.quantity), reading);
  const unit = isUnit(reading.unit) ? unitLabel(reading.unit) : reading.unit;
  const saysUnit = unit === '' || /[a-z°'"′″%#]/i.test(reading.entered);
  const text = saysUnit
    ? reading.entered.trim()
    : `${reading.entered.trim()}${unit === '°' ? '' : ' '}${unit}`;
  return text.length <= SHORT ? together(text) : text;
}

/** A reading's value with U (k = 2) left to the heading, and what its uncertainty rests on. */
export function valueText(
  reading: Reading,
  instrument: Entity | undefined,
  system: UnitSystem,
): { readonly text: string; readonly basis: string } {
  const quantity = findQuantity(reading.quantity);
  if (reading.value === null || quantity === undefined) return { text: '', basis: '' };
  if (quantity.kind === 'count') return { text: String(reading.value), basis: 'counted' };
  if (quantity.kind !== 'measure') return { text: '', basis: '' };
  const { u, basis } = uncertaintyOf(reading, quantity, instrument);
  const text = formatWithUncertainty(reading.value, u, quantity.dimension, system, {
    unit: quantity.bareUnit[system],
  });
  return { text: together(text.replace(' (k = 2)', '')), basis };
}

/** "Flange thickness, left". */
export function quantityText(quantityId: string, slot: string): string {
  const quantity = findQuantity(quantityId);
  if (quantity === undefined) return quantityId;
  if (slot === '') return quantity.name;
  const label =
    quantity.slots.find(({ id }) => id === slot)?.label ?? (quantity.openSlots ? `${slot}°` : slot);
  return `${quantity.name}, ${label.toLowerCase()}`;
}

/** A canonical value in the unit the quantity is read in, as a ruler or a sheet would show it. */
export function plainValue(quantityId: string, value: number, system: UnitSystem): string {
  const quantity = findQuantity(quantityId);
  if (quantity?.kind !== 'measure') return String(value);
  return formatMeasure(value, { dimension: quantity.dimension, system, bareUnit: quantity.bareUnit });
}

/** Role words of a person: "Investigator, Quillfern Valley Railway". */
export function roleOf(record: CaseRecord, person: Entity): string {
  const role = fieldOf(record, 'person', person, 'role');
  const organisation = String(person.fields.organisation ?? '');
  return [role, organisation].filter(Boolean).join(', ');
}

/** "one car", "3 cars". */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count === 1 ? 'one' : count} ${count === 1 ? one : many}`;

export const stationsOf = (record: CaseRecord): readonly Entity[] => standing(record, 'station');

import type { Disturbance, Reading, Sampling } from '~/lib/case/record';
import { OBSERVATION_LABELS, type ObservationState, type Quantity } from '~/lib/readings/quantity';
import { findQuantity } from '~/lib/readings/quantities';
import { unitLabel } from '~/lib/readings/spelling';
import { DIMENSIONS, type Unit } from '~/lib/readings/unit';

export const DISTURBANCE_LABELS: Readonly<Record<Disturbance, string>> = {
  undisturbed: 'Undisturbed',
  disturbed: 'Disturbed by the derailment',
  repaired: 'Repaired since',
  notSaid: 'Not said',
};

export const SAMPLING_LABELS: Readonly<Record<Sampling, string>> = {
  every: 'Every one was read',
  worst: 'The worst one found',
  picked: 'Picked out',
  notSaid: 'Not said',
};

const UNITS = new Set<string>(Object.values(DIMENSIONS).flatMap(({ units }) => units));
const isUnit = (text: string): text is Unit => UNITS.has(text);

const stateText = (quantity: Quantity | undefined, state: string): string => {
  if (quantity?.kind === 'choice') return quantity.choices.find(({ id }) => id === state)?.label ?? state;
  if (quantity?.kind === 'goNoGo') return state === 'pass' ? 'Pass' : 'Fail';
  if (quantity?.kind === 'observation') return OBSERVATION_LABELS[state as ObservationState] ?? state;
  return state;
};

/** What was read, as entered, with the unit it was taken in. */
export function readingText(reading: Reading): string {
  if (reading.withdrawn) return 'withdrawn';
  if (reading.state !== null) {
    const said = stateText(findQuantity(reading.quantity), reading.state);
    if (reading.examined === null) return said;
    return `${said} (${Math.round(reading.examined * 100)} % could be examined)`;
  }
  const unit = isUnit(reading.unit) ? unitLabel(reading.unit) : reading.unit;
  const saysUnit = unit === '' || /[a-z°'"′″%#]/i.test(reading.entered);
  const entered = reading.entered.trim();
  if (saysUnit) return entered;
  return unit === '°' ? `${entered}°` : `${entered} ${unit}`;
}

/** "Flange thickness, left". */
export function quantityText(quantityId: string, slot: string): string {
  const quantity = findQuantity(quantityId);
  if (!quantity) return quantityId;
  if (slot === '') return quantity.name;
  const label =
    quantity.slots.find(({ id }) => id === slot)?.label ?? (quantity.openSlots ? `${slot}°` : slot);
  return `${quantity.name}, ${label.toLowerCase()}`;
}

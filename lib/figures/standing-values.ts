import { currentReadings } from '../case/current';
import type { CaseRecord, Disturbance, Reading } from '../case/record';

/** What a quantity came to at one place for drawing: the mean of what was read. */
export type Shown = {
  readonly value: number;
  /** False: only readings taken where the place was disturbed, repaired or not said. */
  readonly sound: boolean;
};

const saysOtherwise = (state: unknown): boolean => state === 'disturbed' || state === 'repaired';

/** Sound when the reading or its subject says undisturbed and neither says otherwise. */
const isSound = (reading: Disturbance, subject: unknown): boolean =>
  !saysOtherwise(reading) &&
  !saysOtherwise(subject) &&
  (reading === 'undisturbed' || subject === 'undisturbed');

const meanOf = (readings: readonly Reading[]): number =>
  readings.reduce((sum, reading) => sum + reading.value!, 0) / readings.length;

/**
 * Looks up numeric readings that stand, by subject, quantity and slot. Sound readings are preferred;
 * where there are none the others are shown, marked as such, so that nothing read is hidden.
 * Values in the canonical unit of the quantity's dimension.
 */
export function standingValues(
  record: CaseRecord,
): (subjectId: string, quantity: string, slot?: string) => Shown | null {
  const states = new Map<string, unknown>();
  for (const kind of Object.values(record.entities))
    for (const entity of kind) states.set(entity.id, entity.fields.disturbance);
  const cells = new Map<string, { sound: Reading[]; other: Reading[] }>();
  for (const reading of currentReadings(record)) {
    if (reading.value === null || !Number.isFinite(reading.value)) continue;
    const key = `${reading.subject.id}|${reading.quantity}|${reading.slot}`;
    const cell = cells.get(key) ?? { sound: [], other: [] };
    cells.set(key, cell);
    (isSound(reading.disturbance, states.get(reading.subject.id)) ? cell.sound : cell.other).push(reading);
  }
  return (subjectId, quantity, slot = '') => {
    const cell = cells.get(`${subjectId}|${quantity}|${slot}`);
    if (cell === undefined) return null;
    const sound = cell.sound.length > 0;
    return { value: meanOf(sound ? cell.sound : cell.other), sound };
  };
}

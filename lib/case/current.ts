import type { CaseRecord, Entity, EntityKind, Reading, SubjectRef } from './record';

/** The readings that stand: not corrected by a later row, not withdrawn. Oldest first. */
export function currentReadings(record: CaseRecord): readonly Reading[] {
  const replaced = new Set<string>();
  for (const reading of record.readings) if (reading.replaces !== null) replaced.add(reading.replaces);
  return record.readings.filter(
    ({ withdrawn, id }) => !withdrawn && (replaced.size === 0 || !replaced.has(id)),
  );
}

/** The records of a kind that were not removed, in their order. */
export function standing(record: CaseRecord, kind: EntityKind): readonly Entity[] {
  return record.entities[kind].filter((entity) => entity.removed === null);
}

export const sameSubject = (a: SubjectRef, b: SubjectRef): boolean => a.kind === b.kind && a.id === b.id;

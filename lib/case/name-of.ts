import { KINDS } from './kinds';
import type { CaseRecord, Entity, EntityKind, SubjectRef } from './record';

const entityOf = (record: CaseRecord, kind: EntityKind, id: string): Entity | undefined =>
  record.entities[kind].find((entity) => entity.id === id);

/**
 * How a record of the case is called where it stands alone, with what it belongs to:
 * "Axle 1, 23 · XYZ 4512". A record that is not in the case is "(no longer there)".
 */
export function nameOf(
  record: CaseRecord,
  { kind, id }: SubjectRef | { kind: EntityKind; id: string },
): string {
  if (kind === 'case') return 'The case';
  const entity = entityOf(record, kind, id);
  return entity ? nameOfEntity(record, kind, entity) : '(no longer there)';
}

/** As `nameOf`, for a record at hand. */
export function nameOfEntity(record: CaseRecord, kind: EntityKind, entity: Entity): string {
  const { fields } = entity;
  const own = KINDS[kind].describe(fields);
  const parent = kind === 'wheelDefect' ? 'wheelset' : 'vehicle';
  const parentId = fields[parent];
  if (kind === 'statement' || typeof parentId !== 'string') return own;
  return `${own}, ${nameOf(record, { kind: parent, id: parentId })}`;
}

import { standing } from '~/lib/case/current';
import type { Kind } from '~/lib/case/kind';
import { nameOfEntity } from '~/lib/case/name-of';
import { ENTITY_KINDS, type CaseRecord } from '~/lib/case/record';

export type Option = { readonly id: string; readonly label: string };

/** Choices of the fields that refer to other records: kind of record → its records that stand. */
export function refOptions(record: CaseRecord, kind: Kind): Readonly<Record<string, readonly Option[]>> {
  const wanted = new Set(kind.fields.flatMap((field) => (field.type === 'ref' ? [field.to] : [])));
  return Object.fromEntries(
    ENTITY_KINDS.filter((each) => wanted.has(each)).map((each) => [
      each,
      standing(record, each).map((entity) => ({ id: entity.id, label: nameOfEntity(record, each, entity) })),
    ]),
  );
}

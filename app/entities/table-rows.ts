import type { LoadedCase } from '~/app/case.server';
import { localTime } from '~/app/times';
import { KINDS } from '~/lib/case/kinds';
import { nameOf, nameOfEntity } from '~/lib/case/name-of';
import type { CaseRecord, Entity, EntityKind } from '~/lib/case/record';
import type { Field } from '~/lib/case/kind';
import { isEntityKind } from './save.server';

/** One field of a record in words; '' when it was not said. */
export function fieldText(
  record: CaseRecord,
  field: Field,
  value: Entity['fields'][string] | undefined,
): string {
  if (value === null || value === undefined || value === '') return '';
  switch (field.type) {
    case 'choice':
      return field.choices.find(({ id }) => id === value)?.label ?? String(value);
    case 'flag':
      return value === true ? 'Yes' : '';
    case 'dateTime':
      return localTime(String(value));
    case 'ref':
      return isEntityKind(field.to) ? nameOf(record, { kind: field.to, id: String(value) }) : String(value);
    default:
      return String(value);
  }
}

export type Row = {
  readonly id: string;
  readonly name: string;
  readonly href: string;
  readonly cells: Readonly<Record<string, string>>;
  readonly removed: { readonly reason: string } | null;
};

/** Records as rows of a table that lead to their form and back to the screen; removed ones last. */
export function tableRows(
  { record, caseId }: LoadedCase,
  kind: EntityKind,
  columns: readonly { readonly id: string }[],
  {
    back,
    entities = record.entities[kind],
  }: { readonly back: string; readonly entities?: readonly Entity[] },
): readonly Row[] {
  const fields = KINDS[kind].fields.filter(({ id }) => columns.some((column) => column.id === id));
  const returning = encodeURIComponent(`/cases/${caseId}/${back}`);
  return [...entities]
    .sort((a, b) => Number(a.removed !== null) - Number(b.removed !== null))
    .map((entity) => ({
      id: entity.id,
      name: nameOfEntity(record, kind, entity) || KINDS[kind].name,
      href: `/cases/${caseId}/records/${kind}/${entity.id}?back=${returning}`,
      cells: Object.fromEntries(
        fields.map((field) => [field.id, fieldText(record, field, entity.fields[field.id])]),
      ),
      removed: entity.removed && { reason: entity.removed.reason },
    }));
}

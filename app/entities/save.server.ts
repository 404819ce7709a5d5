import { parseFields } from '~/lib/case/fields';
import type { Kind } from '~/lib/case/kind';
import { KINDS } from '~/lib/case/kinds';
import { ENTITY_KINDS, type CaseRecord, type Entity, type EntityKind } from '~/lib/case/record';
import { sentValues, type FormValues } from './form-values';

export type SentRecord =
  | { readonly ok: true; readonly fields: Entity['fields'] }
  | { readonly ok: false; readonly values: FormValues; readonly errors: Readonly<Record<string, string>> };

const ENTITY_KIND_SET = new Set<string>(ENTITY_KINDS);

export const isEntityKind = (text: unknown): text is EntityKind =>
  typeof text === 'string' && ENTITY_KIND_SET.has(text);

/** Fields that refer to a record which is not in the case, with what to do instead. */
function strayRefs(record: CaseRecord, kind: Kind, fields: Entity['fields']): Record<string, string> {
  const stray: Record<string, string> = {};
  for (const field of kind.fields) {
    const id = fields[field.id];
    if (field.type !== 'ref' || typeof id !== 'string' || !isEntityKind(field.to)) continue;
    if (record.entities[field.to].some((entity) => entity.id === id)) continue;
    stray[field.id] = `Choose one of the ${KINDS[field.to].plural.toLowerCase()} in the list.`;
  }
  return stray;
}

/** A sent form as the fields of its kind, or what to enter instead beside all that was entered. */
export function readRecord(form: FormData, kind: Kind, record: CaseRecord | null): SentRecord {
  const parsed = parseFields(kind, Object.fromEntries(form.entries()));
  if (!parsed.ok) return { ok: false, values: sentValues(kind, form), errors: parsed.errors };
  const errors = record ? strayRefs(record, kind, parsed.fields) : {};
  if (Object.keys(errors).length > 0) return { ok: false, values: sentValues(kind, form), errors };
  return { ok: true, fields: parsed.fields };
}

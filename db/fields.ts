import type { Kind } from '~/lib/case/kind';
import type { Entity } from '~/lib/case/record';

export type Fields = Entity['fields'];
export type FieldValue = Fields[string];

/** The fields of the kind, missing ones as null. A field the kind does not have is a bug of the caller. */
export function completeFields(kind: Kind, given: Fields): Fields {
  const known = new Set(kind.fields.map((field) => field.id));
  const unknown = Object.keys(given).filter((id) => !known.has(id));
  if (unknown.length > 0) throw new Error(`${kind.name} has no field ${unknown.join(', ')}.`);
  return Object.fromEntries(kind.fields.map((field) => [field.id, given[field.id] ?? null]));
}

/** The columns of a row that are fields of the kind. */
export const fieldsOf = (kind: Kind, row: Readonly<Record<string, unknown>>): Fields =>
  Object.fromEntries(kind.fields.map((field) => [field.id, (row[field.id] ?? null) as FieldValue]));

/** What `given` changes in `now`, both sides; null when it changes nothing. */
export function difference(
  kind: Kind,
  now: Fields,
  given: Fields,
): { readonly before: Fields; readonly after: Fields } | null {
  const next = completeFields(kind, { ...now, ...given });
  const changed = kind.fields.map((field) => field.id).filter((id) => now[id] !== next[id]);
  if (changed.length === 0) return null;
  const only = (fields: Fields): Fields => Object.fromEntries(changed.map((id) => [id, fields[id] ?? null]));
  return { before: only(now), after: only(next) };
}

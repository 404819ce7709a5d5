import type { Field, Kind } from '~/lib/case/kind';
import type { Entity } from '~/lib/case/record';

/** What stands in the boxes of a form, as text. A ticked flag is 'on'. */
export type FormValues = Readonly<Record<string, string>>;

function text(field: Field, value: Entity['fields'][string] | undefined): string {
  if (field.type === 'flag') return value === true ? 'on' : '';
  return value === null || value === undefined ? '' : String(value);
}

/** A record's fields as they stand in its form. */
export const valuesOf = (kind: Kind, fields: Entity['fields']): FormValues =>
  Object.fromEntries(kind.fields.map((field) => [field.id, text(field, fields[field.id])]));

/** What was sent, to be shown again when something in it was refused. */
export const sentValues = (kind: Kind, form: FormData): FormValues =>
  Object.fromEntries(
    kind.fields.map(({ id }) => {
      const value = form.get(id);
      return [id, typeof value === 'string' ? value : ''];
    }),
  );

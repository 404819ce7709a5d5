import type { Field } from './kind';

/** The label of what was chosen in a field; '' when nothing was, or the field has no such choice. */
export function choiceLabel(fields: readonly Field[], fieldId: string, chosen: unknown): string {
  const field = fields.find(({ id }) => id === fieldId);
  return field?.type === 'choice' ? (field.choices.find(({ id }) => id === chosen)?.label ?? '') : '';
}

import type { CaseRecord, SubjectRef } from '~/lib/case/record';
import { SUBJECT_KINDS, type SubjectKind } from '~/lib/readings/quantity';

/** The kinds of thing a photo can be said to show. */
export const SHOWN_KINDS = SUBJECT_KINDS.filter(
  (kind): kind is Exclude<SubjectKind, 'case'> => kind !== 'case',
);
type ShownKind = (typeof SHOWN_KINDS)[number];

const isShownKind = (text: string): text is ShownKind => (SHOWN_KINDS as readonly string[]).includes(text);

/** A subject as it stands in a form or an address: "mark:01J…"; '' for none. */
export const subjectKey = (subject: SubjectRef | null): string =>
  subject === null ? '' : `${subject.kind}:${subject.id}`;

/** The thing of the case that such a text names; null when there is none. */
export function subjectAt(record: CaseRecord, key: string): SubjectRef | null {
  const [kind = '', id = ''] = key.split(':');
  if (!isShownKind(kind)) return null;
  return record.entities[kind].some((entity) => entity.id === id) ? { kind, id } : null;
}

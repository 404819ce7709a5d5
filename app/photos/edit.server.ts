import type { LoadedCase } from '~/app/case.server';
import { isLocalTime } from '~/app/times';
import type { PhotoChange } from '~/db/photos';
import { standing } from '~/lib/case/current';
import { KINDS } from '~/lib/case/kinds';
import { nameOfEntity } from '~/lib/case/name-of';
import type { CaseRecord, Photo } from '~/lib/case/record';
import { SHOWN_KINDS, subjectAt, subjectKey } from './subject';

export const CAPTION_LENGTH = 1000;

type PhotoField = 'caption' | 'subject' | 'person' | 'takenAt';
export type PhotoForm = Readonly<Record<PhotoField, string>>;
export type PhotoErrors = Partial<Record<PhotoField, string>>;

/** What is said about a photo, as it stands in its form. */
export const photoForm = (photo: Photo): PhotoForm => ({
  caption: photo.caption,
  subject: subjectKey(photo.subject),
  person: photo.personId ?? '',
  takenAt: photo.takenAt?.slice(0, 16) ?? '',
});

export const sentPhotoForm = (form: FormData): PhotoForm => {
  const text = (name: string) => String(form.get(name) ?? '').trim();
  return {
    caption: text('caption'),
    subject: text('subject'),
    person: text('person'),
    takenAt: text('takenAt'),
  };
};

export type ReadPhotoForm =
  { readonly ok: true; readonly change: PhotoChange } | { readonly ok: false; readonly errors: PhotoErrors };

/** A sent form as the change it asks for, or what to enter instead. */
export function readPhotoForm(sent: PhotoForm, record: CaseRecord, photo: Photo): ReadPhotoForm {
  const errors: PhotoErrors = {};
  if (sent.caption.length > CAPTION_LENGTH) {
    errors.caption = `Enter at most ${CAPTION_LENGTH} characters; these are ${sent.caption.length}.`;
  }
  const subject = subjectAt(record, sent.subject);
  if (sent.subject !== '' && subject === null) errors.subject = 'Choose one of the things in the list.';
  const person = standing(record, 'person').find(({ id }) => id === sent.person);
  const unknownPerson = sent.person !== '' && !person && sent.person !== photo.personId;
  if (unknownPerson) errors.person = 'Choose one of the people in the list.';
  if (sent.takenAt !== '' && !isLocalTime(sent.takenAt)) {
    errors.takenAt = 'Enter date and time such as 2026-03-14T09:30, or leave it empty.';
  }
  if (Object.keys(errors).length > 0) return { ok: false, errors };
  // Untouched, the time keeps the seconds the camera gave.
  const takenAt = sent.takenAt === photoForm(photo).takenAt ? photo.takenAt : sent.takenAt || null;
  return { ok: true, change: { caption: sent.caption, subject, personId: sent.person || null, takenAt } };
}

export type PhotoChoices = {
  readonly subjects: readonly {
    readonly kind: string;
    readonly options: readonly { readonly key: string; readonly label: string }[];
  }[];
  readonly people: readonly { readonly id: string; readonly label: string }[];
};

/** What the photo can be said to show, and who can have taken it; what it shows now is never left out. */
export const photoChoices = ({ record }: LoadedCase, photo: Photo): PhotoChoices => ({
  subjects: SHOWN_KINDS.flatMap((kind) => {
    const options = record.entities[kind]
      .filter(({ id, removed }) => removed === null || id === photo.subject?.id)
      .map((entity) => ({
        key: subjectKey({ kind, id: entity.id }),
        label: nameOfEntity(record, kind, entity) + (entity.removed === null ? '' : ' (removed)'),
      }));
    return options.length === 0 ? [] : [{ kind: KINDS[kind].plural, options }];
  }),
  people: standing(record, 'person').map(({ id, fields }) => ({ id, label: String(fields.name) })),
});

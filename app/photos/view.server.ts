import type { LoadedCase } from '~/app/case.server';
import { placeOf } from '~/app/subjects/place';
import { localTime } from '~/app/times';
import { nameOf } from '~/lib/case/name-of';
import type { Photo, SubjectRef } from '~/lib/case/record';
import { sizeText } from './size-text';

export type PhotoView = {
  readonly id: string;
  readonly file: string;
  readonly thumb: string;
  readonly caption: string;
  /** What a reader who cannot see it is told. */
  readonly alt: string;
  readonly shows: { readonly text: string; readonly href: string } | null;
  readonly takenAt: string;
  readonly takenBy: string;
  readonly position: string;
  readonly fileName: string;
  readonly size: string;
  readonly pixels: string;
  readonly sha256: string;
  readonly removed: string | null;
};

/** Five decimals are about a metre, which is as good as a phone knows. */
function positionText({ latitude, longitude }: Photo): string {
  if (latitude === null || longitude === null) return '';
  const part = (value: number, plus: string, minus: string) =>
    `${Math.abs(value).toFixed(5)}° ${value < 0 ? minus : plus}`;
  return `${part(latitude, 'N', 'S')}, ${part(longitude, 'E', 'W')}`;
}

export function photoView({ record, caseId }: LoadedCase, photo: Photo): PhotoView {
  const base = `/cases/${caseId}/photos/${photo.id}`;
  const shows = photo.subject && nameOf(record, photo.subject);
  const by = record.entities.person.find(({ id }) => id === photo.personId);
  return {
    id: photo.id,
    file: `${base}/file`,
    thumb: `${base}/thumb`,
    caption: photo.caption,
    alt:
      photo.caption ||
      (shows ? `Photo of ${shows}, no caption yet` : `Photo ${photo.fileName}, no caption yet`),
    shows: photo.subject && { text: shows ?? '', href: placeOf(caseId, photo.subject) },
    takenAt: photo.takenAt ? localTime(photo.takenAt) : '',
    takenBy: by ? String(by.fields.name) : '',
    position: positionText(photo),
    fileName: photo.fileName,
    size: sizeText(photo.bytes),
    pixels: `${photo.width} × ${photo.height}`,
    sha256: photo.sha256,
    removed: photo.removed && photo.removed.reason,
  };
}

/** All photos of the case, those that were removed at the end. */
export const photosInOrder = ({ record }: LoadedCase): readonly Photo[] =>
  [...record.photos].sort((a, b) => Number(a.removed !== null) - Number(b.removed !== null));

/** The photos that show one thing. */
export const photosOf = ({ record }: LoadedCase, subject: SubjectRef): readonly Photo[] =>
  record.photos.filter(
    (photo) =>
      photo.removed === null && photo.subject?.kind === subject.kind && photo.subject.id === subject.id,
  );

import { describe, expect, it } from 'vitest';
import { photoForm, readPhotoForm } from '~/app/photos/edit.server';
import { subjectAt, subjectKey } from '~/app/photos/subject';
import type { Photo } from '~/lib/case/record';
import { buildRecord } from '~/tests/findings/record-builder';

const record = buildRecord({ mark: [{ id: 'mark-1' }], person: [{ id: 'person-1' }] });

const photo: Photo = {
  id: 'photo-1',
  order: 0,
  sha256: 'a'.repeat(64),
  fileName: 'a.jpg',
  mime: 'image/jpeg',
  bytes: 1,
  width: 1,
  height: 1,
  takenAt: '2026-05-06T15:24:33',
  latitude: null,
  longitude: null,
  caption: 'A mark',
  subject: { kind: 'mark', id: 'mark-1' },
  personId: 'person-gone',
  removed: null,
  createdAt: '2026-05-06T15:24:33Z',
};

describe('what is said about a photo', () => {
  it('is unchanged when the form comes back as it was shown', () => {
    expect(readPhotoForm(photoForm(photo), record, photo)).toEqual({
      ok: true,
      change: {
        caption: photo.caption,
        subject: photo.subject,
        personId: photo.personId,
        takenAt: photo.takenAt,
      },
    });
  });

  it('can be emptied', () => {
    const empty = { caption: '', subject: '', person: '', takenAt: '' };
    expect(readPhotoForm(empty, record, photo)).toEqual({
      ok: true,
      change: { caption: '', subject: null, personId: null, takenAt: null },
    });
  });

  it('says of each box what to enter instead', () => {
    const sent = { caption: 'x'.repeat(1001), subject: 'mark:gone', person: 'nobody', takenAt: 'noon' };
    const read = readPhotoForm(sent, record, photo);
    expect(read.ok).toBe(false);
    expect(!read.ok && Object.keys(read.errors).sort()).toEqual(['caption', 'person', 'subject', 'takenAt']);
  });
});

describe('what a photo shows', () => {
  it('is read back from its key', () => {
    const mark = { kind: 'mark', id: 'mark-1' } as const;
    expect(subjectAt(record, subjectKey(mark))).toEqual(mark);
    expect(subjectKey(null)).toBe('');
  });

  it.each(['', 'mark', 'mark:mark-2', 'person:person-1', 'case:case-1', 'toString:x', '__proto__:x'])(
    'is nothing for “%s”',
    (key) => expect(subjectAt(record, key)).toBeNull(),
  );
});

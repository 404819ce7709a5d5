import { describe, expect, it } from 'vitest';
import { caseHead, listCases, readCase } from '~/db/cases';
import { addEntity } from '~/db/entities';
import { readLog, verifyLog } from '~/db/log';
import { addPhoto, removePhoto, restorePhoto, updatePhoto } from '~/db/photos';
import { ACTOR, openWithCase } from './opened';

const PHOTO = {
  sha256: 'c'.repeat(64),
  fileName: 'pod.jpg',
  mime: 'image/jpeg',
  bytes: 1234,
  width: 40,
  height: 30,
  takenAt: '2031-04-09T14:35:07',
  latitude: 41.5,
  longitude: -90.25,
  caption: '',
  subject: null,
  personId: null,
};

describe('photos', () => {
  it('keeps everything said of a photo, in order', () => {
    const { db, caseId } = openWithCase();
    const first = addPhoto(db, caseId, PHOTO, ACTOR);
    const second = addPhoto(db, caseId, { ...PHOTO, latitude: null, longitude: null, takenAt: null }, ACTOR);
    const photos = readCase(db, caseId)?.photos ?? [];
    expect(photos.map((photo) => [photo.id, photo.order])).toEqual([
      [first, 0],
      [second, 1],
    ]);
    expect(photos[0]).toEqual({
      ...PHOTO,
      id: first,
      order: 0,
      removed: null,
      createdAt: expect.any(String),
    });
  });

  it('changes caption and what it shows, not the file', () => {
    const { db, caseId } = openWithCase();
    const id = addPhoto(db, caseId, PHOTO, ACTOR);
    const mark = addEntity(db, caseId, 'mark', { type: 'flangeOnHead', rail: 'left' }, ACTOR);
    const subject = { kind: 'mark', id: mark } as const;
    updatePhoto(db, caseId, id, { caption: 'First mark', subject }, ACTOR);
    expect(readCase(db, caseId)?.photos[0]).toMatchObject({ ...PHOTO, caption: 'First mark', subject });
    const head = caseHead(db, caseId);
    updatePhoto(db, caseId, id, { caption: 'First mark', subject: { id: mark, kind: 'mark' } }, ACTOR);
    expect(caseHead(db, caseId)).toBe(head);
    expect(() => updatePhoto(db, caseId, id, { subject: { kind: 'mark', id: 'none' } }, ACTOR)).toThrow(
      'not in this case',
    );
  });

  it('removes with a reason and restores', () => {
    const { db, caseId } = openWithCase();
    const id = addPhoto(db, caseId, PHOTO, ACTOR);
    removePhoto(db, caseId, id, 'blurred', ACTOR);
    expect(readCase(db, caseId)?.photos[0]?.removed).toMatchObject({ reason: 'blurred' });
    expect(listCases(db)[0]?.photos).toBe(0);
    restorePhoto(db, caseId, id, ACTOR);
    expect(listCases(db)[0]?.photos).toBe(1);
    expect(readLog(db, caseId, { limit: 2 }).map((entry) => entry.action)).toEqual(['restore', 'remove']);
    expect(verifyLog(db, caseId).ok).toBe(true);
  });
});

import { and, asc, eq, sql } from 'drizzle-orm';
import type { Photo } from '~/lib/case/record';
import { canonicalJson } from '~/lib/custody/canonical';
import type { Actor } from './actor';
import { write, type Tx } from './change';
import { newId } from './id';
import { nextOrder } from './next-order';
import type { Db } from './open';
import { setRemoved, type Removable } from './removal';
import { photo } from './schema';
import { requireSubject } from './subject';

/** What is known of a photo whose file is already in the file store. */
export type NewPhoto = Omit<Photo, 'id' | 'order' | 'removed' | 'createdAt'>;

/** What may be changed later: the file and what it says of itself stay as they came. */
export type PhotoChange = Partial<Pick<Photo, 'caption' | 'subject' | 'personId' | 'takenAt'>>;

/** Adds a photo to the case. Call it once the file store holds the file. */
export const addPhoto = (db: Db, caseId: string, meta: NewPhoto, actor: Actor): string =>
  write(db, caseId, actor, (tx, at) => {
    if (meta.subject !== null) requireSubject(tx, caseId, meta.subject);
    const added: Photo = {
      id: newId(),
      order: nextOrder(tx, caseId, photo),
      sha256: meta.sha256,
      fileName: meta.fileName,
      mime: meta.mime,
      bytes: meta.bytes,
      width: meta.width,
      height: meta.height,
      takenAt: meta.takenAt,
      latitude: meta.latitude,
      longitude: meta.longitude,
      caption: meta.caption,
      subject: meta.subject,
      personId: meta.personId,
      removed: null,
      createdAt: at,
    };
    const { subject, order, removed: _, ...columns } = added;
    tx.insert(photo)
      .values({
        ...columns,
        caseId,
        sortOrder: order,
        subjectKind: subject?.kind ?? null,
        subjectId: subject?.id ?? null,
      })
      .run();
    return {
      result: added.id,
      change: { action: 'add', subject: { kind: 'photo', id: added.id }, before: null, after: added },
    };
  });

/** Changes what is said about the photo; what is not given stays as it is. */
export function updatePhoto(db: Db, caseId: string, photoId: string, given: PhotoChange, actor: Actor): void {
  write(db, caseId, actor, (tx) => {
    const now = photoOf(tx, caseId, photoId);
    const before = {
      caption: now.caption,
      subject: now.subject,
      personId: now.personId,
      takenAt: now.takenAt,
    };
    const after = { ...before, ...given };
    if (canonicalJson(before) === canonicalJson(after)) return { result: undefined, change: null };
    if (after.subject !== null) requireSubject(tx, caseId, after.subject);
    tx.update(photo)
      .set({
        caption: after.caption,
        subjectKind: after.subject?.kind ?? null,
        subjectId: after.subject?.id ?? null,
        personId: after.personId,
        takenAt: after.takenAt,
      })
      .where(eq(photo.id, photoId))
      .run();
    return {
      result: undefined,
      change: { action: 'update', subject: { kind: 'photo', id: photoId }, before, after },
    };
  });
}

const removable = (id: string): Removable => ({ table: photo, kind: 'photo', id, name: 'photo' });

/** Takes the photo out of the case, with the reason; the file stays and the photo can be restored. */
export function removePhoto(db: Db, caseId: string, photoId: string, reason: string, actor: Actor): void {
  setRemoved(db, caseId, removable(photoId), reason, actor);
}

export function restorePhoto(db: Db, caseId: string, photoId: string, actor: Actor): void {
  setRemoved(db, caseId, removable(photoId), null, actor);
}

function photoOf(tx: Tx, caseId: string, photoId: string): Photo {
  const row = tx
    .select()
    .from(photo)
    .where(and(eq(photo.caseId, caseId), eq(photo.id, photoId)))
    .get();
  if (row === undefined) throw new Error('No such photo in this case.');
  return toPhoto(row);
}

const toPhoto = (row: typeof photo.$inferSelect): Photo => ({
  id: row.id,
  order: row.sortOrder,
  sha256: row.sha256,
  fileName: row.fileName,
  mime: row.mime,
  bytes: row.bytes,
  width: row.width,
  height: row.height,
  takenAt: row.takenAt,
  latitude: row.latitude,
  longitude: row.longitude,
  caption: row.caption,
  subject:
    row.subjectKind === null || row.subjectId === null ? null : { kind: row.subjectKind, id: row.subjectId },
  personId: row.personId,
  removed: row.removedAt === null ? null : { at: row.removedAt, reason: row.removedReason ?? '' },
  createdAt: row.createdAt,
});

/** All photos of the case in their order, removed ones included. */
export const readPhotos = (db: Db | Tx, caseId: string): readonly Photo[] =>
  db
    .select()
    .from(photo)
    .where(eq(photo.caseId, caseId))
    .orderBy(asc(photo.sortOrder), sql`rowid`)
    .all()
    .map(toPhoto);

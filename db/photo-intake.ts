import { Readable } from 'node:stream';
import exifr from 'exifr';
import sharp from 'sharp';
import { ok, refuse, type Result } from '~/lib/readings/result';
import type { Actor } from './actor';
import type { FileStore } from './files';
import type { Db } from './open';
import { addPhoto, type NewPhoto } from './photos';

/** The largest photo taken, bytes. A 60 MB file is no phone picture and is refused by name. */
export const MAX_PHOTO_BYTES = 50_000_000;

/** Widths of the pictures made from a photo: for lists, for screen and paper, and for tracing outlines on it. */
export const RENDITIONS = { thumb: 360, print: 1600, trace: 2400 } as const;
export type Rendition = keyof typeof RENDITIONS;

const MIME: Readonly<Record<string, string>> = {
  jpeg: 'image/jpeg',
  png: 'image/png',
  webp: 'image/webp',
  heif: 'image/heic',
};

export const JPEG_QUALITY: Readonly<Record<Rendition, number>> = { thumb: 70, print: 82, trace: 92 };

/** Phones name this container "heic", "heix", "mif1" …; it starts at byte 4 with "ftyp". */
const isHeic = (bytes: Buffer): boolean =>
  bytes.toString('latin1', 4, 8) === 'ftyp' && /^(hei|hev|mif1|msf1)/.test(bytes.toString('latin1', 8, 12));

type Look = Pick<NewPhoto, 'mime' | 'width' | 'height'>;

async function lookAt(bytes: Buffer, fileName: string): Promise<Result<Look>> {
  try {
    const { format, autoOrient } = await sharp(bytes).metadata();
    const mime = MIME[format ?? ''];
    if (mime === undefined) {
      return refuse(`“${fileName}” is a ${format ?? 'file'} picture. Choose a JPEG, PNG, WebP or HEIC file.`);
    }
    // Metadata alone reads the header; a cut-off file shows only when it is decoded.
    await sharp(bytes, { failOn: 'truncated' }).resize(32).toBuffer();
    return ok({ mime, width: autoOrient.width, height: autoOrient.height });
  } catch {
    return refuse(
      isHeic(bytes)
        ? `“${fileName}” is a HEIC picture and the image library here cannot read its compression. Save it as JPEG (on the phone: “most compatible”) and choose that file.`
        : `“${fileName}” cannot be read as a picture, or it is cut off. Choose a JPEG, PNG or WebP file.`,
    );
  }
}

type Camera = Pick<NewPhoto, 'takenAt' | 'latitude' | 'longitude'>;

const NO_CAMERA: Camera = { takenAt: null, latitude: null, longitude: null };

/** Time as the camera's clock had it, without zone, and position, where the file carries them. */
async function cameraSays(bytes: Buffer): Promise<Camera> {
  try {
    const tags: unknown = await exifr.parse(bytes, { reviveValues: false, gps: true });
    if (tags === undefined || tags === null) return NO_CAMERA;
    const said = tags as Readonly<Record<string, unknown>>;
    const written = /^(\d{4}):(\d{2}):(\d{2}) (\d{2}:\d{2})(?::\d{2})?/.exec(
      String(said.DateTimeOriginal ?? said.CreateDate ?? ''),
    );
    const place = (value: unknown, most: number): number | null =>
      typeof value === 'number' && Math.abs(value) <= most ? value : null;
    return {
      takenAt: written && `${written[1]}-${written[2]}-${written[3]}T${written[4]}`,
      latitude: place(said.latitude, 90),
      longitude: place(said.longitude, 180),
    };
  } catch {
    return NO_CAMERA;
  }
}

const renditionOf = (source: Buffer | string, rendition: Rendition): Promise<Buffer> =>
  sharp(source)
    .autoOrient()
    .resize({
      width: RENDITIONS[rendition],
      height: RENDITIONS[rendition],
      fit: 'inside',
      withoutEnlargement: true,
    })
    .flatten({ background: '#ffffff' })
    .jpeg({ quality: JPEG_QUALITY[rendition] })
    .toBuffer();

/** Path of a picture made from a stored photo, made now if it is not there. */
export async function renditionPath(store: FileStore, sha256: string, rendition: Rendition): Promise<string> {
  const path = store.derivedPath(sha256, rendition);
  if (store.hasDerived(sha256, rendition)) return path;
  return store.writeDerived(sha256, rendition, await renditionOf(store.pathOf(sha256), rendition));
}

/**
 * Keeps one photo: checks that it is one, reads the camera's time and position, stores the
 * original under its SHA-256, makes the smaller pictures, then records it. Refuses what is no
 * picture, and a file that this case already has. Answers the photo's id.
 */
export async function takePhotoIn(
  db: Db,
  store: FileStore,
  caseId: string,
  file: { readonly fileName: string; readonly bytes: Buffer },
  about: Pick<NewPhoto, 'caption' | 'subject' | 'personId'>,
  actor: Actor,
  alreadyThere: ReadonlySet<string>,
): Promise<Result<string>> {
  const look = await lookAt(file.bytes, file.fileName);
  if (!look.ok) return look;
  const stored = await store.storeStream(Readable.from([file.bytes]), { maxBytes: MAX_PHOTO_BYTES });
  if (!stored.ok) return refuse(`“${file.fileName}”: ${stored.message}`);
  const { sha256, bytes } = stored.value;
  if (alreadyThere.has(sha256)) return refuse(`“${file.fileName}” is already in this case.`);
  await Promise.all([renditionPath(store, sha256, 'thumb'), renditionPath(store, sha256, 'print')]);
  const camera = await cameraSays(file.bytes);
  return ok(
    addPhoto(
      db,
      caseId,
      { sha256, bytes, fileName: file.fileName, ...look.value, ...camera, ...about },
      actor,
    ),
  );
}

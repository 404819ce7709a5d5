import { Readable } from 'node:stream';
import sharp from 'sharp';
import { createCase } from '~/db/cases';
import { addEntities, addEntity } from '~/db/entities';
import type { FileStore } from '~/db/files';
import type { Db } from '~/db/open';
import { JPEG_QUALITY, RENDITIONS } from '~/db/photo-intake';
import { addPhoto } from '~/db/photos';
import { addReadings, type NewReading } from '~/db/readings';
import type { SubjectRef } from '~/lib/case/record';
import { normalDraws } from '~/lib/readings/draws';

const ACTOR = { personId: null, name: 'Bench' };

const reading = (
  subject: SubjectRef,
  quantity: string,
  value: number,
  unit: string,
  slot = '',
): NewReading => ({
  subject,
  quantity,
  slot,
  entered: String(value),
  unit,
  value,
  state: null,
  examined: null,
  instrumentId: null,
  personId: null,
  takenAt: null,
  disturbance: 'undisturbed',
  sampling: 'every',
  note: '',
});

/** A JPEG as the app makes it for paper: a slope with the grain of ballast, at the app's own quality. */
export async function samplePicture(width: number, height: number): Promise<Buffer> {
  const noise = normalDraws('picture', 1, 4096);
  const pixels = Buffer.alloc(width * height * 3);
  for (let i = 0; i < pixels.length; i += 1) {
    pixels[i] = Math.max(0, Math.min(255, 60 + ((i / 3) % width) / 12 + 14 * (noise[(i * 7) % 4096] ?? 0)));
  }
  return sharp(pixels, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: JPEG_QUALITY.print })
    .toBuffer();
}

/** The same picture with a comment of its own, so that each file has a hash of its own. */
export function numbered(picture: Buffer, index: number): Buffer {
  const text = Buffer.from(`picture ${index}`);
  const comment = Buffer.concat([Buffer.from([0xff, 0xfe, 0, text.length + 2]), text]);
  return Buffer.concat([picture.subarray(0, 2), comment, picture.subarray(2)]);
}

export async function addPhotos(
  db: Db,
  store: FileStore,
  caseId: string,
  picture: Buffer,
  count: number,
): Promise<void> {
  const { width = 0, height = 0 } = await sharp(picture).metadata();
  for (let index = 0; index < count; index += 1) {
    const bytes = numbered(picture, index);
    const stored = await store.storeStream(Readable.from([bytes]), { maxBytes: bytes.length });
    if (!stored.ok) throw new Error(stored.message);
    const { sha256 } = stored.value;
    for (const rendition of Object.keys(RENDITIONS)) store.writeDerived(sha256, rendition, bytes);
    const about = {
      caption: `Picture ${index + 1}, seen from the field side`,
      subject: null,
      personId: null,
    };
    const camera = { takenAt: '2031-05-06T10:00', latitude: null, longitude: null };
    const file = {
      sha256,
      bytes: bytes.length,
      fileName: `picture-${index}.jpg`,
      mime: 'image/jpeg',
      width,
      height,
    };
    addPhoto(db, caseId, { ...file, ...camera, ...about }, ACTOR);
  }
}

/** A case as large as the floors name: 400 stations, 150 vehicles, and what goes with them. */
export function addLargeCase(db: Db): string {
  const caseId = createCase(
    db,
    {
      number: 'B-1',
      title: 'Large case',
      railroad: 'Bench line',
      trackClass: '3',
      alignment: 'curveLeft',
      units: 'us',
      ruleSet: 'us-49cfr213',
    },
    ACTOR,
  );
  addEntity(db, caseId, 'person', { name: 'A. Person', role: 'investigator' }, ACTOR);
  const noise = normalDraws('stations', 1, 4000);
  const stations = addEntities(
    db,
    caseId,
    'station',
    Array.from({ length: 400 }, (_, i) => ({
      name: String(i - 380),
      disturbance: i > 380 ? 'disturbed' : 'undisturbed',
    })),
    ACTOR,
  );
  addReadings(
    db,
    caseId,
    stations.flatMap((id, i) => {
      const at: SubjectRef = { kind: 'station', id };
      const wobble = (k: number): number => noise[i * 9 + k] ?? 0;
      return [
        reading(at, 'stationPosition', (i - 380) * 4.7244, 'ft'),
        reading(at, 'gauge', 1440 + 3 * wobble(0), 'in'),
        reading(at, 'crosslevel', 57 + 4 * wobble(1), 'in'),
        reading(at, 'midOrdinate62', 152 + 8 * wobble(2), 'in'),
        reading(at, 'midOrdinate31', 38 + 2 * wobble(3), 'in'),
        reading(at, 'lateralMovement', Math.abs(2 * wobble(4)), 'in', 'left'),
        reading(at, 'lateralMovement', Math.abs(2 * wobble(5)), 'in', 'right'),
        reading(at, 'profile62', 4 * wobble(6), 'in', 'left'),
        reading(at, 'profile62', 4 * wobble(7), 'in', 'right'),
        reading(at, 'defectiveTies', Math.max(0, Math.round(3 + wobble(8))), '1'),
      ];
    }),
    ACTOR,
  );
  const vehicles = addEntities(
    db,
    caseId,
    'vehicle',
    Array.from({ length: 150 }, (_, i) => ({
      position: i + 1,
      mark: i < 3 ? 'QFV' : 'MARL',
      number: String(1000 + i),
      type: i < 3 ? 'locomotive' : 'coveredHopper',
      load: i % 3 === 0 ? 'empty' : 'loaded',
      derailed: i >= 60 && i < 66,
      firstDerailed: i === 60,
    })),
    ACTOR,
  );
  addReadings(
    db,
    caseId,
    vehicles.flatMap((id, i) => {
      const on: SubjectRef = { kind: 'vehicle', id };
      return [
        reading(on, 'grossWeight', i % 3 === 0 ? 28_000 : 119_000, 'lb'),
        reading(on, 'lengthOverPullingFaces', 18, 'ft'),
        reading(on, 'truckCentres', 14, 'ft'),
        reading(on, 'axleSpacing', 1.78, 'ft'),
        reading(on, 'axleCount', 4, '1'),
      ];
    }),
    ACTOR,
  );
  const mark = addEntity(db, caseId, 'mark', { type: 'flangeOnHead', rail: 'right', isPod: true }, ACTOR);
  addReadings(
    db,
    caseId,
    [
      reading({ kind: 'mark', id: mark }, 'markStart', 0, 'ft'),
      reading({ kind: 'mark', id: mark }, 'markEnd', 3, 'ft'),
    ],
    ACTOR,
  );
  const wheelset = addEntity(
    db,
    caseId,
    'wheelset',
    { vehicle: vehicles[60] ?? null, axle: 1, firstDerailed: true, disturbance: 'undisturbed' },
    ACTOR,
  );
  const axle: SubjectRef = { kind: 'wheelset', id: wheelset };
  addReadings(
    db,
    caseId,
    [
      ...['0', '120', '240'].map((clock, i) => reading(axle, 'backToBack', 1346 + i, 'in', clock)),
      ...['left', 'right'].flatMap((side) => [
        reading(axle, 'flangeThickness', 28, 'in', side),
        reading(axle, 'flangeHeight', 27, 'in', side),
        reading(axle, 'flangeAngle', 1.25, '°', side),
      ]),
    ],
    ACTOR,
  );
  const rail = addEntity(
    db,
    caseId,
    'rail',
    { rail: 'right', where: 'Station -1', section: '136RE', disturbance: 'undisturbed' },
    ACTOR,
  );
  addReadings(db, caseId, [reading({ kind: 'rail', id: rail }, 'gaugeFaceAngle', 1.2, '°')], ACTOR);
  return caseId;
}

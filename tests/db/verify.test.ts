import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  addEntities,
  addEntity,
  moveEntity,
  removeEntities,
  restoreEntity,
  updateEntity,
} from '~/db/entities';
import { updateCase } from '~/db/cases';
import { fileStore, type FileStore } from '~/db/files';
import { clearJudgement, clearStanding, saveNarrative, setJudgement, setStanding } from '~/db/narrative';
import type { Db } from '~/db/open';
import { addPhoto, readPhotos, removePhoto, restorePhoto, updatePhoto } from '~/db/photos';
import { addReadings, correctReading, withdrawReading } from '~/db/readings';
import { addRecorderRun } from '~/db/recorder';
import { verifyCase } from '~/db/verify';
import { loadDemo } from '../../fixtures/demo/load';
import { ACTOR, newReading, openFresh, openWithCase } from './opened';

const TIMEOUT_MS = 60_000;

/** What somebody with the file in hand can do: no trigger stands in the way. */
function withoutTriggers(db: Db): void {
  const names = db.$client
    .prepare<[], string>("select name from sqlite_master where type = 'trigger'")
    .pluck()
    .all();
  for (const name of names) db.$client.exec(`drop trigger "${name}"`);
}

describe('the demo case', () => {
  it(
    'is what its log says, and its files are what their names say; a photo that was changed is found',
    async () => {
      const { db, folder } = openFresh();
      const caseId = await loadDemo(db, folder);
      const store = fileStore(folder);
      expect(verifyCase(db, store, caseId)).toEqual({ ok: true, problems: [] });

      const [photo, other] = readPhotos(db, caseId);
      if (photo === undefined || other === undefined) throw new Error('The demo has photos.');
      const path = store.pathOf(photo.sha256);
      const bytes = readFileSync(path);
      bytes[bytes.length - 20] = (bytes[bytes.length - 20] ?? 0) ^ 1;
      writeFileSync(path, bytes);
      rmSync(store.pathOf(other.sha256));
      expect(verifyCase(db, store, caseId).problems).toEqual([
        expect.stringMatching(new RegExp(`${photo.sha256}.*was changed`)),
        expect.stringMatching(new RegExp(`${other.sha256}.*is missing`)),
      ]);
      // Without reading photos only what is missing shows.
      expect(verifyCase(db, store, caseId, { photoFiles: false }).problems).toHaveLength(1);
    },
    TIMEOUT_MS,
  );
});

/** A case in which everything that can be changed was changed, also back and forth. */
async function lived(): Promise<{ db: Db; store: FileStore; caseId: string }> {
  const { db, folder, caseId } = openWithCase();
  const store = fileStore(folder);
  const kept = async (text: string): Promise<string> => {
    const stored = await store.storeStream(
      (async function* () {
        yield await Promise.resolve(Buffer.from(text));
      })(),
      {
        maxBytes: 1000,
      },
    );
    if (!stored.ok) throw new Error(stored.message);
    return stored.value.sha256;
  };
  updateCase(db, caseId, { weather: 'Rain' }, ACTOR);
  updateCase(db, caseId, { weather: 'Snow' }, ACTOR);
  const [first = '', second = '', third = ''] = addEntities(
    db,
    caseId,
    'station',
    ['0', '-1', '-2'].map((name) => ({ name, disturbance: 'undisturbed' })),
    ACTOR,
  );
  moveEntity(db, caseId, 'station', third, first, ACTOR);
  updateEntity(db, caseId, 'station', second, { joint: 'left' }, ACTOR);
  removeEntities(db, caseId, 'station', [second, third], 'twice', ACTOR);
  restoreEntity(db, caseId, 'station', third, ACTOR);
  const subject = { kind: 'station', id: first } as const;
  const [gauge = '', again = ''] = addReadings(db, caseId, [newReading(subject), newReading(subject)], ACTOR);
  const corrected = correctReading(db, caseId, gauge, newReading(subject, { value: 1440 }), 'misread', ACTOR);
  const withdrawn = withdrawReading(db, caseId, again, 'other place', ACTOR);
  if (!corrected.ok || !withdrawn.ok) throw new Error('A reading was not taken.');
  const person = addEntity(db, caseId, 'person', { name: 'R. Examiner', role: 'investigator' }, ACTOR);
  const shared = { mime: 'image/jpeg', bytes: 5, width: 4, height: 3, takenAt: null, latitude: 41.5 };
  const photo = addPhoto(
    db,
    caseId,
    {
      ...shared,
      sha256: await kept('photo'),
      fileName: 'pod.jpg',
      longitude: -90.25,
      caption: '',
      subject: null,
      personId: null,
    },
    ACTOR,
  );
  updatePhoto(db, caseId, photo, { caption: 'First mark', subject, personId: person }, ACTOR);
  removePhoto(db, caseId, photo, 'blurred', ACTOR);
  restorePhoto(db, caseId, photo, ACTOR);
  addRecorderRun(
    db,
    caseId,
    {
      name: 'lead unit',
      vehicleId: null,
      fileName: 'run.csv',
      sha256: await kept('run'),
      clockOffsetS: 0,
      note: '',
    },
    [
      { channel: 'time', unit: 's', values: Float64Array.of(0, 1, 2) },
      { channel: 'speed', unit: 'mph', values: Float64Array.of(5, 5.5, NaN) },
    ],
    ACTOR,
  );
  saveNarrative(db, caseId, { summary: 'It came off.' }, ACTOR);
  saveNarrative(db, caseId, { determination: 'Open.' }, ACTOR);
  for (const explanation of ['overspeed', 'brokenRail'])
    setStanding(db, caseId, { explanation, standing: 'excluded', reason: 'slow' }, ACTOR);
  clearStanding(db, caseId, 'brokenRail', ACTOR);
  for (const path of ['a.b', 'c.d']) setJudgement(db, caseId, { path, value: 0.25, reason: 'seen' }, ACTOR);
  clearJudgement(db, caseId, 'c.d', ACTOR);
  return { db, store, caseId };
}

describe('a case that was changed in every way', () => {
  it('is what its log says', async () => {
    const { db, store, caseId } = await lived();
    expect(verifyCase(db, store, caseId)).toEqual({ ok: true, problems: [] });
  });
});

describe('what was changed from outside is found', () => {
  it.each([
    [
      'the value of a reading',
      'update reading set value = 1436 where value = 1440',
      /reading .* value was changed/,
    ],
    ['a reading taken out', 'delete from reading where withdrawn = 1', /reading .* no longer in the case/],
    [
      'the state of a station',
      "update station set disturbance = 'disturbed' where name = '0'",
      /station .* disturbance was changed/,
    ],
    [
      'a station put back',
      "update station set removed_at = null, removed_reason = null where name = '-1'",
      /station .* removed was changed/,
    ],
    [
      'the order of stations',
      "update station set sort_order = 9 where name = '0'",
      /station .* order was changed/,
    ],
    ['the caption of a photo', "update photo set caption = 'Second mark'", /photo .* caption was changed/],
    ['where a photo was taken', 'update photo set latitude = 42', /photo .* latitude was changed/],
    ['a photo taken out', 'delete from photo', /photo .* no longer in the case/],
    ['which file a photo is', `update photo set sha256 = '${'a'.repeat(64)}'`, /photo .* sha256 was changed/],
    [
      'the samples of a recorder',
      'update recorder_chunk set samples = zeroblob(24)',
      /recorder run .* channels was changed/,
    ],
    [
      'the clock of a recorder',
      'update recorder_run set clock_offset_s = 60',
      /recorder run .* clockOffsetS was changed/,
    ],
    ['the weather', "update case_file set weather = 'Fair'", /case .* weather was changed/],
    [
      'the determination',
      "update narrative set determination = 'Closed.'",
      /investigator .* determination was changed/,
    ],
    ['a decision', "update standing set standing = 'stands'", /decision .* standing was changed/],
    ['a judgement', 'update judgement_change set value = 0.5', /judgement .* value was changed/],
  ])('%s', async (_, tamper, problem) => {
    const { db, store, caseId } = await lived();
    withoutTriggers(db);
    db.$client.exec(tamper);
    const { ok, problems } = verifyCase(db, store, caseId);
    expect(ok).toBe(false);
    expect(problems.join('\n')).toMatch(problem);
  });

  it('a row that no entry speaks of', async () => {
    const { db, store, caseId } = await lived();
    withoutTriggers(db);
    db.$client.exec(
      "insert into station (id, case_id, sort_order, created_at, name, disturbance) select 'new', case_id, 7, created_at, '5', 'undisturbed' from station where name = '0'",
    );
    expect(verifyCase(db, store, caseId).problems).toEqual([
      'The station new is in the case and not in its log.',
    ]);
  });
});

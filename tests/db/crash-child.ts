import { createHash, randomBytes } from 'node:crypto';
import { writeSync } from 'node:fs';
import { Readable } from 'node:stream';
import { setTimeout as sleep } from 'node:timers/promises';
import { createCase, listCases } from '~/db/cases';
import { addEntity } from '~/db/entities';
import { fileStore } from '~/db/files';
import { commitStations, stageImport, type ImportRow } from '~/db/imports';
import { openDatabase } from '~/db/open';
import { addPhoto } from '~/db/photos';
import { addReadings, correctReading, type NewReading } from '~/db/readings';
import { addRecorderRun } from '~/db/recorder';
import { addTrace } from '~/db/traces';

/*
 * Fills a case without end until it is killed. Every line written is one fact the parent may rely
 * on: `done …` comes after a function answered, `inside …` from the middle of one.
 */
const [folder = '', pauseIn = '', pauseAtText = '0'] = process.argv.slice(2);
const pauseAt = Number(pauseAtText);
const ACTOR = { personId: null, name: 'R. Examiner' };
const STATIONS = 40;

const say = (...words: readonly string[]): void => {
  writeSync(1, `${words.join(' ')}\n`);
};
/** Blocks the thread, as a long insert would, so that the parent's kill falls within it. */
const holdStill = (): void => {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 5_000);
};

const db = openDatabase(folder);
const store = fileStore(folder);
const caseId =
  listCases(db)[0]?.id ??
  createCase(db, { number: 'D-001', title: 'Crash', units: 'us', ruleSet: 'us-49cfr213' }, ACTOR);
say('done case', caseId);

const gauge = (value: number): Omit<NewReading, 'subject'> => ({
  quantity: 'gauge',
  slot: '',
  entered: String(value),
  unit: 'mm',
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

/** Rows whose note is only read while the transaction runs, after `pauseAt` rows are in. */
function stations(round: number): readonly ImportRow[] {
  return Array.from({ length: STATIONS }, (_, index) => ({
    fields: {
      name: `${round}.${index}`,
      disturbance: 'undisturbed',
      get note() {
        if (pauseIn === 'import' && round === 2 && index === pauseAt) {
          say('inside import');
          holdStill();
        }
        return null;
      },
    },
    readings: [gauge(1435 + index), gauge(1436 + index)],
  }));
}

async function* photo(round: number): AsyncGenerator<Uint8Array> {
  for (let piece = 0; piece < STATIONS; piece += 1) {
    if (pauseIn === 'file' && round === 2 && piece === pauseAt) {
      say('inside file');
      await sleep(5_000);
    }
    yield randomBytes(16_384);
  }
}

/** A file that an import is made from, in the store before any row names it. */
async function uploaded(text: string): Promise<string> {
  const file = await store.storeStream(Readable.from([Buffer.from(text)]), { maxBytes: 1000 });
  if (!file.ok) throw new Error(file.message);
  return file.value.sha256;
}

for (let round = 0; ; round += 1) {
  const stationsFile = await uploaded(`stations ${round}`);
  const runFile = await uploaded(`run ${round}`);
  const staged = stageImport(db, caseId, { kind: 'stations', fileName: 's.csv', sha256: stationsFile });
  say('staged', staged);
  const { ids, readingIds } = commitStations(db, caseId, staged, stations(round), ACTOR);
  say('done import', ...ids, ...readingIds);

  const stored = await store.storeStream(photo(round), { maxBytes: 10_000_000 });
  if (!stored.ok) throw new Error(stored.message);
  say('done file', stored.value.sha256);
  const { sha256, bytes } = stored.value;
  const meta = { sha256, bytes, fileName: 'p.jpg', mime: 'image/jpeg', width: 1, height: 1, caption: '' };
  const nothing = { takenAt: null, latitude: null, longitude: null, subject: null, personId: null };
  say('done photo', addPhoto(db, caseId, { ...meta, ...nothing }, ACTOR), sha256);

  const place = { rail: 'left', where: '0', section: '136RE', disturbance: 'undisturbed' };
  const rail = addEntity(db, caseId, 'rail', place, ACTOR);
  const outline = {
    shape: 'rail',
    subject: { kind: 'rail', id: rail },
    side: 'left',
    behindMm: null,
    sha256,
    fileName: 'o.csv',
    making: { by: 'file', unit: 'mm', columns: [0, 1], flipped: { x: false, y: false } },
    pointsMm: Float64Array.from({ length: 2_000 }, (_, i) => i * 0.1 + round),
    ...{ uncertainty: { acrossMm: 0.1, scale: 0, because: [] }, mirrored: false, hand: null },
    ...{ distanceRunKm: null, instrumentId: null, personId: null, takenAt: null, note: '' },
    disturbance: 'undisturbed',
  } as const;
  say('done trace', addTrace(db, caseId, outline, ACTOR), sha256);

  const values = Float64Array.from({ length: 30_000 }, (_, i) => i * 0.1 + round);
  const seal = createHash('sha256').update(new Uint8Array(values.buffer)).digest('hex');
  const run = {
    name: 'r',
    vehicleId: null,
    fileName: 'r.csv',
    sha256: runFile,
    clockOffsetS: 0,
    note: '',
  };
  const series = ['time', 'speed', 'brakePipe'].map((channel) => ({ channel, unit: 's', values }));
  say('done run', addRecorderRun(db, caseId, run, series, ACTOR), seal);

  const subject = { kind: 'station', id: ids[0] ?? '' } as const;
  const [old = ''] = addReadings(db, caseId, [{ subject, ...gauge(1440) }], ACTOR);
  say('done reading', old);
  const corrected = correctReading(db, caseId, old, { subject, ...gauge(1441) }, 'misread', ACTOR);
  if (corrected.ok) say('done reading', corrected.value);
}

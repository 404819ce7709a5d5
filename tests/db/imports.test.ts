import { describe, expect, it } from 'vitest';
import { caseHead, createCase, readCase } from '~/db/cases';
import {
  commitConsist,
  commitStations,
  dropStagedImport,
  readStagedImport,
  recallMapping,
  rememberMapping,
  setStagedMapping,
  stageImport,
  StagedImportGone,
  type ImportRow,
} from '~/db/imports';
import { readLog, verifyLog } from '~/db/log';
import { addRecorderRun } from '~/db/recorder';
import { ACTOR, CASE_FIELDS, newReading, openWithCase } from './opened';

const FILE = { fileName: 'sheet.csv', sha256: 'b'.repeat(64) };
const MAPPING = { STA: { target: 'name', unit: null }, GA: { target: 'gauge', unit: 'in' } };

const row = (name: string | null, gauges: readonly (number | null)[]): ImportRow => ({
  fields: { name, disturbance: 'undisturbed' },
  readings: gauges.map((value) => {
    const { subject: _, ...reading } = newReading({ kind: 'station', id: '' }, { value });
    return reading;
  }),
});

describe('imports', () => {
  it('waits for confirmation without touching the case', () => {
    const { db, caseId } = openWithCase();
    const head = caseHead(db, caseId);
    const id = stageImport(db, caseId, { kind: 'stations', ...FILE });
    expect(readStagedImport(db, caseId, id)).toMatchObject({ ...FILE, kind: 'stations', mapping: null });
    setStagedMapping(db, caseId, id, MAPPING);
    expect(readStagedImport(db, caseId, id)?.mapping).toEqual(MAPPING);
    const other = createCase(db, { ...CASE_FIELDS, number: 'D-002' }, ACTOR);
    expect(readStagedImport(db, other, id)).toBeNull();
    dropStagedImport(db, caseId, id);
    expect(readStagedImport(db, caseId, id)).toBeNull();
    expect(caseHead(db, caseId)).toBe(head);
  });

  it('adds stations and their readings as one entry of the log that names the file', () => {
    const { db, caseId } = openWithCase();
    const staged = stageImport(db, caseId, { kind: 'stations', ...FILE });
    const rows = [row('0', [1435, 1436]), row('15.5', []), row('31', [1440])];
    const { ids, readingIds } = commitStations(db, caseId, staged, rows, ACTOR);
    const record = readCase(db, caseId);
    expect(record?.entities.station.map((entity) => [entity.id, entity.fields.name])).toEqual([
      [ids[0], '0'],
      [ids[1], '15.5'],
      [ids[2], '31'],
    ]);
    expect(record?.readings.map((reading) => [reading.id, reading.subject.id, reading.value])).toEqual([
      [readingIds[0], ids[0], 1435],
      [readingIds[1], ids[0], 1436],
      [readingIds[2], ids[2], 1440],
    ]);
    expect(readLog(db, caseId, { limit: 9 })).toHaveLength(2);
    expect(readLog(db, caseId, { limit: 1 })[0]).toMatchObject({ action: 'import', after: { file: FILE } });
    expect(verifyLog(db, caseId).ok).toBe(true);
  });

  it('imports a confirmed file once', () => {
    const { db, caseId } = openWithCase();
    const staged = stageImport(db, caseId, { kind: 'stations', ...FILE });
    commitStations(db, caseId, staged, [row('0', [1435])], ACTOR);
    expect(() => commitStations(db, caseId, staged, [row('0', [1435])], ACTOR)).toThrow(StagedImportGone);
    expect(readCase(db, caseId)?.entities.station).toHaveLength(1);
  });

  it.each([
    ['a record', [row('0', [1435]), row(null, [])]],
    ['a reading', [row('0', [1435]), row('15.5', [null])]],
  ])('adds nothing when %s cannot be kept, and the file still waits', (_, rows) => {
    const { db, caseId } = openWithCase();
    const staged = stageImport(db, caseId, { kind: 'stations', ...FILE });
    const head = caseHead(db, caseId);
    expect(() => commitStations(db, caseId, staged, rows, ACTOR)).toThrow();
    expect(readCase(db, caseId)).toMatchObject({ readings: [], entities: { station: [] } });
    expect(caseHead(db, caseId)).toBe(head);
    expect(readStagedImport(db, caseId, staged)).not.toBeNull();
  });

  it('adds a consist, and a recorder file that is used up with it', () => {
    const { db, caseId } = openWithCase();
    const staged = stageImport(db, caseId, { kind: 'consist', ...FILE });
    const vehicle = { position: 1, mark: 'ABCX', number: '1', type: 'boxcar' };
    const { ids } = commitConsist(db, caseId, staged, [{ fields: vehicle, readings: [] }], ACTOR);
    expect(readCase(db, caseId)?.entities.vehicle.map((entity) => entity.id)).toEqual(ids);
    const stagedImportId = stageImport(db, caseId, { kind: 'recorder', ...FILE });
    const meta = { ...FILE, name: 'Lead', vehicleId: null, clockOffsetS: 0, note: '', stagedImportId };
    const time = [{ channel: 'time', unit: 's', values: Float64Array.of(0, 1) }];
    addRecorderRun(db, caseId, meta, time, ACTOR);
    expect(() => addRecorderRun(db, caseId, meta, time, ACTOR)).toThrow(StagedImportGone);
    expect(readCase(db, caseId)?.recorderRuns).toHaveLength(1);
  });

  it('remembers the columns of a railroad, per kind of file', () => {
    const { db } = openWithCase();
    expect(recallMapping(db, 'Invented Short Line', 'stations')).toBeNull();
    rememberMapping(db, 'Invented Short Line', 'stations', { old: { target: 'name', unit: null } });
    rememberMapping(db, ' invented short line ', 'stations', MAPPING);
    expect(recallMapping(db, 'Invented Short Line', 'stations')).toEqual(MAPPING);
    expect(recallMapping(db, 'Invented Short Line', 'consist')).toBeNull();
    expect(recallMapping(db, 'Another Line', 'stations')).toBeNull();
  });
});

import { rmSync, writeFileSync } from 'node:fs';
import { Readable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { caseHead, readCase } from '~/db/cases';
import { addEntity } from '~/db/entities';
import { fileStore } from '~/db/files';
import { stageImport, readStagedImport, StagedImportGone } from '~/db/imports';
import { readLog } from '~/db/log';
import { addOwnShape, removeOwnShape, restoreOwnShape } from '~/db/own-shapes';
import { addTrace, removeTrace, restoreTrace, updateTrace, type NewTrace } from '~/db/traces';
import { verifyCase } from '~/db/verify';
import { sha256Hex } from '~/lib/custody/canonical';
import { ACTOR, openWithCase } from './opened';

const POINTS = Float64Array.of(0, 0, 0.1, 12.5, -0, Math.PI, 70, 1e-12);
const DROP_TRIGGERS = ['trace_sealed', 'trace_no_delete', 'own_shape_sealed']
  .map((name) => `drop trigger ${name};`)
  .join('');

async function opened() {
  const { db, folder, caseId } = openWithCase();
  const store = fileStore(folder);
  const stored = await store.storeStream(Readable.from([Buffer.from('x,y\n0,0\n')]), { maxBytes: 1000 });
  if (!stored.ok) throw new Error(stored.message);
  const vehicle = addEntity(
    db,
    caseId,
    'vehicle',
    { position: 1, mark: 'AB', number: '1', type: 'car' },
    ACTOR,
  );
  const wheelset = addEntity(db, caseId, 'wheelset', { vehicle, axle: 1, disturbance: 'notSaid' }, ACTOR);
  const turnout = addEntity(
    db,
    caseId,
    'turnout',
    { name: 'East switch', movement: 'facing', disturbance: 'notSaid' },
    ACTOR,
  );
  const given: NewTrace = {
    shape: 'wheel',
    subject: { kind: 'wheelset', id: wheelset },
    side: 'left',
    behindMm: null,
    sha256: stored.value.sha256,
    fileName: 'left.csv',
    making: { by: 'file', unit: 'mm', columns: [0, 1], flipped: { x: false, y: true } },
    pointsMm: POINTS,
    uncertainty: { acrossMm: 0.1, scale: 0, because: ['Point spacing of the file.'] },
    mirrored: false,
    hand: null,
    distanceRunKm: null,
    instrumentId: null,
    personId: null,
    takenAt: '2031-04-09T14:35',
    disturbance: 'undisturbed',
    note: '',
  };
  const ofPoint: NewTrace = {
    ...given,
    shape: 'point',
    subject: { kind: 'turnout', id: turnout },
    side: 'right',
    behindMm: 304.8,
    making: { by: 'pins', entered: '1\n2', unit: 'mm', pitchMm: 2, behindEntered: '1 ft' },
  };
  return { db, store, caseId, wheelset, given, ofPoint };
}

describe('outlines', () => {
  it('come back as they were given, to the last bit of every point', async () => {
    const { db, caseId, given, store } = await opened();
    const first = addTrace(db, caseId, given, ACTOR);
    const photo: NewTrace['making'] = {
      by: 'photo',
      focal35Mm: 26,
      size: [4000, 3000],
      scale: [{ from: [1, 2], to: [301, 2], apartMm: 100 }],
      clicks: [
        [5, 5],
        [9.5, 7],
      ],
      straight: [0],
    };
    const hand = { dxMm: 0.5, dyMm: -0.25, angleRad: 0.01, reason: 'Back of the flange was smudged' };
    const second = addTrace(db, caseId, { ...given, making: photo, hand, side: 'right' }, ACTOR);
    const traces = readCase(db, caseId)?.traces ?? [];
    expect(traces.map(({ id, order }) => [id, order])).toEqual([
      [first, 0],
      [second, 1],
    ]);
    expect(traces[0]).toEqual({
      ...given,
      id: first,
      order: 0,
      removed: null,
      createdAt: expect.any(String),
    });
    expect(traces[1]).toMatchObject({ making: photo, hand, side: 'right' });
    expect(Buffer.from(traces[0]?.pointsMm.buffer ?? new ArrayBuffer(0))).toEqual(Buffer.from(POINTS.buffer));
    expect(verifyCase(db, store, caseId)).toEqual({ ok: true, problems: [] });
  });

  it('are logged with the hash of their points, and with both sides of a change', async () => {
    const { db, caseId, given, store } = await opened();
    const id = addTrace(db, caseId, given, ACTOR);
    expect(readLog(db, caseId, { limit: 1 })[0]).toMatchObject({
      action: 'add',
      subjectKind: 'trace',
      subjectId: id,
      after: { points: 4, pointsSha256: sha256Hex(new Uint8Array(POINTS.buffer)), sha256: given.sha256 },
    });
    const hand = { dxMm: 1, dyMm: 0, angleRad: 0, reason: 'Paper slipped' };
    updateTrace(db, caseId, id, { hand, mirrored: true, note: 'Second try' }, ACTOR);
    expect(readCase(db, caseId)?.traces[0]).toMatchObject({ hand, mirrored: true, note: 'Second try' });
    expect(readLog(db, caseId, { limit: 1 })[0]).toMatchObject({
      action: 'update',
      before: { hand: null, mirrored: false, note: '' },
      after: { hand, mirrored: true, note: 'Second try' },
    });
    const head = caseHead(db, caseId);
    updateTrace(db, caseId, id, { hand: { ...hand } }, ACTOR);
    expect(caseHead(db, caseId)).toBe(head);
    expect(() => updateTrace(db, caseId, id, { hand: { ...hand, reason: '' } }, ACTOR)).toThrow();
    expect(verifyCase(db, store, caseId).ok).toBe(true);
  });

  it('of a switch point keep how far behind the tip they lie, as typed and in mm', async () => {
    const { db, caseId, ofPoint, store } = await opened();
    const tip = addTrace(db, caseId, { ...ofPoint, behindMm: 0 }, ACTOR);
    const id = addTrace(db, caseId, ofPoint, ACTOR);
    expect(readCase(db, caseId)?.traces.map(({ behindMm }) => behindMm)).toEqual([0, 304.8]);
    expect(readCase(db, caseId)?.traces[1]?.making.behindEntered).toBe('1 ft');
    expect(readLog(db, caseId, { limit: 1 })[0]).toMatchObject({ after: { id, behindMm: 304.8 } });
    removeTrace(db, caseId, tip, 'of the other point', ACTOR);
    restoreTrace(db, caseId, tip, ACTOR);
    expect(verifyCase(db, store, caseId)).toEqual({ ok: true, problems: [] });
    db.$client.exec(DROP_TRIGGERS);
    db.$client.exec(`update trace set behind_mm = 0 where id = '${id}'`);
    expect(verifyCase(db, store, caseId).problems).toEqual([expect.stringContaining('behindMm')]);
  });

  it.each<[string, Partial<NewTrace>]>([
    ['without its distance behind the tip', { behindMm: null }],
    ['in front of the tip', { behindMm: -1 }],
  ])('of a switch point are refused %s', async (_, wrong) => {
    const { db, caseId, ofPoint } = await opened();
    expect(() => addTrace(db, caseId, { ...ofPoint, ...wrong }, ACTOR)).toThrow();
    expect(readCase(db, caseId)?.traces).toEqual([]);
  });

  it('are removed with a reason and put back', async () => {
    const { db, caseId, given, store } = await opened();
    const id = addTrace(db, caseId, given, ACTOR);
    removeTrace(db, caseId, id, 'the other wheel', ACTOR);
    expect(readCase(db, caseId)?.traces[0]?.removed).toMatchObject({ reason: 'the other wheel' });
    expect(verifyCase(db, store, caseId).ok).toBe(true);
    restoreTrace(db, caseId, id, ACTOR);
    expect(readCase(db, caseId)?.traces[0]?.removed).toBeNull();
    expect(verifyCase(db, store, caseId).ok).toBe(true);
  });

  it.each<[string, Partial<NewTrace>]>([
    ['of a wheelset that is not in the case', { subject: { kind: 'wheelset', id: 'none' } }],
    ['of a rail said to be a wheel', { shape: 'rail' }],
    ['of a point said to be a wheel', { shape: 'point', behindMm: 0 }],
    ['of a wheel behind the tip of a point', { behindMm: 0 }],
    ['with a coordinate that is no number', { pointsMm: Float64Array.of(0, 0, NaN, 1) }],
    ['with half a point', { pointsMm: Float64Array.of(0, 0, 1) }],
    ['with no length of its pins', { making: { by: 'pins', entered: '1', unit: 'mm', pitchMm: 0 } }],
    ['with a distance below nothing', { distanceRunKm: -1 }],
    ['taken by nobody of the case', { personId: 'none' }],
  ])('are refused %s, and nothing stays', async (_, wrong) => {
    const { db, caseId, given } = await opened();
    const head = caseHead(db, caseId);
    expect(() => addTrace(db, caseId, { ...given, ...wrong }, ACTOR)).toThrow();
    expect(readCase(db, caseId)?.traces).toEqual([]);
    expect(caseHead(db, caseId)).toBe(head);
  });

  it('use up the staged file with them, once', async () => {
    const { db, caseId, given } = await opened();
    const stagedImportId = stageImport(db, caseId, { kind: 'trace', fileName: 'a', sha256: given.sha256 });
    addTrace(db, caseId, { ...given, stagedImportId }, ACTOR);
    expect(readStagedImport(db, caseId, stagedImportId)).toBeNull();
    expect(() => addTrace(db, caseId, { ...given, stagedImportId }, ACTOR)).toThrow(StagedImportGone);
    expect(readCase(db, caseId)?.traces).toHaveLength(1);
  });

  it.each([
    'update trace set points = zeroblob(64)',
    "update trace set making = '{}'",
    `update trace set sha256 = '${'0'.repeat(64)}'`,
    "update trace set side = 'right'",
    'update trace set behind_mm = 5',
    'delete from trace',
    'insert or replace into trace select * from trace',
  ])('cannot be overwritten: %s', async (sql) => {
    const { db, caseId, given } = await opened();
    addTrace(db, caseId, given, ACTOR);
    expect(() => db.$client.exec(sql)).toThrow('never');
  });

  it.each([
    ['a moved point', 'update trace set points = zeroblob(64)', 'pointsSha256'],
    [
      'a moved point with a hash to match',
      `update trace set points = zeroblob(64), points_sha256 = '${sha256Hex(new Uint8Array(64))}'`,
      'pointsSha256',
    ],
    [
      'another uncertainty',
      `update trace set uncertainty = '{"acrossMm":0,"scale":0,"because":[]}'`,
      'uncertainty',
    ],
    ['a changed note', "update trace set note = 'better'", 'note'],
    ['a removal nobody logged', "update trace set removed_at = '2031', removed_reason = 'x'", 'removed'],
    ['a row taken out', 'delete from trace', 'no longer in the case'],
    ['another source of a shape', "update own_shape set source = 'the standard'", 'source'],
  ])('are held against the log: %s is found', async (_, tamper, word) => {
    const { db, caseId, given, store } = await opened();
    addTrace(db, caseId, given, ACTOR);
    const { sha256, fileName, pointsMm } = given;
    addOwnShape(
      db,
      caseId,
      { shape: 'wheel', sha256, fileName, pointsMm, name: 'Ours', source: 'Drawing 7' },
      ACTOR,
    );
    db.$client.exec(DROP_TRIGGERS);
    db.$client.exec(tamper);
    const { ok, problems } = verifyCase(db, store, caseId);
    expect(ok).toBe(false);
    expect(problems.join(' ')).toContain(word);
  });

  it('are missed when their file is gone or was changed', async () => {
    const { db, caseId, given, store } = await opened();
    addTrace(db, caseId, given, ACTOR);
    writeFileSync(store.pathOf(given.sha256), 'x,y\n0,1\n');
    expect(verifyCase(db, store, caseId).problems).toEqual([expect.stringContaining('was changed')]);
    rmSync(store.pathOf(given.sha256));
    expect(verifyCase(db, store, caseId).problems).toEqual([expect.stringContaining('is missing')]);
  });
});

describe('own shapes', () => {
  it('come back as they were given, and are removed and put back', async () => {
    const { db, caseId, given, store } = await opened();
    const { sha256, fileName, pointsMm } = given;
    const shape = {
      shape: 'rail',
      sha256,
      fileName,
      pointsMm,
      name: 'Our 100 lb',
      source: 'Mill sheet',
    } as const;
    const id = addOwnShape(db, caseId, shape, ACTOR);
    const now = () => readCase(db, caseId)?.ownShapes;
    expect(now()).toEqual([{ ...shape, id, order: 0, removed: null, createdAt: expect.any(String) }]);
    removeOwnShape(db, caseId, id, 'out of date', ACTOR);
    expect(now()?.[0]?.removed).toMatchObject({ reason: 'out of date' });
    restoreOwnShape(db, caseId, id, ACTOR);
    expect(now()?.[0]?.removed).toBeNull();
    expect(readLog(db, caseId, { limit: 3 }).map(({ action }) => action)).toEqual([
      'restore',
      'remove',
      'add',
    ]);
    expect(() => db.$client.exec('delete from own_shape')).toThrow('never deleted');
    expect(verifyCase(db, store, caseId).ok).toBe(true);
  });
});

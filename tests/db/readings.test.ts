import { describe, expect, it } from 'vitest';
import { caseHead, createCase, readCase } from '~/db/cases';
import { addEntity, addEntities } from '~/db/entities';
import { readLog, verifyLog } from '~/db/log';
import { addReadings, correctReading, withdrawReading } from '~/db/readings';
import { currentReadings } from '~/lib/case/current';
import { ACTOR, CASE_FIELDS, newReading, openWithCase } from './opened';

function openWithStation() {
  const entry = openWithCase();
  const id = addEntity(entry.db, entry.caseId, 'station', { name: '0', disturbance: 'undisturbed' }, ACTOR);
  return { ...entry, subject: { kind: 'station', id } as const };
}

const standing = (db: Parameters<typeof readCase>[0], caseId: string) => {
  const record = readCase(db, caseId);
  return record === null ? [] : currentReadings(record);
};

describe('readings', () => {
  it('keeps every part of a reading', () => {
    const { db, caseId, subject } = openWithStation();
    const instrumentId = addEntity(db, caseId, 'instrument', { name: 'Gauge 7', kind: 'trackGauge' }, ACTOR);
    const personId = addEntity(db, caseId, 'person', { name: 'R. Examiner', role: 'track' }, ACTOR);
    const given = newReading(subject, {
      instrumentId,
      personId,
      takenAt: '2031-04-09T14:35',
      slot: '120',
      note: 'wet',
      sampling: 'worst',
    });
    const seen = newReading(subject, {
      value: null,
      state: 'seen',
      examined: 0.25,
      entered: 'seen',
      unit: '',
    });
    const ids = addReadings(db, caseId, [given, seen], ACTOR);
    const rows = readCase(db, caseId)?.readings ?? [];
    const own = { replaces: null, reason: null, withdrawn: false, createdAt: rows[0]?.createdAt };
    expect(rows).toEqual([
      { ...given, ...own, id: ids[0] },
      { ...seen, ...own, id: ids[1] },
    ]);
  });

  it('keeps the old row beside its correction', () => {
    const { db, caseId, subject } = openWithStation();
    const [old = ''] = addReadings(db, caseId, [newReading(subject)], ACTOR);
    const better = newReading(subject, { value: 1441.45, entered: '56 3/4' });
    const corrected = correctReading(db, caseId, old, better, ' misread the scale ', ACTOR);
    const rows = readCase(db, caseId)?.readings ?? [];
    expect(rows.map((row) => row.value)).toEqual([1435.1, 1441.45]);
    expect(rows[1]).toMatchObject({ replaces: old, reason: 'misread the scale' });
    expect(standing(db, caseId).map((row) => row.id)).toEqual(corrected.ok ? [corrected.value] : []);
    expect(readLog(db, caseId, { limit: 1 })[0]).toMatchObject({
      action: 'correct',
      subjectKind: 'reading',
      subjectId: old,
      before: { value: 1435.1 },
      after: { value: 1441.45, reason: 'misread the scale' },
    });
  });

  it('refuses to replace a reading twice and leaves no trace of the attempt', () => {
    const { db, caseId, subject } = openWithStation();
    const [old = ''] = addReadings(db, caseId, [newReading(subject)], ACTOR);
    expect(correctReading(db, caseId, old, newReading(subject), 'misread', ACTOR).ok).toBe(true);
    const head = caseHead(db, caseId);
    expect(correctReading(db, caseId, old, newReading(subject), 'again', ACTOR)).toMatchObject({
      ok: false,
      message: expect.stringContaining('already corrected'),
    });
    expect(withdrawReading(db, caseId, old, 'again', ACTOR).ok).toBe(false);
    expect(caseHead(db, caseId)).toBe(head);
  });

  it('holds that even against a write that does not ask first', () => {
    const { db, caseId, subject } = openWithStation();
    const [old = ''] = addReadings(db, caseId, [newReading(subject)], ACTOR);
    correctReading(db, caseId, old, newReading(subject), 'misread', ACTOR);
    expect(() =>
      db.$client.exec(
        `insert into reading (id, case_id, subject_kind, subject_id, quantity, slot, entered, unit, value,
           disturbance, sampling, note, replaces, reason, withdrawn, created_at)
         values ('x', '${caseId}', 'station', '${subject.id}', 'q', '', '', '', 1, 'notSaid', 'notSaid', '',
           '${old}', 'r', 0, 'now')`,
      ),
    ).toThrow('UNIQUE');
  });

  it('withdraws with a reason, and puts back by correcting the withdrawal', () => {
    const { db, caseId, subject } = openWithStation();
    const [old = ''] = addReadings(db, caseId, [newReading(subject)], ACTOR);
    expect(withdrawReading(db, caseId, old, '  ', ACTOR).ok).toBe(false);
    const gone = withdrawReading(db, caseId, old, 'wrong station', ACTOR);
    expect(standing(db, caseId)).toEqual([]);
    if (!gone.ok) throw new Error(gone.message);
    expect(withdrawReading(db, caseId, gone.value, 'again', ACTOR).ok).toBe(false);
    expect(correctReading(db, caseId, gone.value, newReading(subject), 'right after all', ACTOR).ok).toBe(
      true,
    );
    expect(standing(db, caseId)).toHaveLength(1);
    expect(verifyLog(db, caseId).ok).toBe(true);
  });

  it.each([
    'update reading set value = 1',
    'delete from reading',
    'insert or replace into reading select * from reading',
    'update change_log set actor_name = 1',
    'delete from change_log',
  ])('forbids: %s', (statement) => {
    const { db, caseId, subject } = openWithStation();
    addReadings(db, caseId, [newReading(subject)], ACTOR);
    expect(() => db.$client.exec(statement)).toThrow(/never overwritten|cannot be altered/);
    expect(readCase(db, caseId)?.readings).toHaveLength(1);
  });

  it.each([
    ['a value and a state', { state: 'seen' }],
    ['neither', { value: null }],
    ['a value that is no number', { value: NaN }],
    ['an infinite value', { value: Infinity }],
    ['more than the whole examined', { value: null, state: 'seen', examined: 1.5 }],
    ['a share examined of a number', { examined: 0.5 }],
    ['an instrument that is not there', { instrumentId: 'none' }],
  ])('does not keep a reading with %s, nor the ones beside it', (_, wrong) => {
    const { db, caseId, subject } = openWithStation();
    const head = caseHead(db, caseId);
    expect(() => addReadings(db, caseId, [newReading(subject), newReading(subject, wrong)], ACTOR)).toThrow();
    expect(readCase(db, caseId)?.readings).toEqual([]);
    expect(caseHead(db, caseId)).toBe(head);
  });

  it('does not mix cases: subject, person and instrument are of the same case', () => {
    const { db, caseId, subject } = openWithStation();
    const other = createCase(db, { ...CASE_FIELDS, number: 'D-002' }, ACTOR);
    const personId = addEntity(db, other, 'person', { name: 'Q. Other', role: 'track' }, ACTOR);
    expect(() => addReadings(db, caseId, [newReading(subject, { personId })], ACTOR)).toThrow('FOREIGN KEY');
    expect(() => addReadings(db, other, [newReading(subject)], ACTOR)).toThrow('not in this case');
    expect(() => addReadings(db, other, [newReading({ kind: 'case', id: caseId })], ACTOR)).toThrow(
      'another case',
    );
    expect(readCase(db, other)?.readings).toEqual([]);
  });

  it('takes a whole sheet of readings at once, in their order', () => {
    const { db, caseId } = openWithStation();
    const names = Array.from({ length: 400 }, (_, i) => ({ name: String(i), disturbance: 'undisturbed' }));
    const stations = addEntities(db, caseId, 'station', names, ACTOR);
    const list = stations.flatMap((id) =>
      Array.from({ length: 10 }, (_, i) =>
        newReading({ kind: 'station', id }, { value: i, slot: String(i) }),
      ),
    );
    const ids = addReadings(db, caseId, list, ACTOR);
    expect(readCase(db, caseId)?.readings.map((row) => row.id)).toEqual(ids);
  });
});

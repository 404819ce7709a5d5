import { describe, expect, it } from 'vitest';
import { caseHead, createCase, listCases, readCase, updateCase } from '~/db/cases';
import { addEntity } from '~/db/entities';
import { readLog, verifyLog } from '~/db/log';
import { openDatabase } from '~/db/open';
import { addReadings, withdrawReading } from '~/db/readings';
import { ACTOR, CASE_FIELDS, newReading, openFresh, openWithCase } from './opened';

describe('cases', () => {
  it('opens a case, reads it back and lists it', () => {
    const { db, caseId } = openWithCase();
    const record = readCase(db, caseId);
    expect(record?.fields).toMatchObject({ ...CASE_FIELDS, weather: null });
    expect(record?.entities.vehicle).toEqual([]);
    expect(record?.narrative).toEqual({ summary: '', determination: '', signatories: '' });
    expect(listCases(db)).toMatchObject([
      { id: caseId, number: 'D-001', railroad: 'Invented Short Line', photos: 0, readings: 0 },
    ]);
  });

  it('has no record and no version of a case that is not there', () => {
    const { db } = openFresh();
    expect(readCase(db, 'none')).toBeNull();
    expect(caseHead(db, 'none')).toBeNull();
  });

  it('reads what another connection wrote, and the same record while nothing changes', () => {
    const { db, folder, caseId } = openWithCase();
    const first = readCase(db, caseId);
    expect(readCase(db, caseId)).toBe(first);
    const other = openDatabase(folder);
    updateCase(other, caseId, { weather: 'Clear' }, ACTOR);
    other.$client.close();
    const second = readCase(db, caseId);
    expect(second?.fields.weather).toBe('Clear');
    expect(second?.fields.title).toBe(CASE_FIELDS.title);
  });

  it('logs only what changed, and nothing when nothing changed', () => {
    const { db, caseId } = openWithCase();
    updateCase(db, caseId, { weather: 'Rain', title: CASE_FIELDS.title }, ACTOR);
    const head = caseHead(db, caseId);
    updateCase(db, caseId, { weather: 'Rain' }, ACTOR);
    expect(caseHead(db, caseId)).toBe(head);
    expect(readLog(db, caseId, { limit: 1 })[0]).toMatchObject({
      action: 'update',
      actorName: ACTOR.name,
      before: { weather: null },
      after: { weather: 'Rain' },
    });
    expect(verifyLog(db, caseId)).toEqual({ ok: true, problems: [] });
  });

  it('counts only readings that stand, and lists the case changed last first', () => {
    const { db, caseId } = openWithCase();
    const station = addEntity(db, caseId, 'station', { name: '0', disturbance: 'undisturbed' }, ACTOR);
    const subject = { kind: 'station', id: station } as const;
    const [first = ''] = addReadings(db, caseId, [newReading(subject), newReading(subject)], ACTOR);
    withdrawReading(db, caseId, first, 'wrong station', ACTOR);
    expect(listCases(db)[0]?.readings).toBe(1);
  });

  it('refuses a field that a case does not have', () => {
    const { db } = openFresh();
    expect(() => createCase(db, { ...CASE_FIELDS, colour: 'red' }, ACTOR)).toThrow('colour');
    expect(listCases(db)).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { caseHead, createCase, readCase } from '~/db/cases';
import { fileStore } from '~/db/files';
import { readLog } from '~/db/log';
import { keepRailroadLimits, limitsOfRailroad } from '~/db/railroad-limits';
import { verifyCase } from '~/db/verify';
import { ACTOR, CASE_FIELDS, openWithCase } from './opened';

const FIRST = 'name: A\ngauge; most; 58"';
const SECOND = 'name: A\ngauge; most; 57 3/4"';

describe('the railroad’s own limits of a case', () => {
  it('stand as they were entered last, with each version in the log', () => {
    const { db, caseId, folder } = openWithCase();
    expect(readCase(db, caseId)?.railroadLimits).toBeNull();
    keepRailroadLimits(db, caseId, FIRST, ACTOR);
    keepRailroadLimits(db, caseId, SECOND, ACTOR);
    expect(readCase(db, caseId)?.railroadLimits).toBe(SECOND);
    const entries = readLog(db, caseId, { limit: 2 });
    expect(entries[0]).toMatchObject({
      action: 'update',
      subjectKind: 'railroadLimits',
      before: { entered: FIRST },
      after: { entered: SECOND, version: 2 },
    });
    expect(verifyCase(db, fileStore(folder), caseId)).toEqual({ ok: true, problems: [] });
  });

  it('leave no entry when nothing changed', () => {
    const { db, caseId } = openWithCase();
    keepRailroadLimits(db, caseId, FIRST, ACTOR);
    const head = caseHead(db, caseId);
    keepRailroadLimits(db, caseId, FIRST, ACTOR);
    expect(caseHead(db, caseId)).toBe(head);
  });

  it('cannot be overwritten or deleted, and one changed behind the log is told', () => {
    const { db, caseId, folder } = openWithCase();
    keepRailroadLimits(db, caseId, FIRST, ACTOR);
    expect(() => db.$client.exec("update railroad_limits set entered = 'x'")).toThrow('never overwritten');
    expect(() => db.$client.exec('delete from railroad_limits')).toThrow('never deleted');
    db.$client.exec("drop trigger railroad_limits_sealed; update railroad_limits set entered = 'x';");
    expect(verifyCase(db, fileStore(folder), caseId).problems.join(' ')).toContain('entered was changed');
  });

  it('are offered to other cases of the same railroad', () => {
    const { db, caseId } = openWithCase();
    keepRailroadLimits(db, caseId, FIRST, ACTOR);
    const other = createCase(db, { ...CASE_FIELDS, number: 'D-002' }, ACTOR);
    expect(limitsOfRailroad(db, other, ' invented short line')).toMatchObject([
      { caseId, number: 'D-001', entered: FIRST },
    ]);
    expect(limitsOfRailroad(db, other, 'Another line')).toEqual([]);
    expect(limitsOfRailroad(db, caseId, CASE_FIELDS.railroad)).toEqual([]);
  });
});

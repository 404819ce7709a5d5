import { describe, expect, it } from 'vitest';
import { caseHead, updateCase } from '~/db/cases';
import { readLog, verifyLog } from '~/db/log';
import { ACTOR, openWithCase } from './opened';

describe('log', () => {
  it('is read newest first, page by page', () => {
    const { db, caseId } = openWithCase();
    for (const weather of ['Clear', 'Rain', 'Snow']) updateCase(db, caseId, { weather }, ACTOR);
    const first = readLog(db, caseId, { limit: 2 });
    expect(first.map((entry) => entry.seq)).toEqual([4, 3]);
    expect(first[0]?.hash).toBe(caseHead(db, caseId));
    expect(first[0]?.prevHash).toBe(first[1]?.hash);
    expect(readLog(db, caseId, { before: 3, limit: 9 }).map((entry) => entry.seq)).toEqual([2, 1]);
  });

  it.each([
    ['a changed text', "update change_log set after = replace(after, 'Rain', 'Sun') where seq = 3"],
    ['a changed name', "update change_log set actor_name = 'S. Else' where seq = 2"],
    ['an entry taken out', 'delete from change_log where seq = 2'],
    ['an emptied log', 'delete from change_log'],
  ])('finds %s even when the triggers were switched off', (_, tamper) => {
    const { db, caseId } = openWithCase();
    for (const weather of ['Clear', 'Rain', 'Snow']) updateCase(db, caseId, { weather }, ACTOR);
    expect(verifyLog(db, caseId)).toEqual({ ok: true, problems: [] });
    db.$client.exec('drop trigger change_log_no_update; drop trigger change_log_no_delete');
    db.$client.exec(tamper);
    const verified = verifyLog(db, caseId);
    expect(verified.ok).toBe(false);
    expect(verified.problems.length).toBeGreaterThan(0);
  });
});

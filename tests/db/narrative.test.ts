import { describe, expect, it } from 'vitest';
import { caseHead, createCase, readCase } from '~/db/cases';
import { addEntity } from '~/db/entities';
import { readLog, verifyLog } from '~/db/log';
import { clearJudgement, clearStanding, saveNarrative, setJudgement, setStanding } from '~/db/narrative';
import { ACTOR, CASE_FIELDS, openWithCase } from './opened';

describe('the investigator’s words and decisions', () => {
  it('saves words part by part', () => {
    const { db, caseId } = openWithCase();
    saveNarrative(db, caseId, { summary: 'Short.' }, ACTOR);
    saveNarrative(db, caseId, { determination: 'Mine.' }, ACTOR);
    const head = caseHead(db, caseId);
    saveNarrative(db, caseId, { determination: 'Mine.' }, ACTOR);
    expect(caseHead(db, caseId)).toBe(head);
    expect(readCase(db, caseId)?.narrative).toEqual({
      summary: 'Short.',
      determination: 'Mine.',
      signatories: '',
    });
  });

  it('sets an explanation aside, changes its mind and takes it back; the log keeps all of it', () => {
    const { db, caseId } = openWithCase();
    setStanding(db, caseId, { explanation: 'brokenRail', standing: 'excluded', reason: 'no break' }, ACTOR);
    setStanding(db, caseId, { explanation: 'brokenRail', standing: 'stands', reason: 'found one' }, ACTOR);
    expect(readCase(db, caseId)?.standings).toMatchObject([{ standing: 'stands', reason: 'found one' }]);
    clearStanding(db, caseId, 'brokenRail', ACTOR);
    clearStanding(db, caseId, 'brokenRail', ACTOR);
    expect(readCase(db, caseId)?.standings).toEqual([]);
    expect(readLog(db, caseId, { limit: 9 }).map((entry) => entry.action)).toEqual([
      'clear',
      'set',
      'set',
      'open',
    ]);
    expect(verifyLog(db, caseId).ok).toBe(true);
  });

  it('changes a judgement with a reason, and only with one', () => {
    const { db, caseId } = openWithCase();
    const change = { path: 'climb.mark.hit', value: 0.8, reason: 'seen often here' };
    setJudgement(db, caseId, change, ACTOR);
    expect(readCase(db, caseId)?.judgementChanges).toMatchObject([change]);
    expect(() => setJudgement(db, caseId, { ...change, reason: '' }, ACTOR)).toThrow('CHECK');
    expect(() =>
      setStanding(db, caseId, { explanation: 'x', standing: 'stands', reason: '' }, ACTOR),
    ).toThrow('CHECK');
    clearJudgement(db, caseId, change.path, ACTOR);
    expect(readCase(db, caseId)?.judgementChanges).toEqual([]);
  });

  it('names the person of this case, and only the name of one who is not in it', () => {
    const { db, caseId } = openWithCase();
    const other = createCase(db, { ...CASE_FIELDS, number: 'D-002' }, ACTOR);
    const personId = addEntity(db, caseId, 'person', { name: 'R. Examiner', role: 'track' }, ACTOR);
    const actor = { personId, name: 'R. Examiner' };
    const given = { explanation: 'brokenRail', standing: 'excluded', reason: 'no break' } as const;
    setStanding(db, caseId, given, actor);
    setStanding(db, other, given, actor);
    expect(readCase(db, caseId)?.standings[0]?.personId).toBe(personId);
    expect(readCase(db, other)?.standings[0]?.personId).toBeNull();
  });
});

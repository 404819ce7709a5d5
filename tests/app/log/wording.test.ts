import { describe, expect, it } from 'vitest';
import { entryInWords } from '~/app/log/wording.server';
import { readCase } from '~/db/cases';
import { readLog } from '~/db/log';
import { setJudgement, setStanding } from '~/db/narrative';
import { judgementTable } from '~/lib/explanations/judgement-table';
import { ACTOR, openWithCase } from '../../db/opened';

describe('entries of the log in words', () => {
  it('names the explanation and how it stands, and no ids', () => {
    const { db, caseId } = openWithCase();
    setStanding(
      db,
      caseId,
      { explanation: 'overspeed', standing: 'excluded', reason: '17 mph on the recorder' },
      ACTOR,
    );
    const record = readCase(db, caseId);
    const [entry] = readLog(db, caseId, { limit: 1 });
    if (!record || !entry) throw new Error('There is no entry.');
    const words = entryInWords(record, entry);
    expect(words.what).toBe('Set how an explanation stands');
    expect(words.changes).toEqual([
      { label: 'Explanation', before: '', after: 'Overspeed, overturning' },
      { label: 'It', before: '', after: 'Excluded' },
      { label: 'Reason', before: '', after: '17 mph on the recorder' },
    ]);
  });

  it('says which judgement was changed', () => {
    const { db, caseId } = openWithCase();
    const [judgement] = judgementTable();
    if (!judgement) throw new Error('There is no judgement.');
    setJudgement(db, caseId, { path: judgement.path, value: 0.4, reason: 'two cases like it' }, ACTOR);
    const record = readCase(db, caseId);
    const [entry] = readLog(db, caseId, { limit: 1 });
    if (!record || !entry) throw new Error('There is no entry.');
    const { what, changes } = entryInWords(record, entry);
    expect(what).toBe('Set a judgement');
    expect(changes[0]).toEqual({ label: 'Judgement', before: '', after: judgement.what });
    expect(changes).toContainEqual({ label: 'Value', before: '', after: '0.4' });
  });
});
